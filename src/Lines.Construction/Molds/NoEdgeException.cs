namespace Lines.Construction.Molds;

/// <summary>The inside of the planking gives a mold no edge.</summary>
/// <param name="why">Why, one clause; its lengths are <see cref="Kernel.Units.Length"/> values.</param>
public sealed class NoEdgeException(FormattableString why) : ArithmeticException(Invariant(why))
{
    /// <summary>Why, one clause.</summary>
    public FormattableString Why { get; } = why;
}
