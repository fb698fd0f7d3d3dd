namespace Lines.Hull.Fairness;

/// <summary>Every fault of a line: bumps, dents and kinks, and hollows and flats elsewhere.</summary>
public static class LineFaults
{
    /// <summary>Least depth of a flat that is called a fault [m].</summary>
    public const double LeastFlat = 0.0005;

    private const double Near = 0.15; // a hollow this near a local fault is the same fault [m]

    /// <summary>The faults of a line, in order along it.</summary>
    /// <remarks><b>Method.</b> <see cref="LocalFaults"/>, then hollows over 0.1 mm from <see cref="Hollows"/>, then the worst flat from
    /// <see cref="CurvatureRuns"/>. Flats are looked for from fault to fault.
    /// Of two that lie within 150 mm, or within the length of the first, the first of these is named.</remarks>
    /// <param name="trace">The line.</param>
    /// <param name="turnZone">Part of the line's length from either end within which it may turn sharply, 0 to 0.5; see <see cref="BattenTest"/>.</param>
    public static IReadOnlyList<LineFault> In(LineTrace trace, double turnZone)
    {
        ArgumentNullException.ThrowIfNull(trace);
        var found = LocalFaults.In(trace, turnZone).ToList();
        foreach (var hollow in Hollows.In(trace, Limits.Hollow))
            Add(new LineFault(FaultKind.Hollow, hollow.Depth, 0, 0, hollow.Place));
        foreach (var part in Between(trace, [.. found]))
        {
            if (CurvatureRuns.WorstFlat(part) is var flat && flat.Depth >= LeastFlat)
                Add(new LineFault(FaultKind.Flat, flat.Depth, 0, 0, flat.Place));
        }

        return [.. found.OrderBy(f => f.Place)];

        void Add(LineFault fault)
        {
            var at = trace.LengthAt(fault.Place);
            if (!found.Exists(f => Math.Abs(trace.LengthAt(f.Place) - at) < Near + f.Length))
                found.Add(fault);
        }
    }

    // The line from fault to fault, for a bump has curvature that makes a flat of all beside it.
    private static IEnumerable<LineTrace> Between(LineTrace trace, IReadOnlyList<LineFault> faults)
    {
        var first = 0;
        foreach (var fault in faults.OrderBy(f => f.Place))
        {
            var at = trace.LengthAt(fault.Place);
            var last = trace.SampleAt(at - Near);
            if (last - first > 8)
                yield return trace.Between(first, last);
            first = Math.Max(first, trace.SampleAt(at + Near));
        }

        if (trace.Samples.Count - 1 - first > 8)
            yield return trace.Between(first, trace.Samples.Count - 1);
    }
}
