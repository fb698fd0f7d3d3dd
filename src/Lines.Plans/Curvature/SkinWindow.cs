using Lines.Hull.Fairness;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Plans.Curvature;

/// <summary>The part of a skin that one looks at square from the side or from below, on a grid of parameters.</summary>
/// <remarks><b>Frame.</b> Grid places are steps of the grid: first index bow to stern, second keel up.</remarks>
internal sealed class SkinWindow
{
    /// <summary>Grid steps to a piece of the spline.</summary>
    private const int Steps = 20;

    /// <summary>Curvature is read this far inside the edges, for at a corner of the profile the skin has no tangent plane.</summary>
    private const double Inside = 1e-6;

    private readonly BSplineSurface _side;
    private readonly double[] _us;
    private readonly double[] _vs;
    private readonly double[] _tops;

    /// <summary>Lays the grid.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="below">Whether it is seen from below: then topsides that lean inward are hidden.</param>
    public SkinWindow(HullSurface hull, bool below)
    {
        _side = hull.Side;
        (_us, _vs) = (Divided(_side.U), Divided(_side.V));
        _tops = [.. _us.Select(u => below ? Silhouette(Within(u)) : 1)];
        Curvatures = new PrincipalCurvatures[_us.Length, _vs.Length];
        for (var i = 0; i < _us.Length; i++)
        {
            for (var j = 0; j < _vs.Length; j++)
                Curvatures[i, j] = PrincipalCurvatures.Of(_side.JetAt(Within(_us[i]), Within(_vs[j] * _tops[i])));
        }
    }

    /// <summary>The principal curvatures at the grid points.</summary>
    public PrincipalCurvatures[,] Curvatures { get; }

    /// <summary>One figure at every grid point.</summary>
    public double[,] Values(Func<PrincipalCurvatures, double> of)
    {
        var values = new double[_us.Length, _vs.Length];
        for (var i = 0; i < _us.Length; i++)
        {
            for (var j = 0; j < _vs.Length; j++)
                values[i, j] = of(Curvatures[i, j]);
        }

        return values;
    }

    /// <summary>The point of the skin at a place of the grid.</summary>
    public Point3 PointAt(Point2 place) => _side.PointAt(Between(_us, place.X), Between(_vs, place.Y) * Between(_tops, place.X));

    // The highest v up to which the skin faces down.
    private double Silhouette(double u)
    {
        var k = _vs.Length - 1;
        while (k > 0 && Up(_vs[k]) > 0)
            k--;
        return k == _vs.Length - 1 || k == 0 ? 1 : Crossing(_vs[k], _vs[k + 1]);

        double Up(double v)
        {
            var jet = _side.JetAt(u, Within(v));
            return jet.V.Cross(jet.U).Z;
        }

        double Crossing(double low, double high) => low + ((high - low) * Up(low) / (Up(low) - Up(high)));
    }

    private static double Within(double parameter) => Math.Clamp(parameter, Inside, 1 - Inside);

    private static double Between(double[] row, double place)
    {
        var k = Math.Clamp((int)place, 0, row.Length - 2);
        return row[k] + ((place - k) * (row[k + 1] - row[k]));
    }

    private static double[] Divided(SplineBasis basis)
    {
        var breaks = basis.Breaks;
        return [.. Enumerable.Range(1, breaks.Count - 1).SelectMany(s => Enumerable.Range(0, Steps).Select(k => breaks[s - 1] + ((breaks[s] - breaks[s - 1]) * k / Steps))), breaks[^1]];
    }
}
