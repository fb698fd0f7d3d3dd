using System.Buffers;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>Where on a part lines run, by squares of 2 mm: whether a box is empty is told by four look-ups.</summary>
/// <remarks><b>Accuracy.</b> A square counts as a whole, so a line up to 2 mm outside a box may be taken for one inside.</remarks>
internal sealed class InkMap : IDisposable
{
    private const double Square = 2;

    private readonly Box2 _bounds;
    private readonly int _columns;
    private readonly int _rows;

    // How many squares with ink lie below and to the left of each corner.
    private readonly int[] _sums;

    /// <summary>Marks the squares along paths.</summary>
    /// <param name="paths">The paths [mm].</param>
    /// <param name="bounds">A box that holds them [mm].</param>
    public InkMap(IEnumerable<ArcPath> paths, Box2 bounds)
    {
        _bounds = bounds;
        (_columns, _rows) = ((int)(bounds.Width / Square) + 1, (int)(bounds.Height / Square) + 1);
        // Borrowed: dozens of maps are made for a set of patterns, each too large for what is cheap to forget.
        _sums = ArrayPool<int>.Shared.Rent((_columns + 1) * (_rows + 1));
        _sums.AsSpan(0, (_columns + 1) * (_rows + 1)).Clear();
        foreach (var path in paths)
        {
            foreach (var segment in path.Segments())
                Mark(segment);
        }

        for (var row = 1; row <= _rows; row++)
        {
            var inRow = 0;
            for (var column = 1; column <= _columns; column++)
            {
                inRow += _sums[At(row, column)];
                _sums[At(row, column)] = inRow + _sums[At(row - 1, column)];
            }
        }
    }

    /// <summary>The squares a stretch across covers, the last one excluded; its ends may be infinitely far.</summary>
    public (int From, int To) Across(double left, double right) =>
        (Place(left - _bounds.Left, _columns), Place(right - _bounds.Left + Square, _columns));

    /// <summary>The squares an upright stretch covers, the last one excluded; its ends may be infinitely far.</summary>
    public (int From, int To) Up(double low, double high) =>
        (Place(low - _bounds.Bottom, _rows), Place(high - _bounds.Bottom + Square, _rows));

    /// <summary>Whether a line runs in the squares of two stretches.</summary>
    public bool Any((int From, int To) across, (int From, int To) up) =>
        across.From < across.To && up.From < up.To
        && _sums[At(up.To, across.To)] - _sums[At(up.To, across.From)] - _sums[At(up.From, across.To)] + _sums[At(up.From, across.From)] > 0;

    /// <summary>Gives back what was borrowed; the map tells nothing any more.</summary>
    public void Dispose() => ArrayPool<int>.Shared.Return(_sums);

    private static int Place(double distance, int count) => (int)Math.Clamp(Math.Floor(distance / Square), 0, count);

    private int At(int row, int column) => (row * (_columns + 1)) + column;

    private void Mark(ArcSegment segment)
    {
        var pieces = Math.Max(1, (int)Math.Ceiling(2 * segment.Length / Square));
        for (var i = 0; i <= pieces; i++)
        {
            var p = segment.PointAt((double)i / pieces);
            _sums[At(Place(p.Y - _bounds.Bottom, _rows - 1) + 1, Place(p.X - _bounds.Left, _columns - 1) + 1)] = 1;
        }
    }
}
