using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Lines.Kernel.Geometry;

namespace Lines.Kernel.Splines;

/// <summary>A tensor-product B-spline surface in space, not rational.</summary>
public sealed class BSplineSurface
{
    private readonly double[] _net; // x y z and a zero of pole (i, j) at 4 (i * V.Count + j): a pole is one register

    /// <summary>Makes the surface from its two bases and its net of poles.</summary>
    /// <param name="u">Basis of the first parameter.</param>
    /// <param name="v">Basis of the second parameter.</param>
    /// <param name="poles">Poles, first index along u.</param>
    /// <exception cref="ArgumentException">The net does not have the size of the bases.</exception>
    public BSplineSurface(SplineBasis u, SplineBasis v, Point3[,] poles)
    {
        ArgumentNullException.ThrowIfNull(u);
        ArgumentNullException.ThrowIfNull(v);
        ArgumentNullException.ThrowIfNull(poles);
        if (poles.GetLength(0) != u.Count || poles.GetLength(1) != v.Count)
            throw new ArgumentException(Invariant($"a {poles.GetLength(0)} x {poles.GetLength(1)} net for {u.Count} x {v.Count} functions"), nameof(poles));
        U = u;
        V = v;
        _net = new double[4 * u.Count * v.Count];
        for (var i = 0; i < u.Count; i++)
        {
            for (var j = 0; j < v.Count; j++)
            {
                var k = 4 * ((i * v.Count) + j);
                (_net[k], _net[k + 1], _net[k + 2]) = (poles[i, j].X, poles[i, j].Y, poles[i, j].Z);
            }
        }
    }

    /// <summary>Basis of the first parameter.</summary>
    public SplineBasis U { get; }

    /// <summary>Basis of the second parameter.</summary>
    public SplineBasis V { get; }

    /// <summary>The pole at a place of the net.</summary>
    public Point3 PoleAt(int i, int j)
    {
        var k = 4 * ((i * V.Count) + j);
        return new Point3(_net[k], _net[k + 1], _net[k + 2]);
    }

    /// <summary>Point at a pair of parameters; outside the domain the end pieces are continued.</summary>
    public Point3 PointAt(double u, double v)
    {
        Span<double> nu = stackalloc double[8];
        Span<double> nv = stackalloc double[8];
        int iu = U.Evaluate(u, 0, nu), iv = V.Evaluate(v, 0, nv);
        var poles = MemoryMarshal.Cast<double, Vector256<double>>(_net);
        Vector256<double> sum = default;
        for (var a = 0; a <= U.Degree; a++)
        {
            var row = poles.Slice(((iu + a) * V.Count) + iv, V.Degree + 1);
            for (var b = 0; b < row.Length; b++)
                sum += nu[a] * nv[b] * row[b];
        }

        return new Point3(sum[0], sum[1], sum[2]);
    }

    /// <summary>Point with first and second derivatives; outside the domain the end pieces are continued.</summary>
    /// <remarks><b>Accuracy.</b> Rounding only; curvature across v = 1 is unbroken because the same polynomial goes on.</remarks>
    public SurfaceJet JetAt(double u, double v)
    {
        int p = U.Degree + 1, q = V.Degree + 1;
        Span<double> nu = stackalloc double[24];
        Span<double> nv = stackalloc double[24];
        int iu = U.Evaluate(u, Math.Min(2, U.Degree), nu), iv = V.Evaluate(v, Math.Min(2, V.Degree), nv);
        var poles = MemoryMarshal.Cast<double, Vector256<double>>(_net);
        Vector256<double> s = default, du = default, dv = default, duu = default, duv = default, dvv = default;
        for (var a = 0; a < p; a++)
        {
            // The row's point and derivatives along v: this is where every cut and quadrature spends its time.
            Vector256<double> r = default, rv = default, rvv = default;
            var row = poles.Slice(((iu + a) * V.Count) + iv, q);
            for (var b = 0; b < row.Length; b++)
            {
                r += nv[b] * row[b];
                rv += nv[q + b] * row[b];
                rvv += nv[(2 * q) + b] * row[b];
            }

            s += nu[a] * r;
            dv += nu[a] * rv;
            dvv += nu[a] * rvv;
            du += nu[p + a] * r;
            duv += nu[p + a] * rv;
            duu += nu[(2 * p) + a] * r;
        }

        return new SurfaceJet(new Point3(s[0], s[1], s[2]), Triple(du), Triple(dv), Triple(duu), Triple(duv), Triple(dvv));

        static Vector3 Triple(Vector256<double> v) => new(v[0], v[1], v[2]);
    }
}

/// <summary>A point of a surface with its derivatives up to the second order.</summary>
/// <param name="Point">The point [m].</param>
/// <param name="U">First derivative by u.</param>
/// <param name="V">First derivative by v.</param>
/// <param name="UU">Second derivative by u.</param>
/// <param name="UV">Mixed second derivative.</param>
/// <param name="VV">Second derivative by v.</param>
public readonly record struct SurfaceJet(Point3 Point, Vector3 U, Vector3 V, Vector3 UU, Vector3 UV, Vector3 VV);
