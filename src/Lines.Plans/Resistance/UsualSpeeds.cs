using Lines.Kernel.Units;

namespace Lines.Plans.Resistance;

/// <summary>The speeds that drag is told and drawn at where none are asked for.</summary>
public static class UsualSpeeds
{
    /// <summary>The Froude number they end at: what slim boats reach under paddle and sail without planing (common practice, no source).</summary>
    public const double MostFroude = 0.6;

    private const double Least = 1.5 * Standards.Knot, Step = 0.5 * Standards.Knot;

    /// <summary>The greatest speed [m/s].</summary>
    /// <param name="length">Length of the main hull's waterline [m].</param>
    public static double Fastest(double length) => MostFroude * Math.Sqrt(Standards.Gravity * length);

    /// <summary>Every half knot from a knot and a half on [m/s].</summary>
    /// <param name="length">Length of the main hull's waterline [m].</param>
    public static IReadOnlyList<double> Of(double length) => [.. Enumerable.Range(0, 1 + (int)((Fastest(length) - Least) / Step)).Select(k => Least + (k * Step))];
}
