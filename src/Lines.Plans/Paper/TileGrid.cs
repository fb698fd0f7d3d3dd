using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>Parts cut up: how they lie on the pages, and which of them they need.</summary>
/// <remarks>
/// <para><b>Frame.</b> The parts' common millimeters, turned a quarter to the left where <see cref="Turned"/>. Row 0 is at the top,
/// column 0 at the left, as the assembled sheet is read.</para>
/// <para><b>Method.</b> The first of the places <see cref="GridSearch"/> finds whose pages hang together by their seams and cut no lettering, or
/// the first that hang together; where none do, the fewest blank cells are printed that join the pages. Lettering is moved off the seams; where it finds no room, its cells are printed too.</para>
/// </remarks>
internal sealed class TileGrid
{
    private readonly GridPlace _place;
    private readonly bool[] _used;
    private readonly PartLines _lines;

    private TileGrid(GridSearch.Found found)
    {
        Layout = found.Layout;
        Group = found.Group;
        Turned = found.Turned;
        _place = found.Place;
        _used = new bool[Rows * Columns];
        _place.Needed(new Ink(_place, [.. found.Marks.Where(m => m.Mark is PathMark)]), int.MaxValue, _used);
        Pieces = SeamLettering.Clear(found.Marks, [.. Tiles.Select(t => CellAt(t.Row, t.Column))]);
        foreach (var (row, column) in All())
            _used[(row * Columns) + column] |= Pieces.Any(m => m.Mark is TextMark && m.Enters(CellAt(row, column)));
        _lines = new PartLines(Pieces);
    }

    /// <summary>How its pages are divided.</summary>
    public PageLayout Layout { get; }

    /// <summary>The parts, turned as they are printed.</summary>
    public PatternGroup Group { get; }

    /// <summary>The part's marks, turned and their lettering placed as they are printed.</summary>
    public IReadOnlyList<PartMark> Pieces { get; }

    /// <summary>Whether it was turned a quarter to the left to save pages.</summary>
    public bool Turned { get; }

    /// <summary>Number of rows.</summary>
    public int Rows => _place.Rows;

    /// <summary>Number of columns.</summary>
    public int Columns => _place.Columns;

    /// <summary>The needed tiles, row after row from the top, each from the left.</summary>
    public IEnumerable<(int Row, int Column)> Tiles => All().Where(t => IsUsed(t.Row, t.Column));

    /// <summary>The cells that hold nothing and are not printed.</summary>
    public IEnumerable<(int Row, int Column)> Blanks => All().Where(t => !IsUsed(t.Row, t.Column));

    /// <summary>Whether a tile exists and is printed.</summary>
    public bool IsUsed(int row, int column) => row >= 0 && row < Rows && column >= 0 && column < Columns && _used[(row * Columns) + column];

    /// <summary>The tile that carries lettering whole, so that no neighbor prints a piece of it; null for lines, and for lettering a seam cuts.</summary>
    public (int Row, int Column)? HomeOf(PartMark piece)
    {
        if (piece.Mark is not TextMark)
            return null;
        foreach (var (row, column) in Tiles)
        {
            if (CellAt(row, column).Holds(piece.Bounds))
                return (row, column);
        }

        return null;
    }

    /// <summary>The direction in which a part's own lettering is read [rad], 0 where it has none.</summary>
    /// <param name="part">Its index.</param>
    public double TurnOf(int part) => Pieces.Where(p => p.Part == part).Select(p => p.Mark).OfType<TextMark>().Select(t => t.Angle).FirstOrDefault();

    /// <summary>Whether no line of the part enters a box.</summary>
    public bool IsFree(Box2 box) => _lines.AreClearOf(box);

    /// <summary>What a tile adds to the part; outer tiles add half a strip more.</summary>
    public Box2 CellAt(int row, int column) => _place.CellAt(row, column);

    /// <summary>The indices of the parts that a tile shows.</summary>
    public IEnumerable<int> PartsOn(int row, int column)
    {
        var window = CellAt(row, column).Grown(GridPlace.Over);
        return Enumerable.Range(0, Group.Parts.Count).Where(i => Pieces.Any(p => p.Part == i && p.Mark is PathMark && p.Enters(window)));
    }

    /// <summary>The cheapest grid of cells over parts.</summary>
    /// <param name="group">The parts, full size.</param>
    /// <param name="layouts">The ways to divide a page.</param>
    public static TileGrid Over(PatternGroup group, IReadOnlyList<PageLayout> layouts)
    {
        const int tries = 10;
        TileGrid? first = null, hanging = null;
        foreach (var found in GridSearch.Best(group, layouts, tries))
        {
            var grid = new TileGrid(found);
            first ??= grid;
            if (!grid.HangsTogether())
                continue;
            if (grid.IsWhole)
                return grid;
            hanging ??= grid;
        }

        if (hanging is not null)
            return hanging;
        first!.Join();
        return first;
    }

    // Whether no seam cuts lettering.
    private bool IsWhole => Pieces.All(p => p.Mark is not TextMark || p.Bounds.IsNothing || HomeOf(p) is not null);

    private IEnumerable<(int Row, int Column)> All()
    {
        for (var row = 0; row < Rows; row++)
        {
            for (var column = 0; column < Columns; column++)
                yield return (row, column);
        }
    }

    private bool HangsTogether() => Reached().Count == Tiles.Count();

    // Prints the fewest further cells that make the pages hang together, those on which a line of the part shows before blank ones.
    private void Join()
    {
        if (!Tiles.Any())
            Array.Fill(_used, true);
        for (var reached = Reached(); reached.Count < Tiles.Count(); reached = Reached())
        {
            foreach (var (row, column) in WayOut(reached))
                _used[(row * Columns) + column] = true;
        }
    }

    // The pages that hang together with the first one.
    private HashSet<(int Row, int Column)> Reached()
    {
        var reached = new HashSet<(int Row, int Column)>();
        var next = new Stack<(int Row, int Column)>(Tiles.Take(1));
        while (next.TryPop(out var t))
        {
            if (!reached.Add(t))
                continue;
            foreach (var n in Neighbors(t).Where(n => IsUsed(n.Row, n.Column)))
                next.Push(n);
        }

        return reached;
    }

    // The shortest way over blank cells from pages to one that does not hang together with them.
    private IEnumerable<(int Row, int Column)> WayOut(HashSet<(int Row, int Column)> from)
    {
        const int blank = 1000;
        const int inked = blank - 1;
        var before = new Dictionary<(int Row, int Column), (int Row, int Column)>();
        var reached = from.ToHashSet();
        var queue = new PriorityQueue<((int Row, int Column) At, (int Row, int Column) From), int>();
        foreach (var t in from.Order())
            Enqueue(t, 0);
        while (queue.TryDequeue(out var step, out var cost))
        {
            if (!reached.Add(step.At))
                continue;
            before[step.At] = step.From;
            if (!IsUsed(step.At.Row, step.At.Column))
            {
                Enqueue(step.At, cost);
                continue;
            }

            for (var t = step.From; !from.Contains(t); t = before[t])
                yield return t;
            yield break;
        }

        void Enqueue((int Row, int Column) t, int cost)
        {
            foreach (var n in Neighbors(t))
                queue.Enqueue((n, t), cost + (IsUsed(n.Row, n.Column) ? 0 : IsFree(CellAt(n.Row, n.Column).Grown(GridPlace.Over)) ? blank : inked));
        }
    }

    private IEnumerable<(int Row, int Column)> Neighbors((int Row, int Column) t) =>
        new[] { (t.Row - 1, t.Column), (t.Row + 1, t.Column), (t.Row, t.Column - 1), (t.Row, t.Column + 1) }
            .Where(n => n.Item1 >= 0 && n.Item1 < Rows && n.Item2 >= 0 && n.Item2 < Columns);

    /// <summary>The lines themselves.</summary>
    private readonly record struct Ink(GridPlace Place, List<PartMark> Paths) : GridPlace.ICellInk
    {
        public bool IsOn(int row, int column, GridPlace.Sides printed)
        {
            var ground = Place.Ground(row, column, printed);
            return Paths.Exists(m => m.Enters(ground));
        }
    }
}
