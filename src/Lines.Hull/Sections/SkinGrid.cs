using System.Runtime.CompilerServices;
using Lines.Hull.Form;
using Lines.Kernel.Splines;

namespace Lines.Hull.Sections;

/// <summary>The skin evaluated on a grid of parameters that holds every knot: made once per hull, read by every cut.</summary>
internal sealed class SkinGrid
{
    /// <summary>Cells aimed at along u and along v; a plane that meets a cell of this size twice on one side is a tangent plane.</summary>
    private const int CellsU = 48, CellsV = 30;

    private static readonly ConditionalWeakTable<HullSurface, SkinGrid> Made = [];

    private readonly SurfaceJet[] _jets;

    private SkinGrid(HullSurface hull)
    {
        Us = Divide(hull.Side.U, CellsU);
        Vs = Divide(hull.Side.V, CellsV);
        _jets = new SurfaceJet[Us.Length * Vs.Length];
        for (var i = 0; i < Us.Length; i++)
        {
            for (var j = 0; j < Vs.Length; j++)
                _jets[(i * Vs.Length) + j] = hull.Side.JetAt(Us[i], Vs[j]);
        }
    }

    /// <summary>The grid's parameters along u.</summary>
    public double[] Us { get; }

    /// <summary>The grid's parameters along v.</summary>
    public double[] Vs { get; }

    /// <summary>The grid of a hull.</summary>
    public static SkinGrid Of(HullSurface hull) => Made.GetValue(hull, static h => new SkinGrid(h));

    /// <summary>The jet at a grid point.</summary>
    public ref readonly SurfaceJet JetAt(int i, int j) => ref _jets[(i * Vs.Length) + j];

    /// <summary>The grid point nearest to a place in profile.</summary>
    public (int I, int J) NearestInProfile(double x, double z)
    {
        var best = 0;
        var least = double.PositiveInfinity;
        for (var k = 0; k < _jets.Length; k++)
        {
            var p = _jets[k].Point;
            var d = ((p.X - x) * (p.X - x)) + ((p.Z - z) * (p.Z - z));
            if (d < least)
                (least, best) = (d, k);
        }

        return (best / Vs.Length, best % Vs.Length);
    }

    private static double[] Divide(SplineBasis basis, int aim)
    {
        var breaks = basis.Breaks;
        var per = Math.Max(2, (int)Math.Ceiling(aim / (double)(breaks.Count - 1)));
        var values = new double[((breaks.Count - 1) * per) + 1];
        for (var k = 0; k < values.Length - 1; k++)
        {
            var (span, step) = (k / per, k % per);
            values[k] = breaks[span] + ((breaks[span + 1] - breaks[span]) * step / per);
        }

        values[^1] = breaks[^1];
        return values;
    }
}
