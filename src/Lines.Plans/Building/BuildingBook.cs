using Lines.Construction;
using Lines.Construction.Materials;
using Lines.Construction.Molds;
using Lines.Construction.Nesting;
using Lines.Construction.Pieces;
using Lines.Construction.Planking;
using Lines.Hull.Form;
using Lines.Kernel.Units;
using Lines.Plans.Figures;
using Lines.Plans.Offsets;

namespace Lines.Plans.Building;

/// <summary>What building a hull takes: its planking, its weight, what is bought, and in which order the work goes.</summary>
/// <param name="Title">Title of the design.</param>
/// <param name="Hull">The hull.</param>
/// <param name="Build">How it is built.</param>
/// <param name="Molds">Its molds.</param>
/// <param name="Cutting">The molds laid on sheets.</param>
/// <param name="Weight">Its weight.</param>
/// <param name="Pieces">The pieces it comes apart into.</param>
/// <param name="Notation">How lengths are written; the other units follow it.</param>
public sealed record BuildingBook(string Title, HullSurface Hull, BuildDials Build, MoldPlan Molds, CuttingPlan Cutting, HullWeight Weight, IReadOnlyList<Piece> Pieces, LengthNotation Notation)
{
    /// <summary>What the sentences about bends hold strips to.</summary>
    public const string Limits =
        "Estimates for clear, dry, cold wood: half the strain or shear at which it breaks; a tenth of the thickness planed off (common practice, no source). Try one strip first.";

    /// <summary>Whether the hull is one of a pair.</summary>
    public bool IsOneOfPair { get; init; }

    /// <summary>The outriggers with what each is called; a pair is one.</summary>
    public IReadOnlyList<(string Name, BuildingBook Book)> Outriggers { get; init; } = [];

    private readonly Lazy<StripPlan> _strips = new(() => StripPlan.Of(
        Hull.Side, Build, Build.Material.Wood, [.. Molds.Molds.Where(m => m.Kind == MoldKind.Station).Select(m => m.X)]));

    /// <summary>The strips.</summary>
    public StripPlan Strips => _strips.Value;

    /// <summary>The wood to saw strips from.</summary>
    public StripStock Stock => StripStock.Of(Strips, Build);

    /// <summary>The figures, in groups.</summary>
    public IReadOnlyList<FigureGroup> Figures => [BuildingFigures.Weight(Weight, Build.Material), BuildingFigures.Planking(Strips, Stock)];

    /// <summary>The strips at every mold.</summary>
    public FigureTable Sections
    {
        get
        {
            var stations = Molds.Molds.Where(m => m.Kind == MoldKind.Station);
            return new FigureTable(
                "Strips at the molds",
                [new("Mold", ""), new("From bow", Unit), new("Girth, one side", Unit), new("Strips a side", ""), new("Least radius", Unit), new("Planed off", "mm")],
                [
                    .. stations.Zip(Strips.Sections, (m, s) => (IReadOnlyList<string>)
                    [
                        m.Name, Cell(s.X), Cell(s.Girth), Invariant($"{s.Count}"), double.IsFinite(s.Radius) ? Cell(s.Radius) : "flat", Invariant($"{1000 * s.Facet:F2}"),
                    ]),
                ]);
        }
    }

    /// <summary>The pieces of a hull that comes apart; null for one that does not.</summary>
    public FigureTable? PieceTable => Pieces.Count < 2 ? null : new FigureTable(
        "Pieces",
        [new("Piece", ""), new("Length", Unit), new("Breadth", Unit), new("Height", Unit), new("Volume", Notation == LengthNotation.Millimeters ? "m³" : "ft³"), new("To carry", Notation == LengthNotation.Millimeters ? "kg" : "lb"), new("Built over", "") { IsWords = true }, new("Bulkheads", "") { IsWords = true }],
        [
            .. Pieces.Select(p => (IReadOnlyList<string>)
            [
                Invariant($"{p.Number}"), Cell(p.Length), Cell(p.Breadth), Cell(p.Height), Invariant($"{p.Volume / (Notation == LengthNotation.Millimeters ? 1 : Math.Pow(Length.Foot, 3)):F3}"),
                Invariant($"{p.Mass / (Notation == LengthNotation.Millimeters ? 1 : Mass.Pound):F1}"), string.Join(" ", p.Molds.Select(m => m.Name)), string.Join(", ", p.Bulkheads.Select(m => m.Name)),
            ]),
        ]);

    /// <summary>What all hulls take, main hull and outriggers, and their sum; null for a boat of one hull.</summary>
    public FigureTable? AllHulls
    {
        get
        {
            if (Outriggers.Count == 0)
                return null;
            List<(string Name, BillSum Sum)> hulls = [("main hull", Bill.SumOf(this)), .. Outriggers.Select(o => (o.Name, Bill.SumOf(o.Book)))];
            hulls.Add(("all", hulls.Select(h => h.Sum).Aggregate((a, b) => a + b)));
            var currency = Build.Material.Prices?.Currency;
            return new FigureTable(
                "All hulls of the boat",
                [new("Hull", ""), new("To build", ""), new("Weight", "all of them"), new("Wood", "board feet"), new("Cloth", ""), new("Resin with hardener", ""), .. currency is null ? (FigureColumn[])[] : [new("Prices given", currency)]],
                [
                    .. hulls.Select(h => (IReadOnlyList<string>)
                    [
                        h.Name, Invariant($"{h.Sum.Hulls}"), new Mass(h.Sum.Mass).ToText(Notation != LengthNotation.Millimeters), Invariant($"{h.Sum.BoardFeet:F1}"), Bill.Area(h.Sum.Cloth, Notation), Bill.Resin(h.Sum.Resin, Notation),
                        .. currency is null ? (string[])[] : [BuildingCsv.Money(h.Sum.Price)],
                    ]),
                ]);
        }
    }

    /// <summary>What does not go into the space it is to be stored in, a sentence each.</summary>
    public IEnumerable<string> TooLarge => PieceFigures.TooLarge(Pieces, Build.Storage, Notation);

    /// <summary>The unit that heads a column of lengths; empty where every cell has its own marks.</summary>
    internal string Unit => Notation switch
    {
        LengthNotation.Millimeters => "mm",
        LengthNotation.Inches => "in",
        _ => "",
    };

    /// <summary>Where strips are bent further than they take, a sentence each.</summary>
    public IReadOnlyList<string> Bends => [.. Strips.Bends.Select(b => BendText.Of(b, Build, Notation))];

    private string Cell(double meters) => new Length(meters).ToCell(Notation);
}
