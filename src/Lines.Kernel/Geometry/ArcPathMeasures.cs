namespace Lines.Kernel.Geometry;

/// <summary>Measures of paths of lines and arcs.</summary>
public static class ArcPathMeasures
{
    /// <summary>The segments in order.</summary>
    public static ArcSegments Segments(this ArcPath path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return new ArcSegments(path);
    }

    /// <summary>Length along the path.</summary>
    public static double Length(this ArcPath path) => path.Segments().Sum(s => s.Length);

    /// <summary>Area inside a closed path, positive where the path runs counter-clockwise.</summary>
    /// <remarks><b>Accuracy.</b> Rounding only: the polygon of the vertices plus the segment of circle of every arc.</remarks>
    public static double SignedArea(this ArcPath path)
    {
        var area = 0.0;
        foreach (var s in path.Segments())
        {
            area += ((s.From.X * s.To.Y) - (s.To.X * s.From.Y)) / 2;
            if (!s.IsLine)
                area += s.Radius * s.Radius * (s.Turn - Math.Sin(s.Turn)) / 2;
        }

        return area;
    }

    /// <summary>The smallest upright rectangle that holds the path.</summary>
    /// <exception cref="ArgumentException">The path has no vertices.</exception>
    public static Box2 Bounds(this ArcPath path)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (path.Vertices.Count == 0)
            throw new ArgumentException("a path without vertices has no bounds", nameof(path));
        var box = Box2.Nothing;
        foreach (var v in path.Vertices)
            box = box.With(v.Point);
        foreach (var s in path.Segments())
        {
            if (!s.IsLine)
                box = box.With(s.Bounds());
        }

        return box;
    }

    /// <summary>Distance of a point from the path.</summary>
    public static double DistanceTo(this ArcPath path, Point2 p) => path.Segments().Min(s => s.DistanceTo(p));

    /// <summary>Whether a point is inside a closed path.</summary>
    /// <remarks><b>Method.</b> Parity of the crossings of a ray along +x with the segments, arcs cut where they turn in height.</remarks>
    public static bool Contains(this ArcPath path, Point2 p)
    {
        ArgumentNullException.ThrowIfNull(path);
        var crossings = 0;
        foreach (var s in path.Segments())
            crossings += s.IsLine ? LineCrossings(s, p) : ArcCrossings(s, p);
        return crossings % 2 == 1;
    }

    /// <summary>Points along the path, vertices included, no farther from their chords than a tolerance.</summary>
    /// <param name="path">The path.</param>
    /// <param name="tolerance">Greatest distance of an arc from its chords, same unit as the path, positive.</param>
    /// <returns>The points in order; a closed path ends on its first point again.</returns>
    public static IReadOnlyList<Point2> Flattened(this ArcPath path, double tolerance)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (!(tolerance > 0))
            throw new ArgumentOutOfRangeException(nameof(tolerance), tolerance, "the tolerance must be positive");
        var points = new List<Point2>();
        if (path.Vertices.Count > 0)
            points.Add(path.Vertices[0].Point);
        foreach (var s in path.Segments())
        {
            var steps = 1;
            if (!s.IsLine)
            {
                // The sagitta of a chord over the angle a is r (1 - cos(a / 2)) = 2 r sin²(a / 4), which keeps its digits on flat arcs.
                var angle = 4 * Math.Asin(Math.Min(Math.Sqrt(0.5), Math.Sqrt(tolerance / (2 * s.Radius))));
                steps = Math.Max(1, (int)Math.Ceiling(Math.Abs(s.Turn) / angle));
            }

            for (var k = 1; k < steps; k++)
                points.Add(s.PointAt((double)k / steps));
            points.Add(s.To);
        }

        return points;
    }

    private static int LineCrossings(ArcSegment s, Point2 p) =>
        (s.From.Y > p.Y) != (s.To.Y > p.Y) && p.X < s.From.X + ((p.Y - s.From.Y) / (s.To.Y - s.From.Y) * (s.To.X - s.From.X)) ? 1 : 0;

    private static int ArcCrossings(ArcSegment s, Point2 p)
    {
        Point2 c = s.Center;
        double r = s.Radius, turn = s.Turn, start = Math.Atan2(s.From.Y - c.Y, s.From.X - c.X), end = start + turn;
        var crossings = 0;
        double angle = start, y = s.From.Y;
        while (angle != end)
        {
            // The next quarter where the arc is at its top or bottom, or the arc's end.
            var quarter = turn > 0
                ? (Math.PI * (Math.Floor((angle / Math.PI) + 0.5 + 1e-12) + 0.5))
                : (Math.PI * (Math.Ceiling((angle / Math.PI) - 0.5 - 1e-12) - 0.5));
            var last = turn > 0 ? quarter >= end : quarter <= end;
            var next = last ? end : quarter;
            var yNext = last ? s.To.Y : c.Y + (r * Math.Sign(Math.Sin(quarter)));
            if ((y > p.Y) != (yNext > p.Y))
            {
                var half = Math.Sqrt(Math.Max(0, (r * r) - ((p.Y - c.Y) * (p.Y - c.Y))));
                if (p.X < c.X + (Math.Cos((angle + next) / 2) > 0 ? half : -half))
                    crossings++;
            }

            (angle, y) = (next, yNext);
        }

        return crossings;
    }
}
