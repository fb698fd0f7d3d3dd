using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Plans.LinesPlan;
using Lines.Plans.Offsets;
using Lines.Plans.Paper;

namespace Lines.Plans.Comparison;

/// <summary>A comparison on paper: the designs laid over each other, then the tables.</summary>
public static class ComparisonPages
{
    private const double Margin = 12.7;

    /// <summary>The designs laid over each other with their drag curves, one drawing.</summary>
    /// <param name="book">The comparison.</param>
    /// <param name="paper">The paper, laid on its longer side.</param>
    public static Sheet Overlaid(ComparisonBook book, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(paper);
        return ComparisonSheet.Of(book, paper);
    }

    /// <summary>All pages.</summary>
    /// <param name="book">The comparison.</param>
    /// <param name="paper">The paper, laid on its longer side.</param>
    public static IReadOnlyList<Sheet> Of(ComparisonBook book, PaperSize paper) =>
        [Overlaid(book, paper), .. book.Tables.SelectMany(t => Parts(t, paper)).Select(t => Page(book, t, paper))];

    private static IEnumerable<FigureTable> Parts(FigureTable table, PaperSize paper)
    {
        var rows = (int)((paper.Width - (2 * Margin) - 60) / 4.1);
        for (var row = 0; row < table.Rows.Count; row += rows)
            yield return table with { Rows = [.. table.Rows.Skip(row).Take(rows)] };
    }

    private static Sheet Page(ComparisonBook book, FigureTable table, PaperSize paper)
    {
        double width = paper.Height - (2 * Margin), y = paper.Width - Margin - 4;
        var marks = new PageMarks();
        marks.Text(PlanInks.Titles, "Designs compared: " + string.Join(", ", book.Designs.Select((d, k) => $"{DragCrossings.Letter(k)} {d.Title}")), new Point2(Margin, y), 3, width);
        marks.Text(PlanInks.Lettering, book.At, new Point2(Margin, y - 5), 2, width);
        marks.Add((PlacedTable.Fitted(table, width) with { Left = Margin, Top = y - 10 }).Marks());
        var notes = book.Notes.Reverse().ToList();
        var capital = PageMarks.HeightFor(notes, 2, width);
        for (var k = 0; k < notes.Count; k++)
            marks.Text(PlanInks.Lettering, notes[k], new Point2(Margin, Margin + (3.5 * k)), capital);
        return new Sheet("Designs compared, tables", paper.Height, paper.Width, marks.All);
    }
}
