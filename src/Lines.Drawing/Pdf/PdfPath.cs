using System.Text;
using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;

namespace Lines.Drawing.Pdf;

/// <summary>Writes a path of lines and arcs as path operators: arcs become cubic curves.</summary>
internal static class PdfPath
{
    private const int Decimals = 4;

    /// <summary>Appends a path.</summary>
    /// <remarks>
    /// <para><b>Method.</b> An arc of angle θ is cut into equal parts, each one cubic with handles 4/3 tan(θ/4) r: its middle
    /// and ends lie on the circle, and it strays outward by at most 2/27 sin⁶(θ/4) / cos²(θ/4) r to first order.</para>
    /// </remarks>
    /// <param name="content">What is appended to.</param>
    /// <param name="path">The path; at least two vertices.</param>
    /// <param name="tolerance">Greatest distance of a curve from its arc [mm].</param>
    /// <exception cref="ArgumentException">The path has fewer than two vertices, or a vertex is not finite.</exception>
    public static void Append(StringBuilder content, ArcPath path, double tolerance)
    {
        PathGuard.Require(path);
        At(content, path.Vertices[0].Point).Append("m\n");
        var last = path.Vertices.Count - 1;
        for (var i = 0; i < last; i++)
            Leg(content, new ArcSegment(path.Vertices[i].Point, path.Vertices[i + 1].Point, path.Vertices[i].Bulge), tolerance);
        if (!path.Closed)
            return;
        if (path.Vertices[last].Bulge != 0)
            Leg(content, new ArcSegment(path.Vertices[last].Point, path.Vertices[0].Point, path.Vertices[last].Bulge), tolerance);
        content.Append("h\n");
    }

    private static void Leg(StringBuilder content, ArcSegment leg, double tolerance)
    {
        if (leg.IsLine)
        {
            At(content, leg.To).Append("l\n");
            return;
        }

        var centre = leg.Centre;
        var radius = leg.From - centre;
        var parts = Parts(radius.Length, Math.Abs(leg.Turn), tolerance);
        var step = leg.Turn / parts;
        var (sin, cos) = Math.SinCos(step);
        var handle = 4.0 / 3.0 * Math.Tan(step / 4);
        var start = leg.From;
        for (var i = 1; i <= parts; i++)
        {
            var turned = (cos * radius) + (sin * radius.TurnedLeft);
            var end = i == parts ? leg.To : centre + turned;
            At(content, start + (handle * radius.TurnedLeft));
            At(content, end - (handle * turned.TurnedLeft));
            At(content, end).Append("c\n");
            (radius, start) = (turned, end);
        }
    }

    private static StringBuilder At(StringBuilder content, Point2 p) =>
        content.AppendPlain(p.X, Decimals).Append(' ').AppendPlain(p.Y, Decimals).Append(' ');

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
