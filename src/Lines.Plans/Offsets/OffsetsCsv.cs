using System.Text;
using Lines.Kernel.Units;

namespace Lines.Plans.Offsets;

/// <summary>A table of offsets for spreadsheets: comma-separated values as RFC 4180 has them.</summary>
/// <remarks>
/// <para>Every record has the same number of fields and ends with a carriage return and a line feed. The text begins with a byte
/// order mark, by which spreadsheets know that it is UTF-8.</para>
/// <para><b>Safety.</b> No cell can be taken for a formula or a date. Millimeters are plain numbers; a fraction stands after a whole
/// number here, and here alone, so that <c>0 7/16</c> is a number and not the 7th of a month. In the notations with feet the hyphens
/// are no-break hyphens (U+2011): <c>1-2-3</c> would be taken for a day, and a leading minus for a formula. Texts that come from the
/// design follow words of ours in their cell.</para>
/// </remarks>
public static class OffsetsCsv
{
    private const char ByteOrderMark = '\uFEFF';
    private const char NoBreakHyphen = '\u2011';

    /// <summary>Writes the values.</summary>
    /// <param name="book">The table.</param>
    /// <param name="notation">The notation its figures are in.</param>
    /// <returns>The text; it is to be stored as UTF-8.</returns>
    public static string Write(OffsetsBook book, LengthNotation notation)
    {
        ArgumentNullException.ThrowIfNull(book);
        var fields = book.Tables.Max(t => t.Columns.Count);
        var text = new StringBuilder().Append(ByteOrderMark);
        Record(["Table of offsets: " + book.Title]);
        foreach (var note in book.Notes)
            Record([note]);
        foreach (var table in book.Tables)
        {
            Record([]);
            Record([table.Title]);
            Record(table.Columns.Select(c => c.Name));
            if (table.Columns.Any(c => c.Place.Length > 0))
                Record(table.Columns.Select((c, k) => k == 0 ? "" : Figure(c.Place)));
            foreach (var row in table.Rows)
                Record(row.Select((cell, k) => k == 0 ? WithWhole(cell) : Figure(cell)));
        }

        return text.ToString();

        void Record(IEnumerable<string> cells)
        {
            List<string> record = [.. cells];
            while (record.Count < fields)
                record.Add("");
            text.AppendJoin(',', record.Select(Quoted)).Append("\r\n");
        }

        string Figure(string cell) => notation is LengthNotation.FeetInches or LengthNotation.FeetInchesEighths ? cell.Replace('-', NoBreakHyphen) : WithWhole(cell);
    }

    private static string WithWhole(string figure)
    {
        var sign = figure.StartsWith('-') ? "-" : "";
        var rest = figure[sign.Length..];
        var slash = rest.IndexOf('/', StringComparison.Ordinal);
        return slash > 0 && rest[..slash].All(char.IsAsciiDigit) ? sign + "0 " + rest : figure;
    }

    private static string Quoted(string cell) =>
        cell.AsSpan().IndexOfAny("\",\r\n") < 0 ? cell : "\"" + cell.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";
}
