namespace Lines.Hull.Hydrostatics;

/// <summary>Measures that published small-craft rules take, as guides to compare with; none of them certifies anything.</summary>
/// <remarks>
/// <b>Scope.</b> The rules of 33 CFR 183 are for monohulls, boats of one closed waterline, and leave out canoes, kayaks, sailboats and inflatables; ISO
/// 12217-3 leaves out canoes and kayaks and is for boats under 6 m of length. An outrigger boat is outside of both.
/// <b>Source.</b> [CFR183], [ISO12217], from secondary copies.
/// </remarks>
public static class RuleGuides
{
    /// <summary>What an outside reader must know of the guides.</summary>
    public const string Scope =
        "33 CFR 183 is for boats of one closed waterline and leaves out canoes, kayaks, sailboats and inflatables; ISO 12217-3 leaves out canoes and kayaks. Guides, not compliance.";

    private const double Pound = 0.45359237;

    /// <summary>Greatest load of a boat moved by hand: three tenths of what the displacement to the point of flooding leaves (33 CFR 183.37).</summary>
    /// <param name="greatest">Displacement level to the lowest sheer [kg].</param>
    /// <param name="boat">The empty boat [kg].</param>
    /// <returns>The load [kg]; not below 0.</returns>
    public static double LoadByHand(double greatest, double boat) => Math.Max(0, 0.3 * (greatest - boat));

    /// <summary>Persons of a boat moved by hand (33 CFR 183.43): nine tenths of the load and 32 lb over 141 lb each, a half rounded up.</summary>
    /// <param name="load">Greatest load [kg].</param>
    public static int Persons(double load) => (int)Math.Floor((((0.9 * load / Pound) + 32) / 141) + 0.5);

    /// <summary>Greatest heel under a load moved to one side (ISO 12217): 11.5 + (24 - L)³ / 520 degrees.</summary>
    /// <param name="length">Length of the hull [m], under 24.</param>
    /// <returns>The heel [rad].</returns>
    public static double OffsetHeel(double length) => (11.5 + (Math.Pow(24 - length, 3) / 520)) * Math.PI / 180;

    /// <summary>Least sail area from which a boat counts as a sailing boat (ISO 12217-3): 0.07 m^(2/3).</summary>
    /// <param name="mass">Loaded mass [kg].</param>
    /// <returns>The area [m²].</returns>
    public static double SailingFrom(double mass) => 0.07 * Math.Pow(mass, 2.0 / 3);
}
