using Lines.Kernel.Geometry;

namespace Lines.Drawing.Model;

/// <summary>What draws the pieces of a path: a PDF page's content or a raster's path.</summary>
internal interface IPathPen
{
    /// <summary>Starts a path.</summary>
    void MoveTo(Point2 to);

    /// <summary>A straight line.</summary>
    void LineTo(Point2 to);

    /// <summary>A cubic Bézier curve with its two inner control points.</summary>
    void CubicTo(Point2 first, Point2 second, Point2 to);

    /// <summary>Joins the end to the start.</summary>
    void Close();
}

/// <summary>Walks a path of lines and arcs with a pen that knows lines and cubic Bézier curves.</summary>
internal static class PathWalk
{
    /// <summary>Draws a path.</summary>
    /// <remarks>
    /// <para><b>Method.</b> An arc of angle θ is cut into equal parts, each one cubic with handles 4/3 tan(θ/4) r: its middle
    /// and ends lie on the circle, and it strays outward by at most 2/27 sin⁶(θ/4) / cos²(θ/4) r to first order.</para>
    /// </remarks>
    /// <param name="path">The path; at least two vertices.</param>
    /// <param name="pen">What draws it.</param>
    /// <param name="tolerance">Greatest distance of a curve from its arc, in the path's unit.</param>
    /// <exception cref="ArgumentException">The path has fewer than two vertices, or a vertex is not finite.</exception>
    public static void Draw<TPen>(ArcPath path, TPen pen, double tolerance)
        where TPen : IPathPen
    {
        Require(path);
        var vertices = path.Vertices;
        pen.MoveTo(vertices[0].Point);
        for (var i = 1; i < vertices.Count; i++)
            Leg(vertices[i - 1], vertices[i].Point, pen, tolerance);
        if (!path.Closed)
            return;
        if (vertices[^1].Bulge != 0)
            Leg(vertices[^1], vertices[0].Point, pen, tolerance);
        pen.Close();
    }

    /// <summary>Refuses a path that cannot be drawn.</summary>
    /// <exception cref="ArgumentException">The path has fewer than two vertices, or a vertex is not finite.</exception>
    public static void Require(ArcPath path)
    {
        if (path.Vertices.Count < 2)
            throw new ArgumentException(Invariant($"a path of {path.Vertices.Count} vertices cannot be drawn; it takes two"), nameof(path));
        foreach (var v in path.Vertices)
        {
            if (!(double.IsFinite(v.Point.X) && double.IsFinite(v.Point.Y) && double.IsFinite(v.Bulge)))
                throw new ArgumentException(Invariant($"a path's vertex ({v.Point.X}, {v.Point.Y}; bulge {v.Bulge}) is not finite"), nameof(path));
        }
    }

    private static void Leg<TPen>(ArcVertex from, Point2 to, TPen pen, double tolerance)
        where TPen : IPathPen
    {
        if (from.Bulge == 0)
        {
            pen.LineTo(to);
            return;
        }

        var chord = to - from.Point;
        var angle = 4 * Math.Atan(from.Bulge);
        // The centre lies left of the chord's middle by (1 - b²) / 4b chords.
        var centre = from.Point + (0.5 * chord) + ((1 - (from.Bulge * from.Bulge)) / (4 * from.Bulge) * chord.TurnedLeft);
        var radius = from.Point - centre;
        var parts = Parts(radius.Length, Math.Abs(angle), tolerance);
        var step = angle / parts;
        var (sin, cos) = Math.SinCos(step);
        var handle = 4.0 / 3.0 * Math.Tan(step / 4);
        var start = from.Point;
        for (var i = 1; i <= parts; i++)
        {
            var turned = (cos * radius) + (sin * radius.TurnedLeft);
            var end = i == parts ? to : centre + turned;
            pen.CubicTo(start + (handle * radius.TurnedLeft), end - (handle * turned.TurnedLeft), end);
            (radius, start) = (turned, end);
        }
    }

    private static int Parts(double radius, double angle, double tolerance)
    {
        var parts = Math.Max(1, (int)Math.Ceiling((angle / (Math.PI / 2)) - 1e-9));
        while (Stray(angle / parts) * radius > tolerance)
            parts++;
        return parts;
    }

    private static double Stray(double angle)
    {
        var (sin, cos) = Math.SinCos(angle / 4);
        return 2.0 / 27.0 * Math.Pow(sin, 6) / (cos * cos);
    }
}
