using System.Text;
using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;

namespace Lines.Drawing.Svg;

/// <summary>Writes a path of lines and arcs as SVG path data.</summary>
internal static class SvgPath
{
    /// <summary>Appends the path's commands, y turned down from the sheet's height.</summary>
    /// <exception cref="ArgumentException">The path has fewer than two vertices, or a vertex is not finite.</exception>
    public static void Append(StringBuilder svg, ArcPath path, double height, int decimals)
    {
        PathGuard.Require(path);
        var vertices = path.Vertices;
        At(svg.Append('M'), vertices[0].Point, height, decimals);
        for (var i = 1; i < vertices.Count; i++)
            Leg(svg, vertices[i - 1], vertices[i].Point, height, decimals);
        if (!path.Closed)
            return;
        if (vertices[^1].Bulge != 0)
            Leg(svg, vertices[^1], vertices[0].Point, height, decimals);
        svg.Append('Z');
    }

    private static void Leg(StringBuilder svg, ArcVertex from, Point2 to, double height, int decimals)
    {
        if (from.Bulge == 0)
        {
            At(svg.Append('L'), to, height, decimals);
            return;
        }

        var b = from.Bulge;
        var radius = from.Point.DistanceTo(to) * (1 + (b * b)) / (4 * Math.Abs(b));
        // A left turn on the sheet is a left turn to the eye as well: SVG's sweep flag 1 turns right to the eye.
        svg.Append('A').AppendPlain(radius, decimals).Append(' ').AppendPlain(radius, decimals).Append(" 0 ")
            .Append(Math.Abs(b) > 1 ? '1' : '0').Append(' ').Append(b > 0 ? '0' : '1').Append(' ');
        At(svg, to, height, decimals);
    }

    private static void At(StringBuilder svg, Point2 p, double height, int decimals) =>
        svg.AppendPlain(p.X, decimals).Append(' ').AppendPlain(height - p.Y, decimals);
}
