using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>One part cut up: how it lies on the pages, and which of them it needs.</summary>
/// <remarks>
/// <para><b>Frame.</b> The part's own millimeters, turned a quarter to the left where <see cref="Turned"/>. Row 0 is at the top,
/// column 0 at the left, as the assembled sheet is read.</para>
/// <para><b>Method.</b> The part both ways round, pages upright and sideways, and a dozen places of the grid in each direction are tried;
/// the one that needs the fewest pages wins, among equals the one whose seams keep clear of long level and upright lines, then the one that
/// cuts the fewest lines of lettering, then the one with the most even margins. Cells with nothing in them are left out unless the pages
/// would then fall apart into groups with no seam between them.</para>
/// </remarks>
internal sealed class TileGrid
{
    private const int Phases = 12;

    /// <summary>Straight lines longer than this [mm] are kept off the seams where that costs no page.</summary>
    private const double LongLine = 50;

    private readonly Box2 _first;
    private readonly bool[,] _used;
    private readonly (ArcSegment Segment, Box2 Bounds)[] _segments;

    private TileGrid(Candidate choice)
    {
        Layout = choice.Layout;
        Part = choice.Part;
        Pieces = choice.Pieces;
        Turned = choice.Turned;
        Rows = choice.Rows;
        Columns = choice.Columns;
        _first = choice.First;
        _segments = [.. Pieces.SelectMany(m => m.Strokes).SelectMany(s => s.Path.Segments()).Select(s => (s, s.Bounds()))];
        _used = new bool[Rows, Columns];
        foreach (var (row, column) in All())
            _used[row, column] = Pieces.Any(m => m.Inside(CellAt(row, column)).Any());
        if (!HangsTogether())
        {
            foreach (var (row, column) in All())
                _used[row, column] = true;
        }
    }

    /// <summary>How its pages are divided.</summary>
    public PageLayout Layout { get; }

    /// <summary>The part, turned as it is printed.</summary>
    public Sheet Part { get; }

    /// <summary>The part's marks, turned as they are printed.</summary>
    public IReadOnlyList<PartMark> Pieces { get; }

    /// <summary>Whether it was turned a quarter to the left to save pages.</summary>
    public bool Turned { get; }

    /// <summary>Number of rows.</summary>
    public int Rows { get; }

    /// <summary>Number of columns.</summary>
    public int Columns { get; }

    /// <summary>The needed tiles, row after row from the top, each from the left.</summary>
    public IEnumerable<(int Row, int Column)> Tiles => All().Where(t => IsUsed(t.Row, t.Column));

    /// <summary>Whether a tile exists and is printed.</summary>
    public bool IsUsed(int row, int column) => row >= 0 && row < Rows && column >= 0 && column < Columns && _used[row, column];

    /// <summary>Whether no line of the part enters a box.</summary>
    public bool IsFree(Box2 box)
    {
        foreach (var (segment, bounds) in _segments)
        {
            if (bounds.Touches(box) && new ArcPath([new ArcVertex(segment.From, segment.Bulge), new ArcVertex(segment.To, 0)], false).Inside(box).Any())
                return false;
        }

        return true;
    }

    /// <summary>What a tile adds to the part.</summary>
    public Box2 CellAt(int row, int column) => new(
        _first.Left + (column * _first.Width), _first.Bottom - (row * _first.Height),
        _first.Left + ((column + 1) * _first.Width), _first.Bottom - (row * _first.Height) + _first.Height);

    /// <summary>The cheapest grid of cells over a part.</summary>
    /// <param name="part">The part, full size.</param>
    /// <param name="layouts">The ways to divide a page.</param>
    public static TileGrid Over(Sheet part, IReadOnlyList<PageLayout> layouts) =>
        new[] { false, true }
            .SelectMany(turned => Candidates(turned ? MovedMarks.TurnedLeft(part) : part, turned, layouts))
            .OrderBy(c => c.Pages).ThenBy(c => c.Crowded).ThenBy(c => c.CutLettering).ThenBy(c => c.Unevenness).ThenBy(c => c.Turned).ThenBy(c => c.Layout.Sideways)
            .Select(c => new TileGrid(c))
            .First();

    private static IEnumerable<Candidate> Candidates(Sheet part, bool turned, IReadOnlyList<PageLayout> layouts)
    {
        var pieces = part.Marks.Select(m => new PartMark(m)).ToList();
        var bounds = pieces.Aggregate(Box2.Nothing, (box, m) => box.With(m.Bounds));
        if (bounds.IsNothing)
            bounds = new Box2(0, 0, part.Width, part.Height);
        return layouts.SelectMany(layout => Candidates(part, pieces, bounds, turned, layout));
    }

    private static IEnumerable<Candidate> Candidates(Sheet part, List<PartMark> pieces, Box2 bounds, bool turned, PageLayout layout)
    {
        double width = layout.Cell.Width, height = layout.Cell.Height, binWidth = width / Phases, binHeight = height / Phases;
        var bins = pieces.SelectMany(m => m.Samples(1.0))
            .Select(p => (Right: (int)Math.Floor((p.X - bounds.Left) / binWidth), Down: (int)Math.Floor((bounds.Top - p.Y) / binHeight)))
            .ToHashSet();
        var (uprights, levels) = LongLines(pieces);
        var lettering = pieces.Where(m => m.Mark is TextMark).Select(m => m.Bounds).ToList();
        for (var right = 0; right < Phases; right++)
        {
            for (var down = 0; down < Phases; down++)
            {
                double left = bounds.Left - (right * binWidth), top = bounds.Top + (down * binHeight);
                int columns = Cells(bounds.Right - left, width), rows = Cells(top - bounds.Bottom, height);
                var first = new Box2(left, top - height, left + width, top);
                var crowded = uprights.Sum(x => Crowding(x - left, width)) + levels.Sum(y => Crowding(top - y, height));
                var uneven = Math.Abs((columns * width) - bounds.Width - (2 * right * binWidth))
                    + Math.Abs((rows * height) - bounds.Height - (2 * down * binHeight));
                var cutLettering = lettering.Count(b => IsCut(b.Left - left, b.Right - left, width) || IsCut(top - b.Top, top - b.Bottom, height));
                yield return new Candidate(
                    layout, pieces, part, turned, first, rows, columns, Pages(bins, right, down, rows, columns), crowded, cutLettering, uneven);
            }
        }
    }

    private static int Pages(HashSet<(int Right, int Down)> bins, int right, int down, int rows, int columns)
    {
        // One row and column more: a line that ends on the last seam may fall into the bin beyond it.
        var used = new bool[(rows + 1) * (columns + 1)];
        foreach (var bin in bins)
            used[((bin.Down + down) / Phases * (columns + 1)) + ((bin.Right + right) / Phases)] = true;
        return used.Count(u => u);
    }

    private static (IReadOnlyList<double> Uprights, IReadOnlyList<double> Levels) LongLines(IEnumerable<PartMark> pieces)
    {
        var lines = pieces.Where(m => m.Mark is PathMark).SelectMany(m => m.Strokes).SelectMany(s => s.Path.Segments())
            .Where(s => s.IsLine && s.Length > LongLine).ToList();
        return ([.. lines.Where(s => s.From.X == s.To.X).Select(s => s.From.X).Distinct()],
            [.. lines.Where(s => s.From.Y == s.To.Y).Select(s => s.From.Y).Distinct()]);
    }

    // 1 where a line runs through the register letters about a seam between two cells.
    private static int Crowding(double fromFirst, double cell)
    {
        var seam = Math.Round(fromFirst / cell);
        return seam > 0 && Math.Abs(fromFirst - (seam * cell)) < PartPages.LettersReach ? 1 : 0;
    }

    // Whether a seam runs between two distances from the first cell's edge.
    private static bool IsCut(double from, double to, double cell) => Math.Floor(from / cell) < Math.Floor(to / cell);

    // A part that ends on a seam to a thousandth of the paper tolerance needs no further page for it.
    private static int Cells(double extent, double cell) => Math.Max(1, (int)Math.Ceiling((extent - 2e-5) / cell));

    private IEnumerable<(int Row, int Column)> All() =>
        Enumerable.Range(0, Rows).SelectMany(row => Enumerable.Range(0, Columns).Select(column => (row, column)));

    private bool HangsTogether()
    {
        var left = Tiles.ToHashSet();
        if (left.Count == 0)
            return false;
        var reached = new Stack<(int Row, int Column)>([left.First()]);
        left.Remove(reached.Peek());
        while (reached.TryPop(out var t))
        {
            foreach (var next in new[] { (t.Row - 1, t.Column), (t.Row + 1, t.Column), (t.Row, t.Column - 1), (t.Row, t.Column + 1) })
            {
                if (left.Remove(next))
                    reached.Push(next);
            }
        }

        return left.Count == 0;
    }

    private sealed record Candidate(
        PageLayout Layout, IReadOnlyList<PartMark> Pieces, Sheet Part, bool Turned, Box2 First, int Rows, int Columns, int Pages, int Crowded, int CutLettering,
        double Unevenness);
}
