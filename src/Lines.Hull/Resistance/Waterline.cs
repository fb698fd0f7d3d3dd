using System.Numerics;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Resistance;

/// <summary>One waterline: points from its fore to its after end, carried between them as a cubic with its true slopes.</summary>
/// <param name="Depth">Depth below the water plane [m].</param>
/// <param name="X">Places [m].</param>
/// <param name="Y">Half-breadths [m].</param>
/// <param name="Slope">dy/dx.</param>
internal sealed record Waterline(double Depth, double[] X, double[] Y, double[] Slope)
{
    /// <summary>Rate of x along the waterline by u below which it is rounding [m].</summary>
    private const double Rounding = 1e-9;

    /// <summary>Cuts it from a skin.</summary>
    public static Waterline Cut(BSplineSurface side, double height, double depth, int points)
    {
        var region = new WaterRegion(side, height - depth);
        if (region.Wet.Count == 0)
            return new Waterline(depth, [], [], []);
        double from = region.Wet[0].From, to = region.Wet[^1].To;
        double[] x = new double[points + 1], y = new double[points + 1], slope = new double[points + 1];
        for (var k = 0; k <= points; k++)
        {
            var (point, along) = region.AlongAt(from + ((to - from) * (1 - Math.Cos(Math.PI * k / points)) / 2));
            (x[k], y[k], slope[k]) = (point.X, point.Y, Math.Abs(along.X) > Rounding ? along.Y / along.X : double.NaN);
        }

        // At the foot of stem or stern both edges of the skin run one way and leave the slope open: it is that of a parabola over the stretch.
        foreach (var (end, next) in new[] { (0, 1), (points, points - 1) })
        {
            if (double.IsNaN(slope[end]))
                slope[end] = (2 * (y[next] - y[end]) / (x[next] - x[end])) - slope[next];
        }

        return new Waterline(depth, x, y, slope);
    }

    /// <summary>∫ (dy/dx) e^(i turn (x - origin)) dx along it, stretch by stretch, exact for the cubics at any turn.</summary>
    public Complex Along(double turn, double origin)
    {
        Complex sum = 0;
        for (var k = 1; k < X.Length; k++)
        {
            var h = X[k] - X[k - 1];
            var (m0, m1, m2) = OscillatingMoments.Of(new Complex(0, turn * h));
            var (c0, c1, c2) = SlopeOver(k);
            sum += h * Complex.FromPolarCoordinates(1, turn * (X[k - 1] - origin)) * ((c0 * m0) + (c1 * m1) + (c2 * m2));
        }

        return sum;
    }

    /// <summary>dy/dx on the stretch before a point, as a quadratic of the part of the stretch that is passed.</summary>
    public (double Zero, double One, double Two) SlopeOver(int k)
    {
        double rise = (Y[k] - Y[k - 1]) / (X[k] - X[k - 1]), m = Slope[k - 1], n = Slope[k];
        return (m, (6 * rise) - (4 * m) - (2 * n), 3 * (m + n - (2 * rise)));
    }
}
