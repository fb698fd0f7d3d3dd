using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>The foot of a tile's page: label at the left, scale bar in the middle, map of the neighbors at the right.</summary>
internal static class PageFoot
{
    private const double MapWidth = 22;
    private const double BarRoom = 101.6 + 8;
    private const double Gap = 4;

    /// <summary>Draws the foot.</summary>
    public static void Draw(PageMarks marks, PartPages part, int row, int column, int pages)
    {
        var foot = part.Grid.Layout.Foot;
        marks.Line(PageInks.Grid, new Point2(foot.Left, foot.Top), new Point2(foot.Right, foot.Top));
        var mapLeft = foot.Right - MapWidth;
        var barLeft = mapLeft - Gap - BarRoom;
        DrawLabel(marks, foot with { Right = barLeft - Gap }, part, row, column, pages);
        ScaleBar.Draw(marks, new Point2(barLeft + 2, foot.Bottom + 7));
        marks.Text(PageInks.Small, "measure this bar before cutting; print at actual size", new Point2(barLeft + 2, foot.Bottom + 0.6), 1.8, 101.6);
        DrawMap(marks, foot with { Left = mapLeft, Top = foot.Top - 1.5 }, part, row, column);
    }

    private static void DrawLabel(PageMarks marks, Box2 room, PartPages part, int row, int column, int pages)
    {
        marks.Text(PageInks.Label, part.Grid.Group.TitleOf(part.Grid.PartsOn(row, column)), new Point2(room.Left, room.Bottom + 10), 3.8, room.Width);
        marks.Text(PageInks.Label, PartPages.PlaceName(row, column), new Point2(room.Left, room.Bottom + 5.4), 3, room.Width);
        marks.Text(PageInks.Small, Invariant($"page {part.PageOf(row, column)} of {pages}"), new Point2(room.Left, room.Bottom + 1), 2.4, room.Width);
    }

    private static void DrawMap(PageMarks marks, Box2 room, PartPages part, int row, int column)
    {
        double width = room.Width / 3, height = room.Height / 3;
        foreach (var (down, right) in new[] { (0, 0), (-1, 0), (1, 0), (0, -1), (0, 1) })
        {
            if (!part.Grid.IsUsed(row + down, column + right))
                continue;
            var cell = new Box2(
                room.Left + ((1 + right) * width), room.Bottom + ((1 - down) * height),
                room.Left + ((2 + right) * width), room.Bottom + ((2 - down) * height));
            marks.Box((down, right) == (0, 0) ? PageInks.Label : PageInks.Grid, cell);
            marks.Text(PageInks.Small, Invariant($"{part.PageOf(row + down, column + right)}"), cell.Center, 2.4, width - 1.5, Anchor.Middle);
        }
    }
}
