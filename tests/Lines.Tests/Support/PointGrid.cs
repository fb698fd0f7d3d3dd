using Lines.Kernel.Geometry;

namespace Lines.Tests.Support;

/// <summary>Points sorted into squares, so that those near a place are found without a look at all of them.</summary>
internal sealed class PointGrid
{
    private readonly double _reach;
    private readonly Dictionary<(long, long), List<Point2>> _squares = [];

    /// <param name="points">The points.</param>
    /// <param name="reach">How far from a place points are looked for, above 0; the side of the squares.</param>
    public PointGrid(IEnumerable<Point2> points, double reach)
    {
        _reach = reach;
        foreach (var p in points)
        {
            var square = SquareOf(p);
            if (!_squares.TryGetValue(square, out var there))
                _squares[square] = there = [];
            there.Add(p);
        }
    }

    /// <summary>Whether any point is within reach of a place.</summary>
    public bool IsNear(Point2 place)
    {
        var (column, row) = SquareOf(place);
        for (var i = column - 1; i <= column + 1; i++)
        {
            for (var k = row - 1; k <= row + 1; k++)
            {
                if (_squares.TryGetValue((i, k), out var there) && there.Exists(p => p.DistanceTo(place) <= _reach))
                    return true;
            }
        }

        return false;
    }

    private (long Column, long Row) SquareOf(Point2 p) => ((long)Math.Floor(p.X / _reach), (long)Math.Floor(p.Y / _reach));
}
