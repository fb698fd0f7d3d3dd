using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Plans.Molds;

namespace Lines.Plans.Paper;

/// <summary>Moves the lettering of a part off the seams, so that no letter is cut.</summary>
/// <remarks>
/// <para><b>Method.</b> Lines of lettering close below each other stay together. Those a seam would cut go the shortest way into one page's
/// cell, past no line of the part, or along itself (where it begins with its line's name, any way) past no outline; a block or a hole's name only not past the part's outline, and a hole's to a page that shows the hole; where there is no room for their size, smaller ones. What finds no room on its part, as where a seam
/// runs along a narrow one, stands beside it on the nearest blank ground, a leader from it to where it belongs; only where no page has such ground it stays and is cut.</para>
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

    /// <summary>Where the cells it touches have no room it goes into others no further away than this [mm]: about as far as a page is broad.</summary>
    private const double Far = 200;

    private const double LeastHeight = 2.2;
    private const double Step = 3;
    private const int Steps = 16;

    /// <summary>Lettering beside its part stands as far from all lines [mm].</summary>
    private const double FromLinesBeside = 2;

    /// <summary>So many steps reach over any page.</summary>
    private const int StepsBeside = 200;

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
        var left = new List<int>();
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
            if ((PlaceWithin(PartPages.LettersReach) ?? PlaceWithin(Far)) is { } found)
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
            else
            {
                left.AddRange(group);
            }

            Place? PlaceWithin(double reach)
            {
                var box = BoxOf(settled, group);
                List<Box2> near = [.. cells.Where(c => c.Grown(reach).Touches(box))];
                return near.Count == 0 ? null : PlaceOf(group, isParted, others, near, FromLines) ?? PlaceOf(group, isParted, others, near, LeastFromLines);
            }
        }

        return left.Count == 0 ? settled : Beside(settled, left, cells, lines, outlines);

        Place? PlaceOf(List<int> group, bool isParted, List<Box2> others, List<Box2> near, double fromLines)
        {
            var first = marks[group[0]];
            if (HoleNames.HoleOf(first, holes.Where(h => h.Part == first.Part)) is { } hole)
                return Placed([.. near.Intersect(ShowingBest(hole, cells))], around, Clearance, Clearance) ?? Placed(near, around, Clearance, Clearance);
            if (first.Mark is TextMark { Anchor: Anchor.Center })
            {
                // What belongs to a block keeps its order; a block that is whole may pass other lettering, and so may a line that is alone.
                double[] away = group.Count > 1 ? [PartPages.LettersReach, BlockFromSeam] : [Clearance];
                return away.Select(a => Placed(near, around, fromLines, a, passes: false)).FirstOrDefault(p => p is not null)
                    ?? (group.Count == 1 || !isParted ? Placed(near, around, fromLines, away[0]) : null);
            }

            return Placed(near, lines, fromLines, Clearance) ?? Placed(near, around, fromLines, Clearance, alongOnly: !NamesItsLine(first));

            Place? Placed(IReadOnlyList<Box2> shown, PartLines barriers, double away, double fromSeam, bool alongOnly = false, bool passes = true) =>
                PlaceFor(settled, group, shown, others, lines, barriers, away, fromSeam, alongOnly, passes);
        }

        bool NamesItsLine(PartMark lettering) => lettering.Mark is TextMark text
            && marks.Any(m => m.Part == lettering.Part && m.Mark is PathMark { Name: var name } && name.Length > 0 && text.Text.StartsWith(name + " ", StringComparison.Ordinal));
    }

    // What is left of a block goes together where there is room for it.
    private static List<PartMark> Beside(PartMark[] marks, List<int> left, IReadOnlyList<Box2> cells, PartLines lines, List<PartMark> outlines)
    {
        List<ArcPath> parts = [.. outlines.Where(o => o.Mark.Layer != MoldInks.Fold).Select(o => new ArcPath(((PathMark)o.Mark).Path.Vertices, Closed: true))];
        var leaders = new List<PartMark>();
        var waiting = new Queue<List<int>>(Groups([.. left.Select(i => marks[i])]).Select(g => g.ConvertAll(k => left[k])));
        while (waiting.TryDequeue(out var group))
        {
            if (PlaceBeside(marks, group, cells, lines, parts, leaders) is { } found)
            {
                leaders.Add(new PartMark(new PathMark(PageInks.Leader, found.Leader), marks[group[0]].Part));
                foreach (var i in group)
                    marks[i] = found.Place.Of(marks[i]);
            }
            else if (group.Count > 1)
            {
                group.ForEach(i => waiting.Enqueue([i]));
            }
        }

        return [.. marks, .. leaders];
    }

    // The nearest place off all parts whose leader passes no other lettering and no other leader.
    private static (Place Place, ArcPath Leader)? PlaceBeside(PartMark[] marks, List<int> group, IReadOnlyList<Box2> cells, PartLines lines, List<ArcPath> parts, List<PartMark> leaders)
    {
        var box = BoxOf(marks, group);
        List<Box2> others = [.. marks.Where((m, i) => m.Mark is TextMark && !group.Contains(i)).Select(m => m.Bounds)];
        var drawn = new PartLines(leaders);
        var least = group.Min(i => ((TextMark)marks[i].Mark).Height);
        foreach (var size in Sizes.Where(s => s == 1 || s * least >= LeastHeight))
        {
            var sized = new Place(box.Center, size, default).Of(box);
            foreach (var move in Moves([.. cells.Where(c => c.Grown(Far).Touches(box)).Select(c => c.Grown(-Clearance))], sized, along: null, StepsBeside))
            {
                var there = sized.Moved(move);
                var kept = there.Grown(FromLinesBeside);
                if (kept.TouchesAny(others) || !lines.AreClearOf(kept) || !drawn.AreClearOf(kept) || parts.Exists(p => p.Contains(there.Center)))
                    continue;
                var to = Nearest(box, there.Center);
                var leader = new ArcSegment(Nearest(there, to), to, 0);
                if (!others.Exists(o => leader.Enters(o)))
                    return (new Place(box.Center, size, move), ArcPath.Line(leader.From, leader.To));
            }
        }

        return null;

        static Point2 Nearest(Box2 box, Point2 p) => new(Math.Clamp(p.X, box.Left, box.Right), Math.Clamp(p.Y, box.Bottom, box.Top));
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
                if (!there.Grown(Clearance).TouchesAny(others) && lines.AreClearOf(there.Grown(fromLines)) && IsWayClear(barriers, passes ? [] : others, sized, move))
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

        bool IsClear(Box2 swept) => barriers.AreClearOf(swept) && !swept.TouchesAny(lettering);
    }

    // The shortest ways into each of the cells, and from there on steps further in; along a direction only, if asked.
    private static Vector2[] Moves(IReadOnlyList<Box2> cells, Box2 box, Vector2? along, int steps = Steps)
    {
        var moves = new List<Vector2>();
        foreach (var cell in cells)
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

        IEnumerable<double> Along(double least, double most)
        {
            var nearest = Math.Clamp(0, least, most);
            for (var k = -steps; k <= steps; k++)
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
