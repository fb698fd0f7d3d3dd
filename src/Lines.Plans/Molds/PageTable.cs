using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Plans.Paper;

namespace Lines.Plans.Molds;

/// <summary>A table on a page of the setting-up sheet: headings of two lines and ruled rows.</summary>
/// <param name="columns">First and second line of each heading, width as a part of the table's, and whether figures stand in it, to the right.</param>
internal sealed class PageTable(IReadOnlyList<(string First, string Second, double Width, bool Figures)> columns)
{
    /// <summary>Least height of a row [mm].</summary>
    public const double LeastRow = 3.4;

    /// <summary>Height of the heading [mm].</summary>
    public const double Head = 9.5;

    private const double Letters = 2.2;
    private const double HeadLetters = 1.9;

    /// <summary>Clear distance of a cell's text to the cell's sides [mm].</summary>
    private const double CellGap = 1.3;

    /// <summary>The headings, each in one line.</summary>
    public IEnumerable<string> Headings => columns.Select(c => $"{c.First} {c.Second}".TrimEnd());

    /// <summary>How many rows go into a height [mm].</summary>
    public static int Rows(double height) => Math.Max(0, (int)(((height - Head) / LeastRow) + 1e-9));

    /// <summary>Height of the table with so many rows [mm].</summary>
    /// <param name="rows">How many.</param>
    /// <param name="row">Height of a row [mm].</param>
    public static double HeightOf(int rows, double row = LeastRow) => Head + (rows * row);

    /// <summary>Draws the table.</summary>
    /// <param name="marks">The page.</param>
    /// <param name="room">Where; its top is the table's.</param>
    /// <param name="rows">The cells.</param>
    /// <param name="row">Height of a row [mm].</param>
    public void Draw(PageMarks marks, Box2 room, IEnumerable<IReadOnlyList<string>> rows, double row = LeastRow)
    {
        var y = room.Top;
        Rule(SettingUpInks.Heavy);
        Write([.. columns.Select(c => c.First)], y - 3.6, HeadLetters);
        Write([.. columns.Select(c => c.Second)], y - 7.4, HeadLetters);
        y -= Head;
        Rule(SettingUpInks.Heavy);
        foreach (var cells in rows)
        {
            Write(cells, y - row + ((row - Letters) / 2), Letters);
            y -= row;
            Rule(SettingUpInks.Fine);
        }

        void Rule(Layer ink) => marks.Line(ink, new Point2(room.Left, y), new Point2(room.Right, y));

        void Write(IReadOnlyList<string> cells, double at, double height)
        {
            var (x, stretch) = (room.Left, room.Width / columns.Sum(c => c.Width));
            foreach (var (text, column) in cells.Zip(columns))
            {
                var width = stretch * column.Width;
                if (text.Length > 0)
                    marks.Text(SettingUpInks.Text, text, new Point2(column.Figures ? x + width - CellGap : x + CellGap, at), height, width - (2 * CellGap), column.Figures ? Anchor.Right : Anchor.Left);
                x += width;
            }
        }
    }
}
