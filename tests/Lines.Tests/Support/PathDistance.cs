using Lines.Kernel.Geometry;

namespace Lines.Tests.Support;

/// <summary>Distance from points to lines and arcs by plain geometry: center and angle, not the code's chord form.</summary>
internal static class PathDistance
{
    public static double To(IEnumerable<ArcPath> paths, Point2 p) => ToAny(paths)(p);

    /// <summary>The distance of a point from the nearest of many paths.</summary>
    public static Func<Point2, double> ToAny(IEnumerable<ArcPath> paths)
    {
        // No point of a segment is further from its middle than half its length, and none of a run of segments than the circle about theirs.
        (ArcSegment Segment, Point2 Middle, double Reach)[] segments = [.. paths.SelectMany(x => x.Segments()).Select(s => (s, s.PointAt(0.5), s.Length / 2))];
        var runs = segments.Chunk(16).Select(run =>
        {
            var middle = Box2.Around(run.Select(s => s.Middle)).Center;
            return (Segments: run, Middle: middle, Reach: run.Max(s => s.Middle.DistanceTo(middle) + s.Reach));
        }).ToArray();
        return p =>
        {
            var nearest = double.PositiveInfinity;
            foreach (var run in runs)
            {
                if (p.DistanceTo(run.Middle) - run.Reach >= nearest)
                    continue;
                foreach (var (segment, middle, reach) in run.Segments)
                {
                    if (p.DistanceTo(middle) - reach < nearest)
                        nearest = Math.Min(nearest, To(segment, p));
                }
            }

            return nearest;
        };
    }

    public static double To(ArcSegment s, Point2 p)
    {
        var ends = Math.Min(p.DistanceTo(s.From), p.DistanceTo(s.To));
        if (s.From.DistanceTo(s.To) == 0)
            return ends;
        if (s.IsLine)
        {
            var along = (s.To - s.From).Unit();
            var t = (p - s.From).Dot(along);
            return t < 0 || t > (s.To - s.From).Length ? ends : Math.Abs((p - s.From).Cross(along));
        }

        var center = s.Center;
        double Angle(Point2 q) => Math.Atan2(q.Y - center.Y, q.X - center.X);
        var turned = (Angle(p) - Angle(s.From)) * Math.Sign(s.Bulge);
        turned -= 2 * Math.PI * Math.Floor(turned / (2 * Math.PI));
        return turned <= Math.Abs(s.Turn) ? Math.Abs(p.DistanceTo(center) - s.Radius) : ends;
    }

    public static IEnumerable<Point2> Samples(ArcPath path, double step) =>
        from s in path.Segments()
        let n = Math.Max(1, (int)Math.Ceiling(s.Length / step))
        from i in Enumerable.Range(0, n + 1)
        select s.PointAt((double)i / n);
}
