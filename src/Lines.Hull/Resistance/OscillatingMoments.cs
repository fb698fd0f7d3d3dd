using System.Numerics;

namespace Lines.Hull.Resistance;

/// <summary>Integrals of a quadratic times an exponential over the unit interval, exact however fast it turns or falls.</summary>
internal static class OscillatingMoments
{
    /// <summary>Below this modulus a real rate's closed forms lose digits, 2e-13 of them at it, and the series is summed.</summary>
    private const double SmallReal = 0.125;

    /// <summary>The same of a complex rate.</summary>
    private const double Small = 0.8;

    private const int RealTerms = 9, Terms = 18;

    /// <summary>A term of the series that adds nothing.</summary>
    private const double Vanished = 1e-17;

    private static readonly double[] s_two = [.. Enumerable.Range(0, RealTerms).Select(k => 1 / (Enumerable.Range(1, k).Aggregate(1.0, (product, n) => product * n) * (k + 3)))];

    /// <summary>∫₀¹ sⁿ e^(c s) ds for n = 0, 1, 2, and e^c.</summary>
    /// <param name="c">Rate, real.</param>
    public static (double Zero, double One, double Two, double End) Of(double c)
    {
        var e = Math.Exp(c);
        if (Math.Abs(c) < SmallReal)
        {
            // From the highest down nothing is lost: by parts, ∫ sⁿ⁻¹ e^(c s) = (e^c - c ∫ sⁿ e^(c s)) / n.
            var two = 0.0;
            for (var k = RealTerms - 1; k >= 0; k--)
                two = (two * c) + s_two[k];
            var one = (e - (c * two)) / 2;
            return (e - (c * one), one, two, e);
        }

        var inverse = 1 / c;
        double m0 = (e - 1) * inverse, m1 = (e - m0) * inverse;
        return (m0, m1, (e - (2 * m1)) * inverse, e);
    }

    /// <summary>The same of a complex rate.</summary>
    /// <param name="c">Rate, any complex number.</param>
    public static (Complex Zero, Complex One, Complex Two) Of(Complex c)
    {
        if (Complex.Abs(c) < Small)
        {
            Complex m0 = 0, m1 = 0, m2 = 0, term = 1;
            for (var k = 0; k < Terms && Complex.Abs(term) > Vanished; k++)
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
