using System.Numerics;

namespace Lines.Hull.Resistance;

/// <summary>Integrals of a quadratic times an exponential over the unit interval, exact however fast it turns or falls.</summary>
internal static class OscillatingMoments
{
    /// <summary>Below this modulus the closed forms lose digits, and the series is summed.</summary>
    private const double Small = 0.8;

    private const int Terms = 18;

    /// <summary>∫₀¹ sⁿ e^(c s) ds for n = 0, 1, 2.</summary>
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
}
