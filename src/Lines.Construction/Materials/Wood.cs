namespace Lines.Construction.Materials;

/// <summary>A wood as strips, stems and rails are cut from it.</summary>
/// <param name="Name">Its name in the design file.</param>
/// <param name="Density">Density at 12 % moisture [kg/m³].</param>
/// <param name="Rupture">Modulus of rupture at 12 % moisture [Pa].</param>
/// <param name="Elasticity">Modulus of elasticity at 12 % moisture [Pa].</param>
/// <param name="Source">Where the figures are from.</param>
public sealed record Wood(string Name, double Density, double Rupture, double Elasticity, string Source)
{
    /// <summary>Water that wood holds at 12 % moisture: a specific gravity of the handbook is oven-dry weight over volume at 12 %.</summary>
    private const double WithItsWater = 1120;

    private const double Psi = 6894.757293168;

    private const string Handbook = "USDA Forest Products Laboratory, Wood Handbook, clear straight-grained wood at 12 % moisture (from secondary copies)";

    /// <summary>Strain of its outer fibers at which clear wood breaks in bending.</summary>
    public double BreakingStrain => Rupture / Elasticity;

    /// <summary>The woods of the table.</summary>
    /// <remarks>The heaviest board of a species is half as heavy again as the lightest: weigh a few.</remarks>
    public static IReadOnlyList<Wood> Table { get; } =
    [
        new("western redcedar", 0.32 * WithItsWater, 7500 * Psi, 1.11e6 * Psi, Handbook),
        new("northern white cedar", 0.31 * WithItsWater, 6500 * Psi, 0.80e6 * Psi, Handbook),
        new("Douglas-fir", 0.48 * WithItsWater, 12400 * Psi, 1.95e6 * Psi, Handbook),
        new("Sitka spruce", 430, 10200 * Psi, 1.57e6 * Psi, "density of a producer's data sheet; strength: " + Handbook),
        new("okoume", 430, 75e6, 8.47e9, "a timber data sheet"),
    ];

    /// <summary>The wood of a name; null where the table has none such.</summary>
    public static Wood? Find(string name) => Table.FirstOrDefault(w => w.Name.Equals(name, StringComparison.Ordinal));
}
