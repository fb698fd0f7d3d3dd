namespace Lines.Kernel.Numerics;

/// <summary>A zero of a function of one variable inside a bracket.</summary>
public static class Root
{
    /// <summary>A few units in the last place of a number of size 1.</summary>
    private const double Rounding = 4e-16;

    /// <summary>The place at which a condition begins to hold on the way from where it does not to where it does; it changes once.</summary>
    /// <remarks><b>Method.</b> Bisection. <b>Accuracy.</b> The next number back does not fulfill the condition.</remarks>
    /// <param name="holds">The condition.</param>
    /// <param name="from">Where it does not hold.</param>
    /// <param name="to">Where it does, on either side.</param>
    public static double FirstWhere(Func<double, bool> holds, double from, double to)
    {
        ArgumentNullException.ThrowIfNull(holds);
        while ((from + to) / 2 is var middle && middle != from && middle != to)
        {
            if (holds(middle))
                to = middle;
            else
                from = middle;
        }

        return to;
    }

    /// <summary>The zero between two places at which the function has opposite signs.</summary>
    /// <remarks>
    /// <para><b>Method.</b> Newton's step while it stays in the bracket and at least halves the step before; else the bracket is
    /// halved. Either way steps or bracket shrink by two each time, so the iteration always ends.</para>
    /// <para><b>Accuracy.</b> Rounding of the place, or of the function where it is flat.</para>
    /// </remarks>
    /// <param name="f">The function and its derivative.</param>
    /// <param name="low">One end.</param>
    /// <param name="high">The other end.</param>
    /// <returns>The place; an end at which the function is exactly 0 is returned as it is.</returns>
    /// <exception cref="ArithmeticException">The function has one sign at both ends, or is not a number; the message carries the values.</exception>
    public static double Between(Func<double, (double Value, double Slope)> f, double low, double high)
    {
        ArgumentNullException.ThrowIfNull(f);
        double atLow = f(low).Value, atHigh = f(high).Value;
        if (atLow == 0)
            return low;
        if (atHigh == 0)
            return high;
        if (!(atLow * atHigh < 0))
            throw new ArithmeticException(Invariant($"no zero is bracketed: {atLow} at {low}, {atHigh} at {high}"));
        var (negative, positive) = atLow < 0 ? (low, high) : (high, low);
        var size = Math.Max(Math.Abs(low), Math.Abs(high));
        var t = low + ((high - low) * (atLow / (atLow - atHigh)));
        var before = Math.Abs(high - low);
        while (true)
        {
            var (value, slope) = f(t);
            if (value == 0)
                return t;
            (negative, positive) = value < 0 ? (t, positive) : (negative, t);
            var next = t - (value / slope);
            var good = next >= Math.Min(negative, positive) && next <= Math.Max(negative, positive) && Math.Abs(next - t) <= before / 2;
            if (!good)
                next = (negative + positive) / 2;
            before = Math.Abs(next - t);
            if (before <= Rounding * size)
                return next;
            t = next;
        }
    }
}
