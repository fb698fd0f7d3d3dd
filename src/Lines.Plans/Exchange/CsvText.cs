using System.Text;
using Lines.Kernel.Units;

namespace Lines.Plans.Exchange;

/// <summary>A text of comma-separated values as RFC 4180 has them, built record by record.</summary>
/// <remarks>
/// <para>Every record has the same number of fields and ends with a carriage return and a line feed. The text begins with a byte
/// order mark, by which spreadsheets know that it is UTF-8.</para>
/// <para><b>Safety.</b> A figure can be taken neither for a formula nor for a date. Millimeters are plain numbers; a fraction stands after a
/// whole number, so that <c>0 7/16</c> is a number and not the 7th of a month. In the notations with feet the hyphens are no-break hyphens
/// (U+2011): <c>1-2-3</c> would be taken for a day, and a leading minus for a formula.</para>
/// </remarks>
/// <param name="fields">How many fields every record has.</param>
/// <param name="notation">The notation of the figures.</param>
public sealed class CsvText(int fields, LengthNotation notation)
{
    private const char ByteOrderMark = '\uFEFF';
    private const char NoBreakHyphen = '\u2011';

    private readonly StringBuilder _text = new StringBuilder().Append(ByteOrderMark);

    /// <summary>Adds a record, filled up with empty fields.</summary>
    public void Record(IEnumerable<string> cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        List<string> record = [.. cells];
        while (record.Count < fields)
            record.Add("");
        _text.AppendJoin(',', record.Select(Quoted)).Append("\r\n");
    }

    /// <summary>Adds a record of figures, each as no spreadsheet takes it for a date or a formula.</summary>
    public void Figures(IEnumerable<string> cells) => Record(cells.Select(Figure));

    /// <inheritdoc/>
    public override string ToString() => _text.ToString();

    /// <summary>A cell as it stands in a record.</summary>
    public static string Quoted(string cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return cell.AsSpan().IndexOfAny("\",\r\n") < 0 ? cell : "\"" + cell.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";
    }

    private string Figure(string cell) =>
        notation is LengthNotation.FeetInches or LengthNotation.FeetInchesEighths ? WithWhole(cell).Replace('-', NoBreakHyphen) : WithWhole(cell);

    // Stations between others are numbered with fractions in every notation.
    private static string WithWhole(string cell)
    {
        var sign = cell.StartsWith('-') ? "-" : "";
        var rest = cell[sign.Length..];
        var slash = rest.IndexOf('/', StringComparison.Ordinal);
        return slash > 0 && rest[..slash].All(char.IsAsciiDigit) ? sign + "0 " + rest : cell;
    }
}
