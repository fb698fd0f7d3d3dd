namespace Lines.Kernel.Geometry;

/// <summary>Where a path of lines and arcs crosses itself.</summary>
/// <remarks>
/// <para><b>Method.</b> The chords of the path, every two whose bounds overlap: they cross where the ends of each lie strictly on both sides of the other. A path that
/// only touches itself does not cross.</para>
/// <para><b>Accuracy.</b> A loop deeper than the tolerance is found; its place is told within that.</para>
/// </remarks>
public static class PathCrossing
{
    /// <summary>One place where a path crosses itself; null where it does not.</summary>
    /// <param name="path">The path.</param>
    /// <param name="tolerance">Greatest distance of its arcs from the chords looked at, unit of the path, above 0.</param>
    public static Point2? Of(ArcPath path, double tolerance)
    {
        var points = path.Flattened(tolerance);
        var chords = Enumerable.Range(0, Math.Max(0, points.Count - 1)).Select(i => (From: points[i], To: points[i + 1]))
            .OrderBy(c => Math.Min(c.From.X, c.To.X)).ToList();
        for (var i = 0; i < chords.Count; i++)
        {
            var right = Math.Max(chords[i].From.X, chords[i].To.X);
            for (var k = i + 1; k < chords.Count && Math.Min(chords[k].From.X, chords[k].To.X) <= right; k++)
            {
                if (Crossing(chords[i], chords[k]) is { } at)
                    return at;
            }
        }

        return null;
    }

    private static Point2? Crossing((Point2 From, Point2 To) a, (Point2 From, Point2 To) b)
    {
        Vector2 along = a.To - a.From, other = b.To - b.From;
        double from = along.Cross(b.From - a.From), to = along.Cross(b.To - a.From);
        double low = other.Cross(a.From - b.From), high = other.Cross(a.To - b.From);
        return from * to < 0 && low * high < 0 ? b.From + (from / (from - to) * other) : null;
    }
}
