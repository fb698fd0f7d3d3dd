using System.Globalization;

namespace Lines.Kernel.Units;

/// <summary>An area, kept in square meters, read and shown in square meters or square feet.</summary>
/// <remarks><b>Accuracy.</b> The foot is 0.3048 m exactly. <c>Parse(ToText(x))</c> is within 0.005 of the unit of x.</remarks>
/// <param name="SquareMeters">The area [m²].</param>
public readonly record struct Area(double SquareMeters)
{
    /// <summary>Square meters in a square foot, exact.</summary>
    public const double SquareFoot = 0.3048 * 0.3048;

    private const string Notations = "write it like 7.5 m2 or 81 ft2";

    /// <summary>Reads an area (<c>7.5 m2</c>, <c>7.5 m²</c>, <c>81 ft2</c>, <c>81 sq ft</c>) and its unit, or says what is wrong with the text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="area">The area; zero where the text is not one.</param>
    /// <param name="inFeet">Whether it is written in square feet.</param>
    /// <param name="fault">What is wrong; null where nothing is.</param>
    /// <returns>Whether the text is an area.</returns>
    public static bool TryParse(string text, out Area area, out bool inFeet, out UnitFault? fault)
    {
        ArgumentNullException.ThrowIfNull(text);
        fault = Read(text, out area, out inFeet);
        return fault is null;
    }

    /// <summary>The area to a hundredth: <c>7.5 m2</c>, <c>80.73 ft2</c>.</summary>
    /// <param name="inFeet">Whether in square feet rather than square meters.</param>
    public string ToText(bool inFeet) =>
        Math.Round(inFeet ? SquareMeters / SquareFoot : SquareMeters, 2, MidpointRounding.AwayFromZero).ToString("0.##", CultureInfo.InvariantCulture) + (inFeet ? " ft2" : " m2");

    /// <summary>The area in square meters.</summary>
    public override string ToString() => ToText(inFeet: false);

    private static UnitFault? Read(string text, out Area area, out bool inFeet)
    {
        area = default;
        inFeet = false;
        if (QuantityText.Open(text, "an area", Notations, out var scan) is { } unread)
            return unread;
        if (QuantityText.Number(ref scan, text, "an area", Notations, ("m2", "ft2"), 1, out var value) is { } fault)
            return fault;
        switch (scan.Rest.Trim())
        {
            case "m2" or "m²" or "sq m" or "m^2":
                area = new Area(value);
                return null;
            case "ft2" or "ft²" or "sq ft" or "ft^2":
                (area, inFeet) = (new Area(value * SquareFoot), true);
                return null;
            case var unit:
                return new UnitFault($"has the unknown unit \"{unit}\"", "areas are in m2 or ft2");
        }
    }
}
