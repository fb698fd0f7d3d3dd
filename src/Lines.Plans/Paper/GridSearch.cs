using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>Looks for the cheapest grid of cells over a part.</summary>
/// <remarks>
/// <para><b>Method.</b> The part both ways round, pages upright and sideways, and places of the grid 2 mm apart in each direction are
/// tried. The fewest pages win; among equals fewest pages with next to nothing on them, long lines along a seam and lines of lettering
/// across one; then the most even margins. Lettering counts for no page: it moves to where pages are.</para>
/// </remarks>
internal sealed class GridSearch : IDisposable
{
    private const double Step = 2;

    /// <summary>Straight lines longer than this [mm] are kept off the seams where that costs no page.</summary>
    private const double LongLine = 50;

    /// <summary>A long line along a seam counts as much as this many lines of lettering cut by one: it leaves no room for the register letters.</summary>
    private const int Crowded = 10;

    /// <summary>A line nearer to a seam than this may be taken for it [mm]; each millimeter less counts as much again.</summary>
    private const double LeastFromSeam = 5;

    private readonly List<PartMark> _marks;
    private readonly Box2 _bounds;
    private readonly InkMap _ink;
    private readonly List<double> _uprights = [];
    private readonly List<double> _levels = [];
    private readonly List<Box2> _lettering = [];
    private readonly bool[] _few = new bool[256];

    private GridSearch(PatternGroup group, bool turned)
    {
        (Group, Turned) = (group, turned);
        _marks = [.. group.Parts.SelectMany((p, i) => p.Marks.Select(m => new PartMark(m, i)))];
        var lines = _marks.Where(m => m.Mark is PathMark).ToList();
        if (lines.Count == 0)
            lines = _marks;
        _bounds = Box2.Nothing;
        foreach (var mark in lines)
            _bounds = _bounds.With(mark.Bounds);
        if (_bounds.IsNothing)
            _bounds = new Box2(0, 0, group.Width, group.Height);
        _ink = new InkMap(lines.SelectMany(m => m.Strokes).Select(s => s.Path), _bounds);
        foreach (var mark in _marks)
            Note(mark);
    }

    private PatternGroup Group { get; }

    private bool Turned { get; }

    /// <summary>The ways to lay parts on pages that take the fewest, the best first.</summary>
    /// <param name="group">The parts, full size; several lie already as they suit the pages and are not turned.</param>
    /// <param name="layouts">The ways to divide a page.</param>
    /// <param name="most">How many ways to give at most.</param>
    public static IReadOnlyList<Found> Best(PatternGroup group, IReadOnlyList<PageLayout> layouts, int most)
    {
        var found = new List<Found>();
        foreach (var turned in group.Parts.Count == 1 ? (bool[])[false, true] : [false])
        {
            using var search = new GridSearch(turned ? group.TurnedLeft() : group, turned);
            foreach (var layout in layouts)
                search.Add(found, layout, most);
        }

        return found;
    }

    /// <inheritdoc/>
    public void Dispose() => _ink.Dispose();

    // Keeps the best of what takes as few pages as the best so far.
    private void Add(List<Found> found, PageLayout layout, int most)
    {
        var cell = layout.Cell;
        var lefts = new List<(double Left, CellInk.Stretch[] Columns)>();
        for (var left = _bounds.Left + GridPlace.Over; left > _bounds.Left + GridPlace.Over - cell.Width; left -= Step)
            lefts.Add((left, CellInk.ColumnsOf(_ink, GridPlace.Around(_bounds, left, _bounds.Top, cell))));
        for (var top = _bounds.Top - GridPlace.Over; top < _bounds.Top - GridPlace.Over + cell.Height; top += Step)
        {
            var rows = CellInk.RowsOf(_ink, GridPlace.Around(_bounds, _bounds.Left, top, cell));
            foreach (var (left, columns) in lefts)
            {
                var place = GridPlace.Around(_bounds, left, top, cell);
                var limit = found.Count > 0 ? found[0].Pages : int.MaxValue;
                Span<bool> needed = place.Rows * place.Columns <= 256 ? _few.AsSpan(0, place.Rows * place.Columns) : new bool[place.Rows * place.Columns];
                var ink = new CellInk(_ink, columns, rows);
                var pages = place.Needed(ink, limit, needed);
                if (pages > limit)
                    continue;
                if (pages < limit)
                    found.Clear();
                Keep(found, new Found(Group, Turned, layout, place, _marks, pages, Blemishes(place, needed, ink), Unevenness(place)), most);
            }
        }
    }

    // Sorted in; of equals the first stays before.
    private static void Keep(List<Found> found, Found next, int most)
    {
        var at = found.Count;
        while (at > 0 && next.IsBetterThan(found[at - 1]))
            at--;
        if (at == most)
            return;
        found.Insert(at, next);
        if (found.Count > most)
            found.RemoveAt(most);
    }

    private void Note(PartMark mark)
    {
        if (mark.Mark is TextMark)
        {
            _lettering.Add(mark.Bounds);
            return;
        }

        foreach (var segment in mark.Strokes.SelectMany(s => s.Path.Segments()))
        {
            if (!segment.IsLine || segment.Length <= LongLine)
                continue;
            if (segment.From.X == segment.To.X && !_uprights.Contains(segment.From.X))
                _uprights.Add(segment.From.X);
            if (segment.From.Y == segment.To.Y && !_levels.Contains(segment.From.Y))
                _levels.Add(segment.From.Y);
        }
    }

    private int Blemishes(GridPlace place, ReadOnlySpan<bool> needed, CellInk ink)
    {
        var count = 0;
        for (var i = 0; i < needed.Length; i++)
        {
            if (needed[i] && !ink.HasHeart(i / place.Columns, i % place.Columns))
                count += 2;
        }

        foreach (var x in _uprights)
            count += Crowding(x - place.First.Left, place.First.Width, place.Columns);
        foreach (var y in _levels)
            count += Crowding(place.First.Top - y, place.First.Height, place.Rows);
        foreach (var box in _lettering)
            count += IsCut(box, place) ? 1 : 0;
        return count;
    }

    // What a line costs that runs through the register letters about a seam between two cells, or by the seam itself.
    private static int Crowding(double fromFirst, double cell, int cells)
    {
        var seam = Math.Round(fromFirst / cell);
        var distance = seam > 0 && seam < cells ? Math.Abs(fromFirst - (seam * cell)) : double.PositiveInfinity;
        return distance >= PartPages.LettersReach ? 0 : (int)(Crowded * (1 + Math.Max(0, LeastFromSeam - distance)));
    }

    private static bool IsCut(Box2 box, GridPlace place) =>
        Between(box.Left - place.First.Left, box.Right - place.First.Left, place.First.Width)
        || Between(place.First.Top - box.Top, place.First.Top - box.Bottom, place.First.Height);

    private static bool Between(double from, double to, double cell) => Math.Floor(from / cell) < Math.Floor(to / cell);

    private double Unevenness(GridPlace place)
    {
        double before = _bounds.Left - place.First.Left, above = place.First.Top - _bounds.Top;
        return Math.Abs((place.Columns * place.First.Width) - _bounds.Width - (2 * before))
            + Math.Abs((place.Rows * place.First.Height) - _bounds.Height - (2 * above));
    }

    /// <summary>A way to lay parts on pages.</summary>
    /// <param name="Group">The parts as they are printed.</param>
    /// <param name="Turned">Whether it was turned a quarter to the left.</param>
    /// <param name="Layout">How its pages are divided.</param>
    /// <param name="Place">The grid.</param>
    /// <param name="Marks">The parts' marks.</param>
    /// <param name="Pages">Pages it takes.</param>
    /// <param name="Cost">What is not liked about it.</param>
    /// <param name="Unevenness">By how much its margins differ [mm].</param>
    public sealed record Found(
        PatternGroup Group, bool Turned, PageLayout Layout, GridPlace Place, IReadOnlyList<PartMark> Marks, int Pages, int Cost, double Unevenness)
    {
        /// <summary>Whether it is liked better than another way of as many pages.</summary>
        public bool IsBetterThan(Found other) =>
            Cost != other.Cost ? Cost < other.Cost
            : Unevenness != other.Unevenness ? Unevenness < other.Unevenness
            : Turned != other.Turned ? !Turned
            : !Layout.Sideways && other.Layout.Sideways;
    }
}
