using Lines.Kernel.Geometry;

namespace Lines.Kernel.Polygons;

/// <summary>Shapes laid on sheets in a given order, on a grid of cells.</summary>
internal sealed class SheetLayout
{
    private readonly SheetStock _stock;
    private readonly IReadOnlyList<IReadOnlyList<Point2>> _shapes;
    private readonly double _cellWidth;
    private readonly double _cellHeight;
    private readonly Point2 _corner;
    private readonly int _columns;
    private readonly int _rows;
    private readonly (int Quarters, ColumnMask Mask)[][] _masks;
    private readonly List<CellSheet> _sheets = [];

    /// <summary>Makes ready to lay shapes out.</summary>
    /// <param name="shapes">The shapes.</param>
    /// <param name="stock">The sheets.</param>
    /// <param name="turns">The quarter turns tried.</param>
    /// <param name="rows">Cells across the width of a sheet.</param>
    public SheetLayout(IReadOnlyList<IReadOnlyList<Point2>> shapes, SheetStock stock, IReadOnlyList<int> turns, int rows)
    {
        // Shapes grown by half the spacing lie in the room grown by as much, whose sides are whole numbers of cells.
        _stock = stock;
        var room = stock.Room.Grown(stock.Spacing / 2);
        _corner = new Point2(room.Left, room.Bottom);
        _rows = rows;
        _columns = Math.Max(1, (int)Math.Round(room.Width * rows / room.Height));
        (_cellWidth, _cellHeight) = (room.Width / _columns, room.Height / _rows);
        _shapes = shapes;
        _masks = [.. shapes.Select(s => turns.Select(t => (t, ColumnMask.Of([.. s.Select(p => SheetStock.Turned(p, t))], stock.Spacing / 2, _cellWidth, _cellHeight)))
            .Where(m => m.Item2.Width <= _columns && m.Item2.Height <= _rows).ToArray())];
    }

    /// <summary>Lays the shapes of an order out.</summary>
    public Result Of(int[] order)
    {
        foreach (var sheet in _sheets)
            sheet.Clear();
        var places = new List<NestPlace>();
        foreach (var shape in order)
            places.Add(Placed(shape));
        var begun = _sheets.Count(s => s.Used > 0);
        var last = places.Where(p => p.Sheet == begun - 1).Max(p => _shapes[p.Shape].Max(c => p.Of(c).X)) + _stock.Margin;
        return new Result(places, begun, last, begun - 1 + (last / _stock.Length));
    }

    private NestPlace Placed(int shape)
    {
        for (var i = 0; ; i++)
        {
            if (i == _sheets.Count)
                _sheets.Add(new CellSheet(_columns, _rows));
            var sheet = _sheets[i];
            (int Quarters, ColumnMask Mask, int Column, int Row)? best = null;
            foreach (var (quarters, mask) in _masks[shape])
            {
                // To be better it ends farther to the left.
                var before = best is { } b ? b.Column + b.Mask.Width - mask.Width : int.MaxValue;
                if (sheet.PlaceFor(mask, before) is { } at)
                    best = (quarters, mask, at.Column, at.Row);
            }

            if (best is not var (turn, taken, column, row))
            {
                if (sheet.Used == 0)
                    throw new ArgumentException(Invariant($"shape {shape} goes on no empty sheet"), nameof(shape));
                continue;
            }

            sheet.Take(taken, column, row);
            var corner = _corner + new Vector2(column * _cellWidth, row * _cellHeight);
            return new NestPlace(shape, i, turn, corner - taken.Corner);
        }
    }

    /// <summary>A layout.</summary>
    /// <param name="Places">Where each shape lies, in the order laid.</param>
    /// <param name="Sheets">Sheets begun.</param>
    /// <param name="LastLength">Length used of the last.</param>
    /// <param name="Taken">Whole sheets before the last and the fraction of it that is used.</param>
    public sealed record Result(IReadOnlyList<NestPlace> Places, int Sheets, double LastLength, double Taken);
}
