namespace Lines.Kernel.Geometry;

/// <summary>Fit of lines and arcs to a smooth plane curve.</summary>
/// <remarks>
/// <para><b>Method.</b> The curve is sampled evenly along its length. Biarcs through two samples and their tangents are made as long as
/// the tolerance lets them, one after the other; then the smallest tolerance that needs no more of them is found, which spreads the
/// error evenly and leaves no short remnant at the end.</para>
/// <para><b>Accuracy.</b> No point of the curve is farther from the path than the tolerance: checked at every sample and, afterwards,
/// halfway between every two on the curve itself. Tangents are shared at the joints; an arc flatter than a hundredth of the tolerance
/// becomes a straight line, which turns a joint by less than 0.05 degrees. The ends of the curve are kept exactly.</para>
/// </remarks>
public static class ArcFit
{
    // A sample every 1/256 of the length: biarcs of a fair curve span a dozen or more.
    private const int Intervals = 256;
    private const int LengthSteps = 64;
    private const double MostTurn = 100 * Math.PI / 180;

    /// <summary>The path of lines and arcs along a smooth curve.</summary>
    /// <param name="curve">The curve: point and direction of travel at a parameter. Smooth between the ends; corners belong between two curves.</param>
    /// <param name="from">First parameter.</param>
    /// <param name="to">Last parameter.</param>
    /// <param name="tolerance">Greatest distance of the curve from the path, same unit as the curve's points, positive.</param>
    /// <returns>An open path from the curve's first point to its last.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is not positive.</exception>
    /// <exception cref="ArithmeticException">The curve is not smooth enough to be met: the message says how far off it stays, and where.</exception>
    public static ArcPath Along(Func<double, DirectedPoint> curve, double from, double to, double tolerance)
    {
        ArgumentNullException.ThrowIfNull(curve);
        if (!(tolerance > 0))
            throw new ArgumentOutOfRangeException(nameof(tolerance), tolerance, "the tolerance must be positive");
        var parameters = EvenlyAlong(curve, from, to);
        var samples = Array.ConvertAll(parameters, t => curve(t));
        var between = new Point2[Intervals];
        for (var i = 0; i < Intervals; i++)
            between[i] = curve((parameters[i] + parameters[i + 1]) / 2).Point;

        var worst = 0.0;
        for (var limit = tolerance; limit > tolerance / 16; limit *= 0.7)
        {
            if (!TryGreedy(samples, limit, tolerance, out var pieces))
                break;
            var best = Evened(samples, pieces, limit, tolerance);
            worst = WorstBetween(best, between);
            if (worst <= tolerance)
                return Path(best, tolerance);
        }

        throw new ArithmeticException(Invariant(
            $"lines and arcs cannot follow the curve within {tolerance}: between samples it stays {worst} away; is there a corner inside?"));
    }

    private static double[] EvenlyAlong(Func<double, DirectedPoint> curve, double from, double to)
    {
        var lengths = new double[LengthSteps + 1];
        var before = curve(from).Point;
        for (var i = 1; i <= LengthSteps; i++)
        {
            var here = curve(from + ((to - from) * i / LengthSteps)).Point;
            lengths[i] = lengths[i - 1] + before.DistanceTo(here);
            before = here;
        }

        var parameters = new double[Intervals + 1];
        var k = 1;
        for (var i = 0; i <= Intervals; i++)
        {
            var wanted = lengths[^1] * i / Intervals;
            while (k < LengthSteps && lengths[k] < wanted)
                k++;
            var step = lengths[k] - lengths[k - 1];
            var part = step > 0 ? Math.Clamp((wanted - lengths[k - 1]) / step, 0, 1) : 0;
            parameters[i] = from + ((to - from) * (k - 1 + part) / LengthSteps);
        }

        (parameters[0], parameters[^1]) = (from, to);
        return parameters;
    }

    private static List<Piece> Evened(DirectedPoint[] samples, List<Piece> pieces, double limit, double tolerance)
    {
        var best = pieces;
        double low = 0, high = limit;
        while (high - low > limit / 64)
        {
            var mid = (low + high) / 2;
            if (TryGreedy(samples, mid, tolerance, out var tighter) && tighter.Count <= pieces.Count)
                (best, high) = (tighter, mid);
            else
                low = mid;
        }

        return best;
    }

    private static bool TryGreedy(DirectedPoint[] samples, double limit, double tolerance, out List<Piece> pieces)
    {
        pieces = [];
        var i = 0;
        while (i < samples.Length - 1)
        {
            var last = samples.Length - 1;
            var good = TryPiece(samples, i, i + 1, limit, tolerance);
            if (good is null)
                return false;
            // Double the span while it holds, then halve the gap between the last that held and the first that did not.
            var bad = last + 1;
            for (var span = 2; good.Value.To < last; span *= 2)
            {
                var j = Math.Min(i + span, last);
                if (TryPiece(samples, i, j, limit, tolerance) is not { } longer)
                {
                    bad = j;
                    break;
                }

                good = longer;
            }

            while (bad - good.Value.To > 1 && bad <= last)
            {
                var mid = (good.Value.To + bad) / 2;
                if (TryPiece(samples, i, mid, limit, tolerance) is { } longer)
                    good = longer;
                else
                    bad = mid;
            }

            pieces.Add(good.Value);
            i = good.Value.To;
        }

        return true;
    }

    private static Piece? TryPiece(DirectedPoint[] samples, int from, int to, double limit, double tolerance)
    {
        if (Biarc.Between(samples[from], samples[to]) is not { } arcs)
            return null;
        ArcSegment first = Straightened(arcs.First, tolerance), second = Straightened(arcs.Second, tolerance);
        if (Math.Abs(first.Turn) > MostTurn || Math.Abs(second.Turn) > MostTurn)
            return null;
        for (var i = from + 1; i < to; i++)
        {
            if (!(Distance(first, second, samples[i].Point) <= limit))
                return null;
        }

        return new Piece(from, to, first, second);
    }

    // An arc leaves its chord by twice the bulge at each end: two neighbours made straight turn their joint by 0.046 degrees at most.
    private static ArcSegment Straightened(ArcSegment s, double tolerance) =>
        Math.Abs(s.Bulge) < 2e-4 && Math.Abs(s.Bulge) * s.From.DistanceTo(s.To) / 2 < tolerance / 100 ? s with { Bulge = 0 } : s;

    // The lengthwise half the point is in decides the arc, so that no detour of the other can hide an error.
    private static double Distance(ArcSegment first, ArcSegment second, Point2 p) =>
        (p - first.To).Dot(first.EndDirection) <= 0 ? first.DistanceTo(p) : second.DistanceTo(p);

    private static double WorstBetween(List<Piece> pieces, Point2[] between)
    {
        var worst = 0.0;
        foreach (var piece in pieces)
        {
            for (var i = piece.From; i < piece.To; i++)
                worst = Math.Max(worst, Distance(piece.First, piece.Second, between[i]));
        }

        return worst;
    }

    private static ArcPath Path(List<Piece> pieces, double tolerance)
    {
        var segments = new List<ArcSegment>();
        foreach (var s in pieces.SelectMany(p => new[] { p.First, p.Second }))
        {
            if (segments.Count > 0 && Merged(segments[^1], s, tolerance) is { } one)
                segments[^1] = one;
            else
                segments.Add(s);
        }

        return new ArcPath([.. segments.Select(s => new ArcVertex(s.From, s.Bulge)), new ArcVertex(segments[^1].To, 0)], false);
    }

    // Two neighbours become one arc where that moves nothing by more than a thousandth of the tolerance.
    private static ArcSegment? Merged(ArcSegment a, ArcSegment b, double tolerance)
    {
        var turn = a.Turn + b.Turn;
        if (Math.Abs(turn) > MostTurn)
            return null;
        var one = new ArcSegment(a.From, b.To, a.IsLine && b.IsLine ? 0 : Math.Tan(turn / 4));
        var moved = Math.Max(one.DistanceTo(a.To), Math.Max(one.DistanceTo(a.PointAt(0.5)), one.DistanceTo(b.PointAt(0.5))));
        return moved <= tolerance / 1000 ? one : null;
    }

    private readonly record struct Piece(int From, int To, ArcSegment First, ArcSegment Second);
}
