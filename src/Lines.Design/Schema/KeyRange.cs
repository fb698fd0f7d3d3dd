using System.Globalization;
using Lines.Kernel.Units;

namespace Lines.Design.Schema;

/// <summary>Shows the values of a key and its range in the key's own unit.</summary>
public static class KeyRange
{
    /// <summary>A value as it would be written in the file, without quotes.</summary>
    /// <param name="key">The key.</param>
    /// <param name="value">The value, SI.</param>
    public static string Show(SchemaKey key, double value)
    {
        ArgumentNullException.ThrowIfNull(key);
        return key.Kind switch
        {
            KeyKind.Angle => new Angle(value).ToText(),
            KeyKind.Length or KeyKind.Lengths when Math.Abs(value) >= 1 => value.ToString("0.####", CultureInfo.InvariantCulture) + " m",
            KeyKind.Length or KeyKind.Lengths => new Length(value).ToText(LengthNotation.Millimeters),
            _ => value.ToString("0.####", CultureInfo.InvariantCulture),
        };
    }

    /// <summary>The range of a key: <c>1 m to 15 m</c>.</summary>
    public static string Show(SchemaKey key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return $"{Show(key, key.Least)} to {Show(key, key.Greatest)}";
    }

    /// <summary>Whether a value lies in the range of a key, its ends included to rounding.</summary>
    public static bool Holds(SchemaKey key, double value)
    {
        ArgumentNullException.ThrowIfNull(key);
        const double rounding = 1e-12;
        return value >= key.Least - rounding && value <= key.Greatest + rounding;
    }
}
