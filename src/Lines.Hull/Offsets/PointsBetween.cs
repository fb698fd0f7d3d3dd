using Lines.Hull.Sections;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Offsets;

/// <summary>Points between the stations that a table of offsets needs where a line turns faster than the stations follow.</summary>
/// <remarks>
/// <para><b>Method.</b> A batten is laid through what the table has of a line. Where it leaves the line by more than
/// <see cref="Tolerance"/>, the point of the line halfway along that span is added, until none is needed: halving keeps the
/// points apart in proportion, so that their rounding does not tip the batten.</para>
/// </remarks>
internal static class PointsBetween
{
    /// <summary>How far a batten through the points may leave the line [m]: a third of the finest rounding of a table, 0.1 mm.</summary>
    public const double Tolerance = 3e-5;

    /// <summary>The least distance of points [m]: a finger's breadth; nearer ones are read as one.</summary>
    public const double Closest = 0.012;

    private const int PlacesPerSpan = 8;

    /// <summary>The points a line needs beside those the table has of it, from the bow.</summary>
    /// <param name="parts">The line, bow first; more than one where the grid's plane cuts the skin in several.</param>
    /// <param name="tabled">The points of the line in the table, flat: x and value.</param>
    /// <param name="flat">x and value of a point of the line.</param>
    public static IReadOnlyList<OffsetPoint> Of(IReadOnlyList<HullLine> parts, IReadOnlyList<Point2> tabled, Func<Point3, Point2> flat)
    {
        var added = new List<OffsetPoint>();
        var split = true;
        while (split && RefitBatten.Through([.. tabled, .. added.Select(a => a.Flat)], 0) is { } batten)
        {
            split = false;
            for (var k = 1; k < batten.Points.Count; k++)
            {
                Point2 from = batten.Points[k - 1], to = batten.Points[k];
                if (from.DistanceTo(to) < 2 * Closest || Departure(parts, flat, batten, from.X, to.X) <= Tolerance || Halfway(parts, from.X, to.X) is not { } middle)
                    continue;

                // Halfway along a line that runs back on itself may lie outside the span, beside another point: the batten would never want less.
                var point = flat(middle);
                if (batten.Points.Any(p => p.DistanceTo(point) < Closest) || added.Exists(a => a.Flat.DistanceTo(point) < Closest))
                    continue;
                added.Add(new OffsetPoint(point.X, point.Y));
                split = true;
            }
        }

        return [.. added.OrderBy(a => a.X)];
    }

    /// <summary>The point of a line at a station; null where it does not come there.</summary>
    public static LinePoint? At(IReadOnlyList<HullLine> parts, double x)
    {
        foreach (var part in parts)
        {
            if (part.FirstCrossingWith(Plane.AtX(x)) is { } p)
                return p;
        }

        return null;
    }

    /// <summary>Abscissas at which a batten is compared with its line, inside one span.</summary>
    public static IEnumerable<double> Places(double from, double to) =>
        Enumerable.Range(1, PlacesPerSpan - 1).Select(k => from + ((to - from) * k / PlacesPerSpan));

    private static double Departure(IReadOnlyList<HullLine> parts, Func<Point3, Point2> flat, RefitBatten batten, double from, double to)
    {
        var most = 0.0;
        foreach (var x in Places(from, to))
        {
            if (At(parts, x) is { } p)
                most = Math.Max(most, batten.DistanceTo(flat(p.Point)));
        }

        return most;
    }

    private static Point3? Halfway(IReadOnlyList<HullLine> parts, double from, double to)
    {
        foreach (var part in parts)
        {
            if (Place(part, from) is { } a && Place(part, to) is { } b)
                return part.At((a + b) / 2).Point;
        }

        return null;
    }

    // An end is in the table with its own x, which a cut may miss by a rounding.
    private static double? Place(HullLine part, double x)
    {
        const double same = 1e-9;
        if (Math.Abs(part.Start.Point.X - x) < same)
            return 0;
        return Math.Abs(part.End.Point.X - x) < same ? 1 : part.FirstCrossingWith(Plane.AtX(x))?.T;
    }
}
