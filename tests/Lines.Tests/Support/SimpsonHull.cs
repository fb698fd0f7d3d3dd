using Lines.Hull.Form;
using Lines.Kernel.Geometry;

namespace Lines.Tests.Support;

/// <summary>A naive measure of what a hull has at its design waterline: Simpson's rule over a dense grid of its skin below the water, which is found by bisection.</summary>
/// <remarks>Definitions after E. V. Lewis (ed.), Principles of Naval Architecture, vol. I, SNAME 1988, chapter I (from memory): the prismatic coefficient is
/// the volume over length and greatest section, here of the design waterline; the center of buoyancy is the centroid of the volume.</remarks>
internal sealed class SimpsonHull
{
    private const int AlongSkin = 600;
    private const int UpSkin = 60;
    private const int Stations = 60;

    private readonly HullSurface _hull;

    public SimpsonHull(HullSurface hull)
    {
        _hull = hull;
        double volume = 0, moment = 0;
        for (var i = 0; i <= AlongSkin; i++)
        {
            double u = i / (double)AlongSkin, top = WaterAt(u);
            for (var j = 0; j <= UpSkin; j++)
            {
                var jet = hull.Side.JetAt(u, top * j / UpSkin);
                var flux = Weight(i, AlongSkin) * Weight(j, UpSkin) * top * jet.Point.Y * ((jet.U.X * jet.V.Z) - (jet.U.Z * jet.V.X));
                volume += flux;
                moment += jet.Point.X * flux;
            }
        }

        Volume = 2 * volume;
        Fore = hull.Side.PointAt(0, WaterAt(0)).X;
        Length = hull.Side.PointAt(1, WaterAt(1)).X - Fore;
        Center = ((moment / volume) - Fore) / Length;
        Beam = 2 * Greatest(u => hull.Side.PointAt(u, WaterAt(u)).Y, 0.2, 0.8);
    }

    public double Volume { get; }

    public double Length { get; }

    /// <summary>Center of buoyancy aft of the waterline's fore end, over its length.</summary>
    public double Center { get; }

    public double Beam { get; }

    public double Prismatic => Volume / (Length * Greatest(SectionAt, Fore + (0.3 * Length), Fore + (0.75 * Length)));

    /// <summary>Half-angle of the waterline at its fore end, by differences extrapolated to it.</summary>
    public double EntryAngle
    {
        get
        {
            double Slope(double u)
            {
                Point3 end = _hull.Side.PointAt(0, WaterAt(0)), p = _hull.Side.PointAt(u, WaterAt(u));
                return p.Y / (p.X - end.X);
            }

            return Math.Atan((2 * Slope(1e-4)) - Slope(2e-4));
        }
    }

    private double Fore { get; }

    private double WaterAt(double u)
    {
        double low = 0, high = 1;
        for (var k = 0; k < 50; k++)
        {
            var middle = (low + high) / 2;
            (low, high) = _hull.Side.PointAt(u, middle).Z < _hull.Draft ? (middle, high) : (low, middle);
        }

        return low;
    }

    /// <summary>Immersed area of the section at x, between the ends' overhangs, both sides.</summary>
    private double SectionAt(double x)
    {
        double UAt(double v)
        {
            double low = 0, high = 1;
            for (var k = 0; k < 50; k++)
            {
                var middle = (low + high) / 2;
                (low, high) = _hull.Side.PointAt(middle, v).X < x ? (middle, high) : (low, middle);
            }

            return low;
        }

        double keel = 0, top = 1;
        for (var k = 0; k < 50; k++)
        {
            var middle = (keel + top) / 2;
            (keel, top) = _hull.Side.PointAt(UAt(middle), middle).Z < _hull.Draft ? (middle, top) : (keel, middle);
        }

        // ∫ y dz up the section, dz by central differences of the parameter.
        const int parts = 240;
        const double h = 1e-5;
        var sum = 0.0;
        for (var j = 0; j <= parts; j++)
        {
            var v = keel * j / parts;
            double below = Math.Max(0, v - h), above = v + h;
            var slope = (_hull.Side.PointAt(UAt(above), above).Z - _hull.Side.PointAt(UAt(below), below).Z) / (above - below);
            sum += Weight(j, parts) * keel * _hull.Side.PointAt(UAt(v), v).Y * slope;
        }

        return 2 * sum;
    }

    /// <summary>The greatest value between two places, by thirds.</summary>
    private static double Greatest(Func<double, double> f, double low, double high)
    {
        for (var k = 0; k < Stations && high - low > 1e-5 * high; k++)
        {
            double a = low + ((high - low) / 3), b = high - ((high - low) / 3);
            (low, high) = f(a) < f(b) ? (a, high) : (low, b);
        }

        return f((low + high) / 2);
    }

    private static double Weight(int k, int n) => (k == 0 || k == n ? 1 : k % 2 == 1 ? 4 : 2) / (3.0 * n);
}
