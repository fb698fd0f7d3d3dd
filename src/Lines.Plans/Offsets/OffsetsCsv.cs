using Lines.Kernel.Units;
using Lines.Plans.Exchange;

namespace Lines.Plans.Offsets;

/// <summary>A table of offsets for spreadsheets: comma-separated values as RFC 4180 has them.</summary>
/// <remarks>
/// <para><b>Safety.</b> No cell can be taken for a formula or a date: see <see cref="CsvText"/>. Texts that come from the design follow words
/// of ours in their cell.</para>
/// </remarks>
public static class OffsetsCsv
{
    /// <summary>Writes the values.</summary>
    /// <param name="book">The table.</param>
    /// <param name="notation">The notation its figures are in.</param>
    /// <returns>The text; it is to be stored as UTF-8.</returns>
    public static string Write(OffsetsBook book, LengthNotation notation)
    {
        ArgumentNullException.ThrowIfNull(book);
        var fields = book.Tables.Max(t => t.Columns.Count);
        var text = new CsvText(fields, notation);
        text.Record(["Table of offsets: " + book.Title]);
        foreach (var note in book.Notes)
            text.Record([note]);
        foreach (var table in book.Tables)
        {
            text.Record([]);
            text.Record([table.Title]);
            text.Record(table.Columns.Select(c => c.Name));
            if (table.Columns.Any(c => c.Place.Length > 0))
                text.Figures(table.Columns.Select(c => c.Place));
            foreach (var row in table.Rows)
                text.Figures(row);
        }

        return text.ToString();
    }
}
