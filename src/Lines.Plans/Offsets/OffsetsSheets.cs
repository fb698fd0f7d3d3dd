using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using Lines.Plans.Paper;

namespace Lines.Plans.Offsets;

/// <summary>A table of offsets on paper: pages of Letter or another size, turned to landscape.</summary>
/// <remarks><b>Method.</b> Columns are as wide as their widest cell. Tables stand side by side while the page has room, then below
/// each other, then on the next page; what is too wide for a page is lettered smaller until it fits.</remarks>
public sealed class OffsetsSheets
{
    private const double Margin = 12.7; // half an inch: inside what any printer reaches
    private const double Capital = 2.1;
    private const double RowPitch = 4.1;
    private const double ColumnGap = 5.2;
    private const double TableGap = 11;
    private const double NotePitch = 4.2;
    private const double HeadRoom = 15.5; // from a table's top to its first row: title, two head lines, rule
    private const double FootRoom = 8;

    private static readonly Layer s_title = new("offsets-title", new Ink(0.35));
    private static readonly Layer s_head = new("offsets-head", new Ink(0.22));
    private static readonly Layer s_figure = new("offsets-figure", new Ink(0.18));
    private static readonly Layer s_note = new("offsets-note", new Ink(0.16, null, 0.25), 8);
    private static readonly Layer s_rule = new("offsets-rule", new Ink(0.25));
    private static readonly Layer s_hair = new("offsets-hair", new Ink(0.1, null, 0.6), 8);

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
        foreach (var table in _book.Tables.Select(Fitted))
        {
            if (x > Margin && x + table.Width > _width - Margin)
                (x, top, shelf) = (Margin, top - shelf - TableGap, 0);
            if (top - table.Height < Margin + FootRoom && pages[^1].Count > 0)
            {
                pages.Add([]);
                (x, top, shelf) = (Margin, _height - Margin - TitleRoom(pages.Count - 1), 0);
            }

            pages[^1].Add(table with { Left = x, Top = top });
            x += table.Width + TableGap;
            shelf = Math.Max(shelf, table.Height);
        }

        return pages;
    }

    private double TitleRoom(int page) => page == 0 ? 12 + (NotePitch * _book.Notes.Count) + 5 : 12;

    private PlacedTable Fitted(FigureTable table)
    {
        var capital = Capital;
        while (true)
        {
            var columns = table.Columns.Select((c, k) => ColumnWidth(table, k, capital)).ToArray();
            var placed = new PlacedTable(table, columns, capital, 0, 0, HeadRoom + (RowPitch * table.Rows.Count));
            if (placed.Width <= _width - (2 * Margin) || capital < 1)
                return placed;
            capital *= 0.95;
        }
    }

    private static double ColumnWidth(FigureTable table, int column, double capital)
    {
        var head = table.Columns[column];
        return ColumnGap + table.Rows.Select(r => r[column]).Append(head.Name).Append(head.Place).Max(t => StrokeLettering.Width(t, capital));
    }

    private Sheet Page(List<PlacedTable> tables, int number, int pages)
    {
        var marks = new List<Mark>();
        var y = _height - Margin - 4;
        marks.Add(new TextMark(s_title, number == 0 ? "Table of offsets: " + _book.Title : _book.Title, new Point2(Margin, y), number == 0 ? 4 : 3));
        for (var k = 0; number == 0 && k < _book.Notes.Count; k++)
            marks.Add(new TextMark(s_note, _book.Notes[k], new Point2(Margin, y - 7 - (k * NotePitch)), Capital));
        foreach (var table in tables)
            Draw(marks, table);
        marks.Add(new PathMark(s_hair, ArcPath.Line(new Point2(Margin, Margin + 4), new Point2(_width - Margin, Margin + 4))));
        marks.Add(new TextMark(s_note, "Table of offsets. " + _book.Notes[0], new Point2(Margin, Margin), Capital));
        marks.Add(new TextMark(s_note, Invariant($"page {number + 1} of {pages}"), new Point2(_width - Margin, Margin), Capital, Anchor.Right));
        return new Sheet("Table of offsets: " + _book.Title, _width, _height, marks);
    }

    private static void Draw(List<Mark> marks, PlacedTable placed)
    {
        double left = placed.Left, right = placed.Left + placed.FiguresWidth, y = placed.Top - 2.6;
        var hanging = placed.Hanging;
        marks.Add(new TextMark(s_title, placed.Table.Title, new Point2(left, y), 2.6));
        Row(s_head, y - 5.4, [.. placed.Table.Columns.Select(c => c.Name)]);
        Row(s_note, y - 9.2, [.. placed.Table.Columns.Select(c => c.Place)]);
        var line = placed.Top - HeadRoom + 2;
        marks.Add(new PathMark(s_rule, ArcPath.Line(new Point2(left, line), new Point2(right, line))));
        for (var k = 0; k < placed.Table.Rows.Count; k++)
        {
            var below = line - (RowPitch * (k + 1));
            Row(s_figure, below + ((RowPitch - placed.Capital) / 2), placed.Table.Rows[k]);
            marks.Add(new PathMark(k == placed.Table.Rows.Count - 1 ? s_rule : s_hair, ArcPath.Line(new Point2(left, below), new Point2(right, below))));
        }

        // Names stand left in their column, figures right; a last + hangs beyond, so that eighths stand below eighths.
        void Row(Layer layer, double at, IReadOnlyList<string> cells)
        {
            var x = left;
            for (var k = 0; k < cells.Count; k++)
            {
                x += placed.Columns[k];
                if (cells[k].Length == 0)
                    continue;
                marks.Add(k == 0
                    ? new TextMark(layer, cells[k], new Point2(left, at), placed.Capital)
                    : new TextMark(layer, cells[k], new Point2(x + (cells[k].EndsWith('+') ? hanging : 0), at), placed.Capital, Anchor.Right));
            }
        }
    }

    private sealed record PlacedTable(FigureTable Table, IReadOnlyList<double> Columns, double Capital, double Left, double Top, double Height)
    {
        // Room for a + that hangs beyond the figures of the last column.
        public double Hanging => Table.Rows.Any(r => r.Any(c => c.EndsWith('+')))
            ? StrokeLettering.Width("0+", Capital) - StrokeLettering.Width("0", Capital)
            : 0;

        public double FiguresWidth => Columns.Sum() + Hanging;

        public double Width => Math.Max(FiguresWidth, StrokeLettering.Width(Table.Title, 2.6));
    }
}
