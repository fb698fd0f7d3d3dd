using Lines.Hull.Form;
using Lines.Kernel.Geometry;

namespace Lines.Construction.Molds;

/// <summary>The curve in which a plane cuts the inside of the planking, from above the sheer down.</summary>
/// <remarks>
/// <para><b>Frame.</b> Hull frame. The parameter runs down from the upper end; it is the sum of the chords between the nodes [m].</para>
/// <para><b>Method.</b> Steps along the tangent n × m (n normal of the skin, m of the plane), each corrected by Newton in (u, v) on two
/// conditions: in the plane, and at the distance stepped. Points between two nodes are corrected the same way, so nothing is interpolated.</para>
/// <para><b>Accuracy.</b> Every point lies in the plane and on the inset skin within 1e-11 m.</para>
/// </remarks>
public sealed class InsetSection
{
    private const double Converged = 1e-12;
    private const double LongestStep = 0.015;
    private const double ShortestStep = 1e-7;
    private const double MostNodes = 4000;

    // A step turns by at most 8 degrees, so that the next one is well predicted.
    private static readonly double s_leastCosine = Math.Cos(8 * Math.PI / 180);

    private readonly InsetSkin _skin;
    private readonly Plane _plane;
    private readonly double _sense;
    private readonly List<InsetPoint> _nodes = [];
    private readonly List<double> _along = [];

    private InsetSection(InsetSkin skin, Plane plane, InsetPoint start)
    {
        (_skin, _plane) = (skin, plane);
        _sense = start.Normal.Cross(plane.Normal).Z <= 0 ? 1 : -1;
    }

    /// <summary>Parameter of the lower end; the upper end is at 0 [m].</summary>
    public double Length => _along[^1];

    /// <summary>Parameters of the nodes, rising.</summary>
    public IReadOnlyList<double> Nodes => _along;

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
        var start = Corrected(skin, plane, guess.Point, guess.Normal.Cross(plane.Normal).Unit(), u, v);
        if (start is null)
        {
            reason = "the inside of the planking does not reach this plane at the sheer";
            return false;
        }

        var cut = new InsetSection(skin, plane, start.Value);
        List<InsetPoint> up = [start.Value], down = [start.Value];
        if (!cut.TryTrace(up, -1, p => upward - Travelled(up, p), out reason)
            || !cut.TryTrace(down, 1, remaining, out reason))
        {
            return false;
        }

        up.Reverse();
        cut.Keep([.. up, .. down.Skip(1)]);
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

    private static double Travelled(List<InsetPoint> nodes, InsetPoint last)
    {
        var sum = 0.0;
        for (var i = 1; i < nodes.Count; i++)
            sum += nodes[i - 1].Point.DistanceTo(nodes[i].Point);
        return sum + nodes[^1].Point.DistanceTo(last.Point);
    }

    private static InsetPoint? Corrected(InsetSkin skin, Plane plane, Point3 near, Vector3 along, double u, double v)
    {
        for (var i = 0; i < 30; i++)
        {
            var p = skin.At(u, v);
            double f = plane.DistanceTo(p.Point), g = (p.Point - near).Dot(along);
            if (Math.Abs(f) + Math.Abs(g) < Converged)
                return p;
            double a = p.DU.Dot(plane.Normal), b = p.DV.Dot(plane.Normal), c = p.DU.Dot(along), d = p.DV.Dot(along);
            var det = (a * d) - (b * c);
            u -= ((f * d) - (g * b)) / det;
            v -= ((a * g) - (c * f)) / det;
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
                reason = Invariant($"the planking is too thick for the turn of the skin at x = {from.Point.X:F3} m, z = {from.Point.Z:F3} m");
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

    private InsetPoint? NextFrom(InsetPoint from, double way, ref double step)
    {
        Vector3 along = way * Down(from);
        for (; step >= ShortestStep; step /= 2)
        {
            // First guess of the parameters: the step in the tangent plane, by least squares.
            double a = from.DU.Dot(from.DU), b = from.DU.Dot(from.DV), c = from.DV.Dot(from.DV), det = (a * c) - (b * b);
            double f = step * along.Dot(from.DU), g = step * along.Dot(from.DV);
            double u = from.U + (((f * c) - (g * b)) / det), v = from.V + (((a * g) - (b * f)) / det);
            if (Corrected(_skin, _plane, from.Point + (step * along), along, u, v) is { IsSound: true } next
                && along.Dot(way * Down(next)) >= s_leastCosine)
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
        Vector3 chord = b.Point - a.Point, ta = Down(a), tb = Down(b);
        var length = chord.Length;
        var way = chord.Dot(ta) >= 0 ? length : -length;
        double g = 1 - f;
        var near = a.Point + (f * f * (3 - (2 * f)) * chord) + (way * f * g * g * ta) - (way * f * f * g * tb);
        return Corrected(_skin, _plane, near, (1 / length) * chord, a.U + (f * (b.U - a.U)), a.V + (f * (b.V - a.V))) is { } p ? Point(p) : null;
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
