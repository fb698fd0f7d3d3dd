using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using SkiaSharp;

namespace Lines.Drawing.Canvas;

/// <summary>Turns paths of lines and arcs into lines and cubic curves of the canvas, y turned down.</summary>
internal sealed class PathPen(SKPathBuilder builder, double sheetHeight, double scale, double tolerance, bool wholeUnits)
{
    /// <summary>Appends a path.</summary>
    /// <remarks>
    /// <para><b>Method.</b> An arc of angle θ is cut into equal parts, each one cubic with handles 4/3 tan(θ/4) r: its middle
    /// and ends lie on the circle, and it strays outward by at most 2/27 sin⁶(θ/4) / cos²(θ/4) r to first order.</para>
    /// </remarks>
    /// <exception cref="ArgumentException">The path has fewer than two vertices, or a vertex is not finite.</exception>
    public void Append(ArcPath path)
    {
        PathGuard.Require(path);
        builder.MoveTo(On(path.Vertices[0].Point));
        var last = path.Vertices.Count - 1;
        for (var i = 0; i < last; i++)
            Leg(new ArcSegment(path.Vertices[i].Point, path.Vertices[i + 1].Point, path.Vertices[i].Bulge));
        if (!path.Closed)
            return;
        if (path.Vertices[last].Bulge != 0)
            Leg(new ArcSegment(path.Vertices[last].Point, path.Vertices[0].Point, path.Vertices[last].Bulge));
        builder.Close();
    }

    /// <summary>Appends a polyline.</summary>
    public void Append(IReadOnlyList<Point2> points)
    {
        builder.MoveTo(On(points[0]));
        for (var i = 1; i < points.Count; i++)
            builder.LineTo(On(points[i]));
    }

    /// <summary>The canvas's point for a place on the sheet [mm].</summary>
    public SKPoint On(Point2 p)
    {
        double x = p.X * scale, y = (sheetHeight - p.Y) * scale;
        return wholeUnits ? new((float)Math.Round(x), (float)Math.Round(y)) : new((float)x, (float)y);
    }

    private void Leg(ArcSegment leg)
    {
        if (leg.IsLine)
        {
            builder.LineTo(On(leg.To));
            return;
        }

        var center = leg.Center;
        var radius = leg.From - center;
        var parts = Parts(radius.Length, Math.Abs(leg.Turn));
        var step = leg.Turn / parts;
        var (sin, cos) = Math.SinCos(step);
        var handle = 4.0 / 3.0 * Math.Tan(step / 4);
        var start = leg.From;
        for (var i = 1; i <= parts; i++)
        {
            var turned = (cos * radius) + (sin * radius.TurnedLeft);
            var end = i == parts ? leg.To : center + turned;
            builder.CubicTo(On(start + (handle * radius.TurnedLeft)), On(end - (handle * turned.TurnedLeft)), On(end));
            (radius, start) = (turned, end);
        }
    }

    private int Parts(double radius, double angle)
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
