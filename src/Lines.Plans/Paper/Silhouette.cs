using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Kernel.Polygons;

namespace Lines.Plans.Paper;

/// <summary>The ground a turned part takes, row by row of 3 mm squares: from its first line to its last in each, with room around.</summary>
/// <remarks><b>Accuracy.</b> Never less than the part with the room; up to two squares more. A hollow open upward or downward counts, one to a side does not.</remarks>
internal sealed class Silhouette
{
    /// <summary>Side of a square [mm].</summary>
    public const double Square = 3;

    /// <summary>Room around a part [mm]: two are twice as far apart, less a square by which a place may be off.</summary>
    private const double Room = 3.5;

    private const double SampleStep = 1;

    private readonly (int From, int To)[] _rows;
    private readonly int _words;
    private readonly ulong[] _bits;

    /// <summary>Finds the ground of lines.</summary>
    /// <param name="part">The part.</param>
    /// <param name="quarters">Quarter turns to the left by which it is turned first.</param>
    public Silhouette(Sheet part, int quarters)
    {
        Quarters = quarters;
        Paths = [.. part.Marks.OfType<PathMark>().Select(m => m.Path.Mapped(p => SheetStock.Turned(p, quarters)))];
        Bounds = Paths.Aggregate(Box2.Nothing, (b, p) => b.With(p.Bounds()));
        _rows = new (int From, int To)[Place(Bounds.Height + (2 * Room)) + 1];
        Array.Fill(_rows, (int.MaxValue, -1));
        foreach (var segment in Paths.SelectMany(p => p.Segments()))
        {
            var pieces = Math.Max(1, (int)Math.Ceiling(segment.Length / SampleStep));
            for (var i = 0; i <= pieces; i++)
                Add(segment.PointAt((double)i / pieces));
        }

        _words = (Columns / 64) + 1;
        _bits = new ulong[_rows.Length * _words];
        for (var row = 0; row < _rows.Length; row++)
        {
            for (var column = _rows[row].From; column <= _rows[row].To; column++)
                _bits[(row * _words) + (column / 64)] |= 1UL << (column % 64);
        }
    }

    /// <summary>Quarter turns to the left.</summary>
    public int Quarters { get; }

    /// <summary>Its lines, turned.</summary>
    public IReadOnlyList<ArcPath> Paths { get; }

    /// <summary>The box around its lines, turned.</summary>
    public Box2 Bounds { get; }

    /// <summary>Number of rows.</summary>
    public int Rows => _rows.Length;

    /// <summary>Number of columns.</summary>
    public int Columns => Place(Bounds.Width + (2 * Room)) + 1;

    /// <summary>The squares of a row that are taken, 64 to a word, the first at the lowest bit; row 0, the lowest, and column 0 begin a room's width outside the box.</summary>
    public ReadOnlySpan<ulong> Row(int row) => _bits.AsSpan(row * _words, _words);

    /// <summary>Area of the ground [mm²].</summary>
    public double Area => Square * Square * _rows.Sum(r => Math.Max(0, r.To - r.From + 1));

    /// <summary>Corners around the ground.</summary>
    public IReadOnlyList<Point2> Corners()
    {
        List<Point2> left = [], right = [];
        for (var row = 0; row < _rows.Length; row++)
        {
            if (_rows[row].To < 0)
                continue;
            double low = Bounds.Bottom - Room + (row * Square), from = Bounds.Left - Room + (_rows[row].From * Square), to = Bounds.Left - Room + ((_rows[row].To + 1) * Square);
            left.AddRange([new Point2(from, low), new Point2(from, low + Square)]);
            right.AddRange([new Point2(to, low), new Point2(to, low + Square)]);
        }

        left.Reverse();
        return [.. right, .. left];
    }

    private void Add(Point2 p)
    {
        double x = p.X - Bounds.Left, y = p.Y - Bounds.Bottom;
        for (var row = Place(y); row <= Place(y + (2 * Room)); row++)
        {
            var (from, to) = _rows[row];
            _rows[row] = (Math.Min(from, Place(x)), Math.Max(to, Place(x + (2 * Room))));
        }
    }

    private static int Place(double distance) => Math.Max(0, (int)(distance / Square));
}
