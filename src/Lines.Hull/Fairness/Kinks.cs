namespace Lines.Hull.Fairness;

/// <summary>Finds where a line turns in one place, or within a few centimeters.</summary>
/// <remarks><b>Method.</b> The turn of the line across a place is taken over 300 mm, or a twelfth of its length if that is less, and over a third
/// of that and over ways between and beyond, less what the mean of its curvatures at both ends of the way makes of it. A kink shows the same turn in all; a bump none over the longer ways, and a shape that bends
/// harder over some length next to none over the shorter one. Where a line may turn sharply, a kink is what turns more than the line does anyway over the
/// longer way.</remarks>
internal static class Kinks
{
    private const double LeastTurn = 0.0075; // rad: some 0.1 mm off a batten with ducks 300 mm apart
    private const double Alike = 0.75;

    /// <summary>Half the way within which a kink of a line turns [m].</summary>
    public static double HalfWay(LineTrace trace) => Math.Min(BattenTest.DuckSpacing, trace.Length / 12) / 6;

    /// <summary>The hardest kink: the sample in its middle and its angle [rad], positive where the line turns the way it bulges; null for none.</summary>
    /// <param name="trace">The line.</param>
    /// <param name="turnZone">Part of its length from either end within which it may turn sharply.</param>
    public static (int Sample, double Turn)? Hardest(LineTrace trace, double turnZone)
    {
        var headings = trace.Headings();
        var half = HalfWay(trace);
        int from = -1, to = -1;
        double most = 0, turn = 0;
        for (var k = 1; k < trace.Samples.Count - 1; k++)
        {
            double near = Turn(trace, headings, k, half), far = Turn(trace, headings, k, 3 * half);
            if (double.IsNaN(far) || Math.Abs(far) < LeastTurn || !SameOverAll(near, k))
                continue;
            if (Math.Min(trace.Lengths[k], trace.Length - trace.Lengths[k]) < turnZone * trace.Length && Math.Abs(near) < Bend(trace, k, 3 * half))
                continue;
            if (Math.Abs(near) > 1.02 * most)
                (from, turn) = (k, near);
            if (Math.Abs(near) > 0.98 * most)
                to = k;
            most = Math.Max(most, Math.Abs(near));
        }

        return from < 0 ? null : ((from + to) / 2, turn);

        // A way that ends on a bump may show its turn as well, two of different lengths hardly.
        bool SameOverAll(double near, int k)
        {
            foreach (var times in (ReadOnlySpan<double>)[1.5, 2, 3, 4])
            {
                var part = Turn(trace, headings, k, times * half) / near;
                if (part < Alike || part > 1 / Alike)
                    return false;
            }

            return true;
        }
    }

    // What the harder of the curvatures at both ends of a way makes the line turn over it.
    private static double Bend(LineTrace trace, int k, double half)
    {
        int a = trace.SampleAt(trace.Lengths[k] - half), b = trace.SampleAt(trace.Lengths[k] + half);
        return 2 * half * Math.Max(Math.Abs(trace.Samples[a].Curvature), Math.Abs(trace.Samples[b].Curvature));
    }

    // Turn over a way to both sides of a sample beyond what its curvature makes of it; NaN where the line ends sooner.
    private static double Turn(LineTrace trace, double[] headings, int k, double half)
    {
        int a = trace.SampleAt(trace.Lengths[k] - half), b = trace.SampleAt(trace.Lengths[k] + half);
        if (trace.Lengths[k] < half || trace.Lengths[k] > trace.Length - half || a == k || b == k)
            return double.NaN;
        var bend = (trace.Samples[a].Curvature + trace.Samples[b].Curvature) / 2;
        return (trace.OutwardSign * (headings[b] - headings[a])) - ((trace.Lengths[b] - trace.Lengths[a]) * bend);
    }
}
