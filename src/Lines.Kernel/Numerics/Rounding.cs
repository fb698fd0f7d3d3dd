namespace Lines.Kernel.Numerics;

/// <summary>Rounds numbers to steps.</summary>
public static class Rounding
{
    /// <summary>A value rounded to a step on one side; one that is on a step but for rounding stays.</summary>
    /// <param name="value">The value.</param>
    /// <param name="step">The step, above 0.</param>
    /// <param name="upward">Whether to the next step above; otherwise to the next below.</param>
    public static double ToStep(double value, double step, bool upward)
    {
        var steps = value / step;
        return step * (Math.Abs(steps - Math.Round(steps)) < 1e-6 ? Math.Round(steps) : upward ? Math.Ceiling(steps) : Math.Floor(steps));
    }
}
