namespace Lines.Kernel.Numerics;

/// <summary>Gauss-Legendre quadrature: abscissas and weights on [-1, 1], made once per order.</summary>
/// <remarks>
/// <para><b>Method.</b> Newton's iteration on the Legendre polynomial from Tricomi's starting values.</para>
/// <para><b>Accuracy.</b> A rule of n points is exact for polynomials up to degree 2n - 1, to rounding.</para>
/// </remarks>
public sealed class GaussLegendre
{
    private static readonly GaussLegendre?[] s_rules = new GaussLegendre?[65];

    private GaussLegendre(int points)
    {
        Abscissas = new double[points];
        Weights = new double[points];
        for (var i = 0; i < points; i++)
        {
            var x = Math.Cos(Math.PI * (i + 0.75) / (points + 0.5));
            double slope, step;
            do
            {
                (var value, slope) = Legendre(points, x);
                step = value / slope;
                x -= step;
            }
            while (Math.Abs(step) > 1e-15);
            (_, slope) = Legendre(points, x);
            Abscissas[points - 1 - i] = x;
            Weights[points - 1 - i] = 2 / ((1 - (x * x)) * slope * slope);
        }
    }

    /// <summary>Abscissas, increasing.</summary>
    public double[] Abscissas { get; }

    /// <summary>Weights; they add to 2.</summary>
    public double[] Weights { get; }

    /// <summary>The rule of a number of points.</summary>
    /// <param name="points">1 to 64.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="points"/> is outside 1 to 64.</exception>
    public static GaussLegendre Rule(int points)
    {
        if (points is < 1 or > 64)
            throw new ArgumentOutOfRangeException(nameof(points), points, "a rule has 1 to 64 points");
        return s_rules[points] ??= new GaussLegendre(points);
    }

    /// <summary>Integral of a function over an interval by a rule of this many points.</summary>
    public static double Integrate(Func<double, double> f, double from, double to, int points)
    {
        ArgumentNullException.ThrowIfNull(f);
        var rule = Rule(points);
        double half = (to - from) / 2, middle = (to + from) / 2, sum = 0;
        for (var i = 0; i < points; i++)
            sum += rule.Weights[i] * f(middle + (half * rule.Abscissas[i]));
        return half * sum;
    }

    private static (double Value, double Slope) Legendre(int n, double x)
    {
        double previous = 1, value = x;
        for (var k = 2; k <= n; k++)
            (previous, value) = (value, ((((2 * k) - 1) * x * value) - ((k - 1) * previous)) / k);
        return (value, n * ((x * value) - previous) / ((x * x) - 1));
    }
}
