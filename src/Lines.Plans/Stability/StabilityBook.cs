using System.Text;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Loading;
using Lines.Hull.Strength;
using Lines.Kernel.Units;
using Lines.Plans.Figures;
using Lines.Plans.Offsets;
using Lines.Plans.Report;

namespace Lines.Plans.Stability;

/// <summary>Load cases and stability in figures: tables for people, groups for programs.</summary>
/// <param name="Title">Title of the design.</param>
/// <param name="Hull">The main hull.</param>
/// <param name="Studies">The load cases, light ship first.</param>
/// <param name="Settings">What they were studied for.</param>
/// <param name="Notation">How lengths are written; the other units follow it.</param>
public sealed record StabilityBook(string Title, HullSurface Hull, IReadOnlyList<LoadCaseStudy> Studies, LoadSettings Settings, LengthNotation Notation)
{
    /// <summary>What stands under the strength table.</summary>
    public static readonly string Strength = Invariant(
        $"Preliminary: still water, and a sine wave as long as the waterline and 1/{BendingStudy.WaveSlenderness} as high; floats on two beams at their quarters; bolts {BendingStudy.BoltLever} of the depth from the edge the joint opens about. No slamming, no racking, no stays.");

    /// <summary>Whether the boat has outriggers: only she is told what they do not do.</summary>
    public required bool HasOutriggers { get; init; }

    /// <summary>Openings through the main hull's deck.</summary>
    public IReadOnlyList<DeckOpening> Openings { get; init; } = [];

    /// <summary>Lines that are needed where numbers stand, in the order they are printed.</summary>
    public IReadOnlyList<string> Cautioned => [Conditions, .. HasOutriggers ? [Cautions.Outriggers] : Array.Empty<string>(), Cautions.Trials, Cautions.Figures, Cautions.Rules];

    /// <summary>What the figures of floating are for.</summary>
    private string Conditions => $"{Cautions.CalmWater} Further mass, crew and gear allowed lie at the center of what is aboard and keep {new Length(Settings.Freeboard).ToText(Notation)} of freeboard{Tender}.";

    // The cases in which she comes to rest no more sooner than her freeboard is used up.
    private string Tender => Studies.Where(s => s.Afloat.State == FloatState.Floats && s.Further.End == AllowanceEnd.Rest).Select(s => s.Name).ToList() is { Count: > 0 } cases
        ? $"; in {string.Join(", ", cases)} they end sooner, where she would come to rest no more"
        : "";

    /// <summary>The wind of the heel under sail; empty without a sail.</summary>
    private string UnderSail => Studies.Any(s => s.Sails.Count > 0) ? $"Heel under sail: {LoadCaseFigures.WindOf(Settings.Wind)}{(Studies.Any(s => s.Sails.Any(h => h.Heel < 0)) ? "; negative where weights to windward still lean her that way" : "")}. " : "";

    // What of a deck counts as open, and what as tight.
    private string UnderDeck
    {
        get
        {
            if (Hull.Deck is null)
                return "";
            string Names(bool isSealed) => string.Join(", ", Openings.Where(o => o.IsSealed == isSealed).Select(o => o.Name));
            var closed = Names(true) is { Length: > 0 } names ? $" with {names}" : "";
            return Names(false) is { Length: > 0 } open
                ? $"Water comes in through the main hull's deck at {open}: rims at the height of the deck, no coamings. All else of it is taken as tight{closed}. "
                : $"The main hull's deck is taken as tight{(closed.Length > 0 ? closed : ", cockpit and hatches closed")}. ";
        }
    }

    /// <summary>All figures, in groups.</summary>
    public IReadOnlyList<FigureGroup> Groups => [.. Numbered(Studies.SelectMany(s => LoadCaseFigures.Of(Hull, s, Settings.Freeboard))), Guides];

    /// <summary>Whether every case floats dry.</summary>
    public bool AllFloat => Studies.All(s => s.Afloat.State == FloatState.Floats);

    /// <summary>How every case ends, one line each.</summary>
    public IReadOnlyList<string> Verdicts => [.. Studies.Select(s => $"{s.Name}: {LoadCaseFigures.StateOf(s.Afloat)}")];

    /// <summary>What published small-craft rules measure, as guides.</summary>
    public FigureGroup Guides
    {
        get
        {
            var boat = Studies[0].Structure.Mass;
            var heaviest = Studies.MaxBy(s => s.Afloat.Weight.Mass)!;
            var greatest = Settings.Water.Density * UprightHydrostatics.Below(Hull, Hull.LeastSheer, 1e-6).Volume;
            var load = RuleGuides.LoadByHand(greatest, boat);
            return new FigureGroup("guides", "Guides of published rules",
            [
                new("displacement_level_to_sheer", "Main hull level to her lowest sheer", greatest, Quantity.Mass),
                new("guide_load", "Load, 33 CFR 183.37", load, Quantity.Mass) { IsEstimate = true, Note = "moved by hand; 3/10 of what the empty boat leaves; " + Boats },
                new("guide_persons", "Persons, 33 CFR 183.43", RuleGuides.Persons(load), Quantity.Count) { IsEstimate = true, Note = Boats },
                new("guide_offset_heel", "Heel allowed under a load aside, ISO 12217", RuleGuides.OffsetHeel(Hull.Dials.Length), Quantity.Angle) { IsEstimate = true, Note = "the rule's limit, not her own heel; part 3 leaves out canoes and kayaks" },
                new("guide_sailing_area", "Sail area of a sailing boat, ISO 12217-3", RuleGuides.SailingFrom(heaviest.Afloat.Weight.Mass), Quantity.Area) { IsEstimate = true, Note = $"from this area on, for {heaviest.Name}" },
            ]);
        }
    }

    /// <summary>Cases beside each other on a terminal.</summary>
    private const int TerminalColumns = 6;

    private const string Boats = "were she of its boats; it leaves out canoes, kayaks, sailboats, outriggers";

    /// <summary>How every case floats.</summary>
    public FigureTable Cases => Table("Load cases, " + Settings.Water.Name, [.. Studies.Select(s => (s.Name, (IReadOnlyList<Figure>)LoadCaseFigures.Afloat(Hull, s, Settings.Freeboard).Figures))]);

    /// <summary>What the righting arms come to.</summary>
    public FigureTable Stability => Table("Stability, free trim", [.. Sides.Select(s => (s.Name, (IReadOnlyList<Figure>)LoadCaseFigures.Stability(s.Study, s.Arms)))]);

    /// <summary>The arms themselves, at every fifteen degrees; the numbers for programs have every five.</summary>
    public FigureTable Arms => new(
        $"Righting arms{LengthUnit}; in brackets past downflooding",
        [new FigureColumn("Heel, deg", ""), .. Sides.Select(s => Column(s.Name))],
        [
            .. Enumerable.Range(0, 13).Select(k => (IReadOnlyList<string>)
            [
                Invariant($"{15 * k}"),
                .. Sides.Select(s => s.Arms.Curve.FirstOrDefault(a => Math.Abs(a.Heel - (k * Math.PI / 12)) < 1e-9) is { } arm ? Cell(s.Arms, arm) : "-"),
            ]),
        ]);

    /// <summary>Swamped boats; null where nobody is aboard, or the main hull is decked and has no compartments.</summary>
    public FigureTable? Swamped => Studies.Any(s => s.Swamped.Count > 0)
        ? Listed("Swamped: main hull full, crew aboard; the own buoyancy of wood and crew left out", "Case", [.. Studies.SelectMany(s => s.Swamped.Zip(LoadCaseFigures.Swamped(s), (c, g) => ($"{s.Name}, {(c.Holed is { } h ? $"{h} holed" : "all sound")}: {Word(c.Afloat.State)}{(c.Afloat.State is FloatState.Floats && c.Sheer < 0 ? ", sheer under" : "")}", g.Figures)))])
        : null;

    /// <summary>Forces along the main hull.</summary>
    public FigureTable? Bending => Bent.Count > 0 ? Listed("Along the main hull", "Case and water", [.. Bent.Select(b => (b.Name, (IReadOnlyList<Figure>)[.. b.Figures.Where(f => !IsJoint(f))]))]) : null;

    /// <summary>Forces at the take-apart joints; null where there are none.</summary>
    public FigureTable? Joints => Settings.Joints.Count > 0 && Bent.Count > 0
        ? Listed("At the joints: bending moment, shear of all bolts, tension of the bolts on the side that opens", "Case and water", [.. Bent.Select(b => (b.Name, (IReadOnlyList<Figure>)[.. b.Figures.Where(f => IsJoint(f) && f.Quantity != Quantity.Length)]))])
        : null;

    private List<(string Name, IReadOnlyList<Figure> Figures)> Bent =>
        [.. Studies.SelectMany(s => s.Bending.Zip(LoadCaseFigures.Bending(s), (b, g) => ($"{LoadCaseFigures.BentIn(s)}, {LoadCaseFigures.WaterOf(b)}", g.Figures)))];

    private static bool IsJoint(Figure figure) => figure.Key.StartsWith("joint_", StringComparison.Ordinal);

    /// <summary>Every case with each side computed.</summary>
    internal IReadOnlyList<(string Name, LoadCaseStudy Study, RightingArms Arms)> Sides =>
        [.. Studies.SelectMany(s => s.Arms.Select(a => (s.Arms.Count > 1 ? Joined(s.Name, "to " + LoadCaseFigures.SideOf(a)) : s.Name, s, a)))];

    /// <summary>Tables in the order they are shown, each with what must be known beside it, a line each.</summary>
    public IReadOnlyList<(FigureTable Table, string Note)> Tables
    {
        get
        {
            List<(FigureTable, string)> tables = [(Cases, Conditions), (Stability, UnderDeck + UnderSail + (HasOutriggers ? Cautions.Outriggers : "")), (Arms, ""), .. Swamped is { } s ? [(s, Unsettled + Cautions.Trials)] : Array.Empty<(FigureTable, string)>()];
            if (Bending is { } b)
                tables.Add((b, Strength));
            if (Joints is { } j)
                tables.Add((j, Strength));
            return tables;
        }
    }

    // What the words for swamped boats that do not settle mean, where one does not.
    private string Unsettled
    {
        get
        {
            bool Any(FloatState state) => Studies.Any(s => s.Swamped.Any(c => c.Afloat.State == state));
            return (Any(FloatState.Capsizes) ? "CAPSIZES: afloat while held upright, and turning over when let go.\n" : "")
                + (Any(FloatState.NotFound) ? "NO EQUILIBRIUM: she goes over or stands on end, though what is sealed carries the weight; no rest under 90 deg of heel and 45 of trim.\n" : "");
        }
    }

    /// <summary>Verdicts, tables, guides and cautions for a terminal.</summary>
    public string Text()
    {
        var text = new StringBuilder($"Load cases in {Settings.Water.Name}\n\n");
        foreach (var verdict in Verdicts)
            text.Append("  ").Append(verdict).Append('\n');
        foreach (var (table, note) in Tables)
        {
            text.Append('\n').Append(table.Title).Append("\n\n").AppendJoin('\n', Parts(table, TerminalColumns).Select(OffsetsText.Write));
            text.Append(note.Length > 0 ? note + "\n" : "");
        }

        return text.Append('\n').Append(FigureText.Table([Guides], Notation)).Append(RuleGuides.Scope).Append('\n').ToString();
    }

    private static string Word(FloatState state) => state switch
    {
        FloatState.Floats => "floats",
        FloatState.Floods => "FLOODS",
        FloatState.Capsizes => "CAPSIZES",
        FloatState.Sinks => "SINKS",
        _ => "NO EQUILIBRIUM",
    };

    /// <summary>A table of many columns in several, each beginning with the names of the rows.</summary>
    internal static IEnumerable<FigureTable> Parts(FigureTable table, int columns)
    {
        for (var from = 1; from < table.Columns.Count; from += columns)
        {
            var to = Math.Min(from + columns, table.Columns.Count);
            yield return new FigureTable(table.Title, [table.Columns[0], .. table.Columns.Take(from..to)], [.. table.Rows.Select(r => (IReadOnlyList<string>)[r[0], .. r.Take(from..to)])]);
        }
    }

    // Cases whose names differ in signs alone get numbers behind their keys.
    private static IEnumerable<FigureGroup> Numbered(IEnumerable<FigureGroup> groups)
    {
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var group in groups)
        {
            var count = seen[group.Key] = seen.GetValueOrDefault(group.Key) + 1;
            yield return count == 1 ? group : group with { Key = Invariant($"{group.Key}_{count}") };
        }
    }

    private string LengthUnit => Notation is LengthNotation.Millimeters or LengthNotation.Inches ? ", " + FigureText.UnitOf(Quantity.Length, Notation).Name : "";

    private static string Joined(string name, string more) => more.Length > 0 ? $"{name}|{more}" : name;

    // The name of a column is told in two lines.
    private static FigureColumn Column(string name) => name.Split('|') is [var first, var second] ? new FigureColumn(first, second) : new FigureColumn(name, "");

    private string Cell(RightingArms arms, RightingArm arm)
    {
        var told = FigureText.Number(new Figure("arm", "", arm.Arm, Quantity.Length), Notation);
        return arms.Downflooding is { } floods && arm.Heel > floods ? $"({told})" : told;
    }

    // Rows are cases; columns are figures, named in two lines.
    private FigureTable Listed(string title, string first, IReadOnlyList<(string Name, IReadOnlyList<Figure> Figures)> cases)
    {
        var columns = cases[0].Figures.Where(f => f.Key is not "floats").ToList();
        return new FigureTable(
            title,
            [new FigureColumn(first, ""), .. columns.Select(f => Halved(f.Name + Unit(f)))],
            [.. cases.Select(c => (IReadOnlyList<string>)[c.Name, .. c.Figures.Where(f => f.Key is not "floats").Select(Cell)])]);
    }

    // A long name in two lines, broken at the blank nearest its middle.
    private static FigureColumn Halved(string name)
    {
        var blanks = Enumerable.Range(0, name.Length).Where(k => name[k] == ' ').ToList();
        return name.Length > 12 && blanks.Count > 0 && blanks.MinBy(k => Math.Abs(k - (name.Length / 2))) is var at
            ? new FigureColumn(name[..at], name[(at + 1)..])
            : new FigureColumn(name, "");
    }

    // Columns are cases; rows are all figures any of them has, in order.
    private FigureTable Table(string title, IReadOnlyList<(string Name, IReadOnlyList<Figure> Figures)> cases)
    {
        var rows = cases.OrderByDescending(c => c.Figures.Count).SelectMany(c => c.Figures).DistinctBy(f => f.Key, StringComparer.Ordinal).Where(f => f.Key is not "floats").ToList();
        return new FigureTable(
            title,
            [new FigureColumn("", ""), .. cases.Select(c => Column(c.Name))],
            [.. rows.Select(r => (IReadOnlyList<string>)[r.Name + Unit(r), .. cases.Select(c => c.Figures.FirstOrDefault(f => string.Equals(f.Key, r.Key, StringComparison.Ordinal)) is { } f ? Cell(f) : "-")])]);
    }

    // Where there is no heel under sail the wind is more than she holds.
    private string Cell(Figure figure) => figure switch
    {
        { Value: not null } => FigureText.Number(figure, Notation),
        { Why: LoadCaseFigures.SheFills } => "fills",
        { Why: LoadCaseFigures.SheCapsizes } => "capsizes",
        _ => "-",
    };

    private string Unit(Figure figure) => figure.Quantity == Quantity.Length ? LengthUnit : FigureText.UnitOf(figure.Quantity, Notation).Name is { Length: > 0 } name ? ", " + name : "";
}
