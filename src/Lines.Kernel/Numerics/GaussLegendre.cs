using MathNet.Numerics.Integration;

namespace Lines.Kernel.Numerics;

/// <summary>Gauss-Legendre quadrature on [-1, 1], each rule made once.</summary>
/// <remarks><b>Accuracy.</b> A rule of n points is exact for polynomials up to degree 2n - 1, to rounding.</remarks>
public sealed class GaussLegendre
{
    private static readonly GaussLegendre?[] s_rules = new GaussLegendre?[65];

    private GaussLegendre(int points)
    {
        var rule = new GaussLegendreRule(-1, 1, points);
        (Abscissas, Weights) = (rule.Abscissas, rule.Weights);
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
}
