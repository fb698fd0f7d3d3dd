using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

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

    /// <summary>Lettering that names no hole may stand as near to a line as this [mm].</summary>
    private const double FromLines = 0.1;

    private const double LeastHeight = 2.2;
    private const double Step = 6;
    private const int Steps = 8;

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
        List<PartMark> outlines = [.. marks.Where(m => m.Mark is PathMark { Name.Length: 0 }).GroupBy(m => m.Part).Select(g => g.MaxBy(m => m.Bounds.Width * m.Bounds.Height)!)];
        List<PartMark> holes = [.. marks.Where(HoleNames.IsHole)];
        var around = new PartLines(outlines);
        var waiting = new Queue<List<int>>(cut);
        while (waiting.TryDequeue(out var group))
        {
            List<Box2> others = [.. settled.Where((m, i) => m.Mark is TextMark && !group.Contains(i)).Select(m => m.Bounds)];
            if (PlaceOf(group, others) is { } found)
            {
                foreach (var i in group)
                    settled[i] = found.Of(settled[i]);
            }
            else if (group.Count > 1)
            {
                // A block that finds no room whole goes line by line.
                group.ForEach(i => waiting.Enqueue([i]));
            }
        }

        return settled;

        Place? PlaceOf(List<int> group, List<Box2> others)
        {
            if (HoleNames.HoleOf(marks[group[0]], holes.Where(h => h.Part == marks[group[0]].Part)) is { } hole)
                return PlaceFor(settled, group, ShowingBest(hole, cells), others, lines, around, Clearance) ?? PlaceFor(settled, group, cells, others, lines, around, Clearance);
            return marks[group[0]].Mark is TextMark { Anchor: Anchor.Center }
                ? PlaceFor(settled, group, cells, others, lines, around, FromLines) ?? PlaceFor(settled, group, cells, others, lines, around, FromLines, fromSeam: Clearance)
                : PlaceFor(settled, group, cells, others, lines, lines, FromLines) ?? PlaceFor(settled, group, cells, others, lines, around, FromLines, alongOnly: !NamesItsLine(marks[group[0]]));
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

    private static Place? PlaceFor(PartMark[] marks, List<int> group, IReadOnlyList<Box2> cells, List<Box2> others, PartLines lines, PartLines barriers, double fromLines, bool alongOnly = false, double? fromSeam = null)
    {
        var clear = fromSeam ?? FromSeam(group);
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
            foreach (var move in Moves([.. cells.Select(c => c.Grown(-clear))], sized))
            {
                var there = sized.Moved(move);
                if (alongOnly && Math.Abs(move.Cross(along)) > 1e-9)
                    continue;
                if (!others.Exists(there.Grown(Clearance).Touches) && lines.AreClearOf(there.Grown(fromLines)) && barriers.AreClearOf(there.With(sized)))
                    return new Place(about, size, move);
            }
        }

        return null;
    }

    // The shortest ways into each of the nearest cells, and from there on steps further in.
    private static List<Vector2> Moves(IReadOnlyList<Box2> cells, Box2 box)
    {
        var moves = new List<Vector2>();
        foreach (var cell in cells.Where(c => c.Grown(PartPages.LettersReach).Touches(box)))
        {
            if (box.Width > cell.Width || box.Height > cell.Height)
                continue;
            foreach (var x in Along(cell.Left - box.Left, cell.Right - box.Right))
            {
                foreach (var y in Along(cell.Bottom - box.Bottom, cell.Top - box.Top))
                    moves.Add(new Vector2(x, y));
            }
        }

        moves.Sort((a, b) => a.Length.CompareTo(b.Length));
        return moves;

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
