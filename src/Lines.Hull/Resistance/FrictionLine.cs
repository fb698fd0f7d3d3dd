namespace Lines.Hull.Resistance;

/// <summary>Frictional resistance of a smooth turbulent plank: the line of the ITTC of 1957.</summary>
/// <remarks><b>Source.</b> ITTC 1957, C_F = 0.075 / (log₁₀ Re - 2)²; tabled in Tupper, <i>Introduction to Naval Architecture</i>, table 8.3.</remarks>
public static class FrictionLine
{
    /// <summary>Below this Reynolds number the line is not meant: the flow is laminar over much of the hull.</summary>
    public const double LeastReynolds = 1e5;

    /// <summary>The frictional coefficient C_F, on wetted area and ½ ρ U².</summary>
    /// <param name="reynolds">Reynolds number, U L / ν, at least <see cref="LeastReynolds"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is below that, or no number.</exception>
    public static double Coefficient(double reynolds)
    {
        if (!(reynolds >= LeastReynolds))
            throw new ArgumentOutOfRangeException(nameof(reynolds), reynolds, "the line begins at a Reynolds number of 1e5");
        var decades = Math.Log10(reynolds) - 2;
        return 0.075 / (decades * decades);
    }
}
