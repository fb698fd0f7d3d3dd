using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Form;

/// <summary>The fullness of one end of the waterplane, cut from a skin that is still being shaped: a value, and a row that says how the net moves it.</summary>
/// <remarks>
/// <b>Method.</b> Gauss points along the waterline, crowded toward the end, where a line that ends on the keel may start as steep as a root. At a
/// fixed place and height the half-breadth moves by dy - (dy/dz) dz of the surface there.
/// </remarks>
internal sealed class CutArea
{
    private const int Points = 32;
    private readonly double _height;
    private readonly double _rectangle;
    private readonly (double U, double Weight)[] _places;

    /// <summary>Looks at one end.</summary>
    /// <param name="height">Height of the waterline [m].</param>
    /// <param name="end">Parameter along the keel at which the waterline ends.</param>
    /// <param name="widest">Parameter of the widest station.</param>
    /// <param name="rectangle">Length from the end to that station times half-breadth there [m²].</param>
    public CutArea(double height, double end, double widest, double rectangle)
    {
        (_height, _rectangle) = (height, rectangle);
        var rule = GaussLegendre.Rule(Points);
        _places = new (double U, double Weight)[Points];
        for (var k = 0; k < Points; k++)
        {
            // With t² from the end, a root becomes a straight line.
            var t = (rule.Abscissas[k] + 1) / 2;
            _places[k] = (end + ((widest - end) * t * t), rule.Weights[k] * t * Math.Abs(widest - end));
        }
    }

    /// <summary>The fullness of a skin.</summary>
    public double Of(BSplineSurface skin)
    {
        var sum = 0.0;
        foreach (var (u, weight) in _places)
        {
            var jet = skin.JetAt(u, CutAt(skin, u));
            sum += weight * jet.Point.Y * Advance(jet);
        }

        return sum / _rectangle;
    }

    /// <summary>How the fullness changes with y and z of the net, at a skin.</summary>
    /// <param name="skin">The skin.</param>
    /// <param name="zOffset">Where z of the net begins among the unknowns.</param>
    public SparseRow Row(BSplineSurface skin, int zOffset)
    {
        var row = new double[2 * zOffset];
        foreach (var (u, weight) in _places)
        {
            var v = CutAt(skin, u);
            var jet = skin.JetAt(u, v);
            double dx = weight * Advance(jet) / _rectangle, delta = (jet.U.X * jet.V.Z) - (jet.V.X * jet.U.Z);
            var q = ((jet.U.X * jet.V.Y) - (jet.V.X * jet.U.Y)) / delta;
            SparseRow along = SplineRows.At(skin.U, u, 0), up = SplineRows.At(skin.V, v, 0);
            for (var a = 0; a < along.Count; a++)
            {
                for (var b = 0; b < up.Count; b++)
                {
                    var k = (along.Indices[a] * skin.V.Count) + up.Indices[b];
                    var share = dx * along.Values[a] * up.Values[b];
                    row[k] += share;
                    row[zOffset + k] -= q * share;
                }
            }
        }

        return SparseRow.Full(row);
    }

    private static double Advance(SurfaceJet jet) => jet.U.X - (jet.U.Z / jet.V.Z * jet.V.X);

    private double CutAt(BSplineSurface skin, double u)
    {
        double keel = skin.JetAt(u, 0).Point.Z, sheer = skin.JetAt(u, 1).Point.Z;
        return keel >= _height ? 0 : sheer <= _height ? 1 : Root.Between(Height, 0, 1);

        (double, double) Height(double v)
        {
            var jet = skin.JetAt(u, v);
            return (jet.Point.Z - _height, jet.V.Z);
        }
    }
}
