using System.Globalization;

namespace Lines.Kernel.Units;

/// <summary>Writes lengths in the notations, rounding once to the notation's step, halves away from zero.</summary>
internal static class LengthWriter
{
    /// <summary>Beyond this the steps no longer fit a whole number; nothing measured is near it [m].</summary>
    private const double Longest = 1e9;

    public static string Write(double meters, LengthNotation notation, bool withUnit)
    {
        if (!(Math.Abs(meters) <= Longest))
            throw new ArgumentOutOfRangeException(nameof(meters), meters, Invariant($"a length shown is at most {Longest} m"));

        var steps = (long)Math.Round(Math.Abs(meters) / notation.Step(), MidpointRounding.AwayFromZero);
        var sign = meters < 0 && steps != 0 ? "-" : "";
        return sign + notation switch
        {
            LengthNotation.Millimeters => Tenths(steps) + (withUnit ? " mm" : ""),
            LengthNotation.Inches => Mixed(steps, 32) + (withUnit ? " in" : ""),
            LengthNotation.FeetInches => Invariant($"{steps / (12 * 32)}' {Mixed(steps % (12 * 32), 32)}\""),
            _ => Eighths(steps),
        };
    }

    private static string Tenths(long tenths) =>
        tenths % 10 == 0 ? (tenths / 10).ToString(CultureInfo.InvariantCulture) : Invariant($"{tenths / 10}.{tenths % 10}");

    private static string Mixed(long steps, long denominator)
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

        return whole == 0 ? Invariant($"{numerator}/{denominator}") : Invariant($"{whole} {numerator}/{denominator}");
    }

    private static string Eighths(long sixteenths)
    {
        var (feet, rest) = Math.DivRem(sixteenths, 12 * 16);
        var (inches, left) = Math.DivRem(rest, 16);
        return Invariant($"{feet}-{inches}-{left / 2}{(left % 2 == 1 ? "+" : "")}");
    }
}
