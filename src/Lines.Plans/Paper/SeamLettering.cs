using System.Runtime.InteropServices;
using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Plans.Molds;

namespace Lines.Plans.Paper;

/// <summary>Moves the lettering of a part off the seams, so that no letter is cut.</summary>
/// <remarks>
/// <para><b>Method.</b> Lines of lettering close below each other stay together. Those a seam would cut go the shortest way into one page's
/// cell, past no line of the part, or along itself (where it begins with its line's name, any way) past no outline; a block or a hole's name only not past the part's outline, and a hole's to a page that shows the hole; where there is no room for their size, smaller ones. Lettering that finds no room stays and is cut.</para>
/// </remarks>
internal static class SeamLettering
{
    /// <summary>Clear distance to lines, and of a single line of lettering to seams [mm].</summary>
    private const double Clearance = 0.7;

    /// <summary>Lettering that names no hole stands as near to a line as this [mm], so that its ink is clear of the heaviest's.</summary>
    private const double FromLines = 0.5;

    /// <summary>Rather than be cut it stands as near as this [mm].</summary>
    private const double LeastFromLines = 0.3;

    /// <summary>Where a block has no room for the register letters along the seam it keeps this clear of it [mm].</summary>
    private const double BlockFromSeam = 2.5;

    private const double LeastHeight = 2.2;
    private const double Step = 3;
    private const int Steps = 16;

    private static readonly double[] Sizes = [1, 0.85, 0.7, 0.55, 0.4];

    /// <summary>The marks with no lettering across a seam.</summary>
    /// <param name="marks">The part's marks.</param>
    /// <param name="cells">The cells that are printed.</param>
    public static IReadOnlyList<PartMark> Clear(IReadOnlyList<PartMark> marks, IReadOnlyList<Box2> cells)
    {
        var cut = Groups(marks).Where(g => !cells.Any(c => c.Holds(BoxOf(marks, g).Grown(FromSeam(g))))).ToList();
        if (cut.Count == 0)
            return marks;
        var settled = marks.ToArray();
        var lines = new PartLines([.. marks.Where(m => m.Mark is PathMark)]);
        List<PartMark> outlines = [.. marks.Where(m => m.Mark is PathMark { Name.Length: 0 } && m.Mark.Layer != MoldInks.Guard).GroupBy(m => m.Part).Select(g => g.MaxBy(m => m.Bounds.Width * m.Bounds.Height)!)
            .Concat(marks.Where(m => m.Mark.Layer == MoldInks.Fold))];
        List<PartMark> holes = [.. marks.Where(HoleNames.IsHole)];
        var around = new PartLines(outlines);
        var waiting = new Queue<(List<int> Group, bool IsParted)>(cut.Select(g => (g, false)));
        var within = cells.ToArray();
        while (waiting.TryDequeue(out var next))
        {
            var (group, isParted) = next;
            List<Box2> others = [.. settled.Where((m, i) => m.Mark is TextMark && !group.Contains(i)).Select(m => m.Bounds)];
            if ((PlaceOf(group, isParted, others, FromLines) ?? PlaceOf(group, isParted, others, LeastFromLines)) is { } found)
            {
                foreach (var i in group)
                    settled[i] = found.Of(settled[i]);
            }
            else if (group.Count > 1)
            {
                // A block that finds no room whole is parted at the seam, or else goes line by line.
                var parted = group.GroupBy(i => Array.FindIndex(within, c => c.Holds(marks[i].Bounds.Center))).Select(g => g.ToList()).ToList();
                (parted.Count > 1 ? parted : [.. group.Select(i => new List<int> { i })]).ForEach(g => waiting.Enqueue((g, true)));
            }
        }

        return settled;

        Place? PlaceOf(List<int> group, bool isParted, List<Box2> others, double fromLines)
        {
            var first = marks[group[0]];
            if (HoleNames.HoleOf(first, holes.Where(h => h.Part == first.Part)) is { } hole)
                return Placed(ShowingBest(hole, cells), around, Clearance, Clearance) ?? Placed(cells, around, Clearance, Clearance);
            if (first.Mark is TextMark { Anchor: Anchor.Center })
            {
                // What belongs to a block keeps its order; a block that is whole may pass other lettering, and so may a line that is alone.
                double[] away = group.Count > 1 ? [PartPages.LettersReach, BlockFromSeam] : [Clearance];
                return away.Select(a => Placed(cells, around, fromLines, a, passes: false)).FirstOrDefault(p => p is not null)
                    ?? (group.Count == 1 || !isParted ? Placed(cells, around, fromLines, away[0]) : null);
            }

            return Placed(cells, lines, fromLines, Clearance) ?? Placed(cells, around, fromLines, Clearance, alongOnly: !NamesItsLine(first));

            Place? Placed(IReadOnlyList<Box2> shown, PartLines barriers, double away, double fromSeam, bool alongOnly = false, bool passes = true) =>
                PlaceFor(settled, group, shown, others, lines, barriers, away, fromSeam, alongOnly, passes);
        }

        bool NamesItsLine(PartMark lettering) => lettering.Mark is TextMark text
            && marks.Any(m => m.Part == lettering.Part && m.Mark is PathMark { Name: var name } && name.Length > 0 && text.Text.StartsWith(name + " ", StringComparison.Ordinal));
    }

    // A block leaves room for the register letters along the seam.
    private static double FromSeam(List<int> group) => group.Count > 1 ? PartPages.LettersReach : Clearance;

    // The pages that show a hole whole; where none does, those that show a piece of it.
    private static List<Box2> ShowingBest(PartMark hole, IReadOnlyList<Box2> cells)
    {
        List<Box2> whole = [.. cells.Where(c => c.Holds(hole.Bounds))];
        return whole.Count > 0 ? whole : [.. cells.Where(c => hole.Enters(c))];
    }

    private static Place? PlaceFor(PartMark[] marks, List<int> group, IReadOnlyList<Box2> cells, List<Box2> others, PartLines lines, PartLines barriers, double fromLines, double clear, bool alongOnly, bool passes)
    {
        var box = BoxOf(marks, group);
        var (rise, run) = Math.SinCos(((TextMark)marks[group[0]].Mark).Angle);
        var along = new Vector2(run, rise);
        var least = group.Min(i => ((TextMark)marks[i].Mark).Height);
        // A single line keeps to its anchor, at the end of what it names; a block to its middle.
        var about = group.Count == 1 ? ((TextMark)marks[group[0]].Mark).At : box.Center;
        foreach (var size in Sizes)
        {
            if (size < 1 && size * least < LeastHeight)
                break;
            var sized = new Place(about, size, default).Of(box);
            foreach (var move in Moves([.. cells.Select(c => c.Grown(-clear))], sized, alongOnly ? along : null))
            {
                var there = sized.Moved(move);
                if (TouchesNone(others, there.Grown(Clearance)) && lines.AreClearOf(there.Grown(fromLines)) && IsWayClear(barriers, passes ? [] : others, sized, move))
                    return new Place(about, size, move);
            }
        }

        return null;
    }

    // Up or down and then aside, or the other way round.
    private static bool IsWayClear(PartLines barriers, List<Box2> lettering, Box2 from, Vector2 move)
    {
        return ByWayOf(from.Moved(move with { X = 0 })) || ByWayOf(from.Moved(move with { Y = 0 }));

        bool ByWayOf(Box2 corner) => IsClear(from.With(corner)) && IsClear(corner.With(from.Moved(move)));

        bool IsClear(Box2 swept) => barriers.AreClearOf(swept) && TouchesNone(lettering, swept);
    }

    private static bool TouchesNone(List<Box2> boxes, Box2 box)
    {
        foreach (ref readonly var other in CollectionsMarshal.AsSpan(boxes))
        {
            if (other.Touches(box))
                return false;
        }

        return true;
    }

    // The shortest ways into each of the nearest cells, and from there on steps further in; along a direction only, if asked.
    private static Vector2[] Moves(IReadOnlyList<Box2> cells, Box2 box, Vector2? along)
    {
        var moves = new List<Vector2>();
        foreach (var cell in cells.Where(c => c.Grown(PartPages.LettersReach).Touches(box)))
        {
            if (box.Width > cell.Width || box.Height > cell.Height)
                continue;
            foreach (var x in Along(cell.Left - box.Left, cell.Right - box.Right))
            {
                foreach (var y in Along(cell.Bottom - box.Bottom, cell.Top - box.Top))
                {
                    if (along is not { } way || Math.Abs(new Vector2(x, y).Cross(way)) <= 1e-9)
                        moves.Add(new Vector2(x, y));
                }
            }
        }

        Vector2[] shortestFirst = [.. moves];
        Array.Sort([.. moves.Select(m => m.Length)], shortestFirst);
        return shortestFirst;

        static IEnumerable<double> Along(double least, double most)
        {
            var nearest = Math.Clamp(0, least, most);
            for (var k = -Steps; k <= Steps; k++)
            {
                if (nearest + (k * Step) is var v && v >= least && v <= most)
                    yield return v;
            }
        }
    }

    private static Box2 BoxOf(IReadOnlyList<PartMark> marks, List<int> group)
    {
        var box = Box2.Nothing;
        foreach (var i in group)
            box = box.With(marks[i].Bounds);
        return box;
    }

    private static List<List<int>> Groups(IReadOnlyList<PartMark> marks)
    {
        var groups = new List<List<int>>();
        for (var i = 0; i < marks.Count; i++)
        {
            if (marks[i].Mark is not TextMark text || marks[i].Bounds.IsNothing)
                continue;
            var near = groups.Where(g => g.Any(k => AreOneBlock(marks[k], marks[i]))).ToList();
            List<int> joined = [.. near.SelectMany(g => g), i];
            groups.RemoveAll(near.Contains);
            groups.Add(joined);
        }

        return groups;
    }

    // Centered lines below each other, no further apart than one of them is high.
    private static bool AreOneBlock(PartMark a, PartMark b) =>
        a.Mark is TextMark { Anchor: Anchor.Center } one && b.Mark is TextMark { Anchor: Anchor.Center } other
        && a.Part == b.Part && one.Angle == other.Angle && a.Bounds.Grown(Math.Max(one.Height, other.Height)).Touches(b.Bounds);

    /// <summary>Where lettering goes: shrunk about a point, then moved.</summary>
    private readonly record struct Place(Point2 About, double Size, Vector2 By)
    {
        public Box2 Of(Box2 box)
        {
            Point2 low = At(new Point2(box.Left, box.Bottom)), high = At(new Point2(box.Right, box.Top));
            return new Box2(low.X, low.Y, high.X, high.Y);
        }

        public PartMark Of(PartMark mark) => mark.Mark is TextMark text ? new PartMark(text with { At = At(text.At), Height = Size * text.Height }, mark.Part) : mark;

        private Point2 At(Point2 p) => About + (Size * (p - About)) + By;
    }
}
