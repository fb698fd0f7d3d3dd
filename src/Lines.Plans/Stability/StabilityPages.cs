using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Plans.LinesPlan;
using Lines.Plans.Offsets;
using Lines.Plans.Paper;

namespace Lines.Plans.Stability;

/// <summary>Load cases and stability on paper: the righting arms, then the tables.</summary>
public static class StabilityPages
{
    private const double Margin = 12.7;

    /// <summary>Between two tables, and what notes below take: five lines at most [mm].</summary>
    private const double Apart = 7, Foot = 20;

    /// <summary>The righting arms as one drawing.</summary>
    /// <param name="book">The load cases.</param>
    /// <param name="paper">The paper whose longer side the drawing is as wide as.</param>
    public static Sheet Arms(StabilityBook book, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(paper);
        return RightingArmsSheet.Of(book, paper.Height);
    }

    /// <summary>Forces along the main hull in the case that bends it most; null where none floats.</summary>
    /// <param name="book">The load cases.</param>
    /// <param name="paper">The paper whose longer side the drawing is as wide as.</param>
    public static Sheet? Bending(StabilityBook book, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(paper);
        return BendingSheet.Of(book, paper.Height);
    }

    /// <summary>All pages.</summary>
    /// <param name="book">The load cases.</param>
    /// <param name="paper">The paper, laid on its longer side.</param>
    public static IReadOnlyList<Sheet> Of(StabilityBook book, PaperSize paper)
    {
        var arms = Arms(book, paper);
        return [arms, .. Bending(book, paper) is { } bending ? [bending] : Array.Empty<Sheet>(), .. Filled(book, paper).Select(tables => Page(book, tables, paper))];
    }

    // A table of many cases is told on several pages, as many columns on each as can be read; of many rows too.
    private static IEnumerable<FigureTable> Parts(FigureTable table, PaperSize paper)
    {
        const int Columns = 8;
        var rows = (int)((paper.Width - (2 * Margin) - 40) / 4.1);
        foreach (var part in StabilityBook.Parts(table, Columns))
        {
            for (var row = 0; row < part.Rows.Count; row += rows)
                yield return part with { Rows = [.. part.Rows.Skip(row).Take(rows)] };
        }
    }

    // As many tables below each other on a page as there is room for.
    private static IEnumerable<IReadOnlyList<(PlacedTable Table, string Note)>> Filled(StabilityBook book, PaperSize paper)
    {
        var page = new List<(PlacedTable, string)>();
        var top = First(paper);
        foreach (var (table, note) in book.Tables.SelectMany(t => Parts(t.Table, paper).Select(p => (PlacedTable.Fitted(p, paper.Height - (2 * Margin)), t.Note))))
        {
            if (page.Count > 0 && top - table.Height < Margin + Foot)
            {
                yield return page;
                (page, top) = ([], First(paper));
            }

            page.Add((table with { Left = Margin, Top = top }, note));
            top -= table.Height + Apart;
        }

        if (page.Count > 0)
            yield return page;
    }

    private static double First(PaperSize paper) => paper.Width - Margin - 10;

    private static Sheet Page(StabilityBook book, IReadOnlyList<(PlacedTable Table, string Note)> tables, PaperSize paper)
    {
        double width = paper.Height - (2 * Margin), y = paper.Width - Margin - 4;
        var marks = new PageMarks();
        marks.Text(PlanInks.Titles, $"{book.Title}: load cases", new Point2(Margin, y), 3);
        foreach (var (table, _) in tables)
            marks.Add(table.Marks());
        var lines = tables.Select(t => t.Note).SelectMany(n => n.Split('\n')).Where(n => n.Length > 0).Distinct(StringComparer.Ordinal).Append(Report.Cautions.Figures).Reverse().ToList();
        var capital = PageMarks.HeightFor(lines, 2, width);
        for (var k = 0; k < lines.Count; k++)
            marks.Text(PlanInks.Lettering, lines[k], new Point2(Margin, Margin + (3.5 * k)), capital);
        return new Sheet($"{book.Title}, load cases", paper.Height, paper.Width, marks.All);
    }
}
