using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>A part's grid with the page number of every tile and the letters of its seams.</summary>
internal sealed class PartPages
{
    /// <summary>How far a register cross's arms reach from its middle [mm].</summary>
    public const double CrossArm = 4;

    /// <summary>How far its letters reach from the seam on either side [mm].</summary>
    public const double LettersReach = 10.5;

    private const string Rows = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

    /// <summary>Without the first letters of molds and bulkheads, and what is taken for a figure.</summary>
    private const string Seams = "ACDEFGHJKLNPQRSTUVWXYZ";

    // Where letters stand that go beyond a line along the seam [mm from it].
    private const double BeyondFrom = 11.8;
    private const double BeyondTo = 15.7;

    // Two crosses on a seam, each in its half of it.
    private static readonly (double Wish, double Least, double Most)[] CrossPlaces = [(1 / 6.0, 0.06, 0.46), (5 / 6.0, 0.54, 0.94)];

    private readonly Dictionary<(int Row, int Column), int> _pages = [];
    private readonly Dictionary<(int Row, int Column, bool Below), IReadOnlyList<(double Fraction, string Name)>> _crosses = [];

    /// <summary>Numbers a part's tiles from a first page on.</summary>
    public PartPages(TileGrid grid, int firstPage)
    {
        Grid = grid;
        FirstPage = firstPage;
        foreach (var (row, column) in grid.Tiles)
            _pages.Add((row, column), firstPage + _pages.Count);
        foreach (var (row, column) in grid.Tiles)
        {
            if (grid.IsUsed(row, column + 1))
                _crosses.Add((row, column, false), CrossesOf(grid.CellAt(row, column), below: false));
            if (grid.IsUsed(row + 1, column))
                _crosses.Add((row, column, true), CrossesOf(grid.CellAt(row, column), below: true));
        }
    }

    /// <summary>Number of its pages.</summary>
    public int Count => _pages.Count;

    /// <summary>The part cut up.</summary>
    public TileGrid Grid { get; }

    /// <summary>Page of the first tile.</summary>
    public int FirstPage { get; }

    /// <summary>Page of the last tile.</summary>
    public int LastPage => FirstPage + _pages.Count - 1;

    /// <summary>Page number of a tile that is printed.</summary>
    public int PageOf(int row, int column) => _pages[(row, column)];

    /// <summary>How a tile is called on its page: rows are lettered from the top, columns numbered from the left.</summary>
    public static string PlaceName(int row, int column) => Invariant($"row {LetterOf(row, Rows)}, column {column + 1}");

    /// <summary>Register crosses on the seam to the right of a tile: fraction up the tile's side, name.</summary>
    public IReadOnlyList<(double Fraction, string Name)> CrossesRightOf(int row, int column) => _crosses[(row, column, false)];

    /// <summary>Register crosses on the seam below a tile: fraction along the tile's side, name.</summary>
    public IReadOnlyList<(double Fraction, string Name)> CrossesBelow(int row, int column) => _crosses[(row, column, true)];

    // A cross goes to the place nearest the wished one at which neither it nor its letters on the two pages meet the part's lines; where its
    // half of the seam has none, a line may run through the cross, but not through the letters; or the letters stand beyond a line along the seam;
    // or it goes into the other half, clear of the other cross.
    private List<(double Fraction, string Name)> CrossesOf(Box2 cell, bool below)
    {
        const int steps = 100;
        var letter = LetterOf(_crosses.Count, Seams);
        var apart = 2 * LettersReach / (below ? cell.Width : cell.Height);
        var placed = new List<(double Fraction, string Name)>();
        foreach (var place in CrossPlaces)
            placed.Add((PlaceFor(place), Invariant($"{letter}{placed.Count + 1}")));
        return placed;

        double PlaceFor((double Wish, double Least, double Most) place) =>
            Free(place.Least, place.Most).Concat(Free(CrossPlaces[0].Least, CrossPlaces[^1].Most).Where(f => placed.TrueForAll(p => Math.Abs(p.Fraction - f) > apart)))
                .Append(place.Wish).First();

        IEnumerable<double> Free(double least, double most)
        {
            var wish = Math.Clamp(CrossPlaces[placed.Count].Wish, least, most);
            var tried = Enumerable.Range(0, steps + 1).Select(k => least + ((most - least) * k / steps)).OrderBy(f => Math.Abs(f - wish)).Prepend(wish);
            return tried.Where(f => Grid.IsFree(Around(f, -LettersReach, LettersReach)))
                .Concat(tried.Where(f => AreFree(f, CrossArm + 0.5, LettersReach))).Concat(tried.Where(f => AreFree(f, BeyondFrom, BeyondTo)));
        }

        bool AreFree(double f, double from, double to) => Grid.IsFree(Around(f, from, to)) && Grid.IsFree(Around(f, -to, -from));

        // From one distance to another square to the seam, an arm's length along it.
        Box2 Around(double f, double from, double to)
        {
            const double along = CrossArm + 0.5;
            if (below)
            {
                var x = cell.Left + (f * cell.Width);
                return new Box2(x - along, cell.Bottom + from, x + along, cell.Bottom + to);
            }

            var y = cell.Bottom + (f * cell.Height);
            return new Box2(cell.Right + from, y - along, cell.Right + to, y + along);
        }
    }

    /// <summary>One letter, then AA, AB and on.</summary>
    private static string LetterOf(int index, string letters) =>
        index < letters.Length ? letters[index].ToString() : LetterOf((index / letters.Length) - 1, letters) + LetterOf(index % letters.Length, letters);
}
