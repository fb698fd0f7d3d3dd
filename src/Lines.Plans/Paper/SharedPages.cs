using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>Lays small parts into what larger ones leave free of their pages.</summary>
/// <remarks>
/// <para><b>Method.</b> The largest part first, each goes where it takes the fewest further pages: on a group begun before or, where that saves none, on pages of its own. A part lies in any quarter turn,
/// clear of the others by 4 mm. A group is put together on a bench: no more than 20 pages, or those of its largest part, and 1.3 m each way.
/// It is done for pages read upright and for such read sideways; the fewer pages win.</para>
/// </remarks>
internal static class SharedPages
{
    private const int MostPages = 20;
    private const double Bench = 1300;

    /// <summary>Denser than this parts never lie.</summary>
    private const double Densest = 0.9;

    /// <summary>Groups of parts.</summary>
    /// <param name="parts">The parts, full size.</param>
    /// <param name="layouts">The ways to divide a page.</param>
    /// <returns>The groups in the order of their first parts, each with the ways to divide a page that suit it.</returns>
    public static IReadOnlyList<(PatternGroup Group, IReadOnlyList<PageLayout> Layouts)> Of(IReadOnlyList<Sheet> parts, IReadOnlyList<PageLayout> layouts)
    {
        if (parts.Count < 2)
            return [.. parts.Select(p => (new PatternGroup(p), layouts))];
        var counts = new PageCounts[layouts.Count][][];
        for (var k = 0; k < layouts.Count; k++)
            counts[k] = new PageCounts[parts.Count][];
        Parallel.For(0, parts.Count, i =>
        {
            for (var quarters = 0; quarters < 4; quarters++)
            {
                var ground = new Silhouette(parts[i], quarters);
                using var ink = new InkMap(ground.Paths, ground.Bounds);
                for (var k = 0; k < layouts.Count; k++)
                    (counts[k][i] ??= new PageCounts[4])[quarters] = new PageCounts(ground, ink, layouts[k].Cell);
            }
        });
        // Fewest pages of each part alone, whichever way.
        int[] alone = [.. Enumerable.Range(0, parts.Count).Select(i => counts.Min(c => c[i].Min(p => p.Fewest)))];
        var tried = new List<SharedGroup>[layouts.Count];
        Parallel.For(0, layouts.Count, k => tried[k] = Laid(counts[k], alone, layouts[k].Cell));
        var best = Enumerable.Range(0, layouts.Count).MinBy(k => tried[k].Sum(g => g.Parts.Count > 1 ? g.Count : (long)alone[g.Parts[0].Part]));
        return
        [
            .. tried[best].OrderBy(g => g.Parts.Min(p => p.Part)).Select(g => g.Parts.Count > 1
                ? (PatternGroup.Of(g.Parts.OrderBy(p => p.Part).Select(p => (parts[p.Part], p.Ground.Quarters, p.Corner - new Point2(p.Ground.Bounds.Left, p.Ground.Bounds.Bottom)))), [layouts[best]])
                : (new PatternGroup(parts[g.Parts[0].Part]), layouts)),
        ];
    }

    private static List<SharedGroup> Laid(PageCounts[][] parts, int[] alone, Box2 cell)
    {
        int columns = Math.Clamp((int)(Bench / cell.Width), 1, PageCounts.Side), rows = Math.Clamp((int)(Bench / cell.Height), 1, PageCounts.Side);
        var groups = new List<SharedGroup>();
        foreach (var i in Enumerable.Range(0, parts.Length).OrderByDescending(i => parts[i][0].Ground.Area).ThenBy(i => i))
        {
            (SharedGroup Group, SharedGroup.Place Place)? best = null;
            var limit = alone[i];
            foreach (var group in groups)
            {
                if (group.FewestFor(parts[i], limit, Densest) is not { } place)
                    continue;
                (best, limit) = ((group, place), place.Pages);
            }

            if (best is { } found)
                found.Group.Add(i, found.Place);
            else
                groups.Add(SharedGroup.BegunWith(i, parts[i], cell, columns, rows, MostPages));
        }

        return groups;
    }
}
