using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Form;

/// <summary>Partial derivatives of a quantity by the first and second parameter derivatives of one coordinate.</summary>
internal readonly record struct Partials(double U, double V, double UU, double UV, double VV);

/// <summary>First and second parameter derivatives of y and z at a sample.</summary>
internal readonly record struct NetJet(
    double Yu, double Yv, double Yuu, double Yuv, double Yvv, double Zu, double Zv, double Zuu, double Zuv, double Zvv);

/// <summary>A fixed place of the net's parameters with the basis functions and the derivatives of x there.</summary>
internal sealed class Sample
{
    private const int Local = 16;
    private const int Rows = 4;

    /// <summary>How many coefficients a row has.</summary>
    public const int RowLength = 2 * Local;

    private readonly int[] _poles = new int[Local];
    private int[] _both = [];
    private readonly double[] _weights = new double[5 * Local]; // u, v, uu, uv, vv

    public Sample(SplineBasis u, SplineBasis v, double[] x, double atU, double atV)
    {
        (U, V) = (atU, atV);
        Span<double> nu = stackalloc double[12];
        Span<double> nv = stackalloc double[12];
        int iu = u.Evaluate(atU, 2, nu), iv = v.Evaluate(atV, 2, nv);
        for (var a = 0; a < 4; a++)
        {
            for (var b = 0; b < 4; b++)
            {
                var k = (4 * a) + b;
                _poles[k] = ((iu + a) * v.Count) + iv + b;
                _weights[k] = nu[4 + a] * nv[b];
                _weights[Local + k] = nu[a] * nv[4 + b];
                _weights[(2 * Local) + k] = nu[8 + a] * nv[b];
                _weights[(3 * Local) + k] = nu[4 + a] * nv[4 + b];
                _weights[(4 * Local) + k] = nu[a] * nv[8 + b];
            }
        }

        var d = Derivatives(x, 0);
        (Xu, Xv, Xuu, Xuv, Xvv) = (d.U, d.V, d.UU, d.UV, d.VV);
    }

    public double U { get; }

    public double V { get; }

    public double Xu { get; }

    public double Xv { get; }

    public double Xuu { get; }

    public double Xuv { get; }

    public double Xvv { get; }

    /// <summary>Least dz/dv at constant x asked for here [m].</summary>
    public double LeastRise { get; init; }

    /// <summary>Fall over half-breadth of a diagonal that is watched here beside that at 45 degrees; 0 for none.</summary>
    public double Fall { get; init; }

    /// <summary>Derivatives of y and z of a net: y first, z from <paramref name="zOffset"/>.</summary>
    public NetJet JetOf(double[] net, int zOffset)
    {
        Partials y = Derivatives(net, 0), z = Derivatives(net, zOffset);
        return new NetJet(y.U, y.V, y.UU, y.UV, y.VV, z.U, z.V, z.UU, z.UV, z.VV);
    }

    /// <summary>Row over y and z of the local poles of a quantity given by its partial derivatives.</summary>
    public SparseRow Row(int zOffset, Partials y, Partials z) => Row(zOffset, y, z, new double[RowLength]);

    /// <summary>The same, its coefficients written where there is room for them.</summary>
    public SparseRow Row(int zOffset, Partials y, Partials z, double[] values)
    {
        if (_both.Length == 0)
            _both = Both(zOffset);
        var quads = MemoryMarshal.Cast<double, Vector256<double>>(values.AsSpan());
        var weights = MemoryMarshal.Cast<double, Vector256<double>>(_weights.AsSpan());
        for (var k = 0; k < Rows; k++)
        {
            Vector256<double> u = weights[k], v = weights[Rows + k], uu = weights[(2 * Rows) + k], uv = weights[(3 * Rows) + k], vv = weights[(4 * Rows) + k];
            quads[k] = (y.U * u) + (y.V * v) + (y.UU * uu) + (y.UV * uv) + (y.VV * vv);
            quads[Rows + k] = (z.U * u) + (z.V * v) + (z.UU * uu) + (z.UV * uv) + (z.VV * vv);
        }

        return new SparseRow(_both, values);
    }

    private int[] Both(int zOffset) => [.. _poles, .. _poles.Select(k => zOffset + k)];

    private Partials Derivatives(double[] values, int offset)
    {
        var weights = MemoryMarshal.Cast<double, Vector256<double>>(_weights.AsSpan());
        Vector256<double> u = default, v = default, uu = default, uv = default, vv = default;
        for (var k = 0; k < Rows; k++)
        {
            // The four poles up the section stand side by side in the net.
            var value = Vector256.Create(values.AsSpan(offset + _poles[Rows * k], Rows));
            u += weights[k] * value;
            v += weights[Rows + k] * value;
            uu += weights[(2 * Rows) + k] * value;
            uv += weights[(3 * Rows) + k] * value;
            vv += weights[(4 * Rows) + k] * value;
        }

        return new Partials(Vector256.Sum(u), Vector256.Sum(v), Vector256.Sum(uu), Vector256.Sum(uv), Vector256.Sum(vv));
    }
}

/// <summary>Sizes by which the surface's rows are scaled.</summary>
/// <param name="Length">Length of the hull [m].</param>
/// <param name="LeastRise">Least dz/dv at constant x asked for at a parameter pair [m].</param>
/// <param name="Transom">Whether the stern is a transom.</param>
internal sealed record SkinScale(double Length, Func<double, double, double> LeastRise, bool Transom);

/// <summary>Weights of the surface's energy and of its elastic rows, found by trial over random hulls.</summary>
internal static class SkinStiffness
{
    /// <summary>Of bending lengthwise.</summary>
    public const double Along = 0.3;

    /// <summary>Of twist.</summary>
    public const double Twist = 1;

    /// <summary>Of bending up the section.</summary>
    public const double Across = 1;

    /// <summary>Of the sheer's departure from its batten.</summary>
    public const double Sheer = 0.1;

    /// <summary>Of the design waterline's departure from its batten.</summary>
    public const double Waterline = 0.1;

    /// <summary>Of the design waterline's ends' departure from their angles: ten times as much left three craft of a hundred unbuilt.</summary>
    public const double EndAngle = 300;

    /// <summary>Of a transom's departure from its batten.</summary>
    public const double Transom = 0.5;

    /// <summary>Of a hollow in waterline, section or diagonal [1/m²].</summary>
    public const double Convexity = 5e7;

    /// <summary>Of a section that does not spread close to the keel.</summary>
    public const double Spread = 1e8;

    /// <summary>Of a side that reaches past the half beam, or a waterline past the sheer.</summary>
    public const double Side = 1e8;

    /// <summary>Of a waterline's fullness off what is asked.</summary>
    public const double Fullness = 1e8;

    /// <summary>Of heights that do not rise.</summary>
    public const double Fold = 1e6;
}
