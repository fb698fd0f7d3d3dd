using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;

namespace Lines.Tests.Plans.Paper;

/// <summary>Pages put together the way a builder does: by the letters at the register crosses alone.</summary>
internal static class AssembledPages
{
    /// <summary>Where each page lies, relative to the first, and the greatest distance between crosses of one name.</summary>
    public static (IReadOnlyDictionary<int, Vector2> Shifts, double WorstCross) Of(IReadOnlyList<IReadOnlyDictionary<string, Point2>> crosses)
    {
        var shifts = new Dictionary<int, Vector2> { [0] = new(0, 0) };
        var queue = new Queue<int>([0]);
        while (queue.TryDequeue(out var page))
        {
            for (var other = 0; other < crosses.Count; other++)
            {
                var common = crosses[page].Keys.Intersect(crosses[other].Keys, StringComparer.Ordinal).ToList();
                if (common.Count == 0 || shifts.ContainsKey(other))
                    continue;
                shifts[other] = (crosses[page][common[0]] + shifts[page]) - crosses[other][common[0]];
                queue.Enqueue(other);
            }
        }

        var worst = 0.0;
        foreach (var same in Enumerable.Range(0, crosses.Count)
            .SelectMany(p => crosses[p].Select(c => (c.Key, At: c.Value + shifts[p]))).GroupBy(c => c.Key, StringComparer.Ordinal))
        {
            var places = same.Select(c => c.At).ToList();
            if (places.Count != 2)
                throw new InvalidOperationException($"cross {same.Key} stands on {places.Count} pages");
            worst = Math.Max(worst, places[0].DistanceTo(places[1]));
        }

        return (shifts, worst);
    }

    /// <summary>The crosses of a page by name: each name belongs to the nearest crossing of two register lines.</summary>
    public static IReadOnlyDictionary<string, Point2> CrossesOf(Sheet page)
    {
        var arms = page.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "page-register").Select(m => m.Path.Segments()[0]).ToList();
        var places = arms.Select(a => a.PointAt(0.5)).Where(p => arms.Count(a => a.PointAt(0.5).DistanceTo(p) < 1e-9) == 2).ToList();
        return page.Marks.OfType<TextMark>().Where(m => m.Layer.Name is "page-register")
            .ToDictionary(m => m.Text, m => places.MinBy(p => p.DistanceTo(m.At)), StringComparer.Ordinal);
    }

    /// <summary>How far assembled lines are off a part's and the part's off them, the part turned by quarters and laid on them [mm].</summary>
    public static double Misfit(IReadOnlyList<ArcPath> assembled, IReadOnlyList<ArcPath> part, double step)
    {
        var best = double.PositiveInfinity;
        var found = assembled.Aggregate(Box2.Nothing, (b, p) => b.With(p.Bounds()));
        for (var turned = part; turned is not null; turned = Turned(turned))
        {
            var asked = turned.Aggregate(Box2.Nothing, (b, p) => b.With(p.Bounds()));
            if (Math.Abs(asked.Width - found.Width) < 1 && Math.Abs(asked.Height - found.Height) < 1)
            {
                var laid = turned.Select(p => p.Mapped(q => q + (found.Center - asked.Center))).ToList();
                best = Math.Min(best, Math.Max(Furthest(assembled, laid), Furthest(laid, assembled)));
            }
        }

        return best;

        IReadOnlyList<ArcPath>? Turned(IReadOnlyList<ArcPath> paths)
        {
            var next = paths.Select(p => p.Mapped(q => new Point2(-q.Y, q.X))).ToList();
            return next[0].Vertices[0].Point.DistanceTo(part[0].Vertices[0].Point) < 1e-9 ? null : next;
        }

        double Furthest(IReadOnlyList<ArcPath> from, IReadOnlyList<ArcPath> to) => from.SelectMany(p => PathDistance.Samples(p, step)).Max(PathDistance.ToAny(to));
    }
}
