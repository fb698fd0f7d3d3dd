using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>One page of a part: its window onto the drawing, the seams with their register crosses, the foot.</summary>
/// <remarks>
/// <para><b>Frame.</b> The page, millimeters, y up, before the printer's correction.</para>
/// <para><b>Method.</b> Neighbors share a strip of the drawing; the seam runs along its middle. Right and upper seams are cut and
/// the page is laid over those neighbors, so that every foot stays readable until it is covered. On each seam stand two crosses
/// at the same place of the drawing on both pages, with the same letter.</para>
/// </remarks>
internal sealed class TilePage
{
    private const double CrossArm = 4;
    private const double NoteHeight = 1.8;

    private readonly PageLayout _layout;
    private readonly PartPages _part;
    private readonly int _row;
    private readonly int _column;
    private readonly PageMarks _marks = new();

    private TilePage(PageLayout layout, PartPages part, int row, int column) =>
        (_layout, _part, _row, _column) = (layout, part, row, column);

    /// <summary>Draws one page.</summary>
    /// <param name="layout">How pages are divided.</param>
    /// <param name="part">The part with its grid and page numbers.</param>
    /// <param name="row">Row of the tile, 0 at the top.</param>
    /// <param name="column">Column of the tile, 0 at the left.</param>
    /// <param name="pages">Number of pages in the whole set.</param>
    public static Sheet Of(PageLayout layout, PartPages part, int row, int column, int pages)
    {
        var page = new TilePage(layout, part, row, column);
        page.DrawPart();
        page.DrawSeams();
        PageFoot.Draw(page._marks, layout, part, row, column, pages);
        var title = $"{part.Grid.Part.Title}, {PartPages.PlaceName(row, column)}";
        return new Sheet(title, layout.Paper.Width, layout.Paper.Height, page._marks.All);
    }

    /// <summary>From the part's millimeters to the page's.</summary>
    private Vector2 Shift
    {
        get
        {
            var cell = _part.Grid.CellAt(_row, _column);
            return new Vector2(_layout.Cell.Left - cell.Left, _layout.Cell.Bottom - cell.Bottom);
        }
    }

    private void DrawPart()
    {
        var window = _part.Grid.CellAt(_row, _column).Grown(PageLayout.Strip / 2);
        _marks.Add(_part.Grid.Pieces.SelectMany(m => m.Inside(window)).Select(m => MovedMarks.Of(m, Shift)));
    }

    private void DrawSeams()
    {
        Box2 cell = _layout.Cell, window = _layout.Window;
        if (Neighbor(0, 1) is { } right)
            Upright(PageInks.Cut, cell.Right, (cell.Right + window.Right) / 2, Invariant($"cut here, lay over page {right}"), _row, _column, -1);
        if (Neighbor(0, -1) is { } left)
            Upright(PageInks.Lap, cell.Left, (cell.Left + window.Left) / 2, Invariant($"page {left} laps up to this line"), _row, _column - 1, 1);
        if (Neighbor(-1, 0) is { } above)
            Level(PageInks.Cut, cell.Top, (cell.Top + window.Top) / 2, Invariant($"cut here, lay over page {above}"), _row - 1, _column, -1);
        if (Neighbor(1, 0) is { } below)
            Level(PageInks.Lap, cell.Bottom, (cell.Bottom + window.Bottom) / 2, Invariant($"page {below} laps up to this line"), _row, _column, 1);
    }

    private int? Neighbor(int down, int right) =>
        _part.Grid.IsUsed(_row + down, _column + right) ? _part.PageOf(_row + down, _column + right) : null;

    // Letters stand on the page's own side of the seam: inward is -1 for a right or upper seam and 1 for a left or lower one.
    private void Upright(Layer layer, double seam, double strip, string note, int row, int column, int inward)
    {
        Box2 cell = _layout.Cell, window = _layout.Window;
        _marks.Line(layer, new Point2(seam, window.Bottom), new Point2(seam, window.Top));
        _marks.Text(PageInks.Note, note, new Point2(strip, cell.Center.Y), NoteHeight, cell.Height / 3, Anchor.Middle, Math.PI / 2);
        foreach (var (fraction, name) in _part.CrossesRightOf(row, column))
        {
            var at = new Point2(seam, cell.Bottom + (fraction * cell.Height));
            _marks.Cross(PageInks.Register, at, CrossArm);
            _marks.Text(PageInks.Register, name, at + new Vector2(inward * (CrossArm + 1), 0), 2.5, anchor: inward < 0 ? Anchor.MiddleRight : Anchor.MiddleLeft);
        }
    }

    private void Level(Layer layer, double seam, double strip, string note, int row, int column, int inward)
    {
        Box2 cell = _layout.Cell, window = _layout.Window;
        _marks.Line(layer, new Point2(window.Left, seam), new Point2(window.Right, seam));
        _marks.Text(PageInks.Note, note, new Point2(cell.Center.X, strip), NoteHeight, cell.Width / 3, Anchor.Middle);
        foreach (var (fraction, name) in _part.CrossesBelow(row, column))
        {
            var at = new Point2(cell.Left + (fraction * cell.Width), seam);
            _marks.Cross(PageInks.Register, at, CrossArm);
            _marks.Text(PageInks.Register, name, at + new Vector2(0, inward * (CrossArm + 2.3)), 2.5, anchor: Anchor.Middle);
        }
    }
}
