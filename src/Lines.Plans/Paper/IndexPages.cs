using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using Lines.Plans.Report;

namespace Lines.Plans.Paper;

/// <summary>The pages that show every part in small with its tiles and their page numbers, and how the pages go together.</summary>
internal static class IndexPages
{
    private const int Across = 3;
    private const int Down = 4;
    private const double LineHeight = 5;

    /// <summary>Above and below the lines of the head [mm].</summary>
    private const double AroundHead = 14;

    private static readonly string[] Assembly =
    [
        "1  Print at actual size (100 %), not fitted to the page. Print page 1 first and measure its square before cutting.",
        "2  Cut each page along its ticked lines, at the right and at the top; the ticks fall off. Broken lines are not cut.",
        "3  Lay the cut edge over the neighbor, to the neighbor's broken line; halves of crosses with the same letter meet.",
        "4  Tape from the middle of a part outward. Check a long line of the part with a straightedge.",
        "5  Pasted paper moves. Check with a ruler, then cut: ACROSS from edge to edge on the line, UP from the foot, D to D.",
        "A dash in place of a page number: nothing but blank paper, left out. A page with next to nothing on it joins its neighbors.",
    ];

    /// <summary>Number of index pages a number of parts takes.</summary>
    public static int CountFor(int parts) => Math.Max(1, ((parts - 1) / (Across * Down)) + 1);

    /// <summary>Draws one index page, before the printer's correction.</summary>
    /// <param name="layout">How a page is divided.</param>
    /// <param name="parts">All parts.</param>
    /// <param name="index">Which of the index pages, from 0.</param>
    /// <param name="pages">Number of pages in the whole set.</param>
    /// <param name="isFair">Whether the hull is fair.</param>
    /// <param name="told">What else the builder is told, a sentence each: the parts that are missing and why.</param>
    /// <param name="guard">How far a guard line stands outside the line to cut, as it is written; null for none.</param>
    public static Sheet Of(PageLayout layout, IReadOnlyList<PartPages> parts, int index, int pages, bool isFair, IReadOnlyList<string> told, string? guard)
    {
        var marks = new PageMarks();
        IReadOnlyList<string> lines = guard is null ? Assembly : [.. Assembly, $"Dotted line: {guard} outside the line to cut. The saw takes the one, the other is left to measure from."];
        var bottom = DrawHead(marks, layout.Content, index, CountFor(parts.Count), pages, isFair, [.. lines.Select(a => (PageInks.Small, a)), .. told.Select(n => (PageInks.Label, n))]);
        var content = layout.Content with { Top = bottom };
        var here = parts.Skip(index * Across * Down).Take(Across * Down).ToList();
        for (var i = 0; i < here.Count; i++)
            DrawPart(marks, RoomOf(content, i), here[i]);
        return new Sheet("Index of parts and pages", layout.Paper.Width, layout.Paper.Height, marks.All);
    }

    private static double DrawHead(PageMarks marks, Box2 content, int index, int count, int pages, bool isFair, IReadOnlyList<(Layer Layer, string Text)> lines)
    {
        var top = content.Top;
        var title = count == 1 ? "Index of parts and pages" : Invariant($"Index of parts and pages, {index + 1} of {count}");
        marks.Text(PageInks.Label, Cautions.Marked(title, isFair), new Point2(content.Left, top - 5), 5, content.Width - 40);
        marks.Text(PageInks.Small, Invariant($"page {2 + index} of {pages}"), new Point2(content.Right, top - 5), 2.4, anchor: Anchor.Right);
        var y = top - 12.5;
        foreach (var (layer, line) in lines)
        {
            marks.Text(layer, line, new Point2(content.Left, y), 2.2, content.Width);
            y -= LineHeight;
        }

        y = top - AroundHead - (LineHeight * lines.Count);
        marks.Line(PageInks.Grid, new Point2(content.Left, y + 2), new Point2(content.Right, y + 2));
        return y;
    }

    private static Box2 RoomOf(Box2 content, int place)
    {
        double width = content.Width / Across, height = content.Height / Down;
        double left = content.Left + (place % Across * width), top = content.Top - (place / Across * height);
        return new Box2(left, top - height, left + width, top).Grown(-2);
    }

    private static void DrawPart(PageMarks marks, Box2 room, PartPages part)
    {
        var grid = part.Grid;
        marks.Text(PageInks.Label, grid.Group.Title, new Point2(room.Left, room.Top - 3.4), 3, room.Width);
        marks.Text(PageInks.Small, PagesOf(part), new Point2(room.Left, room.Top - 7.8), 2.2, room.Width);
        var picture = room with { Top = room.Top - 10 };
        var whole = grid.CellAt(grid.Rows - 1, 0).With(grid.CellAt(0, grid.Columns - 1));
        var scale = Math.Min(picture.Width / whole.Width, picture.Height / whole.Height);
        var shift = picture.Center - new Point2(scale * whole.Center.X, scale * whole.Center.Y);
        marks.Add(grid.Group.Parts.SelectMany(p => p.Marks).OfType<PathMark>().Select(m => MovedMarks.Of(m with { Layer = PageInks.Thumbnail }, shift, scale)));
        foreach (var (row, column) in grid.Tiles)
        {
            var tile = Small(row, column);
            marks.Box(PageInks.Grid, tile);
            Number(marks, tile, Invariant($"{part.PageOf(row, column)}"));
        }

        foreach (var (row, column) in grid.Blanks)
            Number(marks, Small(row, column), "-");

        Box2 Small(int row, int column)
        {
            var tile = grid.CellAt(row, column);
            Point2 low = new Point2(scale * tile.Left, scale * tile.Bottom) + shift, high = new Point2(scale * tile.Right, scale * tile.Top) + shift;
            return new Box2(low.X, low.Y, high.X, high.Y);
        }
    }

    // On a white patch, so that no line of the part runs through it.
    private static void Number(PageMarks marks, Box2 tile, string number)
    {
        var text = new TextMark(PageInks.Small, number, tile.Center, Math.Min(3, tile.Height / 3), Anchor.Middle);
        var width = StrokeLettering.Width(number, text.Height);
        if (width > tile.Width / 2)
            text = text with { Height = text.Height * tile.Width / (2 * width) };
        marks.Box(PageInks.Patch, new PartMark(text).Bounds.Grown(0.7), filled: true);
        marks.Add([text]);
    }

    private static string PagesOf(PartPages part)
    {
        var pages = part.FirstPage == part.LastPage
            ? Invariant($"page {part.FirstPage}")
            : Invariant($"pages {part.FirstPage} to {part.LastPage}");
        var size = Invariant($"{part.Grid.Rows} down by {part.Grid.Columns} across");
        return part.Grid.Layout.Sideways ? $"{pages}, {size}, read sideways" : $"{pages}, {size}";
    }
}
