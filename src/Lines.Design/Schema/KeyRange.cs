using System.Globalization;
using Lines.Kernel.Numerics;
using Lines.Kernel.Units;

namespace Lines.Design.Schema;

/// <summary>Shows the values of a key and its range in the key's own unit.</summary>
public static class KeyRange
{
    /// <summary>A value as it would be written in the file, without quotes.</summary>
    /// <param name="key">The key.</param>
    /// <param name="value">The value, SI.</param>
    /// <param name="notation">The notation of a length, meters from one on where it is millimeters; of a mass or an area the unit that goes with it, kg and m2 with millimeters.</param>
    public static string Show(SchemaKey key, double value, LengthNotation notation = LengthNotation.Millimeters)
    {
        ArgumentNullException.ThrowIfNull(key);
        return key.Kind switch
        {
            KeyKind.Angle => new Angle(value).ToText(),
            KeyKind.Mass => new Mass(value).ToText(inPounds: notation != LengthNotation.Millimeters),
            KeyKind.Area => new Area(value).ToText(inFeet: notation != LengthNotation.Millimeters),
            KeyKind.ArealMass => new ArealMass(value).ToText(inOunces: notation != LengthNotation.Millimeters),
            KeyKind.Length or KeyKind.Lengths or KeyKind.Position when notation != LengthNotation.Millimeters => new Length(value).ToText(notation),
            KeyKind.Length or KeyKind.Lengths or KeyKind.Position when Math.Abs(value) >= 1 => value.ToString("0.####", CultureInfo.InvariantCulture) + " m",
            KeyKind.Length or KeyKind.Lengths or KeyKind.Position => new Length(value).ToText(LengthNotation.Millimeters),
            _ => value.ToString("0.####", CultureInfo.InvariantCulture),
        };
    }

    /// <summary>A limit as <see cref="Show(SchemaKey, double, LengthNotation)"/> shows values, rounded to the side where it still holds.</summary>
    /// <param name="key">The key.</param>
    /// <param name="limit">The limit, SI.</param>
    /// <param name="isUpper">Whether values above it are refused.</param>
    /// <param name="notation">The notation of a length.</param>
    public static string ShowLimit(SchemaKey key, double limit, bool isUpper, LengthNotation notation)
    {
        ArgumentNullException.ThrowIfNull(key);
        var step = key.Kind switch
        {
            KeyKind.Length or KeyKind.Lengths or KeyKind.Position => notation.Step(),
            KeyKind.Angle => Angle.FromDegrees(0.01).Radians,
            KeyKind.Mass => StepOfMass(notation),
            KeyKind.Area => notation == LengthNotation.Millimeters ? 0.01 : 0.01 * Area.SquareFoot,
            KeyKind.ArealMass => notation == LengthNotation.Millimeters ? 0.001 : 0.1 * ArealMass.OuncePerSquareYard,
            _ => 0.0001,
        };
        return Show(key, Rounding.ToStep(limit, step, upward: !isUpper), notation);
    }

    /// <summary>The range of a key: <c>1 m to 15 m</c>.</summary>
    /// <param name="key">The key.</param>
    /// <param name="notation">The notation of lengths.</param>
    public static string Show(SchemaKey key, LengthNotation notation = LengthNotation.Millimeters)
    {
        ArgumentNullException.ThrowIfNull(key);
        return $"{ShowLimit(key, key.Least, isUpper: false, notation)} to {ShowLimit(key, key.Greatest, isUpper: true, notation)}";
    }

    /// <summary>The step a mass is told in [kg].</summary>
    internal static double StepOfMass(LengthNotation notation) => notation == LengthNotation.Millimeters ? 0.1 : 0.1 * Mass.Pound;

    /// <summary>Whether a value lies in the range of a key, its ends included to rounding.</summary>
    public static bool Holds(SchemaKey key, double value)
    {
        ArgumentNullException.ThrowIfNull(key);
        const double rounding = 1e-12;
        return value >= key.Least - rounding && value <= key.Greatest + rounding;
    }
}
