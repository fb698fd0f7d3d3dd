using Lines.Hull.Form;
using Lines.Kernel.Geometry;

namespace Lines.Construction.Molds;

/// <summary>The curve in which a plane cuts the inside of the planking, from above the sheer down.</summary>
/// <remarks>
/// <para><b>Frame.</b> Hull frame. The parameter runs down from the upper end; it is the sum of the chords between the nodes [m].</para>
/// <para><b>Method.</b> Steps over the outside along the curve of planks whose inside lies in the plane, each corrected by Newton in (u, v) on
/// two conditions: the inside in the plane, the outside at the distance stepped. Points between two nodes are corrected the same way, so
/// nothing is interpolated. The tangent is n × m (n normal of the skin, m of the plane).</para>
/// <para>Where the outside turns more tightly than the planking is thick its inside runs back over itself: that loop is cut off where the
/// curve crosses itself, which leaves the <see cref="Corners"/> in which the insides of two runs of planking meet.</para>
/// <para><b>Accuracy.</b> Every point lies in the plane and on the inset skin within 1e-11 m.</para>
/// </remarks>
public sealed class InsetSection
{
    /// <summary>Width of a corner in the parameter: both its ends are one place [m].</summary>
    public const double CornerGap = 1e-9;

    private const double Converged = 1e-12;
    private const double Rounding = 1e-11;
    private const double LongestStep = 0.015;
    private const double ShortestStep = 1e-7;
    // The inside turns back within one such step, so that no long chord hides where.
    private const double CuspStep = 1e-4;
    private const int MostHalvings = 12;
    private const double MostNodes = 4000;

    // A step turns by at most 8 degrees, so that the next one is well predicted.
    private static readonly double s_leastCosine = Math.Cos(8 * Math.PI / 180);

    private readonly InsetSkin _skin;
    private readonly Plane _plane;
    private readonly double _sense;
    private readonly double _way;
    private readonly List<double> _corners = [];
    private readonly List<InsetPoint> _nodes = [];
    private readonly List<double> _along = [];

    private InsetSection(InsetSkin skin, Plane plane, InsetPoint start)
    {
        (_skin, _plane) = (skin, plane);
        _sense = start.Normal.Cross(plane.Normal).Z <= 0 ? 1 : -1;
        _way = AlongLevel(start).Outside.Z <= 0 ? 1 : -1;
    }

    /// <summary>Parameter of the lower end; the upper end is at 0 [m].</summary>
    public double Length => _along[^1];

    /// <summary>Parameters of the corners, rising; each is the end of a smooth span, the next span starts <see cref="CornerGap"/> farther.</summary>
    public IReadOnlyList<double> Corners => _corners;

    /// <summary>Cuts the inside of the planking from a point on it.</summary>
    /// <param name="skin">The inside of the planking.</param>
    /// <param name="plane">The plane.</param>
    /// <param name="u">Parameter of a point in the plane, within a Newton step or so.</param>
    /// <param name="v">Parameter of that point.</param>
    /// <param name="upward">How far to run up from there [m].</param>
    /// <param name="remaining">Falls through 0 where the lower end is.</param>
    /// <param name="section">The section; null where there is none.</param>
    /// <param name="reason">Why there is none, one clause.</param>
    /// <returns>Whether the section was cut.</returns>
    public static bool TryCut(
        InsetSkin skin, Plane plane, double u, double v, double upward, Func<InsetPoint, double> remaining, out InsetSection? section, out string reason)
    {
        ArgumentNullException.ThrowIfNull(skin);
        ArgumentNullException.ThrowIfNull(remaining);
        section = null;
        var guess = skin.At(u, v);
        var start = Corrected(skin, plane, guess.Outside.Point, guess.Normal.Cross(plane.Normal).Unit(), u, v);
        if (start is not { IsSound: true })
        {
            reason = start is null ? "the inside of the planking does not reach this plane at the sheer" : TooThick(start.Value.Point);
            return false;
        }

        var cut = new InsetSection(skin, plane, start.Value);
        List<InsetPoint> up = [start.Value], down = [start.Value];
        if (!cut.TryTrace(up, -1, p => upward - Traveled(up, p), out reason)
            || !cut.TryTrace(down, 1, remaining, out reason))
        {
            return false;
        }

        up.Reverse();
        cut.Keep([.. up, .. down.Skip(1)]);
        if (!cut.TryCutLoops(out reason))
            return false;
        section = cut;
        return true;
    }

    /// <summary>The point at a parameter, with the direction down the curve.</summary>
    /// <param name="s">Parameter, 0 to <see cref="Length"/> [m].</param>
    /// <exception cref="ArithmeticException">Newton's method does not settle; carries the place.</exception>
    public SectionPoint At(double s)
    {
        var i = _along.BinarySearch(s);
        i = Math.Clamp(i >= 0 ? i : ~i - 1, 0, _nodes.Count - 2);
        return Between(_nodes[i], _nodes[i + 1], (s - _along[i]) / (_along[i + 1] - _along[i]))
            ?? throw new ArithmeticException(Invariant($"the section does not settle {s} m below its upper end"));
    }

    /// <summary>The highest place where a quantity falls or rises through zero.</summary>
    /// <param name="quantity">The quantity.</param>
    /// <returns>The parameter, to 1e-12 m, or null where the quantity keeps its sign.</returns>
    public double? Where(Func<SectionPoint, double> quantity)
    {
        ArgumentNullException.ThrowIfNull(quantity);
        var before = quantity(Point(_nodes[0]));
        for (var i = 1; i < _nodes.Count; i++)
        {
            var here = quantity(Point(_nodes[i]));
            if ((before > 0) != (here > 0))
                return _along[i - 1] + ((_along[i] - _along[i - 1]) * Crossing(_nodes[i - 1], _nodes[i], quantity));
            before = here;
        }

        return null;
    }

    private static string TooThick(Point3 at) =>
        Invariant($"the planking is too thick for the turn of the skin at x = {at.X:F3} m, z = {at.Z:F3} m");

    private static double Traveled(List<InsetPoint> nodes, InsetPoint last)
    {
        var sum = 0.0;
        for (var i = 1; i < nodes.Count; i++)
            sum += nodes[i - 1].Point.DistanceTo(nodes[i].Point);
        return sum + nodes[^1].Point.DistanceTo(last.Point);
    }

    private static InsetPoint? Corrected(InsetSkin skin, Plane plane, Point3 near, Vector3 along, double u, double v)
    {
        var p = skin.At(u, v);
        var (f, g) = (plane.DistanceTo(p.Point), (p.Outside.Point - near).Dot(along));
        for (var i = 0; i < 30; i++)
        {
            var size = Math.Abs(f) + Math.Abs(g);
            if (size < Converged)
                return p;
            double a = p.DU.Dot(plane.Normal), b = p.DV.Dot(plane.Normal), c = p.Outside.U.Dot(along), d = p.Outside.V.Dot(along), det = (a * d) - (b * c);
            double du = ((f * d) - (g * b)) / det, dv = ((a * g) - (c * f)) / det;

            // Where v crowds toward the keel a whole step may overshoot: halve it until the error falls.
            var part = 1.0;
            do
            {
                p = skin.At(u - (part * du), v - (part * dv));
                (f, g) = (plane.DistanceTo(p.Point), (p.Outside.Point - near).Dot(along));
                part /= 2;
            }
            while (!(Math.Abs(f) + Math.Abs(g) < size) && part > 1e-3 && size > Rounding);
            (u, v) = (p.U, p.V);
            if (!(Math.Abs(u) < 10 && Math.Abs(v) < 10))
                return null;
        }

        return null;
    }

    private Vector3 Down(InsetPoint p) => _sense * p.Normal.Cross(_plane.Normal).Unit();

    private SectionPoint Point(InsetPoint p) => new(p.U, p.V, p.Point, p.Normal, Down(p));

    private void Keep(List<InsetPoint> nodes)
    {
        _nodes.AddRange(nodes);
        _along.Add(0);
        for (var i = 1; i < nodes.Count; i++)
            _along.Add(_along[^1] + nodes[i - 1].Point.DistanceTo(nodes[i].Point));
    }

    private bool TryTrace(List<InsetPoint> nodes, double way, Func<InsetPoint, double> remaining, out string reason)
    {
        var step = LongestStep / 4;
        reason = "";
        while (nodes.Count < MostNodes)
        {
            var from = nodes[^1];
            if (NextFrom(from, way, ref step) is not { } next)
            {
                reason = TooThick(from.Point);
                return false;
            }

            if (!(remaining(next) > 0))
            {
                var part = Crossing(from, next, p => remaining(_skin.At(p.U, p.V)));
                if (Between(from, next, part) is { } end)
                    nodes.Add(_skin.At(end.U, end.V));
                return true;
            }

            nodes.Add(next);
        }

        reason = "the section finds no end";
        return false;
    }

    // The direction in (u, v) in which the inside stays in the plane, and where that leads on the outside.
    private (double U, double V, Vector3 Outside) AlongLevel(InsetPoint p)
    {
        double du = -p.DV.Dot(_plane.Normal), dv = p.DU.Dot(_plane.Normal);
        return (du, dv, (du * p.Outside.U) + (dv * p.Outside.V));
    }

    private InsetPoint? NextFrom(InsetPoint from, double way, ref double step)
    {
        var level = AlongLevel(from);
        var scale = way * _way / level.Outside.Length;
        Vector3 along = scale * level.Outside, down = Down(from);
        for (; step >= ShortestStep; step /= 2)
        {
            var near = from.Outside.Point + (step * along);
            if (Corrected(_skin, _plane, near, along, from.U + (step * scale * level.U), from.V + (step * scale * level.V)) is { } next
                && down.Dot(Down(next)) >= s_leastCosine && (next.IsSound == from.IsSound || step <= CuspStep)
                && Between(from, next, 0.5) is not null)
            {
                step = Math.Min(LongestStep, step * 1.6);
                return next;
            }
        }

        return null;
    }

    private SectionPoint? Between(InsetPoint a, InsetPoint b, double f)
    {
        if (f <= 0)
            return Point(a);
        if (f >= 1)
            return Point(b);
        return Settled(a, b, f, MostHalvings) is { } p ? Point(p) : null;
    }

    // Where Newton's method does not settle from between two nodes, it is started again from between one of them and the middle.
    private InsetPoint? Settled(InsetPoint a, InsetPoint b, double f, int halvings)
    {
        if (Toward(a, b, f) is { } p)
            return p;
        if (halvings == 0 || f == 0.5 || Toward(a, b, 0.5) is not { } middle)
            return null;
        return f < 0.5 ? Settled(a, middle, 2 * f, halvings - 1) : Settled(middle, b, (2 * f) - 1, halvings - 1);
    }

    private InsetPoint? Toward(InsetPoint a, InsetPoint b, double f)
    {
        Vector3 chord = b.Outside.Point - a.Outside.Point;
        return Corrected(_skin, _plane, a.Outside.Point + (f * chord), chord.Unit(), a.U + (f * (b.U - a.U)), a.V + (f * (b.V - a.V)));
    }

    private bool TryCutLoops(out string reason)
    {
        reason = "";
        for (var i = _nodes.FindIndex(p => !p.IsSound); i >= 0; i = _nodes.FindIndex(p => !p.IsSound))
        {
            var j = i;
            while (j < _nodes.Count - 1 && !_nodes[j].IsSound)
                j++;
            if (SelfCrossing.Of(this, _nodes, _along, _plane, i - 1, j) is not var (first, second))
            {
                reason = TooThick(_nodes[i].Point);
                return false;
            }

            CutOut(first, second);
        }

        return true;
    }

    private void CutOut(double first, double second)
    {
        SectionPoint a = At(first), b = At(second);
        var last = _along.FindLastIndex(s => s < first);
        var next = _along.FindIndex(s => s > second);
        var rest = _along.GetRange(next, _along.Count - next).ConvertAll(s => s - second + first + CornerGap);
        List<InsetPoint> kept = [.. _nodes.Take(last + 1), _skin.At(a.U, a.V), _skin.At(b.U, b.V), .. _nodes.Skip(next)];
        List<double> along = [.. _along.Take(last + 1), first, first + CornerGap, .. rest];
        _nodes.Clear();
        _nodes.AddRange(kept);
        _along.Clear();
        _along.AddRange(along);
        _corners.Add(first);
        _corners.Sort();
    }

    // False position with the Illinois halving; the quantity is a length, so its own size ends the search.
    private double Crossing(InsetPoint a, InsetPoint b, Func<SectionPoint, double> quantity)
    {
        double low = 0, high = 1, qLow = quantity(Point(a)), qHigh = quantity(Point(b));
        var side = 0;
        while (high - low > 1e-12)
        {
            var mid = low + ((high - low) * qLow / (qLow - qHigh));
            if (!(mid > low && mid < high))
                break;
            var q = Between(a, b, mid) is { } p ? quantity(p) : throw new ArithmeticException("the section does not settle between two nodes");
            if (Math.Abs(q) < Converged)
                return mid;
            if ((q > 0) == (qLow > 0))
            {
                (low, qLow) = (mid, q);
                qHigh = side == -1 ? qHigh / 2 : qHigh;
                side = -1;
            }
            else
            {
                (high, qHigh) = (mid, q);
                qLow = side == 1 ? qLow / 2 : qLow;
                side = 1;
            }
        }

        return Math.Abs(qLow) < Math.Abs(qHigh) ? low : high;
    }
}

/// <summary>A point of a section of the inside of the planking.</summary>
/// <param name="U">Parameter along the boat.</param>
/// <param name="V">Parameter up the side.</param>
/// <param name="Point">The point, hull frame [m].</param>
/// <param name="Normal">Unit normal of the skin, out of the boat.</param>
/// <param name="Down">Unit tangent of the section, down from the sheer.</param>
public readonly record struct SectionPoint(double U, double V, Point3 Point, Vector3 Normal, Vector3 Down);
