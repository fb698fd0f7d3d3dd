using Lines.Construction.Molds;
using Lines.Kernel.Geometry;

namespace Lines.Construction.Pieces;

/// <summary>Marks the openings of bottom and deck on the molds and bulkheads they cross.</summary>
/// <remarks><b>Accuracy.</b> The marks stand at half the breadth from its middle exactly; they end within 0.01 mm of the edge.</remarks>
internal static class OpeningMarks
{
    /// <summary>Length of a mark, from the edge inward [m].</summary>
    private const double Long = 0.045;

    private const double ChordTolerance = 1e-5;

    /// <summary>Whether the stock of a mold or bulkhead square across stands in an opening's reach.</summary>
    public static bool Crosses(Mold part, HullOpening opening)
    {
        if (part.Kind is not (MoldKind.Station or MoldKind.Bulkhead))
            return false;
        return Math.Min(part.X, part.FarX) < opening.To && opening.From < Math.Max(part.X, part.FarX);
    }

    /// <summary>Whether an opening lies inside a part with some wood beside it, at the sheer or at its broadest.</summary>
    public static bool HasRoom(Mold part, HullOpening opening, double beside) =>
        opening.Reach + beside <= (opening.InDeck ? part.Heights.HalfBreadth : part.Outline.Bounds().Right);

    /// <summary>A part with the marks of all openings it crosses.</summary>
    public static Mold On(Mold part, IReadOnlyList<HullOpening> openings) =>
        part with { Marks = [.. part.Marks, .. openings.Where(o => Crosses(part, o) && HasRoom(part, o, 0)).SelectMany(o => Of(part, o))] };

    private static IEnumerable<MoldMark> Of(Mold part, HullOpening opening)
    {
        var (half, middle) = (opening.Breadth / 2, part.StarboardRight is true ? opening.Aside : -opening.Aside);
        foreach (var x in (double[])[middle + half, middle - half])
        {
            var edge = (opening.InDeck, part.Kind) switch
            {
                (false, _) => Highest(part.Outline, x),
                (_, MoldKind.Bulkhead) => part.Outline.Bounds().Bottom,
                _ => Math.Max(part.Heights.Sheer, part.Outline.Bounds().Bottom),
            };
            if (!double.IsNaN(edge))
                yield return Upright(x, edge, opening.InDeck ? edge + Long : edge - Long);
        }

        MoldMark Upright(double x, double edge, double inner) => new MoldMark(MoldMarkKind.Opening, opening.Name.ToUpperInvariant(), ArcPath.Line(new Point2(x, edge), new Point2(x, inner)), null);
    }

    private static double Highest(ArcPath outline, double x)
    {
        var points = outline.Flattened(ChordTolerance);
        var highest = double.NaN;
        for (var i = 1; i < points.Count; i++)
        {
            Point2 a = points[i - 1], b = points[i];
            if ((a.X > x) == (b.X > x))
                continue;
            var y = a.Y + ((x - a.X) / (b.X - a.X) * (b.Y - a.Y));
            highest = double.IsNaN(highest) ? y : Math.Max(highest, y);
        }

        return highest;
    }
}
