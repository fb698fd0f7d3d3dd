using System.Globalization;

namespace Lines.Kernel.Units;

/// <summary>A mass, kept in kilograms, read and shown in kilograms or pounds.</summary>
/// <remarks><b>Accuracy.</b> The pound is 0.45359237 kg exactly. <c>Parse(ToText(x))</c> is within 0.05 of the unit of x.</remarks>
/// <param name="Kilograms">The mass [kg].</param>
public readonly record struct Mass(double Kilograms)
{
    /// <summary>Kilograms in a pound, exact (international pound, 1959).</summary>
    public const double Pound = 0.45359237;

    private const string Notations = "write it like 130 kg or 287 lb";

    /// <summary>A mass from pounds.</summary>
    public static Mass FromPounds(double pounds) => new(pounds * Pound);

    /// <summary>Reads a mass (<c>130 kg</c>, <c>287.5 lb</c>, <c>1 lbs</c>) and its unit, or says what is wrong with the text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="mass">The mass; zero where the text is not one.</param>
    /// <param name="inPounds">Whether it is written in pounds.</param>
    /// <param name="fault">What is wrong; null where nothing is.</param>
    /// <returns>Whether the text is a mass.</returns>
    public static bool TryParse(string text, out Mass mass, out bool inPounds, out UnitFault? fault)
    {
        ArgumentNullException.ThrowIfNull(text);
        fault = Read(text, out mass, out inPounds);
        return fault is null;
    }

    /// <summary>The mass to a tenth: <c>130 kg</c>, <c>287.5 lb</c>.</summary>
    /// <param name="inPounds">Whether in pounds rather than kilograms.</param>
    public string ToText(bool inPounds) =>
        Math.Round(inPounds ? Kilograms / Pound : Kilograms, 1, MidpointRounding.AwayFromZero).ToString("0.#", CultureInfo.InvariantCulture) + (inPounds ? " lb" : " kg");

    /// <summary>The mass in kilograms.</summary>
    public override string ToString() => ToText(inPounds: false);

    private static UnitFault? Read(string text, out Mass mass, out bool inPounds)
    {
        mass = default;
        inPounds = false;
        if (QuantityText.Open(text, "a mass", Notations, out var scan) is { } unread)
            return unread;
        if (QuantityText.Number(ref scan, text, "a mass", Notations, ("kg", "lb"), 1, out var value) is { } fault)
            return fault;
        if (QuantityText.Unit(ref scan, Notations, out var unit) is { } after)
            return after;
        switch (unit)
        {
            case "kg":
                mass = new Mass(value);
                return null;
            case "lb" or "lbs":
                (mass, inPounds) = (FromPounds(value), true);
                return null;
            default:
                return new UnitFault($"has the unknown unit \"{unit}\"", "masses are in kg or lb");
        }
    }
}
