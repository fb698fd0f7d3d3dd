using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Hull.Fairness;

/// <summary>A batten laid along a line and held at ducks: how far the line stands off it.</summary>
/// <remarks><b>Method.</b> The curve of least bending energy through the ducks. A batten runs on past the ends of its line, and its tails
/// are swung until it lies best on the line between the end and the first duck: least squares of the distances there, by
/// Gauss-Newton steps, the rates of the first kept, until one no longer moves the batten by a nanometer. An end may therefore be turned sharply within
/// a millimeter, as where a skin closes on its stem, without bending the batten.</remarks>
internal static class LaidBatten
{
    private const double Probe = 1e-3; // angle by which a tail is swung to learn what that does [rad]
    private const double Still = 1e-9; // [m]
    private const int MostSteps = 20;

    /// <summary>Signed distance of every sample from the batten [m], positive where the line stands out on the side it bulges to.</summary>
    /// <param name="trace">The line.</param>
    /// <param name="ducks">Samples at which it is held, increasing, at least two, both ends of the line included.</param>
    public static double[] Departures(LineTrace trace, IReadOnlyList<int> ducks)
    {
        var points = new Point2[ducks.Count];
        for (var k = 0; k < points.Length; k++)
            points[k] = trace.Samples[ducks[k]].Point;
        Vector2 start = trace.Samples[0].Direction.Unit(), end = trace.Samples[^1].Direction.Unit();
        int first = ducks[1], last = Math.Max(1, ducks[^2]);
        Tail? fore = null, aft = null;
        for (var step = 0; step < MostSteps; step++)
        {
            var batten = new CubicInterpolant(points, start, end);
            fore ??= Tail.Of(trace, ducks, batten, new CubicInterpolant(points, Turned(start, Probe), end), 1, first);
            aft ??= Tail.Of(trace, ducks, batten, new CubicInterpolant(points, start, Turned(end, Probe)), last, trace.Samples.Count - 1);
            double atStart = fore.Swing(batten), atEnd = aft.Swing(batten);
            (start, end) = (Turned(start, atStart), Turned(end, atEnd));
            if (Math.Abs(atStart) * trace.Lengths[first] < Still && Math.Abs(atEnd) * (trace.Length - trace.Lengths[last]) < Still)
                break;
        }

        var departures = new double[trace.Samples.Count];
        Measure(trace, ducks, new CubicInterpolant(points, start, end), 1, departures.Length - 1, departures);
        return departures;
    }

    private static void Measure(LineTrace trace, IReadOnlyList<int> ducks, CubicInterpolant batten, int from, int to, double[] distances)
    {
        var span = 0;
        for (var k = from; k < to; k++)
        {
            while (span < ducks.Count - 2 && ducks[span + 1] <= k)
                span++;
            double a = trace.Lengths[ducks[span]], b = trace.Lengths[ducks[span + 1]];
            var near = batten.Lengths[span] + ((trace.Lengths[k] - a) / (b - a) * (batten.Lengths[span + 1] - batten.Lengths[span]));
            distances[k] = -trace.OutwardSign * batten.DistanceTo(trace.Samples[k].Point, near).Distance;
        }
    }

    private static Vector2 Turned(Vector2 v, double angle) => v.Turned(Math.Sin(angle), Math.Cos(angle));

    /// <summary>The samples between an end and its first duck, and what swinging the tail by a little does to their distances.</summary>
    /// <param name="Trace">The line.</param>
    /// <param name="Ducks">Where it is held.</param>
    /// <param name="From">First sample.</param>
    /// <param name="Changes">Change of each distance from there on, for a unit of angle.</param>
    private sealed record Tail(LineTrace Trace, IReadOnlyList<int> Ducks, int From, double[] Changes)
    {
        public static Tail Of(LineTrace trace, IReadOnlyList<int> ducks, CubicInterpolant batten, CubicInterpolant swung, int from, int to)
        {
            if (to - from < 3)
                return new Tail(trace, ducks, from, []);
            double[] here = new double[trace.Samples.Count], there = new double[trace.Samples.Count];
            Measure(trace, ducks, batten, from, to, here);
            Measure(trace, ducks, swung, from, to, there);
            return new Tail(trace, ducks, from, [.. Enumerable.Range(from, to - from).Select(k => (there[k] - here[k]) / Probe)]);
        }

        /// <summary>Angle by which the tail is to be swung on.</summary>
        public double Swing(CubicInterpolant batten)
        {
            var here = new double[Trace.Samples.Count];
            Measure(Trace, Ducks, batten, From, From + Changes.Length, here);
            double squares = 0, product = 0;
            for (var k = 0; k < Changes.Length; k++)
            {
                var weight = Trace.Lengths[From + k + 1] - Trace.Lengths[From + k - 1];
                squares += weight * Changes[k] * Changes[k];
                product += weight * Changes[k] * here[From + k];
            }

            return squares > 0 ? -product / squares : 0;
        }
    }
}
