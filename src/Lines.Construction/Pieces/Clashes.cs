using Lines.Construction.Molds;
using Lines.Kernel.Units;

namespace Lines.Construction.Pieces;

/// <summary>Finds bulkheads and openings that stand in each other, in a joint, or wider than the hull.</summary>
internal static class Clashes
{
    /// <summary>Wood left beside an opening at least [m]: common practice, no source.</summary>
    private const double Beside = 0.010;

    /// <summary>The clashes, bulkheads first, in the order of the file.</summary>
    /// <param name="build">How the hull is built.</param>
    /// <param name="widestX">x of the widest station [m].</param>
    /// <param name="parts">The molds and bulkheads.</param>
    public static IEnumerable<Clash> Of(BuildDials build, double widestX, IReadOnlyList<Mold> parts)
    {
        var bulkheads = build.Bulkheads.Select(b => MoldFaces.Stock(b.At, widestX, build.BulkheadStock)).ToList();
        var joints = build.Joints.Select(j => (From: j - (build.JointGap / 2) - build.BulkheadStock, To: j + (build.JointGap / 2) + build.BulkheadStock)).ToList();
        for (var i = 0; i < bulkheads.Count; i++)
        {
            if (Met(joints, bulkheads[i]) is { } joint)
                yield return new Clash(false, i, $"it stands in the bulkheads of the joint at {new Length(build.Joints[joint])}");
            if (Met(bulkheads.Take(i), bulkheads[i]) is { } other)
                yield return new Clash(false, i, $"it stands in the bulkhead of {build.Bulkheads[other].Name} at {new Length(build.Bulkheads[other].At)}");
        }

        for (var i = 0; i < build.Openings.Count; i++)
        {
            var opening = build.Openings[i];
            var reach = (opening.From, opening.To);
            if (Met(joints, reach) is { } joint)
                yield return new Clash(true, i, $"the joint at {new Length(build.Joints[joint])} and its bulkheads go through it");
            if (Met(bulkheads, reach) is { } bulkhead)
                yield return new Clash(true, i, $"the bulkhead of {build.Bulkheads[bulkhead].Name} at {new Length(build.Bulkheads[bulkhead].At)} goes through it");
            if (Met(build.Openings.Take(i).Select(o => o.InDeck == opening.InDeck && Math.Abs(o.Aside - opening.Aside) < (o.Breadth + opening.Breadth) / 2 ? (o.From, o.To) : (double.NaN, double.NaN)), reach) is { } other)
                yield return new Clash(true, i, $"it runs into the opening for {build.Openings[other].Name}");
            if (parts.Where(p => OpeningMarks.Crosses(p, opening) && !OpeningMarks.HasRoom(p, opening, Beside)).Select(p => (Mold?)p).FirstOrDefault() is { } narrow)
                yield return new Clash(true, i, opening.Aside == 0
                    ? (FormattableString)$"it is {new Length(opening.Breadth)} broad, and the hull leaves it no room inside at {narrow.Name}, {new Length(narrow.X)} from the bow"
                    : $"it reaches {new Length(opening.Reach)} from the centerplane, and the hull leaves it no room inside at {narrow.Name}, {new Length(narrow.X)} from the bow");
        }
    }

    // The first of several stretches that shares more than a point with another.
    private static int? Met(IEnumerable<(double From, double To)> stretches, (double From, double To) with)
    {
        var met = stretches.ToList().FindIndex(s => s.From < with.To - 1e-9 && with.From < s.To - 1e-9);
        return met < 0 ? null : met;
    }
}
