using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Tests.Support;

/// <summary>A naive oracle: the skin as a fine grid of flat triangles, each clipped at the water plane.</summary>
internal static class FacetHydrostatics
{
    /// <summary>Volume, its center and the wetted skin, both sides.</summary>
    public static (double Volume, Point3 Center, double Skin) Below(BSplineSurface side, double height, int nu, int nv)
    {
        double volume = 0, x = 0, z = 0, skin = 0;
        foreach (var (a, b, c) in Triangles(side, height, nu, nv))
        {
            var n = (b - a).Cross(c - a);
            skin += n.Length / 2;
            // ∫ y and ∫ xy, zy over a flat triangle: corner means of the products at the mid-sides, exact for quadratics.
            double Mean(Func<Point3, double> f) => (f(Mid(a, b)) + f(Mid(b, c)) + f(Mid(c, a))) / 3;
            volume += n.Y / 2 * Mean(p => p.Y);
            x += n.Y / 2 * Mean(p => p.X * p.Y);
            z += n.Y / 2 * Mean(p => p.Z * p.Y);
        }

        return (2 * volume, new Point3(x / volume, 0, z / volume), 2 * skin);
    }

    /// <summary>Fluxes of (0, 0, z − T) and (x, 0, 0) through the skin alone, both sides.</summary>
    public static (double Vertical, double Lengthwise) OpenFluxes(BSplineSurface side, double height, int nu, int nv)
    {
        double vertical = 0, lengthwise = 0;
        foreach (var (a, b, c) in Triangles(side, height, nu, nv))
        {
            var n = (b - a).Cross(c - a);
            vertical += n.Z * (((a.Z + b.Z + c.Z) / 3) - height);
            lengthwise += n.X * (a.X + b.X + c.X) / 3;
        }

        return (vertical, lengthwise);
    }

    /// <summary>Area and centroid of the immersed transom, both sides, by level strips of its edge u = 1.</summary>
    public static (double Area, Point3 Center) Transom(BSplineSurface side, double height, int n)
    {
        double area = 0, x = 0, z = 0;
        var before = side.PointAt(1, 0);
        for (var i = 1; i <= n && before.Z < height; i++)
        {
            var next = side.PointAt(1, i / (double)n);
            if (next.Z > height)
                next = At(before, next, height);
            var strip = (before.Y + next.Y) * Math.Sqrt(Math.Pow(next.X - before.X, 2) + Math.Pow(next.Z - before.Z, 2));
            area += strip;
            x += strip * (before.X + next.X) / 2;
            z += strip * (before.Z + next.Z) / 2;
            before = next;
        }

        return area > 0 ? (area, new Point3(x / area, 0, z / area)) : (0, default);
    }

    private static IEnumerable<(Point3 A, Point3 B, Point3 C)> Triangles(BSplineSurface side, double height, int nu, int nv)
    {
        for (var i = 0; i < nu; i++)
        {
            for (var j = 0; j < nv; j++)
            {
                Point3 P(int di, int dj) => side.PointAt((i + di) / (double)nu, (j + dj) / (double)nv);
                // Corners go round with v before u, so that normals point out of the boat.
                foreach (var t in Clipped(P(0, 0), P(0, 1), P(1, 1), height).Concat(Clipped(P(0, 0), P(1, 1), P(1, 0), height)))
                    yield return t;
            }
        }
    }

    private static IEnumerable<(Point3 A, Point3 B, Point3 C)> Clipped(Point3 a, Point3 b, Point3 c, double height)
    {
        List<Point3> kept = [];
        Point3[] corners = [a, b, c];
        for (var k = 0; k < 3; k++)
        {
            Point3 p = corners[k], q = corners[(k + 1) % 3];
            if (p.Z <= height)
                kept.Add(p);
            if ((p.Z < height && q.Z > height) || (p.Z > height && q.Z < height))
                kept.Add(At(p, q, height));
        }

        for (var k = 2; k < kept.Count; k++)
            yield return (kept[0], kept[k - 1], kept[k]);
    }

    private static Point3 At(Point3 p, Point3 q, double height) => p + ((height - p.Z) / (q.Z - p.Z) * (q - p));

    private static Point3 Mid(Point3 a, Point3 b) => a + (0.5 * (b - a));
}
