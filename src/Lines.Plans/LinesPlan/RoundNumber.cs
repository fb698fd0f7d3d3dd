namespace Lines.Plans.LinesPlan;

/// <summary>Numbers that a scale may be told in: 1, 2, 5 and their tens.</summary>
internal static class RoundNumber
{
    /// <summary>The least of them that is no less than a value; 1 where the value is not above 0.</summary>
    public static double AtLeast(double value)
    {
        if (!(value > 0))
            return 1;
        var ten = Math.Pow(10, Math.Floor(Math.Log10(value) + 1e-9));
        return new[] { 1.0, 2, 5, 10 }.Select(m => m * ten).First(m => m >= value * (1 - 1e-9));
    }
}
