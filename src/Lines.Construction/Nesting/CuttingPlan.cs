using Lines.Construction.Molds;
using Lines.Kernel.Geometry;
using Lines.Kernel.Polygons;

namespace Lines.Construction.Nesting;

/// <summary>The molds of a hull laid on sheets, each thickness of stock on sheets of its own.</summary>
/// <param name="Stock">Size of the sheets, margin and spacing [m].</param>
/// <param name="Sheets">The sheets, thickness by thickness in the order in which the molds first need it.</param>
/// <param name="TooLarge">Molds that no sheet holds.</param>
public sealed record CuttingPlan(SheetStock Stock, IReadOnlyList<CutSheet> Sheets, IReadOnlyList<Mold> TooLarge)
{
    /// <summary>Greatest distance of a mold's arcs from the chords it is laid out by [m]; margin and spacing are kept to the arcs.</summary>
    private const double ChordTolerance = 5e-5;

    /// <summary>Area of all parts over the area of the sheets, the last of each thickness counted as far as it is used.</summary>
    public double Utilization => Sheets.Sum(s => s.PartsArea) / (Sheets.Sum(s => s.UsedLength) * Stock.Width);

    /// <summary>The sheets by the stock they are of.</summary>
    public IReadOnlyList<SheetsOfStock> Stocks => [.. Sheets.GroupBy(s => (s.Thickness, s.StaysInBoat)).Select(g => new SheetsOfStock(g.Key.Thickness, g.Key.StaysInBoat, [.. g]))];

    /// <summary>Lays the molds of a hull on sheets.</summary>
    /// <param name="plan">The molds, as they are cut.</param>
    /// <param name="build">What the builder decides.</param>
    /// <param name="effort">How many changes of the order are tried for each thickness.</param>
    public static CuttingPlan Of(MoldPlan plan, BuildDials build, int effort = SheetNesting.UsualEffort)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(build);
        var stock = new SheetStock(build.SheetLength, build.SheetWidth, build.SheetMargin, build.PartSpacing, build.Grain);
        var grown = stock with { Margin = stock.Margin + ChordTolerance, Spacing = stock.Spacing + (2 * ChordTolerance) };
        var sheets = new List<CutSheet>();
        var tooLarge = new List<Mold>();
        // What stays in the boat is on sheets of its own even where the molds are as thick.
        foreach (var group in plan.Parts.GroupBy(m => (m.Stock, m.StaysInBoat)))
        {
            var molds = group.ToList();
            var nest = SheetNesting.Of([.. molds.Select(m => (IReadOnlyList<Point2>)[.. m.Outline.Flattened(ChordTolerance).SkipLast(1)])], grown, effort);
            tooLarge.AddRange(nest.TooLarge.Select(i => molds[i]));
            for (var k = 0; k < nest.Sheets; k++)
            {
                sheets.Add(new CutSheet(
                    sheets.Count + 1, group.Key.Stock, [.. nest.Places.Where(p => p.Sheet == k).Select(p => new CutPart(molds[p.Shape], p))],
                    k < nest.Sheets - 1 ? stock.Length : nest.LastLength - ChordTolerance));
            }
        }

        return new CuttingPlan(stock, sheets, tooLarge);
    }
}

/// <summary>One sheet with its parts.</summary>
/// <param name="Number">Number, 1 on, through all thicknesses.</param>
/// <param name="Thickness">Thickness of the stock [m].</param>
/// <param name="Parts">The parts, from the left.</param>
/// <param name="UsedLength">How much of its length is used [m]: all of it but for the last sheet of a thickness.</param>
public sealed record CutSheet(int Number, double Thickness, IReadOnlyList<CutPart> Parts, double UsedLength)
{
    /// <summary>Whether it is of the plywood of what stays in the boat, rather than mold stock.</summary>
    public bool StaysInBoat => Parts[0].Mold.StaysInBoat;

    /// <summary>Area of its parts, round holes not taken off [m²].</summary>
    public double PartsArea => Parts.Sum(p => p.Mold.Outline.SignedArea());
}

/// <summary>The sheets of one stock.</summary>
/// <param name="Thickness">Its thickness [m].</param>
/// <param name="StaysInBoat">Whether what is cut from it stays in the boat.</param>
/// <param name="Sheets">The sheets, in order.</param>
public sealed record SheetsOfStock(double Thickness, bool StaysInBoat, IReadOnlyList<CutSheet> Sheets)
{
    /// <summary>All parts that are cut from it.</summary>
    public IEnumerable<Mold> Molds => Sheets.SelectMany(s => s.Parts).Select(p => p.Mold);

    /// <summary>What is cut from it, in words.</summary>
    public string Parts => string.Join(" and ", new[] { (MoldKind.Station, "molds"), (MoldKind.Bulkhead, "bulkheads"), (MoldKind.Transom, "transom") }.Where(k => Molds.Any(m => m.Kind == k.Item1)).Select(k => k.Item2).DefaultIfEmpty("profile molds"));
}

/// <summary>A mold on a sheet.</summary>
/// <param name="Mold">The mold.</param>
/// <param name="Place">Where it lies: from its own frame to the sheet's [m].</param>
public sealed record CutPart(Mold Mold, NestPlace Place)
{
    /// <summary>Its outline on the sheet [m].</summary>
    public ArcPath Outline => Mold.Outline.Mapped(Place.Of);
}
