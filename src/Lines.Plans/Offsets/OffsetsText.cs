using System.Text;

namespace Lines.Plans.Offsets;

/// <summary>A table of offsets as plain text in fixed columns.</summary>
public static class OffsetsText
{
    private const string Gap = "  ";

    /// <summary>Writes the text.</summary>
    /// <param name="book">The table.</param>
    /// <returns>Lines ended by line feeds; figures stand right in their columns.</returns>
    public static string Write(OffsetsBook book)
    {
        ArgumentNullException.ThrowIfNull(book);
        var text = new StringBuilder();
        Line(text, "Table of offsets: " + book.Title);
        text.Append('\n');
        foreach (var note in book.Notes)
            Line(text, note);
        foreach (var table in book.Tables)
        {
            text.Append('\n');
            Line(text, table.Title);
            text.Append('\n');
            text.Append(Write(table));
        }

        return text.ToString();
    }

    /// <summary>One table without its title, figures right in their columns.</summary>
    internal static string Write(FigureTable table)
    {
        var text = new StringBuilder();
        // A last + hangs beyond the figures, so that eighths stand below eighths.
        bool[] hangs = [.. table.Columns.Select((_, k) => table.Rows.Any(r => r[k].EndsWith('+')))];
        string Hung(string cell, int k) => hangs[k] && !cell.EndsWith('+') ? cell + " " : cell;
        var widths = table.Columns
            .Select((c, k) => Math.Max(Math.Max(c.Name.Length, c.Place.Length), table.Rows.Max(r => Hung(r[k], k).Length))).ToArray();
        Row(table.Columns.Select(c => c.Name));
        if (table.Columns.Any(c => c.Place.Length > 0))
            Row(table.Columns.Select(c => c.Place));
        Line(text, new string('-', widths.Sum() + (Gap.Length * (widths.Length - 1))));
        foreach (var row in table.Rows)
            Row(row);
        return text.ToString();

        void Row(IEnumerable<string> cells) =>
            Line(text, string.Join(Gap, cells.Select((c, k) => k == 0 ? c.PadRight(widths[k]) : Hung(c, k).PadLeft(widths[k]))));
    }

    private static void Line(StringBuilder text, string line) => text.Append(line.TrimEnd()).Append('\n');
}
