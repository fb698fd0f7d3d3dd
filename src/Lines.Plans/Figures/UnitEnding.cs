namespace Lines.Plans.Figures;

/// <summary>How the SI unit of a figure ends its name for programs: <c>displacement_kg</c>.</summary>
public static class UnitEnding
{
    // Longer endings before those they end in, so that a name is read by its own.
    private static readonly (string Ending, string Unit, Quantity[] Of)[] s_all =
    [
        ("_kg_per_m", "kg/m", [Quantity.MassPerLength]),
        ("_m_per_s", "m/s", [Quantity.Speed, Quantity.Wind]),
        ("_m_rad", "m rad", [Quantity.RightingArea]),
        ("_kg_m", "kg m", [Quantity.MassMoment, Quantity.TrimMoment]),
        ("_n_m", "N m", [Quantity.Moment]),
        ("_rad", "rad", [Quantity.Angle]),
        ("_kg", "kg", [Quantity.Mass]),
        ("_m2", "m²", [Quantity.Area, Quantity.SectionArea]),
        ("_m3", "m³", [Quantity.Volume]),
        ("_m4", "m⁴", [Quantity.SecondMoment]),
        ("_m", "m", [Quantity.Length, Quantity.Run, Quantity.Distance]),
        ("_n", "N", [Quantity.Force, Quantity.Drag]),
        ("_w", "W", [Quantity.Power]),
        ("_s", "s", [Quantity.Duration]),
    ];

    /// <summary>The ending of names of a quantity; empty for a pure number.</summary>
    /// <param name="quantity">The quantity.</param>
    public static string Of(Quantity quantity) => s_all.FirstOrDefault(e => e.Of.Contains(quantity)).Ending ?? "";

    /// <summary>A name for programs as it is read by people: its words, then its unit.</summary>
    /// <param name="key">The name with its ending.</param>
    public static string InWords(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        var (ending, unit, _) = s_all.FirstOrDefault(e => key.EndsWith(e.Ending, StringComparison.Ordinal));
        return ending is null ? key.Replace('_', ' ') : $"{key[..^ending.Length].Replace('_', ' ')}, {unit}";
    }
}
