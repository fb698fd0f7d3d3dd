namespace Lines.Hull.Fairness;

/// <summary>Counts what the curvature of a line does: where it changes sign, and how often it turns from rising to falling.</summary>
public static class CurvatureRuns
{
    /// <summary>A part of a line whose arc stands less than this off its chord counts as straight [m]: the model length.</summary>
    private const double Straight = 1e-6;

    /// <summary>A swing of curvature under this part of the line's greatest is no swing.</summary>
    private const double Swing = 0.01;

    /// <summary>Places where the curvature changes sign between parts that are not straight.</summary>
    public static IReadOnlyList<double> Inflections(LineTrace trace)
    {
        ArgumentNullException.ThrowIfNull(trace);
        var found = new List<double>();
        int sign = 0, end = 0;
        for (var k = 0; k < trace.Samples.Count;)
        {
            var next = Math.Sign(trace.Samples[k].Curvature);
            var last = k;
            while (last + 1 < trace.Samples.Count && Math.Sign(trace.Samples[last + 1].Curvature) == next)
                last++;
            if (next != 0 && Rise(trace, Math.Max(k - 1, 0), Math.Min(last + 1, trace.Samples.Count - 1)) > Straight)
            {
                if (sign == -next)
                    found.Add(Zero(trace, end, k));
                (sign, end) = (next, last);
            }

            k = last + 1;
        }

        return found;
    }

    /// <summary>Number of pieces along which the curvature only rises or only falls.</summary>
    /// <remarks>Swings of less than 1 % of the greatest curvature over the middle nine tenths of the line, or that would
    /// lift the line by less than 1 µm over its whole length, are not counted.</remarks>
    public static int MonotonePieces(LineTrace trace) => Turnings(trace).Count + 1;

    /// <summary>The worst flat of a line: a place where its curvature drops between two harder places.</summary>
    /// <remarks><b>Method.</b> Between two neighboring maxima of curvature, neither at an end of the line and no further apart than
    /// a third of its length (shoulders further apart are a shape, not a fault), the curvature is bridged by a straight line; the depth is how far the line would bulge beyond itself if it had that
    /// curvature, held where its own falls short by a fiftieth of the most. An ellipse or a parabola has no flat.</remarks>
    /// <returns>Depth [m] and place; depth 0 where there is no flat.</returns>
    public static Hollow WorstFlat(LineTrace trace)
    {
        ArgumentNullException.ThrowIfNull(trace);
        var turnings = Turnings(trace);
        var worst = new Hollow(0, trace.Places[0]);
        for (var k = 2; k < turnings.Count; k++)
        {
            if (turnings[k].Maximum
                && trace.Lengths[turnings[k].Sample] - trace.Lengths[turnings[k - 2].Sample] <= trace.Length / 3
                && Flat(trace, turnings[k - 2].Sample, turnings[k].Sample) is var flat && flat.Depth > worst.Depth)
                worst = flat;
        }

        return worst;
    }

    // The part between two maxima where the curvature lacks at least a fiftieth of what it lacks most.
    private static Hollow Flat(LineTrace trace, int from, int to)
    {
        var lacks = new double[to - from + 1];
        double a = trace.Samples[from].Curvature, b = trace.Samples[to].Curvature;
        for (var k = from; k <= to; k++)
        {
            var along = (trace.Lengths[k] - trace.Lengths[from]) / (trace.Lengths[to] - trace.Lengths[from]);
            lacks[k - from] = a + ((b - a) * along) - trace.Samples[k].Curvature;
        }

        var peak = Array.IndexOf(lacks, lacks.Max());
        int first = peak, last = peak;
        while (first > 0 && lacks[first] > lacks[peak] / 50)
            first--;
        while (last < lacks.Length - 1 && lacks[last] > lacks[peak] / 50)
            last++;
        return Bulge(trace, from + first, lacks.AsSpan(first, last - first + 1));
    }

    // Greatest w of w'' = -lack, w = 0 at both ends; the lack runs straight from sample to sample.
    private static Hollow Bulge(LineTrace trace, int from, ReadOnlySpan<double> lacks)
    {
        double start = trace.Lengths[from], length = trace.Lengths[from + lacks.Length - 1] - start, slope = 0;
        var rises = new double[lacks.Length];
        for (var k = 1; k < lacks.Length; k++)
        {
            var step = trace.Lengths[from + k] - trace.Lengths[from + k - 1];
            rises[k] = rises[k - 1] + (step * (slope - (step * ((2 * lacks[k - 1]) + lacks[k]) / 6)));
            slope -= step * (lacks[k - 1] + lacks[k]) / 2;
        }

        var worst = new Hollow(0, trace.Places[from]);
        for (var k = 0; k < lacks.Length; k++)
        {
            var depth = rises[k] - (rises[^1] * (trace.Lengths[from + k] - start) / length);
            if (depth > worst.Depth)
                worst = new Hollow(depth, trace.Places[from + k]);
        }

        return worst;
    }

    // Samples at which the curvature turns from rising to falling (a maximum) or back, small swings left out.
    private static List<(int Sample, bool Maximum)> Turnings(LineTrace trace)
    {
        ArgumentNullException.ThrowIfNull(trace);
        var least = Math.Max(Swing * Greatest(trace), 8 * Straight / (trace.Length * trace.Length));
        var found = new List<(int, bool)>();
        int low = 0, high = 0, direction = 0;
        for (var k = 0; k < trace.Samples.Count; k++)
        {
            if (direction >= 0 && C(k) > C(high))
                high = k;
            if (direction <= 0 && C(k) < C(low))
                low = k;
            if (direction >= 0 && C(k) < C(high) - least)
            {
                if (direction > 0)
                    found.Add((high, true));
                (direction, low) = (-1, k);
            }
            else if (direction <= 0 && C(k) > C(low) + least)
            {
                if (direction < 0)
                    found.Add((low, false));
                (direction, high) = (1, k);
            }
        }

        return found;

        double C(int k) => trace.Samples[k].Curvature;
    }

    private static double Greatest(LineTrace trace)
    {
        var greatest = 0.0;
        for (var k = 0; k < trace.Samples.Count; k++)
        {
            if (trace.Lengths[k] >= 0.05 * trace.Length && trace.Lengths[k] <= 0.95 * trace.Length)
                greatest = Math.Max(greatest, Math.Abs(trace.Samples[k].Curvature));
        }

        return greatest;
    }

    private static double Rise(LineTrace trace, int from, int to)
    {
        var start = trace.Samples[from].Point;
        var chord = trace.Samples[to].Point - start;
        if (!(chord.Length > 0))
            return 0;
        var along = chord.Unit();
        var rise = 0.0;
        for (var k = from + 1; k < to; k++)
            rise = Math.Max(rise, Math.Abs(along.Cross(trace.Samples[k].Point - start)));
        return rise;
    }

    private static double Zero(LineTrace trace, int a, int b)
    {
        double fa = trace.Samples[a].Curvature, fb = trace.Samples[b].Curvature;
        return trace.Places[a] + ((trace.Places[b] - trace.Places[a]) * fa / (fa - fb));
    }
}
