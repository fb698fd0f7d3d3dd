using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>Which pages a turned part needs wherever it begins on a page: one row of flags for each beginning, 12 mm apart both ways.</summary>
internal sealed class PageCounts
{
    /// <summary>Most pages along one side of a group that the flags hold.</summary>
    public const int Side = 8;

    private const double Step = 12;

    /// <summary>Looks at all beginnings of a part.</summary>
    /// <param name="ground">The part.</param>
    /// <param name="ink">Where its lines run.</param>
    /// <param name="cell">A page's cell.</param>
    public PageCounts(Silhouette ground, InkMap ink, Box2 cell)
    {
        Ground = ground;
        var box = ground.Bounds;
        var begins = new List<Begin>();
        Span<bool> needed = stackalloc bool[Side * Side];
        var columns = Beginnings(cell.Width, across => new GridPlace(new Box2(box.Left - across, 0, box.Left - across + cell.Width, cell.Height), 1, Cells(across + box.Width, cell.Width)), p => CellInk.ColumnsOf(ink, p));
        var rows = Beginnings(cell.Height, up => UpTo(Cells(up + box.Height, cell.Height), up), p => CellInk.RowsOf(ink, p));
        foreach (var (up, inRows) in rows)
        {
            foreach (var (across, inColumns) in columns)
            {
                var flags = needed[..(inRows.Length * inColumns.Length)];
                flags.Clear();
                var count = new GridPlace(cell, inRows.Length, inColumns.Length).Needed(new CellInk(ink, inColumns, inRows), int.MaxValue, flags);
                var pages = 0UL;
                for (var i = 0; i < flags.Length; i++)
                    pages |= flags[i] ? 1UL << ((Side * (inRows.Length - 1 - (i / inColumns.Length))) + (i % inColumns.Length)) : 0;
                begins.Add(new Begin(across, up, inColumns.Length, inRows.Length, pages, count));
            }
        }

        Begins = [.. begins];
        Fewest = begins.Count > 0 ? begins.Min(b => b.Count) : int.MaxValue;

        GridPlace UpTo(int count, double up)
        {
            var lowest = box.Bottom - up + ((count - 1) * cell.Height);
            return new GridPlace(new Box2(0, lowest, cell.Width, lowest + cell.Height), count, 1);
        }
    }

    /// <summary>The part.</summary>
    public Silhouette Ground { get; }

    /// <summary>All beginnings, from below, each from the left; none for a part too large.</summary>
    public Begin[] Begins { get; }

    /// <summary>Fewest pages it needs.</summary>
    public int Fewest { get; }

    // Every beginning along one side of a cell from which a group holds the part.
    private static List<(double From, CellInk.Stretch[] Stretches)> Beginnings(double side, Func<double, GridPlace> placeFrom, Func<GridPlace, CellInk.Stretch[]> stretchesOf)
    {
        var found = new List<(double From, CellInk.Stretch[] Stretches)>();
        for (var from = -GridPlace.Over; from < side - GridPlace.Over; from += Step)
        {
            if (placeFrom(from) is { Rows: <= Side, Columns: <= Side } place)
                found.Add((from, stretchesOf(place)));
        }

        return found;
    }

    // What stands over the last cell by no more than half a strip needs no further one.
    private static int Cells(double extent, double cell) => Math.Max(1, (int)Math.Ceiling((extent - GridPlace.Over) / cell));

    /// <summary>A beginning on a page.</summary>
    /// <param name="Across">From the cell's left side to the part's [mm].</param>
    /// <param name="Up">From the cell's lower side to the part's [mm].</param>
    /// <param name="Columns">Columns of pages it reaches over.</param>
    /// <param name="Rows">Rows of pages.</param>
    /// <param name="Pages">The pages needed, eight bits to a row from below.</param>
    /// <param name="Count">How many.</param>
    public readonly record struct Begin(double Across, double Up, int Columns, int Rows, ulong Pages, int Count);
}
