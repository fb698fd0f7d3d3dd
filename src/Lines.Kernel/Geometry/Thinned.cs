namespace Lines.Kernel.Geometry;

/// <summary>A line of many points with those left out that it does not need.</summary>
public static class Thinned
{
    /// <summary>The closed polygon through some of its corners.</summary>
    /// <remarks>
    /// <para><b>Method.</b> [DouglasPeucker]: between two kept corners the one farthest from their chord is kept, until none is farther
    /// than the tolerance.</para>
    /// <para><b>Accuracy.</b> Every corner left out is within <paramref name="tolerance"/> of the side drawn in its place.</para>
    /// </remarks>
    /// <param name="polygon">The corners.</param>
    /// <param name="tolerance">Greatest distance, in the unit of the corners.</param>
    public static IReadOnlyList<Point2> Loop(IReadOnlyList<Point2> polygon, double tolerance)
    {
        ArgumentNullException.ThrowIfNull(polygon);
        if (polygon.Count < 4)
            return polygon;
        var opposite = Enumerable.Range(1, polygon.Count - 1).MaxBy(k => polygon[k].DistanceTo(polygon[0]));
        var kept = new List<Point2>();
        Keep(0, opposite);
        Keep(opposite, polygon.Count);
        return kept;

        // Adds the corners kept from one to before another.
        void Keep(int from, int to)
        {
            Point2 a = polygon[from], b = polygon[to % polygon.Count];
            var (farthest, distance) = (from, tolerance);
            for (var k = from + 1; k < to; k++)
            {
                if (FromChord(polygon[k], a, b) is var d && d > distance)
                    (farthest, distance) = (k, d);
            }

            if (farthest == from)
            {
                kept.Add(a);
                return;
            }

            Keep(from, farthest);
            Keep(farthest, to);
        }
    }

    private static double FromChord(Point2 p, Point2 a, Point2 b)
    {
        Vector2 chord = b - a, to = p - a;
        var length = chord.Dot(chord);
        return length > 0 ? (to - (Math.Clamp(to.Dot(chord) / length, 0, 1) * chord)).Length : to.Length;
    }
}
