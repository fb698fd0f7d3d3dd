using System.Globalization;

namespace Lines.Kernel.Units;

/// <summary>Writes lengths in the notations, rounding once to the notation's step, halves away from zero.</summary>
internal static class LengthWriter
{
    /// <summary>Beyond this the steps no longer fit a whole number; nothing measured is near it [m].</summary>
    private const double Longest = 1e9;

    public static string Write(double meters, LengthNotation notation, bool withUnit, bool everyTenth = false)
    {
        if (!(Math.Abs(meters) <= Longest))
            throw new ArgumentOutOfRangeException(nameof(meters), meters, Invariant($"a length shown is at most {Longest} m"));

        var steps = (long)Math.Round(Math.Abs(meters) / notation.Step(), MidpointRounding.AwayFromZero);
        var sign = meters < 0 && steps != 0 ? "-" : "";
        return sign + notation switch
        {
            LengthNotation.Millimeters => Tenths(steps, everyTenth) + (withUnit ? " mm" : ""),
            LengthNotation.Inches => Mixed(steps, 32) + (withUnit ? " in" : ""),
            LengthNotation.FeetInches => Invariant($"{steps / (12 * 32)}' {Mixed(steps % (12 * 32), 32, zeroWhole: true)}\""),
            _ => Eighths(steps),
        };
    }

    /// <summary>What is bought by its size is shown no further off than this [m], or exactly.</summary>
    private const double SizeTolerance = 0.00002;

    public static string Size(double meters, LengthNotation notation)
    {
        if (notation != LengthNotation.Millimeters && IsWhole(meters, LengthNotation.Inches))
            return Write(meters, LengthNotation.Inches, withUnit: true);
        var metric = IsWhole(meters, LengthNotation.Millimeters) ? Write(meters, LengthNotation.Millimeters, withUnit: true) : Invariant($"{meters * 1000:0.##} mm");
        return notation == LengthNotation.Millimeters ? metric : Invariant($"{meters / Length.Inch:0.000} in ({metric})");
    }

    private static bool IsWhole(double meters, LengthNotation notation) =>
        Math.Abs(meters - (Math.Round(meters / notation.Step()) * notation.Step())) <= SizeTolerance;

    private static string Tenths(long tenths, bool every) =>
        tenths % 10 == 0 && !every ? (tenths / 10).ToString(CultureInfo.InvariantCulture) : Invariant($"{tenths / 10}.{tenths % 10}");

    // After feet no inches are said so: 17' 23/32" is easily taken for 17 feet and some 23 inches.
    private static string Mixed(long steps, long denominator, bool zeroWhole = false)
    {
        var whole = steps / denominator;
        var numerator = steps % denominator;
        if (numerator == 0)
            return whole.ToString(CultureInfo.InvariantCulture);
        while (numerator % 2 == 0)
        {
            numerator /= 2;
            denominator /= 2;
        }

        return whole == 0 && !zeroWhole ? Invariant($"{numerator}/{denominator}") : Invariant($"{whole} {numerator}/{denominator}");
    }

    private static string Eighths(long sixteenths)
    {
        var (feet, rest) = Math.DivRem(sixteenths, 12 * 16);
        var (inches, left) = Math.DivRem(rest, 16);
        return Invariant($"{feet}-{inches}-{left / 2}{(left % 2 == 1 ? "+" : "")}");
    }
}
