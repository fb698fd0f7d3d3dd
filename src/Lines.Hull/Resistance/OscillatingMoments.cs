using System.Numerics;

namespace Lines.Hull.Resistance;

/// <summary>Integrals of a quadratic times an exponential over the unit interval, exact however fast it turns or falls.</summary>
internal static class OscillatingMoments
{
    /// <summary>Below this modulus the closed forms lose digits, and the series is summed.</summary>
    private const double Small = 0.8;

    private const int Terms = 18;

    private static readonly double[] s_zero = Series(1);

    private static readonly double[] s_one = Series(2);

    private static readonly double[] s_two = Series(3);

    /// <summary>∫₀¹ sⁿ e^(c s) ds for n = 0, 1, 2.</summary>
    /// <param name="c">Rate, real.</param>
    public static (double Zero, double One, double Two) Of(double c)
    {
        if (Math.Abs(c) < Small)
        {
            double m0 = 0, m1 = 0, m2 = 0;
            for (var k = Terms - 1; k >= 0; k--)
                (m0, m1, m2) = ((m0 * c) + s_zero[k], (m1 * c) + s_one[k], (m2 * c) + s_two[k]);

            return (m0, m1, m2);
        }

        var e = Math.Exp(c);
        var zero = (e - 1) / c;
        var one = (e - zero) / c;
        return (zero, one, (e - (2 * one)) / c);
    }

    /// <summary>The same of a complex rate.</summary>
    /// <param name="c">Rate, any complex number.</param>
    public static (Complex Zero, Complex One, Complex Two) Of(Complex c)
    {
        if (Complex.Abs(c) < Small)
        {
            Complex m0 = 0, m1 = 0, m2 = 0, term = 1;
            for (var k = 0; k < Terms; k++)
            {
                m0 += term / (k + 1);
                m1 += term / (k + 2);
                m2 += term / (k + 3);
                term *= c / (k + 1);
            }

            return (m0, m1, m2);
        }

        var e = Complex.Exp(c);
        var zero = (e - 1) / c;
        var one = (e - zero) / c;
        return (zero, one, (e - (2 * one)) / c);
    }

    /// <summary>1 / (k! (k + n)), the coefficients of the series in c.</summary>
    private static double[] Series(int n)
    {
        var coefficients = new double[Terms];
        var factorial = 1.0;
        for (var k = 0; k < Terms; k++)
        {
            coefficients[k] = 1 / (factorial * (k + n));
            factorial *= k + 1;
        }

        return coefficients;
    }
}
