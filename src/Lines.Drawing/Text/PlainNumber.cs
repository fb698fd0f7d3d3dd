using System.Buffers.Text;
using System.Text;

namespace Lines.Drawing.Text;

/// <summary>Numbers written as plain decimals, the same in every locale: a point, no exponent, no needless zeros, no minus zero.</summary>
internal static class PlainNumber
{
    private static readonly double[] Powers = [1, 10, 100, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9];

    /// <summary>Appends a number rounded to a count of decimals.</summary>
    /// <remarks><b>Accuracy.</b> Half a unit of the last decimal, for numbers up to 1e6 and 8 decimals.</remarks>
    /// <param name="text">What is appended to.</param>
    /// <param name="value">The number, finite, of size below 9e18 in units of the last decimal.</param>
    /// <param name="decimals">Decimals after the point, 0 to 9.</param>
    /// <returns><paramref name="text"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite or too large.</exception>
    public static StringBuilder AppendPlain(this StringBuilder text, double value, int decimals)
    {
        var scaled = Math.Round(value * Powers[decimals]);
        if (!(Math.Abs(scaled) < 9e18))
            throw new ArgumentOutOfRangeException(nameof(value), value, Invariant($"{value} cannot be written with {decimals} decimals"));
        Span<byte> digits = stackalloc byte[24];
        var units = (long)Math.Abs(scaled);
        var last = decimals;
        while (last > 0 && units % 10 == 0)
        {
            units /= 10;
            last--;
        }

        Utf8Formatter.TryFormat(units, digits, out var count);
        if (scaled < 0)
            text.Append('-');
        if (count <= last)
            text.Append("0.").Append('0', last - count);
        for (var i = 0; i < count; i++)
        {
            if (i == count - last && i > 0)
                text.Append('.');
            text.Append((char)digits[i]);
        }

        return text;
    }
}
