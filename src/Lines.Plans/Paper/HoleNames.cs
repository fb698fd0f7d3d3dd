using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Kernel.Polygons;

namespace Lines.Plans.Paper;

/// <summary>Which lettering belongs to which hole of a part, and what a page lacks of it.</summary>
/// <remarks>A hole is a closed line with a name; its lettering is the name, or lines that begin with the name's first words.</remarks>
internal static class HoleNames
{
    private static readonly double[] Heights = [3, 2.2, 1.8];

    private const double Gap = 1.5;
    private const double Step = 2;

    /// <summary>Lettering further from a hole [mm] is another's.</summary>
    private const double Reach = 14;

    /// <summary>A sliver of a hole no deeper than this [mm] is plainly the next page's, and has seldom room for a name.</summary>
    private const double Least = 4;

    /// <summary>Whether a mark is a hole.</summary>
    public static bool IsHole(PartMark mark) => mark.Mark is PathMark { Name.Length: > 0, Path.Closed: true };

    /// <summary>The hole that a line of lettering names: the nearest one of that name; null where it names none.</summary>
    public static PartMark? HoleOf(PartMark lettering, IEnumerable<PartMark> holes) =>
        holes.Where(h => Names(lettering.Mark, h)).MinBy(h => h.Bounds.Center.DistanceTo(lettering.Bounds.Center));

    /// <summary>The names that a page lacks of holes that a seam cuts.</summary>
    /// <param name="page">The page's marks.</param>
    /// <param name="holes">The part's holes, moved to where the page shows them.</param>
    /// <param name="room">Where names may stand.</param>
    /// <param name="turnOf">The direction in which a part's own lettering is read [rad].</param>
    /// <param name="isFree">Whether no line of the part runs in a box.</param>
    public static IReadOnlyList<TextMark> Missing(IReadOnlyList<Mark> page, IEnumerable<PartMark> holes, Box2 room, Func<int, double> turnOf, Func<Box2, bool> isFree)
    {
        List<PartMark> shown = [.. holes.Where(h => h.Enters(room.Grown(-Least)))];
        if (shown.Count == 0)
            return [];
        List<PartMark> texts = [.. page.Where(m => m is TextMark).Select(m => new PartMark(m))];
        var register = page.Where(m => m.Layer == PageInks.Register).Select(m => new PartMark(m).Bounds);
        var names = new NameRoom(room, texts.Select(t => t.Bounds).Concat(register), isFree);
        foreach (var hole in shown.Where(h => !texts.Exists(t => Names(t.Mark, h) && t.Bounds.Touches(h.Bounds.Grown(Reach)))))
            names.AddAtFirstFree(Places(hole, room, (int)Math.Round(turnOf(hole.Part) / (Math.PI / 2))));
        return names.Names;
    }

    private static bool Names(Mark lettering, PartMark hole) =>
        lettering is TextMark text && IsHole(hole) && ((PathMark)hole.Mark).Name.StartsWith(text.Text, StringComparison.Ordinal);

    // Beside what the page shows of the hole, over and under it, level and upright as its part's own lettering is read, nearest first.
    private static IEnumerable<TextMark> Places(PartMark hole, Box2 room, int quarters) =>
        PlacesRead(((PathMark)hole.Mark).Name, Turned(hole.Bounds, -quarters), Turned(room, -quarters)).Select(n => (TextMark)MovedMarks.Turned(n, quarters, default));

    private static Box2 Turned(Box2 box, int quarters) => Box2.Around(box.Corners.Select(p => SheetStock.Turned(p, quarters)));

    private static IEnumerable<TextMark> PlacesRead(string name, Box2 b, Box2 room)
    {
        var shown = new Box2(Math.Max(b.Left, room.Left), Math.Max(b.Bottom, room.Bottom), Math.Min(b.Right, room.Right), Math.Min(b.Top, room.Top));
        foreach (var height in Heights)
        {
            for (var off = Gap; off < Reach; off += Step)
            {
                yield return Name(new Point2(shown.Right + off, shown.Center.Y), Anchor.MiddleLeft);
                yield return Name(new Point2(shown.Left - off, shown.Center.Y), Anchor.MiddleRight);
                yield return Name(new Point2(shown.Center.X, shown.Top + off + (height / 2)), Anchor.Middle);
                yield return Name(new Point2(shown.Center.X, shown.Bottom - off - (height / 2)), Anchor.Middle);
                yield return Name(new Point2(shown.Left, shown.Top + off), Anchor.Left);
                yield return Name(new Point2(shown.Right, shown.Top + off), Anchor.Right);
                yield return Name(new Point2(shown.Left, shown.Bottom - off - height), Anchor.Left);
                yield return Name(new Point2(shown.Right, shown.Bottom - off - height), Anchor.Right);
                foreach (var x in (double[])[shown.Center.X, shown.Left + height, shown.Right - height])
                {
                    yield return Name(new Point2(x, shown.Top + off), Anchor.MiddleLeft, Math.PI / 2);
                    yield return Name(new Point2(x, shown.Bottom - off), Anchor.MiddleRight, Math.PI / 2);
                }

                foreach (var y in (double[])[shown.Top - (height / 2), shown.Bottom + (height / 2), shown.Top + off, shown.Bottom - off])
                {
                    yield return Name(new Point2(shown.Right + off, y), Anchor.MiddleLeft);
                    yield return Name(new Point2(shown.Left - off, y), Anchor.MiddleRight);
                }

                foreach (var x in (double[])[shown.Right + off + (height / 2), shown.Left - off - (height / 2)])
                {
                    yield return Name(new Point2(x, shown.Center.Y), Anchor.Middle, Math.PI / 2);
                    yield return Name(new Point2(x, shown.Bottom + Gap), Anchor.MiddleLeft, Math.PI / 2);
                    yield return Name(new Point2(x, shown.Top - Gap), Anchor.MiddleRight, Math.PI / 2);
                }
            }

            TextMark Name(Point2 at, Anchor anchor, double angle = 0) => new(PageInks.Name, name, at, height, anchor, angle);
        }
    }
}
