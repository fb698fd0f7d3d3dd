using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>The lines of a part, sorted into squares so that a small box is quickly told free or not; lettering counts by the box around it.</summary>
internal sealed class PartLines
{
    private const double Square = 16;

    private readonly Box2 _bounds = Box2.Nothing;
    private readonly int _columns;
    private readonly int _rows;
    private readonly List<ArcSegment>?[] _squares;
    private readonly List<Box2> _lettering = [];

    /// <summary>Sorts the lines of marks.</summary>
    public PartLines(IReadOnlyList<PartMark> marks)
    {
        foreach (var mark in marks)
            _bounds = _bounds.With(mark.Bounds);
        if (_bounds.IsNothing)
        {
            _squares = [];
            return;
        }

        (_columns, _rows) = ((int)(_bounds.Width / Square) + 1, (int)(_bounds.Height / Square) + 1);
        _squares = new List<ArcSegment>?[_columns * _rows];
        foreach (var mark in marks)
        {
            if (mark.Mark is TextMark)
                _lettering.Add(mark.Bounds);
            else
                Add(mark.Strokes[0].Path);
        }
    }

    /// <summary>Whether no line enters a box.</summary>
    public bool AreClearOf(Box2 box)
    {
        if (_squares.Length == 0 || !box.Touches(_bounds))
            return true;
        if (box.TouchesAny(_lettering))
            return false;
        var (left, right, low, high) = Range(box);
        for (var row = low; row <= high; row++)
        {
            for (var column = left; column <= right; column++)
            {
                if (_squares[(row * _columns) + column] is { } here && Enters(here, box))
                    return false;
            }
        }

        return true;
    }

    private static bool Enters(List<ArcSegment> segments, Box2 box)
    {
        foreach (var segment in segments)
        {
            if (segment.Enters(box))
                return true;
        }

        return false;
    }

    private void Add(ArcPath path)
    {
        foreach (var segment in path.Segments())
            Add(segment);
    }

    private void Add(ArcSegment segment)
    {
        var bounds = segment.Bounds();
        var (left, right, low, high) = Range(bounds);
        for (var row = low; row <= high; row++)
        {
            for (var column = left; column <= right; column++)
            {
                // A long slanting line lies in few of the squares of its own box.
                var square = new Box2(column * Square, row * Square, (column + 1) * Square, (row + 1) * Square).Moved(new Vector2(_bounds.Left, _bounds.Bottom));
                if (segment.From == segment.To || (left != right && low != high && !segment.Enters(square.Grown(1e-6))))
                    continue;
                (_squares[(row * _columns) + column] ??= []).Add(segment);
            }
        }
    }

    private (int Left, int Right, int Low, int High) Range(Box2 box) =>
        (Place(box.Left - _bounds.Left, _columns), Place(box.Right - _bounds.Left, _columns),
            Place(box.Bottom - _bounds.Bottom, _rows), Place(box.Top - _bounds.Bottom, _rows));

    private static int Place(double distance, int count) => (int)Math.Clamp(Math.Floor(distance / Square), 0, count - 1);
}
