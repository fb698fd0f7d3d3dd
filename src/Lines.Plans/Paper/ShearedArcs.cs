using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>Paths of lines and arcs under a linear map that does not keep circles: each arc becomes as many arcs as it takes.</summary>
internal static class ShearedArcs
{
    /// <summary>The path with every place mapped.</summary>
    /// <param name="path">The path.</param>
    /// <param name="map">An affine map that keeps left left.</param>
    /// <param name="tolerance">Greatest distance of a new arc from the mapped one, above zero.</param>
    public static ArcPath Mapped(ArcPath path, Func<Point2, Point2> map, double tolerance)
    {
        var vertices = new List<ArcVertex>();
        foreach (var segment in path.Segments())
            Add(vertices, segment, map, tolerance);
        if (!path.Closed && path.Vertices.Count > 0)
            vertices.Add(new ArcVertex(map(path.Vertices[^1].Point), 0));
        return new ArcPath(vertices, path.Closed);
    }

    private static void Add(List<ArcVertex> vertices, ArcSegment s, Func<Point2, Point2> map, double tolerance)
    {
        Point2 start = map(s.From), end = map(s.To);
        var arc = new ArcSegment(start, end, s.IsLine ? 0 : BulgeThrough(start, map(s.PointAt(0.5)), end));
        if (s.IsLine || (Math.Abs(s.Turn) <= Math.PI / 2 && Departure(arc, s, map) <= tolerance))
        {
            vertices.Add(new ArcVertex(start, arc.Bulge));
            return;
        }

        Add(vertices, s.Between(0, 0.5), map, tolerance);
        Add(vertices, s.Between(0.5, 1), map, tolerance);
    }

    /// <summary>Bulge of the arc from a start through a point to an end: the tangent of half the angle it turns in two chords.</summary>
    private static double BulgeThrough(Point2 start, Point2 through, Point2 end)
    {
        Vector2 a = through - start, b = end - through;
        return Math.Tan(Math.Atan2(a.Cross(b), a.Dot(b)) / 2);
    }

    /// <summary>Greatest distance of the mapped arc from its substitute at the places where a cubic departure is greatest, with a margin.</summary>
    private static double Departure(ArcSegment arc, ArcSegment original, Func<Point2, Point2> map)
    {
        var worst = 0.0;
        for (var i = 1; i < 16; i++)
        {
            var p = map(original.PointAt(i / 16.0));
            worst = Math.Max(worst, arc.IsLine ? 0 : Math.Abs(p.DistanceTo(arc.Center) - arc.Radius));
        }

        return worst;
    }
}
