using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Kernel.Meshes;

/// <summary>Parameters that divide a surface into cells so small that two flat triangles stand for each.</summary>
/// <remarks>
/// <para><b>Method.</b> Every span between knots is divided evenly, alike across the whole surface, so that cells meet corner to corner.
/// Over a right triangle of legs h, k in the parameters a surface departs from the triangle of its corners by at most
/// (h² |S_uu| + 2 h k |S_uv| + k² |S_vv|) / 8 (Filip, Magedson and Markot, "Surface algorithms using bounds on derivatives", CAGD 3,
/// 1986; from memory). The greatest derivatives on a span are bounded by their own poles, whose hull holds them.</para>
/// <para><b>Accuracy.</b> Whichever diagonal divides a cell, a point of a triangle is no further than the tolerance from the point
/// of the surface at the same parameters.</para>
/// </remarks>
public static class SurfaceDivision
{
    /// <summary>The parameters along u and along v, rising, with every knot.</summary>
    /// <param name="surface">The surface.</param>
    /// <param name="tolerance">Greatest distance of surface and triangles, above 0, in the surface's unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is not above 0.</exception>
    public static (double[] U, double[] V) Within(BSplineSurface surface, double tolerance)
    {
        var (us, vs) = Within([surface], tolerance);
        return (us, vs[0]);
    }

    /// <summary>The parameters along u of patches side by side, alike for all so that they meet corner to corner, and along v of each.</summary>
    /// <param name="patches">The patches, with one basis along u; at least one.</param>
    /// <param name="tolerance">Greatest distance of surface and triangles, above 0, in the surface's unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is not above 0.</exception>
    /// <exception cref="ArgumentException">The patches differ in their spans along u.</exception>
    public static (double[] U, IReadOnlyList<double[]> V) Within(IReadOnlyList<BSplineSurface> patches, double tolerance)
    {
        ArgumentNullException.ThrowIfNull(patches);
        if (!(tolerance > 0))
            throw new ArgumentOutOfRangeException(nameof(tolerance), tolerance, "a chord error is above 0");
        var us = patches[0].U.Breaks;
        if (!patches.All(p => p.U.Breaks.SequenceEqual(us)))
            throw new ArgumentException("patches side by side have the same spans along u", nameof(patches));
        int[] nu = [.. Enumerable.Repeat(1, us.Count - 1)];
        List<(Bend[,] Bends, int[] Parts)> parts = [.. patches.Select(p => (BendsOf(p), Enumerable.Repeat(1, p.V.Breaks.Count - 1).ToArray()))];
        while (parts.Select(p => (Worst: Worst(p.Bends, nu, p.Parts), p.Bends, p.Parts)).MaxBy(w => w.Worst.Error) is var ((i, j, error), bends, nv) && error > tolerance)
        {
            // One more part where it helps the worst cell most.
            if (bends[i, j].UU / (nu[i] * nu[i]) >= bends[i, j].VV / (nv[j] * nv[j]))
                nu[i]++;
            else
                nv[j]++;
        }

        return (Parts(us, nu), [.. patches.Zip(parts, (p, q) => Parts(p.V.Breaks, q.Parts))]);
    }

    private static (int I, int J, double Error) Worst(Bend[,] bends, int[] nu, int[] nv)
    {
        var worst = (I: 0, J: 0, Error: -1.0);
        for (var i = 0; i < nu.Length; i++)
        {
            for (var j = 0; j < nv.Length; j++)
            {
                var bend = bends[i, j];
                var error = ((bend.UU / nu[i] / nu[i]) + (2 * bend.UV / nu[i] / nv[j]) + (bend.VV / nv[j] / nv[j])) / 8;
                if (error > worst.Error)
                    worst = (i, j, error);
            }
        }

        return worst;
    }

    private static double[] Parts(IReadOnlyList<double> breaks, int[] counts) =>
    [
        .. counts.SelectMany((n, k) => Enumerable.Range(0, n).Select(p => breaks[k] + ((breaks[k + 1] - breaks[k]) * p / n))),
        breaks[^1],
    ];

    /// <summary>Bounds of the second derivatives on every pair of spans, times the spans' sizes.</summary>
    private static Bend[,] BendsOf(BSplineSurface surface)
    {
        SplineBasis u = surface.U, v = surface.V;
        var net = new Vector3[u.Count, v.Count];
        for (var i = 0; i < u.Count; i++)
        {
            for (var j = 0; j < v.Count; j++)
                net[i, j] = surface.PoleAt(i, j) - default(Point3);
        }

        var alongU = Derived(net, u, 0);
        var uv = Turned(Derived(Turned(alongU), v, 0));
        var uu = Derived(alongU, u, 1);
        var vv = Turned(Derived(Derived(Turned(net), v, 0), v, 1));
        IReadOnlyList<double> us = u.Breaks, vs = v.Breaks;
        var bends = new Bend[us.Count - 1, vs.Count - 1];
        for (var i = 0; i < us.Count - 1; i++)
        {
            for (var j = 0; j < vs.Count - 1; j++)
            {
                double h = us[i + 1] - us[i], k = vs[j + 1] - vs[j];
                int a = u.SpanAt(us[i]), b = v.SpanAt(vs[j]);
                bends[i, j] = new Bend(
                    h * h * Greatest(uu, a - u.Degree, a - 2, b - v.Degree, b),
                    h * k * Greatest(uv, a - u.Degree, a - 1, b - v.Degree, b - 1),
                    k * k * Greatest(vv, a - u.Degree, a, b - v.Degree, b - 2));
            }
        }

        return bends;
    }

    /// <summary>Poles of the derivative along the first index of what is itself an <paramref name="order"/>-th derivative.</summary>
    private static Vector3[,] Derived(Vector3[,] net, SplineBasis basis, int order)
    {
        var degree = basis.Degree - order;
        var derived = new Vector3[net.GetLength(0) - 1, net.GetLength(1)];
        for (var i = 0; i < derived.GetLength(0); i++)
        {
            // Without width the pole acts on no span.
            var width = basis.Knots[i + basis.Degree + 1] - basis.Knots[i + order + 1];
            for (var j = 0; j < derived.GetLength(1); j++)
                derived[i, j] = width > 0 ? degree / width * (net[i + 1, j] - net[i, j]) : default;
        }

        return derived;
    }

    private static Vector3[,] Turned(Vector3[,] net)
    {
        var turned = new Vector3[net.GetLength(1), net.GetLength(0)];
        for (var i = 0; i < net.GetLength(0); i++)
        {
            for (var j = 0; j < net.GetLength(1); j++)
                turned[j, i] = net[i, j];
        }

        return turned;
    }

    private static double Greatest(Vector3[,] net, int firstI, int lastI, int firstJ, int lastJ)
    {
        var greatest = 0.0;
        for (var i = firstI; i <= lastI; i++)
        {
            for (var j = firstJ; j <= lastJ; j++)
                greatest = Math.Max(greatest, net[i, j].Length);
        }

        return greatest;
    }

    /// <summary>Greatest second derivatives of a cell as wide as its spans.</summary>
    private readonly record struct Bend(double UU, double UV, double VV);
}
