namespace Lines.Hull.Fairness;

/// <summary>A part of a line that curves inward.</summary>
/// <param name="Depth">Greatest distance of the line from the straightedge that bridges the hollow [m].</param>
/// <param name="Place">Place along the line where that is.</param>
public readonly record struct Hollow(double Depth, double Place);

/// <summary>Finds the hollows of a line.</summary>
/// <remarks>
/// <para><b>Method.</b> A straightedge laid against the outside of the line touches it everywhere but across a hollow, which it
/// bridges from one touching point to another (or from an end of the line). The samples are run through in order and those
/// the straightedge skips are measured square to it.</para>
/// <para><b>Accuracy.</b> The depth is never too great; it is short by at most the sagitta of the line between two samples.</para>
/// </remarks>
public static class Hollows
{
    /// <summary>All hollows deeper than a least depth [m], in order along the line.</summary>
    public static IReadOnlyList<Hollow> In(LineTrace trace, double least)
    {
        ArgumentNullException.ThrowIfNull(trace);
        var samples = trace.Samples;
        var touching = new List<int>(samples.Count);
        for (var k = 0; k < samples.Count; k++)
        {
            while (touching.Count >= 2 && Inward(touching[^2], touching[^1], k))
                touching.RemoveAt(touching.Count - 1);
            touching.Add(k);
        }

        var found = new List<Hollow>();
        for (var b = 1; b < touching.Count; b++)
        {
            if (Deepest(trace, touching[b - 1], touching[b]) is { } hollow && hollow.Depth > least)
                found.Add(hollow);
        }

        return found;

        bool Inward(int a, int b, int c) =>
            trace.OutwardSign * (samples[b].Point - samples[a].Point).Cross(samples[c].Point - samples[b].Point) < 0;
    }

    private static Hollow? Deepest(LineTrace trace, int from, int to)
    {
        if (to - from < 2)
            return null;
        var start = trace.Samples[from].Point;
        var along = (trace.Samples[to].Point - start).Unit();
        var best = new Hollow(0, trace.Places[from]);
        for (var k = from + 1; k < to; k++)
        {
            var depth = Math.Abs(along.Cross(trace.Samples[k].Point - start));
            if (depth > best.Depth)
                best = new Hollow(depth, trace.Places[k]);
        }

        return best;
    }
}
