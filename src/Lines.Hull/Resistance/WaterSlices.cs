using System.Numerics;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;

namespace Lines.Hull.Resistance;

/// <summary>The immersed skin of one hull as waterlines from the surface down to the keel, taken once and used at every speed.</summary>
/// <remarks>
/// <para><b>Method.</b> Every waterline is cut from the surface itself between its own ends, and carried between its points as a cubic with the
/// waterline's true slopes. Levels crowd toward the surface, where short waves live, and toward the keel, where waterlines end.</para>
/// <para>A transom ends the waterlines as it is cut: the wake behind it is taken as long as the waves need.</para>
/// </remarks>
internal sealed class WaterSlices
{
    private readonly Level[] _levels;

    private WaterSlices(Level[] levels) => _levels = levels;

    /// <summary>Cuts the waterlines.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="height">Height of the water plane, hull frame [m]; below the sheer.</param>
    /// <param name="layers">Layers from the surface to the keel, each with a waterline in its middle.</param>
    /// <param name="points">Stretches of each waterline.</param>
    /// <exception cref="DownfloodingException">The plane is above the sheer somewhere.</exception>
    public static WaterSlices Of(HullSurface hull, double height, int layers, int points)
    {
        ArgumentNullException.ThrowIfNull(hull);
        var lowest = Enumerable.Range(0, 257).Min(k => hull.Side.PointAt(k / 256.0, 0).Z);
        var depth = height - lowest;
        if (!(depth > 0))
            return new WaterSlices([]);
        double Edge(int k) => depth * Math.Pow((1 - Math.Cos(Math.PI * k / layers)) / 2, 1.6);
        var levels = new List<Level> { Level.Cut(hull, height, 0, points) };
        for (var k = 1; k <= layers; k++)
        {
            double top = Edge(k - 1), bottom = Edge(k);
            levels.Add(Level.Cut(hull, height, (top + bottom) / 2, points));
            levels.Add(k == layers ? new Level(bottom, [], [], []) : Level.Cut(hull, height, bottom, points));
        }

        return new WaterSlices([.. levels]);
    }

    /// <summary>∬ (∂y/∂x) e^(fall z) e^(i turn x) dx dz over the immersed half skin, z ≤ 0 from the water plane, x in the hull frame.</summary>
    /// <param name="turn">Wave number along the hull [1/m].</param>
    /// <param name="fall">Decay with depth [1/m].</param>
    public Complex Amplitude(double turn, double fall)
    {
        if (_levels.Length == 0)
            return 0;
        Complex sum = 0, a = _levels[0].Along(turn);
        for (var k = 2; k < _levels.Length; k += 2)
        {
            double top = _levels[k - 2].Depth, thick = _levels[k].Depth - top;

            // Nothing below a depth at which the wave has died away to rounding.
            if (fall * top > 40)
                break;
            Complex b = _levels[k - 1].Along(turn), c = _levels[k].Along(turn);
            var (m0, m1, m2) = OscillatingMoments.Of(-fall * thick);
            sum += Math.Exp(-fall * top) * thick * ((a * m0) + (((-3 * a) + (4 * b) - c) * m1) + (((2 * a) - (4 * b) + (2 * c)) * m2));
            a = c;
        }

        return sum;
    }

    /// <summary>One waterline: points from its fore to its after end.</summary>
    private sealed class Level(double depth, double[] x, double[] y, double[] slope)
    {
        public double Depth => depth;

        public static Level Cut(HullSurface hull, double height, double depth, int points)
        {
            var region = new WaterRegion(hull.Side, height - depth);
            if (region.Spans.Count == 0)
                return new Level(depth, [], [], []);
            double from = region.Spans[0][0], to = region.Spans[^1][^1];
            double[] x = new double[points + 1], y = new double[points + 1], slope = new double[points + 1];
            for (var k = 0; k <= points; k++)
            {
                var (point, along) = region.AlongAt(from + ((to - from) * (1 - Math.Cos(Math.PI * k / points)) / 2));
                (x[k], y[k], slope[k]) = (point.X, point.Y, along.Y / along.X);
            }

            return new Level(depth, x, y, slope);
        }

        /// <summary>∫ (dy/dx) e^(i turn x) dx along it.</summary>
        public Complex Along(double turn)
        {
            Complex sum = 0;
            for (var k = 1; k < x.Length; k++)
            {
                double h = x[k] - x[k - 1], rise = (y[k] - y[k - 1]) / h;
                var (m0, m1, m2) = OscillatingMoments.Of(new Complex(0, turn * h));
                double m = slope[k - 1], n = slope[k];
                sum += h * Complex.FromPolarCoordinates(1, turn * x[k - 1])
                    * ((m * m0) + (((6 * rise) - (4 * m) - (2 * n)) * m1) + ((3 * (m + n - (2 * rise))) * m2));
            }

            return sum;
        }
    }
}
