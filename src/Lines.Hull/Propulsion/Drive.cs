namespace Lines.Hull.Propulsion;

/// <summary>What a crew drives a boat with, and how much of its power goes into the boat.</summary>
/// <param name="Key">Its name in a command and in the numbers.</param>
/// <param name="Name">Its name in words.</param>
/// <param name="Efficiency">Towing power over the power of the crew, 0 to 1.</param>
/// <param name="Source">Where that is from.</param>
public sealed record Drive(string Key, string Name, double Efficiency, string Source)
{
    /// <summary>A paddle with flat blades.</summary>
    public static Drive FlatBlade { get; } = new("flat", "flat blade", 0.75, "Jackson, Locke and Brown 1992, as quoted");

    /// <summary>A paddle with wing blades.</summary>
    public static Drive WingBlade { get; } = new("wing", "wing blade", 0.89, "Jackson, Locke and Brown 1992, as quoted");

    /// <summary>Pedals and a slender propeller.</summary>
    public static Drive Pedals { get; } = new("pedals", "pedals and propeller", 0.8, "propeller 0.85 and gears 0.95, common practice, no source");

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Drive> All { get; } = [FlatBlade, WingBlade, Pedals];
}
