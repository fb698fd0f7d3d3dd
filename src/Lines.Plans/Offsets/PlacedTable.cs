using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Offsets;

/// <summary>A table of figures on a sheet.</summary>
/// <param name="Table">The table.</param>
/// <param name="Columns">Widths of its columns [mm].</param>
/// <param name="Capital">Height of its capitals [mm].</param>
/// <param name="Left">Its left edge [mm].</param>
/// <param name="Top">Its upper edge [mm].</param>
internal sealed record PlacedTable(FigureTable Table, IReadOnlyList<double> Columns, double Capital, double Left, double Top)
{
    /// <summary>Height of the capitals where there is room [mm].</summary>
    public const double Capitals = 2.1;

    private const double RowPitch = 4.1;
    private const double ColumnGap = 5.2;
    private const double HeadRoom = 15.5; // from a table's top to its first row: title, two head lines, rule

    /// <summary>Its height [mm].</summary>
    public double Height => HeadRoom + (RowPitch * Table.Rows.Count);

    /// <summary>Its width with its title [mm].</summary>
    public double Width => Math.Max(FiguresWidth, StrokeLettering.Width(Table.Title, 2.6));

    // Room for a + that hangs beyond the figures of the last column.
    private double Hanging => Table.Rows.Any(r => r.Any(c => c.EndsWith('+')))
        ? StrokeLettering.Width("0+", Capital) - StrokeLettering.Width("0", Capital)
        : 0;

    private double FiguresWidth => Columns.Sum() + Hanging;

    /// <summary>How many rows stand in a height [mm].</summary>
    public static int RowsIn(double height) => (int)((height - HeadRoom) / RowPitch);

    /// <summary>A table lettered smaller until it is no wider than the room for it, at the sheet's corner.</summary>
    public static PlacedTable Fitted(FigureTable table, double room)
    {
        var capital = Capitals;
        while (true)
        {
            var columns = table.Columns.Select((_, k) => ColumnWidth(table, k, capital)).ToArray();
            var placed = new PlacedTable(table, columns, capital, 0, 0);
            if (placed.Width <= room || capital < 1)
                return placed;
            capital *= 0.95;
        }
    }

    /// <summary>The marks of the table.</summary>
    public IReadOnlyList<Mark> Marks()
    {
        var marks = new List<Mark>();
        double right = Left + FiguresWidth, y = Top - 2.6;
        var hanging = Hanging;
        marks.Add(new TextMark(TableInks.Title, Table.Title, new Point2(Left, y), 2.6));
        Row(TableInks.Head, y - 5.4, [.. Table.Columns.Select(c => c.Name)]);
        Row(TableInks.Note, y - 9.2, [.. Table.Columns.Select(c => c.Place)]);
        var line = Top - HeadRoom + 2;
        marks.Add(new PathMark(TableInks.Rule, ArcPath.Line(new Point2(Left, line), new Point2(right, line))));
        for (var k = 0; k < Table.Rows.Count; k++)
        {
            var below = line - (RowPitch * (k + 1));
            Row(TableInks.Figure, below + ((RowPitch - Capital) / 2), Table.Rows[k]);
            marks.Add(new PathMark(k == Table.Rows.Count - 1 ? TableInks.Rule : TableInks.Hair, ArcPath.Line(new Point2(Left, below), new Point2(right, below))));
        }

        return marks;

        // Names stand left in their column, figures right; a last + hangs beyond, so that eighths stand below eighths.
        void Row(Layer layer, double at, IReadOnlyList<string> cells)
        {
            var x = Left;
            for (var k = 0; k < cells.Count; k++)
            {
                x += Columns[k];
                if (cells[k].Length == 0)
                    continue;
                marks.Add(k == 0
                    ? new TextMark(layer, cells[k], new Point2(Left, at), Capital)
                    : new TextMark(layer, cells[k], new Point2(x + (cells[k].EndsWith('+') ? hanging : 0), at), Capital, Anchor.Right));
            }
        }
    }

    private static double ColumnWidth(FigureTable table, int column, double capital)
    {
        var head = table.Columns[column];
        return ColumnGap + table.Rows.Select(r => r[column]).Append(head.Name).Append(head.Place).Max(t => StrokeLettering.Width(t, capital));
    }
}
