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
        for (var up = -GridPlace.Over; up < cell.Height - GridPlace.Over; up += Step)
        {
            for (var across = -GridPlace.Over; across < cell.Width - GridPlace.Over; across += Step)
            {
                int columns = Cells(across + box.Width, cell.Width), rows = Cells(up + box.Height, cell.Height);
                if (columns > Side || rows > Side)
                    continue;
                var first = new Box2(box.Left - across, box.Bottom - up + ((rows - 1) * cell.Height), box.Left - across + cell.Width, box.Bottom - up + (rows * cell.Height));
                var place = new GridPlace(first, rows, columns);
                var flags = needed[..(rows * columns)];
                flags.Clear();
                var count = place.Needed(new Ink(place, ink), int.MaxValue, flags);
                var pages = 0UL;
                for (var i = 0; i < flags.Length; i++)
                    pages |= flags[i] ? 1UL << ((Side * (rows - 1 - (i / columns))) + (i % columns)) : 0;
                begins.Add(new Begin(across, up, columns, rows, pages, count));
            }
        }

        Begins = [.. begins];
        Fewest = begins.Count > 0 ? begins.Min(b => b.Count) : int.MaxValue;
    }

    /// <summary>The part.</summary>
    public Silhouette Ground { get; }

    /// <summary>All beginnings, from below, each from the left; none for a part too large.</summary>
    public Begin[] Begins { get; }

    /// <summary>Fewest pages it needs.</summary>
    public int Fewest { get; }

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

    private readonly record struct Ink(GridPlace Place, InkMap Map) : GridPlace.ICellInk
    {
        public bool IsOn(int row, int column, GridPlace.Sides printed)
        {
            var g = Place.Ground(row, column, printed);
            return Map.Any(Map.Across(g.Left, g.Right), Map.Up(g.Bottom, g.Top));
        }
    }
}
