using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;

namespace Lines.Construction.Molds;

/// <summary>Walks along the curve in which a plane cuts the inside of the planking.</summary>
/// <remarks>
/// <para><b>Frame.</b> Hull frame.</para>
/// <para><b>Method.</b> Steps over the outside along the curve of planks whose inside lies in the plane, each corrected by Newton in (u, v) on
/// two conditions: the inside in the plane, the outside at the distance stepped. Points between two nodes are corrected the same way, so
/// nothing is interpolated. The tangent is n × m (n normal of the skin, m of the plane).</para>
/// </remarks>
internal sealed class InsetTrace
{
    private const double Converged = 1e-12;
    private const double Rounding = 1e-11;
    private const double LongestStep = 0.015;
    private const double ShortestStep = 1e-7;

    // The inside turns back within one such step, so that no long chord hides where.
    private const double CuspStep = 1e-4;

    /// <summary>Below this part of the outside's step the inside is taken to be about to turn back: steps are short.</summary>
    private const double LeastPace = 0.3;
    private const int MostHalvings = 12;
    private const double MostNodes = 4000;

    // The section and the skin's normal turn by at most 8 degrees in a step, so that the next one is well predicted. Where the plane meets a tight
    // turn of the skin aslant the section hardly turns: without the normal a step would leap over a stretch where the inside runs back.
    private static readonly double s_leastCosine = Math.Cos(8 * Math.PI / 180);

    private static readonly FormattableString s_unsettled = $"the section does not settle between two of its points";

    private readonly InsetSkin _skin;
    private readonly Plane _plane;
    private readonly double _sense;
    private readonly double _way;

    /// <summary>Makes ready to walk both ways from a point of the curve.</summary>
    /// <param name="skin">The inside of the planking.</param>
    /// <param name="plane">The plane.</param>
    /// <param name="start">The point.</param>
    /// <param name="remaining">Falls toward the lower end: where the curve leaves the point level, as on a parallel body in a plane along it, that way is down.</param>
    public InsetTrace(InsetSkin skin, Plane plane, InsetPoint start, Func<InsetPoint, double> remaining)
    {
        (_skin, _plane) = (skin, plane);
        Vector3 tangent = start.Normal.Cross(plane.Normal).Unit();
        var level = AlongLevel(start);
        var along = level.Outside.Dot(tangent) >= 0 ? 1 : -1;
        _sense = tangent.Z < -Rounding || (tangent.Z <= Rounding && Falls()) ? 1 : -1;
        _way = _sense * along;

        bool Falls()
        {
            var step = along * ShortestStep / level.Outside.Length;
            return remaining(skin.At(start.U + (step * level.U), start.V + (step * level.V))) < remaining(start);
        }
    }

    /// <summary>The inside of the planking.</summary>
    public InsetSkin Skin => _skin;

    /// <summary>The plane.</summary>
    public Plane Plane => _plane;

    /// <summary>The point of the curve near a pair of parameters.</summary>
    /// <returns>The point, or null where Newton's method finds none.</returns>
    public static InsetPoint? Near(InsetSkin skin, Plane plane, double u, double v)
    {
        var guess = skin.At(u, v);
        return Corrected(skin, plane, guess.Outside.Point, guess.Normal.Cross(plane.Normal).Unit(), u, v);
    }

    /// <summary>The inside at a pair of parameters.</summary>
    public InsetPoint Inside(double u, double v) => _skin.At(u, v);

    /// <summary>A node as a point of the section.</summary>
    public SectionPoint Point(InsetPoint p) => new(p.U, p.V, p.Point, p.Normal, Down(p));

    /// <summary>Walks until a quantity has fallen to 0, also where the inside runs back over itself.</summary>
    /// <param name="nodes">The nodes so far, at least one; those found are added.</param>
    /// <param name="way">1 down, -1 up.</param>
    /// <param name="remaining">The quantity.</param>
    /// <returns>Null once the end is reached; else why the walk ended, one clause.</returns>
    public FormattableString? Walk(List<InsetPoint> nodes, double way, Func<InsetPoint, double> remaining)
    {
        var step = LongestStep / 4;
        while (nodes.Count < MostNodes)
        {
            var from = nodes[^1];
            if (NextFrom(from, way, ref step) is not { } next)
                return TooThick(from.Point);
            if (!(remaining(next) > 0))
            {
                nodes.Add(Ending(from, next, remaining));
                return null;
            }

            nodes.Add(next);
        }

        return $"the inside of the planking runs on and comes to no end there";
    }

    /// <summary>Walks as far as the inside runs the same way as the outside, but not past a quantity's fall to 0.</summary>
    /// <param name="nodes">The nodes so far, at least one; those found are added.</param>
    /// <param name="way">1 down, -1 up.</param>
    /// <param name="remaining">The quantity.</param>
    public void WalkSound(List<InsetPoint> nodes, double way, Func<InsetPoint, double> remaining)
    {
        var step = LongestStep / 4;
        while (nodes.Count < MostNodes && NextFrom(nodes[^1], way, ref step) is { IsSound: true } next && remaining(next) > 0)
            nodes.Add(next);
    }

    /// <summary>The node between two others at which a quantity is 0.</summary>
    public InsetPoint Ending(InsetPoint from, InsetPoint to, Func<InsetPoint, double> quantity)
    {
        var end = Between(from, to, Crossing(from, to, p => quantity(_skin.At(p.U, p.V)))) ?? throw new NoEdgeException(s_unsettled);
        return _skin.At(end.U, end.V);
    }

    /// <summary>The point between two nodes at a fraction of the way; null where Newton's method does not settle.</summary>
    public SectionPoint? Between(InsetPoint a, InsetPoint b, double f)
    {
        if (f <= 0)
            return Point(a);
        if (f >= 1)
            return Point(b);
        return Settled(a, b, f, MostHalvings) is { } p ? Point(p) : null;
    }

    /// <summary>The fraction of the way between two nodes at which a quantity is 0.</summary>
    /// <remarks><b>Method.</b> False position with the Illinois halving; the quantity is a length, so its own size ends the search.</remarks>
    public double Crossing(InsetPoint a, InsetPoint b, Func<SectionPoint, double> quantity)
    {
        double low = 0, high = 1, qLow = quantity(Point(a)), qHigh = quantity(Point(b));
        var side = 0;
        while (high - low > 1e-12)
        {
            var mid = low + ((high - low) * qLow / (qLow - qHigh));
            if (!(mid > low && mid < high))
                break;
            var q = Between(a, b, mid) is { } p ? quantity(p) : throw new NoEdgeException(s_unsettled);
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

    /// <summary>What is said where the planking finds no room.</summary>
    public static FormattableString TooThick(Point3 at) =>
        $"the planking is too thick for the turn of the skin at x = {new Length(at.X)}, {new Length(at.Z)} above the base line";

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
                && down.Dot(Down(next)) >= s_leastCosine && from.Normal.Dot(next.Normal) >= s_leastCosine && Settled(from, next, 0.5, MostHalvings) is { } middle
                && (step <= CuspStep || (RunsOn(from) && RunsOn(middle) && RunsOn(next))))
            {
                step = Math.Min(LongestStep, step * 1.6);
                return next;
            }
        }

        return null;
    }

    // Whether the inside keeps up with the outside here, so that no turning back is near.
    private bool RunsOn(InsetPoint p)
    {
        var level = AlongLevel(p);
        return p.IsSound && ((level.U * p.DU) + (level.V * p.DV)).Length > LeastPace * level.Outside.Length;
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
}
