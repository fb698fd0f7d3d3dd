using System.Numerics;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>A group of parts while it is laid: the pages it needs and the ground its parts take.</summary>
/// <remarks><b>Frame.</b> Millimeters; the first cell has its lower left corner at the origin.</remarks>
internal sealed class SharedGroup
{
    private readonly Box2 _cell;
    private readonly int _columns;
    private readonly int _rows;
    private readonly int _most;
    private readonly int _words;
    private readonly ulong[] _taken;
    private readonly List<(int Part, Silhouette Ground, Point2 Corner)> _parts = [];
    private ulong _pages;
    private double _area;
    private int _met;

    private SharedGroup(Box2 cell, int columns, int rows, int most)
    {
        (_cell, _columns, _rows, _most) = (cell, columns, rows, most);
        // A part may stand over the last cell by half a strip, and its ground by its room more.
        const int over = 8;
        _words = ((SquareAt(columns * cell.Width) + over) / 64) + 3;
        _taken = new ulong[_words * (SquareAt(rows * cell.Height) + over)];
    }

    /// <summary>The parts with their ground and its box's lower left corner.</summary>
    public IReadOnlyList<(int Part, Silhouette Ground, Point2 Corner)> Parts => _parts;

    /// <summary>Number of its pages.</summary>
    public int Count => BitOperations.PopCount(_pages);

    /// <summary>A group of one part, where it needs the fewest pages and leaves their other sides free.</summary>
    /// <param name="part">Index of the part.</param>
    /// <param name="counts">The part in all turns.</param>
    /// <param name="cell">A page's cell.</param>
    /// <param name="columns">Most columns, if the part needs no more.</param>
    /// <param name="rows">Most rows, if the part needs no more.</param>
    /// <param name="most">Most pages, if the part needs no more.</param>
    public static SharedGroup BegunWith(int part, PageCounts[] counts, Box2 cell, int columns, int rows, int most)
    {
        var begins = counts.SelectMany(c => c.Begins, (c, b) => (c.Ground, Begin: b)).ToList();
        if (begins.Count == 0)
            return TooLarge(part, counts[0].Ground, cell);
        var (ground, begin) = begins.MinBy(b => (b.Begin.Count, b.Begin.Across + b.Begin.Up));
        var group = new SharedGroup(cell, Math.Max(columns, begin.Columns), Math.Max(rows, begin.Rows), Math.Max(most, begin.Count));
        group.Add(part, new Place(ground, begin, 0, 0, begin.Count));
        return group;
    }

    // No other part goes with one that needs more rows or columns than a group holds.
    private static SharedGroup TooLarge(int part, Silhouette ground, Box2 cell)
    {
        var group = new SharedGroup(cell, 0, 0, 0);
        group._parts.Add((part, ground, default));
        return group;
    }

    /// <summary>Where a part takes the fewest further pages.</summary>
    /// <param name="turns">The part in all turns.</param>
    /// <param name="limit">Only fewer than these count.</param>
    /// <param name="densest">Share of the pages' ground that parts never take.</param>
    /// <returns>The place; null where it takes no fewer.</returns>
    public Place? FewestFor(PageCounts[] turns, int limit, double densest)
    {
        var page = _cell.Width * _cell.Height;
        var least = Math.Max(0, (int)Math.Ceiling((_area + turns[0].Ground.Area) / (densest * page)) - Count);
        var most = Math.Min(limit - 1, _most - Count);
        if (least > most)
            return null;
        // Of as many pages the first in order.
        Place? fewest = null;
        for (var row = 0; row < _rows; row++)
        {
            for (var column = 0; column < _columns; column++)
            {
                var here = (PageCounts.Side * row) + column;
                foreach (var turn in turns)
                {
                    foreach (ref readonly var begin in turn.Begins.AsSpan())
                    {
                        var further = BitOperations.PopCount((begin.Pages << here) & ~_pages);
                        if (further < least || further > most || column + begin.Columns > _columns || row + begin.Rows > _rows)
                            continue;
                        var place = new Place(turn.Ground, begin, row, column, further);
                        if (!IsFree(place))
                            continue;
                        (fewest, most) = (place, further - 1);
                        if (further == least)
                            return fewest;
                    }
                }
            }
        }

        return fewest;
    }

    /// <summary>Adds a part.</summary>
    public void Add(int part, Place place)
    {
        _pages |= place.Begin.Pages << ((PageCounts.Side * place.Row) + place.Column);
        _area += place.Ground.Area;
        _parts.Add((part, place.Ground, CornerOf(place)));
        Take(place);
    }

    // Whether nothing lies on a part's ground there.
    private bool IsFree(Place place)
    {
        var (ground, corner) = (place.Ground, CornerOf(place));
        int up = SquareAt(corner.Y), across = SquareAt(corner.X);

        // What was met at the place before is mostly met at the next by the same row.
        if (_met < ground.Rows && Meets(_met))
            return false;

        // From the middle rows outward: there parts are broad and meet soonest.
        for (var k = 0; k <= 2 * ground.Rows; k++)
        {
            var row = (ground.Rows / 2) + (k % 2 == 0 ? k / 2 : -(k + 1) / 2);
            if (row < 0 || row >= ground.Rows || !Meets(row))
                continue;
            _met = row;
            return false;
        }

        return true;

        bool Meets(int row)
        {
            var bits = ground.Row(row);
            var taken = _taken.AsSpan(((up + row) * _words) + (across / 64), bits.Length + 1);
            int shift = across % 64, rest = 63 - shift;
            var carried = 0UL;
            for (var w = 0; w < bits.Length; w++)
            {
                if ((taken[w] & ((bits[w] << shift) | carried)) != 0)
                    return true;
                carried = bits[w] >> rest >> 1;
            }

            return (taken[^1] & carried) != 0;
        }
    }

    private void Take(Place place)
    {
        var (ground, corner) = (place.Ground, CornerOf(place));
        int up = SquareAt(corner.Y), across = SquareAt(corner.X), shift = across % 64;
        for (var row = 0; row < ground.Rows; row++)
        {
            var bits = ground.Row(row);
            var taken = _taken.AsSpan(((up + row) * _words) + (across / 64), bits.Length + 1);
            for (var w = 0; w < bits.Length; w++)
            {
                taken[w] |= bits[w] << shift;
                taken[w + 1] |= bits[w] >> (63 - shift) >> 1;
            }
        }
    }

    private Point2 CornerOf(Place place) => new((place.Column * _cell.Width) + place.Begin.Across, (place.Row * _cell.Height) + place.Begin.Up);

    private static int SquareAt(double distance) => (int)Math.Floor((distance + GridPlace.Over) / Silhouette.Square);

    /// <summary>A place of a part in the group.</summary>
    /// <param name="Ground">The part, turned.</param>
    /// <param name="Begin">Where it begins on its first page.</param>
    /// <param name="Row">Row of that page, 0 lowest.</param>
    /// <param name="Column">Column of that page, 0 at the left.</param>
    /// <param name="Pages">Further pages it takes.</param>
    public readonly record struct Place(Silhouette Ground, PageCounts.Begin Begin, int Row, int Column, int Pages);
}
