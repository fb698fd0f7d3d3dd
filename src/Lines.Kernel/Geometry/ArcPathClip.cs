using Lines.Kernel.Numerics;

namespace Lines.Kernel.Geometry;

/// <summary>Paths of lines and arcs cut off at the edges of a box.</summary>
public static class ArcPathClip
{
    /// <summary>The pieces of a path that lie inside a box.</summary>
    /// <remarks>
    /// <para><b>Method.</b> Every segment is cut where it crosses the lines of the four edges; a piece is kept when its middle is
    /// inside. Arcs are cut as arcs: a piece of an arc is the same circle. A path wholly inside comes back as it was.</para>
    /// <para><b>Accuracy.</b> Rounding only: the cut ends lie on the edges and on the path within 1e-9 of its extent.</para>
    /// </remarks>
    /// <returns>Open paths in the order of travel; a closed path wholly inside stays closed; none where nothing is inside.</returns>
    public static IReadOnlyList<ArcPath> Inside(this ArcPath path, Box2 box)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (path.Vertices.Count == 0)
            return [];
        var bounds = path.Bounds();
        if (!bounds.Touches(box))
            return [];
        if (box.Holds(bounds))
            return [path];
        var runs = new List<List<ArcSegment>>();
        foreach (var segment in path.Segments())
        {
            var reach = segment.Bounds();
            if (segment.From == segment.To || !reach.Touches(box))
                continue;
            if (box.Holds(reach))
                Add(segment);
            else
                Cut(segment, box, Add);
        }

        // A closed path may be entered across its first vertex: join the last run to the first.
        if (path.Closed && runs.Count > 1 && runs[^1][^1].To == runs[0][0].From)
        {
            runs[0].InsertRange(0, runs[^1]);
            runs.RemoveAt(runs.Count - 1);
        }

        return [.. runs.Select(AsPath)];

        void Add(ArcSegment piece)
        {
            if (runs.Count > 0 && runs[^1][^1].To == piece.From)
                runs[^1].Add(piece);
            else
                runs.Add([piece]);
        }
    }

    /// <summary>Whether a segment has a piece of some length inside a box, its edges included.</summary>
    public static bool Enters(this ArcSegment segment, Box2 box)
    {
        if (segment.From == segment.To || !segment.Bounds().Touches(box))
            return false;
        if (segment.IsLine)
            return LineEnters(segment, box);
        var core = box.Grown(-1e-9 * segment.From.DistanceTo(segment.To));
        if (core.Holds(segment.From) || core.Holds(segment.To))
            return true;
        // An arc of up to a half circle keeps within its rise of the chord.
        if (Math.Abs(segment.Bulge) <= 1 && !LineEnters(segment, box.Grown(1.000001 * Math.Abs(segment.Bulge) / 2 * segment.From.DistanceTo(segment.To))))
            return false;
        var enters = false;
        Cut(segment, box, _ => enters = true);
        return enters;
    }

    /// <summary>The part of the area inside a closed path that lies in a box, as a polygon.</summary>
    /// <remarks><b>Method.</b> Sutherland and Hodgman (1974); where the area falls apart, its pieces stay joined by edges of no width.</remarks>
    /// <param name="path">A closed path.</param>
    /// <param name="box">The box.</param>
    /// <param name="chordTolerance">Greatest distance between an arc and the chords drawn for it.</param>
    /// <returns>The polygon, without corners where nothing is inside.</returns>
    public static ArcPath AreaInside(this ArcPath path, Box2 box, double chordTolerance)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (box.Holds(path.Bounds()))
            return path;
        IReadOnlyList<Point2> points = path.Flattened(chordTolerance);
        points = Kept(points, p => p.X - box.Left);
        points = Kept(points, p => box.Right - p.X);
        points = Kept(points, p => p.Y - box.Bottom);
        points = Kept(points, p => box.Top - p.Y);
        return ArcPath.Through(points, closed: true);
    }

    private static void Cut(ArcSegment s, Box2 box, Action<ArcSegment> keep)
    {
        List<double> cuts = [0, 1];
        AddCrossings(cuts, s, true, box.Left);
        AddCrossings(cuts, s, true, box.Right);
        AddCrossings(cuts, s, false, box.Bottom);
        AddCrossings(cuts, s, false, box.Top);
        cuts.Sort();
        for (var i = 1; i < cuts.Count; i++)
        {
            if (cuts[i - 1] < cuts[i] && box.Holds(s.PointAt((cuts[i - 1] + cuts[i]) / 2)))
                keep(s.Between(cuts[i - 1], cuts[i]));
        }
    }

    // Liang and Barsky (1984): what the four edges leave of the line's parameter.
    private static bool LineEnters(ArcSegment s, Box2 box)
    {
        double from = 0, to = 1;
        return Within(s.From.X, s.To.X, box.Left, box.Right) && Within(s.From.Y, s.To.Y, box.Bottom, box.Top);

        bool Within(double start, double end, double low, double high)
        {
            if (start == end)
                return start >= low && start <= high;
            double a = (low - start) / (end - start), b = (high - start) / (end - start);
            (from, to) = (Math.Max(from, Math.Min(a, b)), Math.Min(to, Math.Max(a, b)));
            return from < to;
        }
    }

    /// <summary>Adds the fractions of the length, strictly inside (0, 1), at which a segment crosses x = value, or y = value.</summary>
    private static void AddCrossings(List<double> cuts, ArcSegment s, bool upright, double value)
    {
        double Along(Point2 p) => (upright ? p.X : p.Y) - value;

        // The coordinate is monotone between the places where the segment runs along the line.
        var (from, before) = (0.0, Along(s.From));
        foreach (var to in Turnings(s, upright))
            Step(to, Along(s.PointAt(to)));
        Step(1, Along(s.To));

        void Step(double to, double after)
        {
            if ((before < 0 && after > 0) || (before > 0 && after < 0))
                cuts.Add(s.IsLine ? before / (before - after) : Root.Between(Swept, from, to));
            (from, before) = (to, after);
        }

        (double Value, double Slope) Swept(double fraction)
        {
            var (point, slope) = fraction == 1 ? (s.To, s.Swept(1).Slope) : s.Swept(fraction);
            return (Along(point), upright ? slope.X : slope.Y);
        }
    }

    private static double[] Turnings(ArcSegment s, bool upright)
    {
        if (s.IsLine || s.RunsOneWay(upright))
            return [];
        var first = Math.Atan2(s.StartDirection.Y, s.StartDirection.X) - (upright ? Math.PI / 2 : 0);
        double low = Math.Min(first, first + s.Turn), high = Math.Max(first, first + s.Turn);
        var places = new List<double>();
        for (var half = (int)Math.Ceiling(low / Math.PI); half * Math.PI <= high; half++)
            places.Add(((half * Math.PI) - first) / s.Turn);
        return [.. places.Where(f => f is > 0 and < 1).Order()];
    }

    private static ArcPath AsPath(List<ArcSegment> run)
    {
        // Closed again when the box only touches the path from outside and cuts nothing away.
        var closed = run.Count > 1 && run[^1].To == run[0].From;
        var vertices = run.Select(s => new ArcVertex(s.From, s.Bulge));
        return new ArcPath(closed ? [.. vertices] : [.. vertices, new ArcVertex(run[^1].To, 0)], closed);
    }

    private static List<Point2> Kept(IReadOnlyList<Point2> points, Func<Point2, double> inside)
    {
        var kept = new List<Point2>();
        for (var i = 0; i < points.Count; i++)
        {
            Point2 a = points[i], b = points[(i + 1) % points.Count];
            double da = inside(a), db = inside(b);
            if (da >= 0)
                kept.Add(a);
            if ((da < 0) != (db < 0) && da != db)
                kept.Add(a + (da / (da - db) * (b - a)));
        }

        return kept;
    }
}
