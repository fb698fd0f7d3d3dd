using System.Globalization;

namespace Lines.Kernel.Units;

/// <summary>An angle, kept in radians, read and shown in degrees.</summary>
/// <remarks><b>Accuracy.</b> <c>Parse(ToText(x))</c> is within 0.005 degrees of x.</remarks>
/// <param name="Radians">The angle [rad].</param>
public readonly record struct Angle(double Radians)
{
    private const string Notations = "write it like 12 deg or 12.5 deg";

    /// <summary>The angle in degrees.</summary>
    public double Degrees => Radians * (180 / Math.PI);

    /// <summary>An angle from degrees.</summary>
    public static Angle FromDegrees(double degrees) => new(degrees * (Math.PI / 180));

    /// <summary>Reads an angle (<c>12 deg</c>, <c>12.5°</c>, <c>0.2 rad</c>), or says what is wrong with the text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="angle">The angle; zero where the text is not one.</param>
    /// <param name="fault">What is wrong; null where nothing is.</param>
    /// <returns>Whether the text is an angle.</returns>
    public static bool TryParse(string text, out Angle angle, out UnitFault? fault)
    {
        ArgumentNullException.ThrowIfNull(text);
        fault = Read(text, out angle);
        return fault is null;
    }

    /// <summary>Reads an angle.</summary>
    /// <param name="text">The text; see <see cref="TryParse"/>.</param>
    /// <returns>The angle.</returns>
    /// <exception cref="FormatException">The text is not an angle; the message says what would be right.</exception>
    public static Angle Parse(string text) =>
        TryParse(text, out var angle, out var fault) ? angle : throw new FormatException(fault!.ToString());

    /// <summary>The angle in degrees to a hundredth: <c>12.5 deg</c>.</summary>
    public string ToText()
    {
        var shown = Math.Round(Degrees, 2, MidpointRounding.AwayFromZero);
        return (shown == 0 ? 0 : shown).ToString("0.##", CultureInfo.InvariantCulture) + " deg";
    }

    /// <summary>The angle in degrees.</summary>
    public override string ToString() => ToText();

    private static UnitFault? Read(string text, out Angle angle)
    {
        angle = default;
        if (QuantityText.Open(text, "an angle", Notations, out var scan) is { } unread)
            return unread;
        var sign = scan.Take('-') ? -1 : 1;
        if (sign > 0)
            scan.Take('+');
        scan.SkipBlanks();
        if (QuantityText.Number(ref scan, text, "an angle", Notations, ("deg", "rad"), sign, out var value) is { } fault)
            return fault;
        if (QuantityText.Unit(ref scan, Notations, out var unit) is { } after)
            return after;
        switch (unit)
        {
            case "deg" or "°" or "degree" or "degrees":
                angle = FromDegrees(value);
                return null;
            case "rad":
                angle = new Angle(value);
                return null;
            default:
                return new UnitFault($"has the unknown unit \"{unit}\"", "angles are in deg or rad");
        }
    }
}
