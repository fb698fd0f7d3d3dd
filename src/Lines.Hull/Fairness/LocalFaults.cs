namespace Lines.Hull.Fairness;

/// <summary>Finds bumps, dents and kinks of a line: what stands off a batten over a short stretch, far under the limit for a fair hull.</summary>
/// <remarks>
/// <para><b>Method.</b> A line with a kink (see <see cref="FaultKind.Kink"/>) is judged as the two lines on either side of it. Then battens
/// are laid with ducks 300, 150 and 75 mm apart, in two to four places part of a span from each other. Where the line stands furthest
/// off, the ducks around that place are pulled over 100 mm, then further, until the batten springs no further away from the line: what
/// it then stands off is the height of a bump or a dent. Where it never settles, up to 1.2 m, that is the shape of the line and no
/// fault. The ducks on a fault stay pulled while the next is looked for, so that no neighbor is blamed.</para>
/// <para><b>Accuracy.</b> Size, or angle of a kink, within 25 %, for faults 75 to 300 mm long that stand clear of the ends of a line of 2 m or
/// more; <c>tests/Lines.Benchmarks/DETECTION.md</c> has the smallest that are found.</para>
/// </remarks>
public static class LocalFaults
{
    /// <summary>Least departure from a batten with ducks 150 mm apart or less that is called a fault [m].</summary>
    public const double Least = 0.00015;

    /// <summary>The same with ducks 300 mm apart, which cannot hold every shape that closely [m].</summary>
    public const double LeastWide = 0.0003;

    private const double Plateau = 1.12;
    private const double Shape = 0.0375; // what is shape is passed over for this way to both sides [m]
    private static readonly double[] s_gaps = [0.1, 0.15, 0.225, 0.3, 0.45, 0.6, 0.9, 1.2];

    /// <summary>The faults of a line, in order along it.</summary>
    /// <param name="trace">The line, sampled no further apart than a fifth of the faults looked for.</param>
    /// <param name="turnZone">Part of the line's length from either end within which it may turn sharply, 0 to 0.5; see <see cref="BattenTest"/>.</param>
    public static IReadOnlyList<LineFault> In(LineTrace trace, double turnZone)
    {
        ArgumentNullException.ThrowIfNull(trace);
        if (trace.Samples.Count < 9)
            return [];
        if (Kinks.Hardest(trace, turnZone) is { } kink)
        {
            var at = trace.Lengths[kink.Sample];
            var size = Pull.Of(trace, new DuckMarks(trace, BattenTest.DuckSpacing, turnZone), at, BattenTest.DuckSpacing).Size;
            return
            [
                .. Part(trace, 0, trace.SampleAt(at - Kinks.HalfWay(trace)), turnZone),
                new LineFault(FaultKind.Kink, size, kink.Turn, 0, trace.Places[kink.Sample]),
                .. Part(trace, trace.SampleAt(at + Kinks.HalfWay(trace)), trace.Samples.Count - 1, turnZone),
            ];
        }

        var seen = new List<Seen>();
        foreach (var (spacing, layouts, least) in (ReadOnlySpan<(double, int, double)>)[(0.3, 2, LeastWide), (0.15, 4, Least), (0.075, 4, Least)])
        {
            var marks = new DuckMarks(trace, spacing, turnZone);
            while (Furthest(trace, marks, layouts, least, seen) is var (place, departure) && departure > 0)
                seen.Add(Measured(trace, marks, place, spacing, departure));
            seen.RemoveAll(s => s.Fault is null);
        }

        return [.. seen.Select(s => s.Fault!.Value).OrderBy(f => f.Place)];
    }

    private static IReadOnlyList<LineFault> Part(LineTrace trace, int first, int last, double turnZone) =>
        last - first >= 9 ? In(trace.Between(first, last), turnZone) : [];

    // The sample that stands furthest off over all layouts, outside what was seen; a departure of 0 where none is a fault.
    private static (int Place, double Departure) Furthest(LineTrace trace, DuckMarks marks, int layouts, double least, List<Seen> seen)
    {
        (double, double)[] pulled = [.. seen.Where(s => s.Fault is not null).Select(s => (s.From, s.To))];
        (int Place, double Departure) worst = default;
        for (var layout = 0; layout < layouts; layout++)
        {
            var departures = LaidBatten.Departures(trace, marks.Ducks(layout / (double)layouts, pulled));
            for (var k = 0; k < departures.Length; k++)
            {
                if (Math.Abs(departures[k]) > Math.Max(least, worst.Departure) && !seen.Exists(s => trace.Lengths[k] >= s.From && trace.Lengths[k] <= s.To))
                    worst = (k, Math.Abs(departures[k]));
            }
        }

        return worst;
    }

    private static Seen Measured(LineTrace trace, DuckMarks marks, int place, double spacing, double departure)
    {
        double start = trace.Lengths[place], about = start;
        for (var round = 0; round < 3; round++)
            about = trace.Lengths[Pull.Of(trace, marks, about, spacing).Peak];
        Pull? before = null;
        foreach (var gap in s_gaps)
        {
            if (gap > trace.Length / 3 || about < gap / 2 || about > trace.Length - (gap / 2))
                break;
            about = trace.Lengths[Pull.Of(trace, marks, about, gap).Peak];
            var pull = Pull.Of(trace, marks, about, gap);
            if (before is { } b && pull.Size <= Plateau * b.Size && b.Size >= departure / 2)
                return new Seen(b.Size >= Least ? b.AsFault(trace) : null, Math.Min(start, about - (gap / 2)), Math.Max(start, about + (gap / 2)));
            before = pull;
        }

        return new Seen(null, Math.Min(start, about) - Shape, Math.Max(start, about) + Shape);
    }

    // A place that was looked at, as chord lengths; without fault it is the shape of the line.
    private sealed record Seen(LineFault? Fault, double From, double To);

    // What shows when the ducks are pulled over a gap around a chord length.
    private sealed record Pull(double Gap, double Size, bool Outward, int From, int Peak, int To)
    {
        public static Pull Of(LineTrace trace, DuckMarks marks, double about, double gap)
        {
            var departures = LaidBatten.Departures(trace, marks.Ducks(0, [(about - (gap / 2), about + (gap / 2))]));
            int first = trace.SampleAt(about - (gap / 2)), last = trace.SampleAt(about + (gap / 2)), peak = first;
            for (var k = first; k <= last; k++)
            {
                if (Math.Abs(departures[k]) > Math.Abs(departures[peak]))
                    peak = k;
            }

            int from = peak, to = peak;
            while (from > first && departures[from - 1] / departures[peak] >= 0.1)
                from--;
            while (to < last && departures[to + 1] / departures[peak] >= 0.1)
                to++;
            return new Pull(gap, Math.Abs(departures[peak]), departures[peak] > 0, from, peak, to);
        }

        public LineFault AsFault(LineTrace trace) =>
            new(Outward ? FaultKind.Bump : FaultKind.Dent, Size, 0, trace.Lengths[To] - trace.Lengths[From], trace.Places[Peak]);
    }
}
