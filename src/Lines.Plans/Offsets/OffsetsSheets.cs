using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Plans.Paper;

namespace Lines.Plans.Offsets;

/// <summary>A table of offsets on paper: pages of Letter or another size, turned to landscape.</summary>
/// <remarks><b>Method.</b> Columns are as wide as their widest cell. Tables stand side by side while the page has room, then below
/// each other, then on the next page; what is too wide for a page is lettered smaller until it fits, what is too long goes on on the next.</remarks>
public sealed class OffsetsSheets
{
    private const double Margin = 12.7; // half an inch: inside what any printer reaches
    private const double Capital = PlacedTable.Capitals;
    private const double TableGap = 11;
    private const double NotePitch = 4.2;
    private const double FootRoom = 8;
    private const double PageNumber = 25;
    private const string Continued = ", continued";

    private readonly OffsetsBook _book;
    private readonly double _width;
    private readonly double _height;

    private OffsetsSheets(OffsetsBook book, PaperSize paper)
    {
        _book = book;
        (_width, _height) = (Math.Max(paper.Width, paper.Height), Math.Min(paper.Width, paper.Height));
    }

    /// <summary>Draws the table.</summary>
    /// <param name="book">The table.</param>
    /// <param name="paper">The paper.</param>
    /// <returns>The pages in order.</returns>
    public static IReadOnlyList<Sheet> Draw(OffsetsBook book, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(paper);
        return new OffsetsSheets(book, paper).Pages();
    }

    private List<Sheet> Pages()
    {
        var pages = Arrange();
        return [.. pages.Select((tables, k) => Page(tables, k, pages.Count))];
    }

    // Shelves of tables from the top left; each entry carries the table's top left corner.
    private List<List<PlacedTable>> Arrange()
    {
        var pages = new List<List<PlacedTable>> { new() };
        double x = Margin, top = _height - Margin - TitleRoom(0), shelf = 0;
        var waiting = new Stack<FigureTable>(_book.Tables.Reverse());
        while (waiting.TryPop(out var next))
        {
            var table = PlacedTable.Fitted(next, _width - (2 * Margin));
            if (x > Margin && x + table.Width > _width - Margin)
                (x, top, shelf) = (Margin, top - shelf - TableGap, 0);
            if (top - table.Height < Margin + FootRoom && pages[^1].Count > 0)
            {
                pages.Add([]);
                (x, top, shelf) = (Margin, _height - Margin - TitleRoom(pages.Count - 1), 0);
            }

            var rows = PlacedTable.RowsIn(top - Margin - FootRoom);
            if (next.Rows.Count > rows)
            {
                waiting.Push(next with { Title = next.Title.EndsWith(Continued, StringComparison.Ordinal) ? next.Title : next.Title + Continued, Rows = [.. next.Rows.Skip(rows)] });
                table = PlacedTable.Fitted(next with { Rows = [.. next.Rows.Take(rows)] }, _width - (2 * Margin));
            }

            pages[^1].Add(table with { Left = x, Top = top });
            x += table.Width + TableGap;
            shelf = Math.Max(shelf, table.Height);
        }

        return pages;
    }

    private double TitleRoom(int page) => page == 0 ? 12 + (NotePitch * _book.Notes.Count) + 5 : 12;

    private Sheet Page(List<PlacedTable> tables, int number, int pages)
    {
        var marks = new PageMarks();
        double y = _height - Margin - 4, room = _width - (2 * Margin);
        marks.Text(TableInks.Title, number == 0 ? "Table of offsets: " + _book.Title : _book.Title, new Point2(Margin, y), number == 0 ? 4 : 3, room);
        for (var k = 0; number == 0 && k < _book.Notes.Count; k++)
            marks.Text(TableInks.Note, _book.Notes[k], new Point2(Margin, y - 7 - (k * NotePitch)), Capital, room);
        foreach (var table in tables)
            marks.Add(table.Marks());
        marks.Line(TableInks.Hair, new Point2(Margin, Margin + 4), new Point2(_width - Margin, Margin + 4));
        marks.Text(TableInks.Note, "Table of offsets. " + _book.Notes[0], new Point2(Margin, Margin), Capital, room - PageNumber);
        marks.Text(TableInks.Note, Invariant($"page {number + 1} of {pages}"), new Point2(_width - Margin, Margin), Capital, anchor: Anchor.Right);
        return new Sheet("Table of offsets: " + _book.Title, _width, _height, marks.All);
    }
}
