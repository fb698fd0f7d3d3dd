namespace Lines.Plans.Paper;

/// <summary>A part's grid with the page number of every tile and the letters of its seams.</summary>
internal sealed class PartPages
{
    private static readonly double[] CrossPlaces = [1 / 6.0, 5 / 6.0];

    private readonly Dictionary<(int Row, int Column), int> _pages = [];
    private readonly Dictionary<(int Row, int Column, bool Below), string> _letters = [];

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
                _letters.Add((row, column, false), LetterOf(_letters.Count));
            if (grid.IsUsed(row + 1, column))
                _letters.Add((row, column, true), LetterOf(_letters.Count));
        }
    }

    /// <summary>The part cut up.</summary>
    public TileGrid Grid { get; }

    /// <summary>Page of the first tile.</summary>
    public int FirstPage { get; }

    /// <summary>Page of the last tile.</summary>
    public int LastPage => FirstPage + _pages.Count - 1;

    /// <summary>Page number of a tile that is printed.</summary>
    public int PageOf(int row, int column) => _pages[(row, column)];

    /// <summary>How a tile is called on its page: rows are lettered from the top, columns numbered from the left.</summary>
    public static string PlaceName(int row, int column) => Invariant($"row {LetterOf(row)}, column {column + 1}");

    /// <summary>Register crosses on the seam to the right of a tile: fraction up the tile's side, name.</summary>
    public IEnumerable<(double Fraction, string Name)> CrossesRightOf(int row, int column) => Crosses(_letters[(row, column, false)]);

    /// <summary>Register crosses on the seam below a tile: fraction along the tile's side, name.</summary>
    public IEnumerable<(double Fraction, string Name)> CrossesBelow(int row, int column) => Crosses(_letters[(row, column, true)]);

    private static IEnumerable<(double Fraction, string Name)> Crosses(string letter) =>
        CrossPlaces.Select((fraction, i) => (fraction, Invariant($"{letter}{i + 1}")));

    /// <summary>A to Z, then AA, AB and on.</summary>
    private static string LetterOf(int index) =>
        index < 26 ? ((char)('A' + index)).ToString() : LetterOf((index / 26) - 1) + LetterOf(index % 26);
}
