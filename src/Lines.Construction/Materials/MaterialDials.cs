using Lines.Kernel.Units;

namespace Lines.Construction.Materials;

/// <summary>What the hull is built of: the [material] table of the design file, SI.</summary>
public sealed record MaterialDials
{
    /// <summary>Whether the file has the table: the boat's weight may then be estimated where she was not weighed.</summary>
    public bool IsGiven { get; init; }

    /// <summary>Wood of strips, stems and rails.</summary>
    public Wood Wood { get; init; } = Wood.Table[0];

    /// <summary>Cloth over the whole outside [kg/m²]; 0 for none.</summary>
    public double OutsideCloth { get; init; } = 0.200;

    /// <summary>Second cloth outside, up to the design waterline [kg/m²]; 0 for none.</summary>
    public double BottomCloth { get; init; }

    /// <summary>Cloth over the whole inside [kg/m²]; 0 for none.</summary>
    public double InsideCloth { get; init; } = 0.200;

    /// <summary>Resin left on each sheathed side by the coats that fill the weave, after sanding [kg/m²].</summary>
    /// <remarks>0.15 mm of resin: common practice, no source.</remarks>
    public double FillCoats { get; init; } = 0.170;

    /// <summary>Density of the plywood of bulkheads and transom [kg/m³].</summary>
    /// <remarks>Middle of 430 to 500 kg/m³, as okoume plywood is sold.</remarks>
    public double Plywood { get; init; } = 465;

    /// <summary>Money for what is bought; null where the file gives none.</summary>
    public Prices? Prices { get; init; }
}

/// <summary>What things cost, in a currency; 0 where the file gives no price.</summary>
/// <param name="Currency">Its name, printed beside the sums.</param>
/// <param name="BoardFoot">Wood, the board foot.</param>
/// <param name="Cloth">Cloth, the square meter.</param>
/// <param name="Resin">Resin with hardener, the kilogram.</param>
/// <param name="Sheet">Mold stock, the whole sheet.</param>
/// <param name="ProfileSheet">Stock of the stem and stern molds where it is not as thick as mold stock, the whole sheet.</param>
/// <param name="PlywoodSheet">Boatbuilding plywood of bulkheads and transom, the whole sheet.</param>
public sealed record Prices(string Currency, double BoardFoot, double Cloth, double Resin, double Sheet, double ProfileSheet, double PlywoodSheet);

/// <summary>Rules that builders and suppliers print for cloth and resin.</summary>
public static class LayupRules
{
    /// <summary>Resin that wets out cloth by hand, well squeegeed, over the weight of the cloth: suppliers' worksheets.</summary>
    public const double ResinToCloth = 1.0;

    /// <summary>Density of cured epoxy [kg/m³]: a maker's data sheet.</summary>
    public const double EpoxyDensity = 1150;

    /// <summary>A US gallon [m³], exact.</summary>
    public const double Gallon = 231 * Length.Inch * Length.Inch * Length.Inch;

    /// <summary>Cloth that a US gallon of resin sees through all coats, losses in the pot among them [kg]: 60 oz, suppliers' worksheets
    /// (15 yd² of 4 oz, 10 of 6 oz, 6.5 of 10 oz).</summary>
    public const double ClothPerGallon = 60 * Mass.Pound / 16;

    /// <summary>Resin to buy for cloth [m³].</summary>
    /// <param name="cloth">Mass of all cloth [kg].</param>
    public static double ResinToBuy(double cloth) => cloth / ClothPerGallon * Gallon;

    /// <summary>Area of cloth to buy by the rule of length times girth.</summary>
    /// <remarks><b>Source.</b> Canoe builders' rule, printed with a 17.5 ft canoe: 79 ft² for each side of the planking, 52.5 ft² for a second layer below the waterline.</remarks>
    /// <param name="length">Length of the hull [m].</param>
    /// <param name="girth">Greatest girth covered, from edge to edge [m].</param>
    public static double ClothToBuy(double length, double girth) => length * girth;
}
