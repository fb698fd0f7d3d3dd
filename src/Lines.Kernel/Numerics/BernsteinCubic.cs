namespace Lines.Kernel.Numerics;

/// <summary>A cubic on [0, 1] given by its four Bernstein ordinates: where it passes from below 0 to 0 or above, and its least value.</summary>
public static class BernsteinCubic
{
    /// <summary>Width under which two crossings are none: they lie closer than rounding of a place can tell.</summary>
    private const double Narrow = 1e-14;

    /// <summary>Value at t.</summary>
    public static double At(ReadOnlySpan<double> b, double t)
    {
        var s = 1 - t;
        double p = (s * b[0]) + (t * b[1]), q = (s * b[1]) + (t * b[2]), r = (s * b[2]) + (t * b[3]);
        return (s * ((s * p) + (t * q))) + (t * ((s * q) + (t * r)));
    }

    /// <summary>Changes of side along the ordinates, 0 counted as above; the cubic has no more crossings than that.</summary>
    public static int Variations(ReadOnlySpan<double> b) =>
        (b[0] < 0 != b[1] < 0 ? 1 : 0) + (b[1] < 0 != b[2] < 0 ? 1 : 0) + (b[2] < 0 != b[3] < 0 ? 1 : 0);

    /// <summary>All crossings, rising in t, each with whether the cubic rises through it.</summary>
    /// <remarks><b>Method.</b> Halved until the ordinates change side once at most; then Newton's method kept in its bracket.</remarks>
    /// <param name="b">The ordinates.</param>
    /// <param name="places">Receives up to three crossings.</param>
    /// <param name="rises">Receives for each whether the value goes from below 0 to 0 or above.</param>
    /// <returns>How many there are.</returns>
    public static int Crossings(ReadOnlySpan<double> b, Span<double> places, Span<bool> rises)
    {
        var count = 0;
        Find(b, 0, 1, places, rises, ref count);
        return count;
    }

    /// <summary>The one crossing of a cubic whose ends lie on opposite sides.</summary>
    public static double Crossing(ReadOnlySpan<double> b)
    {
        double c1 = 3 * (b[1] - b[0]), c2 = 3 * (b[0] - (2 * b[1]) + b[2]), c3 = b[3] - b[0] + (3 * (b[1] - b[2]));
        return Zero(b[0], c1, c2, c3, 0, 1, b[0] / (b[0] - b[3]));
    }

    /// <summary>The zero of c0 + c1 t + c2 t² + c3 t³ between two places where it has opposite signs; the nearer end where it has not.</summary>
    /// <param name="c0">Coefficient of 1.</param>
    /// <param name="c1">Coefficient of t.</param>
    /// <param name="c2">Coefficient of t².</param>
    /// <param name="c3">Coefficient of t³.</param>
    /// <param name="low">One end.</param>
    /// <param name="high">The other end.</param>
    /// <param name="start">Where to begin.</param>
    public static double Zero(double c0, double c1, double c2, double c3, double low, double high, double start)
    {
        double atLow = Value(low), atHigh = Value(high);
        if (atLow < 0 == atHigh < 0)
            return Math.Abs(atLow) < Math.Abs(atHigh) ? low : high;
        var negativeLow = atLow < 0;
        double t = start > low && start < high ? start : (low + high) / 2, before = high - low;
        while (true)
        {
            var f = Value(t);
            if (f == 0)
                return t;
            if (f < 0 == negativeLow)
                low = t;
            else
                high = t;
            var next = t - (f / (c1 + (t * ((2 * c2) + (3 * t * c3)))));
            if (!(next >= low && next <= high && Math.Abs(next - t) <= before / 2))
                next = (low + high) / 2;
            before = Math.Abs(next - t);
            if (before <= 4e-16)
                return next;
            t = next;
        }

        double Value(double at) => c0 + (at * (c1 + (at * (c2 + (at * c3)))));
    }

    /// <summary>The least value over [0, 1] and its place.</summary>
    public static (double At, double Value) Least(ReadOnlySpan<double> b)
    {
        (double At, double Value) best = b[0] <= b[3] ? (0, b[0]) : (1, b[3]);
        double a = b[3] - b[0] + (3 * (b[1] - b[2])), c = b[1] - b[0], h = b[0] - (2 * b[1]) + b[2]; // slope / 3 = a t² + 2 h t + c
        var d = (h * h) - (a * c);
        if (d < 0)
            return best;
        var q = -(h + Math.CopySign(Math.Sqrt(d), h));
        foreach (var t in (ReadOnlySpan<double>)[q / a, c / q])
        {
            if (t > 0 && t < 1 && At(b, t) is var value && value < best.Value)
                best = (t, value);
        }

        return best;
    }

    /// <summary>The ordinates of the two halves.</summary>
    public static void Halve(ReadOnlySpan<double> b, Span<double> fore, Span<double> aft)
    {
        double p = (b[0] + b[1]) / 2, q = (b[1] + b[2]) / 2, r = (b[2] + b[3]) / 2, pq = (p + q) / 2, qr = (q + r) / 2, m = (pq + qr) / 2;
        (fore[0], fore[1], fore[2], fore[3]) = (b[0], p, pq, m);
        (aft[0], aft[1], aft[2], aft[3]) = (m, qr, r, b[3]);
    }

    private static void Find(ReadOnlySpan<double> b, double from, double to, Span<double> places, Span<bool> rises, ref int count)
    {
        var variations = Variations(b);
        if (variations == 0)
            return;
        if (variations == 1 || to - from < Narrow)
        {
            if (b[0] < 0 == b[3] < 0)
                return;
            places[count] = from + ((to - from) * Crossing(b));
            rises[count++] = b[0] < 0;
            return;
        }

        Span<double> fore = stackalloc double[4];
        Span<double> aft = stackalloc double[4];
        Halve(b, fore, aft);
        var middle = (from + to) / 2;
        Find(fore, from, middle, places, rises, ref count);
        Find(aft, middle, to, places, rises, ref count);
    }
}
