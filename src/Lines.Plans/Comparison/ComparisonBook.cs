using System.Text;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Loading;
using Lines.Hull.Propulsion;
using Lines.Hull.Resistance;
using Lines.Kernel.Units;
using Lines.Plans.Figures;
using Lines.Plans.Offsets;
using Lines.Plans.Report;
using Lines.Plans.Resistance;

namespace Lines.Plans.Comparison;

/// <summary>What designs are compared at.</summary>
/// <param name="Water">The water.</param>
/// <param name="Thrust">The thrust that puts the bow down.</param>
/// <param name="Case">The load case; null where a mass was given.</param>
/// <param name="Notation">How lengths are written; the other units follow it.</param>
public sealed record ComparisonSettings(Water Water, ForwardThrust Thrust, string? Case, LengthNotation Notation);

/// <summary>Designs beside each other in figures: all numbers of each, and their differences from the first.</summary>
public sealed class ComparisonBook
{
    /// <summary>Designs that can be compared at once: no more lines are told apart on one drawing.</summary>
    public const int Most = 6;

    private readonly IReadOnlyList<IReadOnlyList<FigureGroup>> _figures;
    private readonly IReadOnlyList<IReadOnlyList<FigureGroup>> _speeds;

    private ComparisonBook(IReadOnlyList<ComparedDesign> designs, ComparisonSettings settings, IReadOnlyList<DragEstimate> drags, IReadOnlyList<double> speeds)
    {
        (Designs, Settings, Drags) = (designs, settings, drags);
        _figures = [.. designs.AsParallel().AsOrdered().Select(d => d.Figures(settings.Water, settings.Thrust))];
        Speeds = [.. (speeds.Count > 0 ? speeds : UsualSpeeds.Of(drags.Min(d => d.Length))).Order()];

        // One paddler with flat blades stands for all.
        _speeds = [.. drags.Select(d => DragBook.At(d, Speeds, new CrewPower(d, Drive.FlatBlade, 1)))];
        Crossings =
        [
            .. Enumerable.Range(0, designs.Count)
                .SelectMany(a => Enumerable.Range(a + 1, designs.Count - a - 1).Select(b => DragCrossings.Of(a, b, drags, Speeds[0], Speeds[^1]))),
        ];
    }

    /// <summary>The designs, in the order they were named.</summary>
    public IReadOnlyList<ComparedDesign> Designs { get; }

    /// <summary>What they are compared at.</summary>
    public ComparisonSettings Settings { get; }

    /// <summary>The drag of each.</summary>
    public IReadOnlyList<DragEstimate> Drags { get; }

    /// <summary>Speeds at which drag is told [m/s], slowest first.</summary>
    public IReadOnlyList<double> Speeds { get; }

    /// <summary>Where the drag curves of every two change places.</summary>
    public IReadOnlyList<DragCrossings> Crossings { get; }

    /// <summary>Compares designs.</summary>
    /// <param name="designs">The designs, two to <see cref="Most"/>.</param>
    /// <param name="settings">What they are compared at.</param>
    /// <param name="speeds">Speeds [m/s]; empty for the <see cref="UsualSpeeds"/> of the shortest.</param>
    public static ComparisonBook Of(IReadOnlyList<ComparedDesign> designs, ComparisonSettings settings, IReadOnlyList<double> speeds)
    {
        ArgumentNullException.ThrowIfNull(designs);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(speeds);
        if (designs.Count is < 2 or > Most)
            throw new ArgumentOutOfRangeException(nameof(designs), designs.Count, Invariant($"2 to {Most} designs are compared"));
        return new ComparisonBook(designs, settings, [.. designs.Select(d => d.Drag(settings.Water))], speeds);
    }

    /// <summary>What the designs are compared at, one sentence.</summary>
    public string At
    {
        get
        {
            var masses = Designs.Select(d => d.Weight.Mass).ToList();
            var equal = masses.Max() - masses.Min() <= 1e-6 * masses[0];
            var mass = equal ? "all at " + Show(masses[0], Quantity.Mass) : string.Join(", ", masses.Select((m, k) => $"{DragCrossings.Letter(k)} at {Show(m, Quantity.Mass)}")) + ": NOT EQUAL WEIGHTS";
            var how = Settings.Case is { } name ? $"in the load case {name}, form and drag level" : "level";
            return $"{FigureText.Capital(mass)}, {how}, in {Settings.Water.Name}; thrust {Show(Settings.Thrust.Force, Quantity.Force)} forward, {new Length(Settings.Thrust.Height).ToText(Settings.Notation)} above the water.";
        }
    }

    /// <summary>All figures for programs: those of each design, differences from the first, crossings.</summary>
    public IReadOnlyList<FigureGroup> Groups =>
    [
        .. Enumerable.Range(0, Designs.Count).SelectMany(k => All(k).Select(g => g with { Key = $"{Key(k)}_{g.Key}" })),
        .. Enumerable.Range(1, Designs.Count - 1).SelectMany(k => All(0).Select(g => Less(g, k)).OfType<FigureGroup>()),
        new FigureGroup("crossings", "Where drag curves change places",
        [
            .. Crossings.SelectMany(c => c.Speeds.Count == 0
                ? [new Figure($"{Key(c.First)}_{Key(c.Second)}_1", "", null, Quantity.Speed) { Why = c.Sentence }]
                : c.Speeds.Select((s, n) => new Figure(Invariant($"{Key(c.First)}_{Key(c.Second)}_{n + 1}"), "", s, Quantity.Speed) { IsEstimate = true })),
        ]),
    ];

    /// <summary>The tables: form and hydrostatics group by group, then drag.</summary>
    public IReadOnlyList<FigureTable> Tables => [.. _figures.SelectMany(f => f).DistinctBy(g => g.Key, StringComparer.Ordinal).Select(Table), DragTable];

    /// <summary>Everything for a terminal.</summary>
    public string Text()
    {
        var text = new StringBuilder(At).Append("\n\n");
        for (var k = 0; k < Designs.Count; k++)
            text.Append("  ").Append(DragCrossings.Letter(k)).Append("  ").Append(Designs[k].Title).Append(" (").Append(Designs[k].File).Append(")\n");
        foreach (var table in Tables)
            text.Append('\n').Append(table.Title).Append("\n\n").Append(OffsetsText.Write(table));
        text.Append('\n');
        foreach (var line in Notes)
            text.Append(line).Append('\n');
        return text.ToString();
    }

    /// <summary>Crossings, what the drag is worth, and cautions, a line each.</summary>
    public IReadOnlyList<string> Notes =>
    [
        .. Crossings.Select(c => c.Sentence),
        Invariant($"Drag is an estimate: friction by ITTC 1957, form for hulls of waterline length over cube root of volume {SlenderForm.LeastMeasured} to {SlenderForm.GreatestMeasured}, waves by thin-ship theory for Froude numbers of 0.2 to 1 without planing, whose humps come out too high by tens of per cent."),
        "Bow-down trim is for a steady force in calm water; a wave, a gust or speed puts the bow under sooner.",
        .. Designs.Any(d => d.Vessel.Outriggers.Count > 0) ? (string[])[Cautions.Outriggers] : [],
        Cautions.Figures,
    ];

    private FigureTable DragTable
    {
        get
        {
            var force = FigureText.UnitOf(Quantity.Drag, Settings.Notation).Name;
            FigureColumn[] columns =
            [
                new("Speed", "kn"),
                .. Enumerable.Range(0, Designs.Count).Select(k => new FigureColumn(DragCrossings.Letter(k), force)),
                .. Others.SelectMany(k => (FigureColumn[])[new(Difference(k), force), new("skin, form", ""), new("waves", ""), new("rest", "")]),
            ];
            var rows = Speeds.Select((_, s) => (IReadOnlyList<string>)
            [
                FigureText.Number(Of(0, s, "speed"), Settings.Notation),
                .. Enumerable.Range(0, Designs.Count).Select(k => FigureText.Number(Of(k, s, "total"), Settings.Notation)),
                .. Others.SelectMany(k => (string[])[More(k, s, "total"), More(k, s, "friction", "form"), More(k, s, "wave", "interference"), More(k, s, "transom", "appendages", "air")]),
            ]);
            return new FigureTable("Drag, level on the waterline compared at: estimates", columns, [.. rows]);
        }
    }

    private IEnumerable<int> Others => Enumerable.Range(1, Designs.Count - 1);

    private IEnumerable<FigureGroup> All(int design) => [.. _figures[design], .. _speeds[design]];

    private Figure Of(int design, int speed, string key) => _speeds[design][speed].Figures.First(f => string.Equals(f.Key, key, StringComparison.Ordinal));

    private string More(int design, int speed, params string[] keys) =>
        Signed(new Figure("", "", keys.Sum(k => Of(design, speed, k).Value - Of(0, speed, k).Value), Quantity.Drag));

    private FigureTable Table(FigureGroup group)
    {
        var groups = _figures.Select(f => f.FirstOrDefault(g => string.Equals(g.Key, group.Key, StringComparison.Ordinal))).ToList();
        var rows = groups.OfType<FigureGroup>().SelectMany(g => g.Figures).DistinctBy(f => f.Key, StringComparer.Ordinal);
        return new FigureTable(
            group.Title,
            [new FigureColumn("", ""), .. Enumerable.Range(0, Designs.Count).SelectMany(k => k == 0 ? [Column(0)] : (FigureColumn[])[Column(k), new(Difference(k), "")])],
            [.. rows.Select(r => (IReadOnlyList<string>)[r.Name + Unit(r), .. groups.SelectMany((g, k) => Cells(r.Key, groups[0], g, k))])]);
    }

    private static FigureColumn Column(int k) => new(DragCrossings.Letter(k), "");

    private IEnumerable<string> Cells(string key, FigureGroup? first, FigureGroup? group, int k)
    {
        var figure = Find(group, key);
        yield return figure?.Value is null ? "-" : FigureText.Number(figure, Settings.Notation);
        if (k > 0)
            yield return figure?.Value is { } value && Find(first, key)?.Value is { } base_ ? Signed(figure with { Value = value - base_ }) : "-";
    }

    // A difference with its sign; what rounds to nothing has none.
    private string Signed(Figure figure)
    {
        var told = FigureText.Number(figure, Settings.Notation);
        return figure.Value > 0 && told.Any(c => c is >= '1' and <= '9') ? "+" + told : told;
    }

    private FigureGroup? Less(FigureGroup first, int k)
    {
        var own = All(k).FirstOrDefault(g => string.Equals(g.Key, first.Key, StringComparison.Ordinal));
        return own is null ? null : new FigureGroup(
            $"{Key(k)}_less_a_{first.Key}",
            $"{Difference(k)}: {first.Title}",
            [.. own.Figures.Where(f => Find(first, f.Key) is not null).Select(f => f with { Value = f.Value - Find(first, f.Key)!.Value, Why = "one of the two is unknown" })]);
    }

    private static Figure? Find(FigureGroup? group, string key) => group?.Figures.FirstOrDefault(f => string.Equals(f.Key, key, StringComparison.Ordinal));

    private static string Key(int k) => DragCrossings.Letter(k).ToLowerInvariant();

    private static string Difference(int k) => $"{DragCrossings.Letter(k)} - A";

    private string Show(double value, Quantity quantity) => FigureText.Show(new Figure("", "", value, quantity), Settings.Notation);

    private string Unit(Figure figure) => figure.Quantity == Quantity.Length && Settings.Notation is LengthNotation.FeetInches or LengthNotation.FeetInchesEighths
        ? ""
        : FigureText.UnitOf(figure.Quantity, Settings.Notation).Name is { Length: > 0 } name ? ", " + name : "";
}
