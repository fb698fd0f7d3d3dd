using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Construction.Planking;

/// <summary>A section of the skin measured along its girth, from the sheer down.</summary>
/// <remarks><b>Accuracy.</b> Girths to 1e-5 of the girth: Simpson's rule on an even division of v, quartered toward the lower end where v crowds; places by
/// cubic interpolation with the exact slopes.</remarks>
internal sealed class StationStrips
{
    private const int Divisions = 40;

    private readonly double[] _v = new double[Divisions + 1];
    private readonly double[] _girth = new double[Divisions + 1];
    private readonly double[] _slope = new double[Divisions + 1];

    public StationStrips(SkinStation station)
    {
        Station = station;
        double reach = station.High - station.Low, last = Speed(station.High);
        (_v[0], _slope[0]) = (station.High, 1 / last);
        for (var k = 1; k <= Divisions; k++)
        {
            // The square crowds places toward the lower end, where a section that ends on the stem runs fastest in v.
            var part = (double)k / Divisions;
            _v[k] = station.High - (reach * part * (2 - part));
            double middle = Speed((_v[k] + _v[k - 1]) / 2), here = Speed(_v[k]);
            _girth[k] = _girth[k - 1] + ((_v[k - 1] - _v[k]) / 6 * (last + (4 * middle) + here));
            _slope[k] = 1 / here;
            last = here;
        }
    }

    public SkinStation Station { get; }

    /// <summary>Girth from the sheer to the lower end, one side [m].</summary>
    public double Girth => _girth[^1];

    /// <summary>Parameter v at a distance down the girth.</summary>
    public double VAt(double girth)
    {
        var k = Array.BinarySearch(_girth, girth);
        if (k >= 0)
            return _v[k];
        k = Math.Clamp(~k, 1, Divisions);
        double h = _girth[k] - _girth[k - 1], t = (girth - _girth[k - 1]) / h, one = 1 - t;
        return (_v[k - 1] * (1 + (2 * t)) * one * one) + (_v[k] * t * t * (3 - (2 * t)))
            + (h * t * one * ((-_slope[k - 1] * one) + (_slope[k] * t)));
    }

    /// <summary>The skin at a distance down the girth.</summary>
    public SurfaceJet At(double girth) => Station.JetAt(VAt(girth));

    /// <summary>Distance down the girth to a level plane [m]: 0 where the whole section lies below it, the girth where it lies above.</summary>
    public double DownTo(double level)
    {
        bool Under(double g) => At(g).Point.Z <= level;
        return Under(0) ? 0 : !Under(Girth) ? Girth : Root.FirstWhere(Under, 0, Girth);
    }

    private double Speed(double v) => SkinStation.Along(Station.JetAt(v)).Length;
}
