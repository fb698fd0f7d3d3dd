namespace Lines.Kernel.Numerics;

/// <summary>The greatest value of a function of one variable.</summary>
public static class Peak
{
    /// <summary>Relative width at which values can no longer tell places apart: the square root of rounding.</summary>
    private const double Narrow = 1.5e-8;

    private static readonly double s_golden = (3 - Math.Sqrt(5)) / 2;

    /// <summary>The greatest value over an interval that is cut so finely that between three neighbors there is one peak.</summary>
    /// <remarks>
    /// <para><b>Method.</b> The best of the given places, then the minimizer of [Brent] between its neighbors: parabolas through the
    /// three best points while they converge, golden section otherwise.</para>
    /// <para><b>Accuracy.</b> The value to rounding, the place to 1.5e-8 of the interval where the peak is round.</para>
    /// </remarks>
    /// <param name="f">The function.</param>
    /// <param name="places">Rising places, ends included; at least one.</param>
    /// <returns>The place and the value.</returns>
    public static (double At, double Value) Over(Func<double, double> f, IReadOnlyList<double> places)
    {
        ArgumentNullException.ThrowIfNull(f);
        ArgumentNullException.ThrowIfNull(places);
        (double At, double Value) best = (places[0], f(places[0]));
        var index = 0;
        for (var i = 1; i < places.Count; i++)
        {
            var value = f(places[i]);
            if (value > best.Value)
                (best, index) = ((places[i], value), i);
        }

        double low = places[Math.Max(0, index - 1)], high = places[Math.Min(places.Count - 1, index + 1)];
        var refined = high > low ? Between(f, low, high) : best;
        return refined.Value > best.Value ? refined : best;
    }

    private static (double At, double Value) Between(Func<double, double> f, double a, double b)
    {
        var close = Narrow * Math.Max(Math.Abs(a), Math.Abs(b));
        double x = a + (s_golden * (b - a)), w = x, v = x, step = 0, before = 0;
        double fx = f(x), fw = fx, fv = fx;
        while (Math.Abs(x - ((a + b) / 2)) > (2 * close) - ((b - a) / 2))
        {
            var middle = (a + b) / 2;
            double p = 0, q = 0;
            if (Math.Abs(before) > close)
            {
                double r = (x - w) * (fx - fv), s = (x - v) * (fx - fw);
                p = ((x - v) * s) - ((x - w) * r);
                q = 2 * (s - r);
                (p, q) = q > 0 ? (-p, q) : (p, -q);
            }

            var parabola = Math.Abs(p) < Math.Abs(q * before / 2) && p > q * (a - x) && p < q * (b - x);
            before = parabola ? step : x < middle ? b - x : a - x;
            step = parabola ? p / q : s_golden * before;
            if (parabola && (x + step - a < 2 * close || b - x - step < 2 * close))
                step = x < middle ? close : -close;
            var u = x + (Math.Abs(step) >= close ? step : Math.CopySign(close, step));
            var fu = f(u);
            if (fu >= fx)
            {
                (a, b) = u >= x ? (x, b) : (a, x);
                (v, fv, w, fw, x, fx) = (w, fw, x, fx, u, fu);
                continue;
            }

            (a, b) = u < x ? (u, b) : (a, u);
            if (fu >= fw || w == x)
                (v, fv, w, fw) = (w, fw, u, fu);
            else if (fu >= fv || v == x || v == w)
                (v, fv) = (u, fu);
        }

        return (x, fx);
    }
}
