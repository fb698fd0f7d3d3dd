using System.Globalization;

namespace Lines.Kernel.Units;

/// <summary>Mass of an area, as of cloth, kept in kilograms on a square meter, read and shown in g/m2 or ounces on a square yard.</summary>
/// <remarks><b>Accuracy.</b> The ounce is a sixteenth of 0.45359237 kg, the yard 0.9144 m, exactly. <c>Parse(ToText(x))</c> is within 0.5 g/m2, or
/// 0.05 oz/yd2, of x.</remarks>
/// <param name="KilogramsPerSquareMeter">The mass of an area [kg/m²].</param>
public readonly record struct ArealMass(double KilogramsPerSquareMeter)
{
    /// <summary>Kilograms on a square meter in an ounce on a square yard, exact.</summary>
    public const double OuncePerSquareYard = Mass.Pound / 16 / (0.9144 * 0.9144);

    private const string Notations = "write it like 200 g/m2 or 6 oz/yd2";

    /// <summary>Reads a mass of an area (<c>200 g/m2</c>, <c>0.2 kg/m2</c>, <c>6 oz/yd2</c>, <c>6 oz</c> as cloth is sold) and its unit, or says what is wrong with the text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="mass">The mass of an area; zero where the text is not one.</param>
    /// <param name="inOunces">Whether it is written in ounces on a square yard.</param>
    /// <param name="fault">What is wrong; null where nothing is.</param>
    /// <returns>Whether the text is a mass of an area.</returns>
    public static bool TryParse(string text, out ArealMass mass, out bool inOunces, out UnitFault? fault)
    {
        ArgumentNullException.ThrowIfNull(text);
        fault = Read(text, out mass, out inOunces);
        return fault is null;
    }

    /// <summary>Whole grams on a square meter, or tenths of an ounce on a square yard.</summary>
    /// <param name="inOunces">Whether in ounces on a square yard.</param>
    public string ToText(bool inOunces) => inOunces
        ? Math.Round(KilogramsPerSquareMeter / OuncePerSquareYard, 1, MidpointRounding.AwayFromZero).ToString("0.#", CultureInfo.InvariantCulture) + " oz/yd2"
        : Math.Round(1000 * KilogramsPerSquareMeter, MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture) + " g/m2";

    /// <summary>The mass of an area in grams on a square meter.</summary>
    public override string ToString() => ToText(inOunces: false);

    private static UnitFault? Read(string text, out ArealMass mass, out bool inOunces)
    {
        mass = default;
        inOunces = false;
        const string what = "a weight of cloth";
        if (QuantityText.Open(text, what, Notations, out var scan) is { } unread)
            return unread;
        var sign = scan.Take('-') ? -1 : 1;
        if (QuantityText.Number(ref scan, text, what, Notations, ("g/m2", "oz/yd2"), sign, out var value) is { } fault)
            return fault;
        switch (scan.Rest.Trim())
        {
            case "g/m2" or "g/m²" or "g/m^2" or "gsm":
                mass = new ArealMass(value / 1000);
                return null;
            case "kg/m2" or "kg/m²" or "kg/m^2":
                mass = new ArealMass(value);
                return null;
            case "oz/yd2" or "oz/yd²" or "oz/yd^2" or "oz" or "oz/sq yd":
                (mass, inOunces) = (new ArealMass(value * OuncePerSquareYard), true);
                return null;
            case var unit:
                return new UnitFault($"has the unknown unit \"{unit}\"", "weights of cloth are in g/m2 or oz/yd2");
        }
    }
}
