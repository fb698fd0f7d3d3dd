namespace Lines.Kernel.Geometry;

/// <summary>Fit of lines and arcs to a smooth plane curve.</summary>
/// <remarks>
/// <para><b>Method.</b> The curve is sampled evenly along its length. Biarcs through two samples and their tangents are made as long as
/// the tolerance lets them, one after the other; the tangents are turned from the curve's own by what lets the arcs swing to both sides of it evenly,
/// which makes them a sixth longer; then the smallest tolerance that needs no more of them is found, which spreads the
/// error evenly and leaves no short remnant at the end; what is still shorter than it may be is joined to a neighbor where the tolerance lets it. Where the curve strays between two samples, they are set closer and it is done again.</para>
/// <para><b>Accuracy.</b> No point of the curve is farther from the path than the tolerance: checked at every sample and halfway
/// between every two on the curve itself. Tangents are shared at the joints; an arc flatter than a hundredth of the tolerance
/// becomes a straight line, which turns a joint by less than 0.05 degrees. The ends of the curve are kept exactly.</para>
/// </remarks>
public static class ArcFit
{
    // A sample every 1/128 of the length to start with: biarcs of a fair curve span several.
    private const int Intervals = 128;
    private const int LengthSteps = 64;
    private const double MostTurn = 100 * Math.PI / 180;

    // No tangent is turned from the curve's by more [rad], so that samples set close enough are always met.
    private const double MostTurned = 0.02;

    // Growth of curvature times length squared below which the curvature counts as constant: rounding alone makes as much of a circle.
    private const double SlowGrowth = 1e-8;

    // Parts of the best turn of tangents over evenly long arcs that are tried at every joint. The whole of it leaves no room for arcs that are shorter.
    private static readonly double[] s_turns = [0.5, 0.8];

    /// <summary>The path of lines and arcs along a smooth curve.</summary>
    /// <param name="curve">The curve: point and direction of travel at a parameter. Smooth between the ends; corners belong between two curves, one inside is rounded off by arcs as short as the tolerance makes them.</param>
    /// <param name="from">First parameter.</param>
    /// <param name="to">Last parameter.</param>
    /// <param name="tolerance">Greatest distance of the curve from the path, same unit as the curve's points, positive.</param>
    /// <param name="shortest">Length below which an arc is left only where the tolerance demands it, same unit.</param>
    /// <returns>An open path from the curve's first point to its last.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is not positive.</exception>
    /// <exception cref="ArcFitException">The curve jumps or turns back.</exception>
    public static ArcPath Along(Func<double, DirectedPoint> curve, double from, double to, double tolerance, double shortest = 0)
    {
        ArgumentNullException.ThrowIfNull(curve);
        if (!(tolerance > 0))
            throw new ArgumentOutOfRangeException(nameof(tolerance), tolerance, "the tolerance must be positive");
        // Samples and, between each two, the check halfway, which becomes a sample where the two must stand closer.
        var samples = EvenlyAlong(curve, from, to).Select(t => (T: t, At: curve(t))).ToArray();
        var halfway = Halfway(curve, samples);
        var strays = new List<int>();
        while (true)
        {
            var points = Array.ConvertAll(samples, s => s.At);
            strays.Clear();
            var growths = Growths(points);
            if (TryGreedy(points, growths, tolerance, tolerance, out var pieces, out var stuck))
            {
                var best = Evened(points, growths, pieces, tolerance);
                JoinShort(points, best, tolerance, shortest);
                foreach (var piece in best)
                    strays.AddRange(Enumerable.Range(piece.From, piece.To - piece.From).Where(i => !(piece.DistanceTo(halfway[i].At.Point) <= tolerance)));
                if (strays.Count == 0)
                    return Path(best, tolerance);
            }
            else
            {
                strays.Add(stuck);
            }

            foreach (var i in strays)
                RequireRoom(samples[i], samples[i + 1], tolerance);
            (samples, halfway) = Closer(curve, samples, halfway, strays);
        }
    }

    // A curve without jumps is met long before its samples stand this close.
    private static void RequireRoom((double T, DirectedPoint At) a, (double T, DirectedPoint At) b, double tolerance)
    {
        var middle = (a.T + b.T) / 2;
        if (a.At.Point.DistanceTo(b.At.Point) < tolerance / 1000 || middle == a.T || middle == b.T)
            throw new ArcFitException(a.T, Invariant($"lines and arcs cannot follow the curve within {tolerance} at ({a.At.Point.X}, {a.At.Point.Y}): does it jump there?"));
    }

    private static (double T, DirectedPoint At)[] Halfway(Func<double, DirectedPoint> curve, (double T, DirectedPoint At)[] samples) =>
        [.. samples.Zip(samples.Skip(1), (a, b) => (a.T + b.T) / 2).Select(t => (t, curve(t)))];

    private static ((double T, DirectedPoint At)[] Samples, (double T, DirectedPoint At)[] Halfway) Closer(
        Func<double, DirectedPoint> curve, (double T, DirectedPoint At)[] samples, (double T, DirectedPoint At)[] halfway, List<int> strays)
    {
        var split = strays.SelectMany(i => new[] { i - 1, i, i + 1 }).ToHashSet();
        var closer = new List<(double T, DirectedPoint At)> { samples[0] };
        var between = new List<(double T, DirectedPoint At)>();
        for (var i = 0; i < halfway.Length; i++)
        {
            if (split.Contains(i))
            {
                double first = (samples[i].T + halfway[i].T) / 2, second = (halfway[i].T + samples[i + 1].T) / 2;
                between.AddRange([(first, curve(first)), (second, curve(second))]);
                closer.Add(halfway[i]);
            }
            else
            {
                between.Add(halfway[i]);
            }

            closer.Add(samples[i + 1]);
        }

        return ([.. closer], [.. between]);
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

    // How fast the curvature grows along the curve at each sample, signed, to the power 1/3; 0 at the ends, where the curve's own tangents are kept.
    private static double[] Growths(DirectedPoint[] samples)
    {
        double[] steps = [.. samples.Zip(samples.Skip(1), (a, b) => a.Point.DistanceTo(b.Point))];
        double[] curvatures = [.. samples.Zip(samples.Skip(1), (a, b) => Math.Atan2(a.Direction.Cross(b.Direction), a.Direction.Dot(b.Direction))).Zip(steps, (turn, step) => turn / step)];
        var growths = new double[samples.Length];
        for (var i = 1; i < samples.Length - 1; i++)
            growths[i] = Math.Cbrt(2 * (curvatures[i] - curvatures[i - 1]) / (steps[i] + steps[i - 1]));
        var length = steps.Sum();
        return Array.ConvertAll(growths, g => Math.Abs(g * g * g) * length * length < SlowGrowth ? 0 : g);
    }

    private static DirectedPoint Turned(DirectedPoint s, double growth, double scale) =>
        s with { Direction = s.Direction - (Math.Clamp(scale * growth, -MostTurned, MostTurned) * s.Direction.TurnedLeft) };

    private static List<Piece> Evened(DirectedPoint[] samples, double[] growths, List<Piece> pieces, double tolerance)
    {
        var best = pieces;
        double low = 0, high = tolerance;
        while (high - low > tolerance / 16)
        {
            var mid = (low + high) / 2;
            if (TryGreedy(samples, growths, mid, tolerance, out var tighter, out _) && tighter.Count <= pieces.Count)
                (best, high) = (tighter, mid);
            else
                low = mid;
        }

        return best;
    }

    // Evened out, pieces may stray less than they may: that is room to join a short one to its neighbor.
    private static void JoinShort(DirectedPoint[] samples, List<Piece> pieces, double tolerance, double shortest)
    {
        while (Enumerable.Range(0, pieces.Count).Where(IsShort).SelectMany(k => new[] { k, k - 1 }).Any(TryJoin))
        {
        }

        bool IsShort(int k) => Math.Min(pieces[k].First.Segment.Length, pieces[k].Second.Segment.Length) < shortest;

        bool TryJoin(int k)
        {
            if (k < 0 || k + 1 >= pieces.Count)
                return false;
            Piece a = pieces[k], b = pieces[k + 1];
            DirectedPoint start = new(samples[a.From].Point, a.First.Segment.StartDirection), end = new(samples[b.To].Point, b.Second.EndDirection);
            if (TryPiece(samples, start, a.From, b.To, end, tolerance, tolerance) is not { } one)
                return false;
            pieces[k] = one;
            pieces.RemoveAt(k + 1);
            return true;
        }
    }

    private static bool TryGreedy(DirectedPoint[] samples, double[] growths, double limit, double tolerance, out List<Piece> pieces, out int i)
    {
        pieces = [];
        i = 0;

        // Where curvature grows by g³ along the curve, arcs of the length h with their ends on it and the curve as far to one side of each as to the other leave it
        // by g³ h³ √3/216 at most, and their tangents lie g³ h²/12 behind its own where they meet: the Bernoulli polynomial of third degree.
        var scale = Math.Pow(limit * 216 / Math.Sqrt(3), 2.0 / 3) / 12;
        var start = samples[0];
        while (i < samples.Length - 1)
        {
            Piece? best = null;
            DirectedPoint end = default;
            foreach (var part in s_turns)
            {
                if (Longest(samples, start, i, j => Turned(samples[j], growths[j], part * scale), limit, tolerance) is { } piece && !(piece.To <= best?.To))
                    (best, end) = (piece, Turned(samples[piece.To], growths[piece.To], part * scale));
            }

            if (best is null)
                return false;
            pieces.Add(best.Value);
            (i, start) = (best.Value.To, end);
        }

        return true;
    }

    private static Piece? Longest(DirectedPoint[] samples, DirectedPoint start, int i, Func<int, DirectedPoint> end, double limit, double tolerance)
    {
        var last = samples.Length - 1;
        var good = TryPiece(samples, start, i, i + 1, end(i + 1), limit, tolerance);
        if (good is null)
            return null;
        // Double the span while it holds, then halve the gap between the last that held and the first that did not.
        var bad = last + 1;
        for (var span = 2; good.Value.To < last; span *= 2)
        {
            var j = Math.Min(i + span, last);
            if (TryPiece(samples, start, i, j, end(j), limit, tolerance) is not { } longer)
            {
                bad = j;
                break;
            }

            good = longer;
        }

        while (bad - good.Value.To > 1 && bad <= last)
        {
            var mid = (good.Value.To + bad) / 2;
            if (TryPiece(samples, start, i, mid, end(mid), limit, tolerance) is { } longer)
                good = longer;
            else
                bad = mid;
        }

        return good;
    }

    private static Piece? TryPiece(DirectedPoint[] samples, DirectedPoint start, int from, int to, DirectedPoint end, double limit, double tolerance)
    {
        if (Biarc.Between(start, end) is not { } arcs)
            return null;
        ArcSegment first = Straightened(arcs.First, tolerance), second = Straightened(arcs.Second, tolerance);
        if (Math.Abs(first.Turn) > MostTurn || Math.Abs(second.Turn) > MostTurn)
            return null;
        var piece = new Piece(from, to, new Strand(first), new Strand(second));
        for (var i = from + 1; i < to; i++)
        {
            if (!(piece.DistanceTo(samples[i].Point) <= limit))
                return null;
        }

        return piece;
    }

    // An arc leaves its chord by twice the bulge at each end: two neighbors made straight turn their joint by 0.046 degrees at most.
    private static ArcSegment Straightened(ArcSegment s, double tolerance) =>
        Math.Abs(s.Bulge) < 2e-4 && Math.Abs(s.Bulge) * s.From.DistanceTo(s.To) / 2 < tolerance / 100 ? s with { Bulge = 0 } : s;

    private static ArcPath Path(List<Piece> pieces, double tolerance)
    {
        var segments = new List<ArcSegment>();
        foreach (var s in pieces.SelectMany(p => new[] { p.First.Segment, p.Second.Segment }))
        {
            if (segments.Count > 0 && Merged(segments[^1], s, tolerance) is { } one)
                segments[^1] = one;
            else
                segments.Add(s);
        }

        return new ArcPath([.. segments.Select(s => new ArcVertex(s.From, s.Bulge)), new ArcVertex(segments[^1].To, 0)], false);
    }

    // Two neighbors become one arc where that moves nothing by more than a thousandth of the tolerance.
    private static ArcSegment? Merged(ArcSegment a, ArcSegment b, double tolerance)
    {
        var turn = a.Turn + b.Turn;
        if (Math.Abs(turn) > MostTurn)
            return null;
        var one = new ArcSegment(a.From, b.To, a.IsLine && b.IsLine ? 0 : Math.Tan(turn / 4));
        var moved = Math.Max(one.DistanceTo(a.To), Math.Max(one.DistanceTo(a.PointAt(0.5)), one.DistanceTo(b.PointAt(0.5))));
        return moved <= tolerance / 1000 ? one : null;
    }

    // A segment with what measuring many points against it needs, worked out once.
    private readonly struct Strand
    {
        private readonly Point2 _base;
        private readonly double _radius;
        private readonly Vector2 _across;

        public Strand(ArcSegment segment)
        {
            Segment = segment;
            EndDirection = segment.EndDirection;
            (_base, _radius, _across) = segment.IsLine
                ? (segment.From, 0, EndDirection.TurnedLeft)
                : (segment.Center, segment.Radius, default(Vector2));
        }

        public ArcSegment Segment { get; }

        public Vector2 EndDirection { get; }

        public double DistanceTo(Point2 p) => Math.Abs(_radius > 0 ? (p - _base).Length - _radius : (p - _base).Dot(_across));
    }

    private readonly record struct Piece(int From, int To, Strand First, Strand Second)
    {
        // The side of the joint on which the point is decides the arc, so that no detour of the other can hide an error.
        public double DistanceTo(Point2 p) =>
            ((p - First.Segment.To).Dot(First.EndDirection) <= 0 ? First : Second).DistanceTo(p);
    }
}

/// <summary>No lines and arcs follow a curve.</summary>
/// <param name="parameter">Parameter of the place at which they cannot.</param>
/// <param name="message">The place in the curve's own frame.</param>
public sealed class ArcFitException(double parameter, string message) : ArithmeticException(message)
{
    /// <summary>Parameter of the place at which they cannot.</summary>
    public double Parameter { get; } = parameter;
}
