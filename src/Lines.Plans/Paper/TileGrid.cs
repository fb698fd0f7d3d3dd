using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>One part cut up: how it lies on the pages, and which of them it needs.</summary>
/// <remarks>
/// <para><b>Frame.</b> The part's own millimetres, turned a quarter to the left where <see cref="Turned"/>. Row 0 is at the top,
/// column 0 at the left, as the assembled sheet is read.</para>
/// <para><b>Method.</b> Both ways round and a dozen places of the grid in each direction are tried; the one that needs the fewest
/// pages wins, among equals the one that leaves the most even margins. Cells with nothing in them are left out unless the pages
/// would then fall apart into groups with no seam between them.</para>
/// </remarks>
internal sealed class TileGrid
{
    private const int Phases = 12;

    private TileGrid(Sheet part, bool turned, Box2 first, int rows, int columns)
    {
        Part = part;
        Turned = turned;
        Rows = rows;
        Columns = columns;
        _first = first;
        var reaches = part.Marks.Select(Marks.Bounds).ToList();
        _used = new bool[rows, columns];
        foreach (var (row, column) in All())
            _used[row, column] = part.Marks.Where((m, i) => reaches[i].Touches(CellAt(row, column)) && Marks.Inside(m, CellAt(row, column)).Any()).Any();
        if (!HangsTogether())
        {
            foreach (var (row, column) in All())
                _used[row, column] = true;
        }
    }

    private readonly Box2 _first;
    private readonly bool[,] _used;

    /// <summary>The part, turned as it is printed.</summary>
    public Sheet Part { get; }

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

    /// <summary>What a tile adds to the part.</summary>
    public Box2 CellAt(int row, int column) => new(
        _first.Left + (column * _first.Width), _first.Bottom - (row * _first.Height),
        _first.Left + ((column + 1) * _first.Width), _first.Bottom - (row * _first.Height) + _first.Height);

    /// <summary>The cheapest grid of cells over a part.</summary>
    /// <param name="part">The part, full size.</param>
    /// <param name="width">Width of a cell [mm].</param>
    /// <param name="height">Height of a cell [mm].</param>
    public static TileGrid Over(Sheet part, double width, double height) =>
        new[] { false, true }
            .SelectMany(turned => Candidates(turned ? Marks.TurnedLeft(part) : part, turned, width, height))
            .OrderBy(c => c.Pages).ThenBy(c => c.Unevenness).ThenBy(c => c.Turned)
            .Select(c => new TileGrid(c.Part, c.Turned, c.First, c.Rows, c.Columns))
            .First();

    private static IEnumerable<Candidate> Candidates(Sheet part, bool turned, double width, double height)
    {
        var bounds = part.Marks.Aggregate(Box2.Nothing, (box, m) => box.With(Marks.Bounds(m)));
        if (bounds.IsNothing)
            bounds = new Box2(0, 0, part.Width, part.Height);
        double binWidth = width / Phases, binHeight = height / Phases;
        var bins = part.Marks.SelectMany(m => Marks.Samples(m, 1.0))
            .Select(p => ((int)Math.Floor((p.X - bounds.Left) / binWidth), (int)Math.Floor((bounds.Top - p.Y) / binHeight)))
            .Distinct().ToList();
        for (var right = 0; right < Phases; right++)
        {
            for (var down = 0; down < Phases; down++)
            {
                double left = right * binWidth, top = down * binHeight;
                var pages = bins.Select(b => ((b.Item1 + right) / Phases, (b.Item2 + down) / Phases)).Distinct().Count();
                int columns = Cells(left + bounds.Width, width), rows = Cells(top + bounds.Height, height);
                var uneven = Math.Abs((columns * width) - bounds.Width - (2 * left)) + Math.Abs((rows * height) - bounds.Height - (2 * top));
                var first = new Box2(bounds.Left - left, bounds.Top + top - height, bounds.Left - left + width, bounds.Top + top);
                yield return new Candidate(part, turned, first, rows, columns, pages, uneven);
            }
        }
    }

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

    private sealed record Candidate(Sheet Part, bool Turned, Box2 First, int Rows, int Columns, int Pages, double Unevenness);
}
