namespace Lines.Hull.Hydrostatics;

/// <summary>Water a boat floats in.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Density">Density [kg/m³].</param>
/// <param name="Viscosity">Kinematic viscosity [m²/s].</param>
public sealed record Water(string Name, double Density, double Viscosity)
{
    /// <summary>Fresh water at 15 °C. <b>Source.</b> ITTC 7.5-02-01-03 (2011), figures from secondary copies.</summary>
    public static Water Fresh { get; } = new("fresh water at 15 °C", 999.1026, 1.1386e-6);

    /// <summary>Sea water at 15 °C and 35.165 g of salt in a kilogram. <b>Source.</b> ITTC 7.5-02-01-03 (2011), figures from secondary copies.</summary>
    public static Water Sea { get; } = new("sea water at 15 °C", 1026.021, 1.1892e-6);
}
