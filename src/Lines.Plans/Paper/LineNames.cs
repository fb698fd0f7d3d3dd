using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>Letters the lines of a part again on every page they cross, so that a page alone says which line is which.</summary>
/// <remarks><b>Method.</b> The longest straight piece of a line on the page with room for it takes the name beside it, at the free place nearest to a third of its
/// length; names of lines below each other then stand in a column. A name the page carries already is not repeated.</remarks>
internal static class LineNames
{
    private static readonly (double Height, double FromLine)[] Sizes = [(3, 1.2), (2.2, 0.9)];
    private const double Step = 3;

    /// <summary>Shorter pieces [mm] have their own name beside them, or hardly show.</summary>
    private const double LeastLength = 25;

    /// <summary>The names that a page lacks.</summary>
    /// <param name="part">What the page shows of one part.</param>
    /// <param name="page">All the page's marks, seams and register letters included.</param>
    /// <param name="turn">How the part lies on the page: the direction its lettering is read in [rad].</param>
    /// <param name="room">Where names may stand.</param>
    /// <param name="isFree">Whether no line of the part runs in a box.</param>
    public static IReadOnlyList<TextMark> Missing(IReadOnlyList<Mark> part, IReadOnlyList<Mark> page, double turn, Box2 room, Func<Box2, bool> isFree)
    {
        var known = part.OfType<TextMark>().Select(t => t.Text).ToHashSet(StringComparer.Ordinal);
        var missing = part.OfType<PathMark>().Where(p => p.Name.Length > 0 && !known.Contains(p.Name)).GroupBy(p => p.Name, StringComparer.Ordinal).ToList();
        if (missing.Count == 0)
            return [];
        var taken = page.Where(m => m is TextMark || m.Layer == PageInks.Register).Select(m => new PartMark(m).Bounds);
        var names = new NameRoom(room, taken, isFree);
        foreach (var pieces in missing)
        {
            var straight = pieces.SelectMany(p => p.Path.Inside(room)).SelectMany(p => p.Segments()).Where(s => s.IsLine && s.Length >= LeastLength);
            var longest = straight.OrderByDescending(s => s.Length).ToList();
            names.AddAtFirstFree(Sizes.SelectMany(size => longest.SelectMany(s => Places(pieces.Key, s, turn, size.Height, size.FromLine))));
        }

        return names.Names;
    }

    // Above the line, then below it, read as the part's own lettering is: from its left or from below it.
    private static IEnumerable<TextMark> Places(string name, ArcSegment line, double turn, double height, double fromLine)
    {
        var along = (line.To - line.From).Unit();
        var level = new Vector2(Math.Cos(turn), Math.Sin(turn));
        var isBackward = along.Dot(level) < -1e-9 || (along.Dot(level) < 1e-9 && level.Cross(along) < 0);
        var (start, way) = isBackward ? (line.To, -along) : (line.From, along);
        var angle = Math.Atan2(way.Y, way.X);
        var count = (int)(line.Length / Step);
        foreach (var above in (double[])[fromLine, -fromLine - height])
        {
            foreach (var k in Enumerable.Range(0, count).OrderBy(k => Math.Abs(k - (count / 3))))
                yield return new TextMark(PageInks.Name, name, start + (k * Step * way) + (above * way.TurnedLeft), height, Anchor.Left, angle);
        }
    }
}
