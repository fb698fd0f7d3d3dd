using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Hull.Fairness;

/// <summary>How far a line stands off a batten.</summary>
/// <param name="Departure">Greatest distance between line and batten [m].</param>
/// <param name="Place">Place along the line where that is.</param>
public readonly record struct BattenGap(double Departure, double Place);

/// <summary>The test a loftsman makes on the floor: does a batten held at every other mark go through the marks between?</summary>
/// <remarks>
/// <para><b>Method.</b> Ducks stand on the line 300 mm apart or a little less, and no further than a twelfth of its length. Where
/// the line makes a turn that no batten would be asked to take in one span (within 15 % of its length from either end, 30 % along a
/// buttock, and anywhere along a section or an end profile) they stand closer, so that it turns by no more than 0.08 rad from duck to
/// duck: the turn of a stem excepted, and that of a low waterline round onto the keel. The batten is the curve of least bending energy through the ducks, leaving each end in the line's own direction. The
/// distance is measured square to the batten at every sample of the line, twice: with ducks at the marks and with ducks half-way
/// between them, so that no fault hides under a duck.</para>
/// <para><b>Accuracy.</b> A bump or dent of one sign, 150 mm wide or narrower, on a line otherwise fair shows its full height within
/// 25 %. A fair line shows what the ducks cannot hold: 0.01 mm on a parabola 5 m long and 0.37 m deep, 0.25 mm on such an ellipse.</para>
/// </remarks>
public static class BattenTest
{
    /// <summary>Distance between ducks on a long line [m].</summary>
    public const double DuckSpacing = 0.3;

    private const int LeastSpans = 12;
    private const double TurnPerSpan = 0.08;

    /// <summary>Part of a line's length from either end within which it may turn sharply.</summary>
    public const double EndZone = 0.15;

    /// <summary>The same along a buttock, which turns up round the forefoot and under the quarter.</summary>
    public const double ButtockZone = 0.30;

    /// <summary>The same along a line that may turn sharply anywhere.</summary>
    public const double Anywhere = 0.5;

    /// <summary>The greatest departure of a line from its batten.</summary>
    /// <param name="trace">The line.</param>
    /// <param name="turnZone">Part of the line's length from either end within which ducks may stand closer for a turn, 0 to 0.5.</param>
    public static BattenGap Of(LineTrace trace, double turnZone)
    {
        ArgumentNullException.ThrowIfNull(trace);
        var spans = Spans(trace, turnZone);
        var count = (int)Math.Ceiling(spans[^1]);
        var worst = new BattenGap(0, trace.Places[0]);
        foreach (var shift in (ReadOnlySpan<double>)[0, 0.5])
        {
            var gap = Laid(trace, spans, count, shift);
            if (gap.Departure > worst.Departure)
                worst = gap;
        }

        return worst;
    }

    // Number of duck spans from the start to every sample, not rounded.
    private static double[] Spans(LineTrace trace, double turnZone)
    {
        var spacing = Math.Min(DuckSpacing, trace.Length / LeastSpans);
        var spans = new double[trace.Samples.Count];
        for (var k = 1; k < spans.Length; k++)
        {
            double a = trace.Lengths[k - 1], b = trace.Lengths[k];
            var inZone = a < turnZone * trace.Length || b > (1 - turnZone) * trace.Length;
            var turn = inZone ? Angle(trace.Samples[k - 1].Direction, trace.Samples[k].Direction) : 0;
            spans[k] = spans[k - 1] + Math.Max((b - a) / spacing, turn / TurnPerSpan);
        }

        return spans;
    }

    private static double Angle(Vector2 a, Vector2 b) => Math.Abs(Math.Atan2(a.Cross(b), a.Dot(b)));

    private static BattenGap Laid(LineTrace trace, double[] spans, int count, double shift)
    {
        var scale = spans[^1] / count;
        var places = new List<double>(count + 2) { trace.Places[0] };
        for (var k = shift > 0 ? 0 : 1; k + shift < count; k++)
            places.Add(trace.PlaceAt(LengthAt((k + shift) * scale)));
        places.Add(trace.Places[^1]);
        var ducks = places.ConvertAll(p => trace.At(p));
        var batten = new CubicInterpolant(ducks.ConvertAll(d => d.Point), ducks[0].Direction, ducks[^1].Direction);
        var worst = new BattenGap(0, trace.Places[0]);
        var duck = 0;
        for (var k = 1; k < trace.Samples.Count - 1; k++)
        {
            while (duck < places.Count - 2 && places[duck + 1] <= trace.Places[k])
                duck++;
            var between = (trace.Places[k] - places[duck]) / (places[duck + 1] - places[duck]);
            var near = batten.Lengths[duck] + (between * (batten.Lengths[duck + 1] - batten.Lengths[duck]));
            var gap = Math.Abs(batten.DistanceTo(trace.Samples[k].Point, near).Distance);
            if (gap > worst.Departure)
                worst = new BattenGap(gap, trace.Places[k]);
        }

        return worst;

        double LengthAt(double span)
        {
            var k = Array.BinarySearch(spans, span) is var i && i >= 0 ? i : ~i - 1;
            k = Math.Clamp(k, 0, spans.Length - 2);
            return trace.Lengths[k] + ((span - spans[k]) / (spans[k + 1] - spans[k]) * (trace.Lengths[k + 1] - trace.Lengths[k]));
        }
    }
}
