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
        List<double> cuts =
        [
            0, .. Crossings(s, true, box.Left), .. Crossings(s, true, box.Right), .. Crossings(s, false, box.Bottom), .. Crossings(s, false, box.Top), 1,
        ];
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

    /// <summary>Fractions of the length, ascending and strictly inside (0, 1), at which a segment crosses x = value, or y = value.</summary>
    private static List<double> Crossings(ArcSegment s, bool upright, double value)
    {
        double Along(double fraction)
        {
            var p = s.PointAt(fraction);
            return (upright ? p.X : p.Y) - value;
        }

        // The coordinate is monotone between the places where the segment runs along the line.
        List<double> stops = [0, .. Turnings(s, upright), 1];
        var found = new List<double>();
        for (var i = 1; i < stops.Count; i++)
        {
            double a = Along(stops[i - 1]), b = Along(stops[i]);
            if ((a < 0 && b > 0) || (a > 0 && b < 0))
                found.Add(s.IsLine ? a / (a - b) : Root(Along, stops[i - 1], stops[i]));
        }

        return found;
    }

    private static IEnumerable<double> Turnings(ArcSegment s, bool upright)
    {
        if (s.IsLine)
            return [];
        var first = Math.Atan2(s.StartDirection.Y, s.StartDirection.X) - (upright ? Math.PI / 2 : 0);
        double low = Math.Min(first, first + s.Turn), high = Math.Max(first, first + s.Turn);
        var places = new List<double>();
        for (var half = (int)Math.Ceiling(low / Math.PI); half * Math.PI <= high; half++)
            places.Add(((half * Math.PI) - first) / s.Turn);
        return places.Where(f => f is > 0 and < 1).Order();
    }

    // Bisection to the last bit: the bracket halves until it no longer shrinks.
    private static double Root(Func<double, double> along, double from, double to)
    {
        var rising = along(from) < 0;
        while (true)
        {
            var middle = from + ((to - from) / 2);
            if (middle <= from || middle >= to)
                return middle;
            if ((along(middle) < 0) == rising)
                from = middle;
            else
                to = middle;
        }
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
