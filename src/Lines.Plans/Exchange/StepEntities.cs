using System.Globalization;
using System.Text;

namespace Lines.Plans.Exchange;

/// <summary>The data section of an ISO 10303-21 file as it grows: entities numbered in the order they are written.</summary>
internal sealed class StepEntities
{
    private readonly StringBuilder _text = new();
    private int _last;

    /// <summary>The entities so far, one a line.</summary>
    public string Text => _text.ToString();

    /// <summary>Writes one entity.</summary>
    /// <returns>Its reference, such as <c>#12</c>.</returns>
    public string Add(string entity)
    {
        var reference = Invariant($"#{++_last}");
        _text.Append(reference).Append('=').Append(entity).Append(";\n");
        return reference;
    }

    /// <summary>A real number: shortest text that reads back as the same double, with the point the format asks for.</summary>
    public static string Real(double value)
    {
        var text = (value == 0 ? 0 : value).ToString("R", CultureInfo.InvariantCulture);
        if (text.Contains('.', StringComparison.Ordinal))
            return text;
        var exponent = text.IndexOf('E', StringComparison.Ordinal);
        return exponent < 0 ? text + "." : text.Insert(exponent, ".");
    }

    /// <summary>A list in parentheses.</summary>
    public static string List(IEnumerable<string> items) => "(" + string.Join(',', items) + ")";

    /// <summary>A text in apostrophes; what is not printable ASCII is written by its code point, as ISO 10303-21 lays down.</summary>
    public static string Quoted(string text)
    {
        var result = new StringBuilder("'");
        foreach (var rune in text.EnumerateRunes())
        {
            result.Append(rune.Value switch
            {
                '\'' => "''",
                '\\' => @"\\",
                >= 0x20 and < 0x7f => rune.ToString(),
                <= 0xffff => Invariant($@"\X2\{rune.Value:X4}\X0\"),
                _ => Invariant($@"\X4\{rune.Value:X8}\X0\"),
            });
        }

        return result.Append('\'').ToString();
    }
}
