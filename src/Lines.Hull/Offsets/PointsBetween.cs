using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;

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

    /// <summary>Part of a step by which the rounding may tip a batten: the rest is a margin.</summary>
    private const double Margin = 0.9;

    /// <summary>A span this many times as long as the one beside it is halved.</summary>
    private const double Longest = 2.5;

    private const int PlacesPerSpan = 8;

    /// <summary>Steps to which tables are written [m].</summary>
    private static readonly double[] s_steps = [.. Enum.GetValues<LengthNotation>().Select(n => n.Step()).Distinct()];

    /// <summary>The points a line needs beside those the table has of it, from the bow.</summary>
    /// <param name="line">The line.</param>
    /// <param name="tabled">The points of the line in the table, flat: x and value.</param>
    /// <param name="flat">x and value of a point of the line.</param>
    public static IReadOnlyList<OffsetPoint> Of(TabledLine line, IReadOnlyList<Point2> tabled, Func<Point3, Point2> flat)
    {
        var points = RefitBatten.Apart(tabled, RefitBatten.Closest);
        var added = new List<OffsetPoint>();
        var shown = new Dictionary<(double From, double To), Point2[]>();
        for (var split = points.Count > 1; split;)
        {
            split = false;
            var batten = points.Count < RefitBatten.FewestPoints ? null : new RefitBatten(points);
            (double Step, RefitBatten? Batten)[] rounded = [.. s_steps.Select(s => (s, RefitBatten.ThroughRounded(points, s)))];
            var next = new List<Point2> { points[0] };
            for (var k = 1; k < points.Count; k++)
            {
                if (IsWanted(k, batten, rounded) && Halfway(points[k - 1], points[k]) is { } middle)
                {
                    added.Add(new OffsetPoint(middle.X, middle.Y));
                    next.Add(middle);
                    split = true;
                }

                next.Add(points[k]);
            }

            points = next;
        }

        return [.. added.OrderBy(a => a.X)];

        bool IsWanted(int k, RefitBatten? batten, (double Step, RefitBatten? Batten)[] rounded)
        {
            Point2 from = points[k - 1], to = points[k];
            return from.DistanceTo(to) >= 2 * RefitBatten.Closest
                && (Long(points, k) || batten is null || Departure(batten, from, to) > Tolerance || rounded.Any(r => Tipped(r.Step, r.Batten, from, to)));
        }

        // Halfway along a line that runs back on itself may lie outside the span, beside another point: the batten would never want less.
        Point2? Halfway(Point2 from, Point2 to) =>
            line.Halfway(from.X, to.X) is { } middle && flat(middle) is var point
            && point.DistanceTo(from) >= RefitBatten.Closest && point.DistanceTo(to) >= RefitBatten.Closest && point.X > from.X && point.X < to.X
                ? point
                : null;

        bool Tipped(double step, RefitBatten? batten, Point2 from, Point2 to) =>
            batten is not null && from.DistanceTo(to) > 2 * RefitBatten.StepsApart * step && Departure(batten, from, to) > Margin * step;

        double Departure(RefitBatten batten, Point2 from, Point2 to) => Shown(from.X, to.X).Select(batten.DistanceTo).DefaultIfEmpty().Max();

        // A span is looked at again as long as others are halved.
        Point2[] Shown(double from, double to)
        {
            if (!shown.TryGetValue((from, to), out var span))
                shown[(from, to)] = span = [.. Places(from, to).Select(line.At).OfType<LinePoint>().Select(p => flat(p.Point))];
            return span;
        }
    }

    // Beside a short span the rounding tips the batten, and a long one carries that far.
    private static bool Long(List<Point2> points, int k)
    {
        var span = points[k].DistanceTo(points[k - 1]);
        return (k > 1 && span > Longest * points[k - 1].DistanceTo(points[k - 2])) || (k + 1 < points.Count && span > Longest * points[k + 1].DistanceTo(points[k]));
    }

    /// <summary>Abscissas at which a batten is compared with its line, inside one span.</summary>
    public static IEnumerable<double> Places(double from, double to) =>
        Enumerable.Range(1, PlacesPerSpan - 1).Select(k => from + ((to - from) * k / PlacesPerSpan));
}
