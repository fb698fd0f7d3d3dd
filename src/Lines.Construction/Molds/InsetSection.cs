using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;

namespace Lines.Construction.Molds;

/// <summary>The curve in which a plane cuts the inside of the planking, from above the sheer down.</summary>
/// <remarks>
/// <para><b>Frame.</b> Hull frame. The parameter runs down from the upper end; it is the sum of the chords between the nodes [m].</para>
/// <para><b>Method.</b> <see cref="InsetTrace"/> walks down from the sheer. Where the outside turns more tightly than the planking is thick
/// its inside runs back over itself: that loop is cut off where the curve crosses itself, which leaves the <see cref="Corners"/> in which
/// the insides of two runs of planking meet. Where the walk is lost in such a loop, because the outside itself has a fold there, another
/// walks up from the keel, and the curve turns from the one to the other where they cross.</para>
/// <para><b>Accuracy.</b> Every point lies in the plane and on the inset skin within 1e-11 m.</para>
/// </remarks>
public sealed class InsetSection
{
    /// <summary>Width of a corner in the parameter: both its ends are one place [m].</summary>
    public const double CornerGap = 1e-9;

    private readonly InsetTrace _trace;
    private readonly List<double> _corners = [];
    private readonly List<InsetPoint> _nodes;
    private readonly List<double> _along = [0];

    private InsetSection(InsetTrace trace, IEnumerable<InsetPoint> nodes)
    {
        (_trace, _nodes) = (trace, [.. nodes]);
        for (var i = 1; i < _nodes.Count; i++)
            _along.Add(_along[^1] + _nodes[i - 1].Point.DistanceTo(_nodes[i].Point));
    }

    /// <summary>The inside of the planking that is cut.</summary>
    public InsetSkin Skin => _trace.Skin;

    /// <summary>The plane that cuts it.</summary>
    public Plane Plane => _trace.Plane;

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
    /// <param name="reason">Why there is none, one clause; its lengths are <see cref="Kernel.Units.Length"/> values.</param>
    /// <param name="foot">Parameters of a point near the lower end, asked for where the way down is lost; null where there is none.</param>
    /// <returns>Whether the section was cut.</returns>
    public static bool TryCut(
        InsetSkin skin, Plane plane, double u, double v, double upward, Func<InsetPoint, double> remaining, out InsetSection? section, out FormattableString reason,
        Func<(double U, double V)?>? foot = null)
    {
        ArgumentNullException.ThrowIfNull(skin);
        ArgumentNullException.ThrowIfNull(remaining);
        section = null;
        var near = InsetTrace.Near(skin, plane, u, v);
        if (near is not { IsSound: true } start)
        {
            reason = near is null ? $"the inside of the planking does not reach this plane at the sheer" : InsetTrace.TooThick(near.Value.Point);
            return false;
        }

        var trace = new InsetTrace(skin, plane, start, remaining);
        List<InsetPoint> up = [start], down = [start];
        if (trace.Walk(up, -1, p => upward - Traveled(up, p)) is { } lostAbove)
        {
            reason = lostAbove;
            return false;
        }

        up.Reverse();
        if (trace.Walk(down, 1, remaining) is { } lost)
        {
            reason = lost;
        }
        else
        {
            section = new InsetSection(trace, [.. up, .. down.Skip(1)]);
            if (section.TryCutLoops(out reason))
                return true;
        }

        section = foot?.Invoke() is var (footU, footV) ? FromBothEnds(trace, up, InsetTrace.Near(skin, plane, footU, footV), remaining) : null;
        return section is not null;
    }

    /// <summary>The point at a parameter, with the direction down the curve.</summary>
    /// <param name="s">Parameter, 0 to <see cref="Length"/> [m].</param>
    /// <exception cref="NoEdgeException">Newton's method does not settle; carries the place.</exception>
    public SectionPoint At(double s)
    {
        var i = _along.BinarySearch(s);
        i = Math.Clamp(i >= 0 ? i : ~i - 1, 0, _nodes.Count - 2);
        return _trace.Between(_nodes[i], _nodes[i + 1], (s - _along[i]) / (_along[i + 1] - _along[i]))
            ?? throw new NoEdgeException($"the section does not settle {new Length(s)} below its upper end");
    }

    /// <summary>The highest place where a quantity falls or rises through zero.</summary>
    /// <param name="quantity">The quantity.</param>
    /// <returns>The parameter, to 1e-12 m, or null where the quantity keeps its sign.</returns>
    public double? Where(Func<SectionPoint, double> quantity)
    {
        ArgumentNullException.ThrowIfNull(quantity);
        var before = quantity(_trace.Point(_nodes[0]));
        for (var i = 1; i < _nodes.Count; i++)
        {
            var here = quantity(_trace.Point(_nodes[i]));
            if ((before > 0) != (here > 0))
                return _along[i - 1] + ((_along[i] - _along[i - 1]) * _trace.Crossing(_nodes[i - 1], _nodes[i], quantity));
            before = here;
        }

        return null;
    }

    private static double Traveled(List<InsetPoint> nodes, InsetPoint last)
    {
        var sum = 0.0;
        for (var i = 1; i < nodes.Count; i++)
            sum += nodes[i - 1].Point.DistanceTo(nodes[i].Point);
        return sum + nodes[^1].Point.DistanceTo(last.Point);
    }

    // Two sound runs, down from the sheer and up from the foot, each kept as far as the place where they cross.
    private static InsetSection? FromBothEnds(InsetTrace trace, List<InsetPoint> above, InsetPoint? foot, Func<InsetPoint, double> remaining)
    {
        if (foot is not { IsSound: true } low)
            return null;
        List<InsetPoint> down = [above[^1]], up = [low];
        trace.WalkSound(down, 1, remaining);
        trace.WalkSound(up, -1, p => above[^1].Point.Z - p.Point.Z);
        if (up.FindIndex(p => remaining(p) > 0) is not (>= 0 and var first))
            return null;
        if (first > 0)
            up = [trace.Ending(up[first - 1], up[first], remaining), .. up.Skip(first)];
        up.Reverse();
        var section = new InsetSection(trace, [.. above, .. down.Skip(1), .. up]);
        return section.TryCutOut(above.Count + down.Count - 3, above.Count + down.Count - 1) ? section : null;
    }

    private bool TryCutLoops(out FormattableString reason)
    {
        reason = $"";
        for (var i = _nodes.FindIndex(p => !p.IsSound); i >= 0; i = _nodes.FindIndex(p => !p.IsSound))
        {
            var j = i;
            while (j < _nodes.Count - 1 && !_nodes[j].IsSound)
                j++;
            if (!TryCutOut(i - 1, j))
            {
                reason = InsetTrace.TooThick(_nodes[i].Point);
                return false;
            }
        }

        return true;
    }

    // Cuts off what lies between the two passages of the one place where the curve up to a node meets the curve from another on.
    private bool TryCutOut(int before, int after)
    {
        if (SelfCrossing.Of(this, _nodes, _along, _trace.Plane, before, after) is not var (first, second))
            return false;
        SectionPoint a = At(first), b = At(second);
        var last = _along.FindLastIndex(s => s < first);
        var next = _along.FindIndex(s => s > second);
        var rest = _along.GetRange(next, _along.Count - next).ConvertAll(s => s - second + first + CornerGap);
        List<InsetPoint> kept = [.. _nodes.Take(last + 1), _trace.Inside(a.U, a.V), _trace.Inside(b.U, b.V), .. _nodes.Skip(next)];
        List<double> along = [.. _along.Take(last + 1), first, first + CornerGap, .. rest];
        _nodes.Clear();
        _nodes.AddRange(kept);
        _along.Clear();
        _along.AddRange(along);
        _corners.Add(first);
        _corners.Sort();
        return true;
    }
}

/// <summary>A point of a section of the inside of the planking.</summary>
/// <param name="U">Parameter along the boat.</param>
/// <param name="V">Parameter up the side.</param>
/// <param name="Point">The point, hull frame [m].</param>
/// <param name="Normal">Unit normal of the skin, out of the boat.</param>
/// <param name="Down">Unit tangent of the section, down from the sheer.</param>
public readonly record struct SectionPoint(double U, double V, Point3 Point, Vector3 Normal, Vector3 Down);
