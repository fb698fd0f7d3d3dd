using Lines.Hull.Form;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Sections;

/// <summary>A curve on the skin of a hull: where a plane cuts it, or one of its edges.</summary>
/// <remarks>
/// <para><b>Frame.</b> Hull frame, starboard side. Lengthwise lines run from bow to stern, stations and the transom's outline
/// from keel to sheer, the stem from its head down and the sternpost from the keel up.</para>
/// <para><b>Accuracy.</b> Every point asked for is the skin evaluated at a pair of parameters; it lies within 1e-9 m of the
/// plane. Nothing is interpolated between nodes but the first guess.</para>
/// </remarks>
public sealed partial class HullLine
{
    private readonly HullSurface _hull;
    private readonly LinePoint[] _nodes;

    internal HullLine(HullSurface hull, LineTag tag, Plane? plane, IReadOnlyList<LinePoint> nodes, bool closed)
    {
        _hull = hull;
        Tag = tag;
        Plane = plane;
        Closed = closed;
        _nodes = WithPlaces(nodes, closed);
    }

    /// <summary>Name, kind, place and axes of the line.</summary>
    public LineTag Tag { get; }

    /// <summary>What the line is.</summary>
    public LineKind Kind => Tag.Kind;

    /// <summary>The line in words, such as "waterline 3".</summary>
    public string Name => Tag.Name;

    /// <summary>The short label on drawings, such as "WL 3".</summary>
    public string Label => Tag.Label;

    /// <summary>x of a station, z of a waterline, y of a buttock, height on the centerplane of a diagonal; 0 for edges [m].</summary>
    public double Position => Tag.Position;

    /// <summary>The axes in which the line is seen flat; the sheer's are the plan, and <see cref="FlatAxes.Profile"/> its other view.</summary>
    public FlatAxes Axes => Tag.Axes;

    /// <summary>The plane that cut the line; null for edges of the skin.</summary>
    public Plane? Plane { get; }

    /// <summary>Whether the line is a loop; its last node then repeats its first.</summary>
    public bool Closed { get; }

    /// <summary>Points along the line, at least two, ends included.</summary>
    public IReadOnlyList<LinePoint> Nodes => _nodes;

    /// <summary>First point.</summary>
    public LinePoint Start => _nodes[0];

    /// <summary>Last point.</summary>
    public LinePoint End => _nodes[^1];

    /// <summary>Length of the chords between the nodes [m], a little less than that of the line.</summary>
    public double ChordLength { get; private set; }

    /// <summary>The hull the line lies on.</summary>
    public HullSurface Hull => _hull;

    /// <summary>The point at a place along the line.</summary>
    /// <remarks>
    /// <para><b>Method.</b> From the chord between two nodes in the plane of (u, v), square to that chord, Newton's method on
    /// the distance from the cutting plane; where that leaves the neighborhood, bisection.</para>
    /// <para><b>Accuracy.</b> On the skin by construction; within 1e-9 m of the plane.</para>
    /// </remarks>
    /// <param name="t">Place, 0 at the start to 1 at the end; values outside are taken as the nearest end.</param>
    /// <returns>The point, whose T is <paramref name="t"/>.</returns>
    public LinePoint At(double t)
    {
        if (double.IsNaN(t))
            throw new ArgumentOutOfRangeException(nameof(t), t, "the place along a line is not a number");
        if (t <= 0)
            return _nodes[0];
        if (t >= 1)
            return _nodes[^1];
        var k = SegmentAt(t);
        ref readonly var a = ref _nodes[k];
        ref readonly var b = ref _nodes[k + 1];
        if (t == a.T)
            return a;
        var s = (t - a.T) / (b.T - a.T);
        double u = a.U + (s * (b.U - a.U)), v = a.V + (s * (b.V - a.V));
        return Plane is { } plane ? OnPlane(plane, t, u, v, a, b) : new LinePoint(t, u, v, _hull.Side.PointAt(u, v));
    }

    /// <summary>Places where the line meets a plane, in order along it; empty where it does not.</summary>
    /// <remarks><b>Accuracy.</b> Within 1e-9 m of <paramref name="other"/> where the line crosses it at 1 degree or more. An end
    /// that lies within 1e-9 m of the plane counts. Where a line touches a plane between two nodes without a node beyond it, that
    /// is not seen.</remarks>
    /// <param name="other">The plane.</param>
    public IReadOnlyList<LinePoint> CrossingsWith(Plane other)
    {
        var found = new List<LinePoint>();
        var before = other.DistanceTo(_nodes[0].Point);
        if (Math.Abs(before) <= Near)
            found.Add(_nodes[0]);
        for (var k = 1; k < _nodes.Length; k++)
        {
            var after = other.DistanceTo(_nodes[k].Point);
            if (Math.Abs(after) <= Near)
                found.Add(_nodes[k]);
            else if (Math.Abs(before) > Near && before < 0 != after < 0)
                found.Add(CrossingIn(other, k - 1, before, after));
            before = after;
        }

        return found;
    }

    /// <summary>The first place where the line meets a plane; null where it does not.</summary>
    /// <param name="other">The plane.</param>
    public LinePoint? FirstCrossingWith(Plane other) => CrossingsWith(other) is [var first, ..] ? first : null;

    /// <summary>Points whose chords keep within a tolerance of the line.</summary>
    /// <remarks><b>Accuracy.</b> No point of the line is further than <paramref name="chordTolerance"/> from the polyline: every
    /// chord is halved until three points of the line inside it lie within 0.8 of the tolerance. Between nodes the line is part of
    /// one smooth patch.</remarks>
    /// <param name="chordTolerance">Greatest distance between line and chord [m], at least 1e-8.</param>
    /// <returns>The points, ends included; each lies on the line.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is under 1e-8 m or not a number.</exception>
    public IReadOnlyList<LinePoint> ToPolyline(double chordTolerance)
    {
        if (!(chordTolerance >= 1e-8))
            throw new ArgumentOutOfRangeException(nameof(chordTolerance), chordTolerance, "a chord tolerance is at least 1e-8 m");
        var points = new List<LinePoint>(2 * _nodes.Length) { _nodes[0] };
        for (var k = 1; k < _nodes.Length; k++)
            Divide(_nodes[k - 1], _nodes[k], 0.8 * chordTolerance, points);
        return points;
    }

    private const double Near = 1e-9;

    private void Divide(LinePoint a, LinePoint b, double tolerance, List<LinePoint> points)
    {
        var middle = At((a.T + b.T) / 2);
        var chord = b.Point - a.Point;
        if (Departure(a.Point, chord, middle.Point) <= tolerance
            && Departure(a.Point, chord, At((0.75 * a.T) + (0.25 * b.T)).Point) <= tolerance
            && Departure(a.Point, chord, At((0.25 * a.T) + (0.75 * b.T)).Point) <= tolerance)
        {
            points.Add(b);
            return;
        }

        Divide(a, middle, tolerance, points);
        Divide(middle, b, tolerance, points);
    }

    private static double Departure(Point3 a, Vector3 chord, Point3 p) => chord.Cross(p - a).Length / chord.Length;

    private int SegmentAt(double t)
    {
        int low = 0, high = _nodes.Length - 1;
        while (high - low > 1)
        {
            var mid = (low + high) / 2;
            if (t < _nodes[mid].T)
                high = mid;
            else
                low = mid;
        }

        return low;
    }

    private LinePoint OnPlane(Plane plane, double t, double u, double v, in LinePoint a, in LinePoint b)
    {
        double du = -(b.V - a.V), dv = b.U - a.U, w = 0;
        for (var round = 0; ; round++)
        {
            var jet = _hull.Side.JetAt(u + (w * du), v + (w * dv));
            var f = plane.DistanceTo(jet.Point);
            if (Math.Abs(f) <= PlaneTrace.Touching / 10)
                return new LinePoint(t, u + (w * du), v + (w * dv), jet.Point);
            var step = f / ((du * plane.Normal.Dot(jet.U)) + (dv * plane.Normal.Dot(jet.V)));
            w -= step;
            if (!(Math.Abs(w) <= 2) || round > 40)
                return Bisected(plane, t, u, v, du, dv);
        }
    }

    // The sign change nearest to the chord, square to it, found by widening steps and then halved to rounding.
    private LinePoint Bisected(Plane plane, double t, double u, double v, double du, double dv)
    {
        double F(double w) => plane.DistanceTo(_hull.Side.PointAt(u + (w * du), v + (w * dv)));
        var middle = F(0);
        for (var reach = 1.0 / 64; reach <= 4; reach *= 1.25)
        {
            foreach (var end in (ReadOnlySpan<double>)[reach, -reach])
            {
                if (F(end) < 0 == middle < 0)
                    continue;
                double low = 0, high = end;
                while ((low + high) / 2 is var s && s != low && s != high)
                {
                    if (F(s) < 0 == middle < 0)
                        low = s;
                    else
                        high = s;
                }

                return new LinePoint(t, u + (high * du), v + (high * dv), _hull.Side.PointAt(u + (high * du), v + (high * dv)));
            }
        }

        throw new ArithmeticException(Invariant($"{Name} has no point near u = {u}, v = {v}: {middle} m from its plane"));
    }

    // The sign change between two nodes: the secant kept in its bracket (Illinois), ended by the bracket or the distance.
    private LinePoint CrossingIn(Plane other, int k, double fa, double fb)
    {
        double a = _nodes[k].T, b = _nodes[k + 1].T;
        var side = 0;
        while (true)
        {
            var t = ((fa * b) - (fb * a)) / (fa - fb);
            if (!(t > a && t < b))
                t = (a + b) / 2;
            var p = At(t);
            var f = other.DistanceTo(p.Point);
            if (Math.Abs(f) <= PlaneTrace.Touching || b - a < 1e-15)
                return p;
            if (f < 0 == fa < 0)
            {
                (a, fa) = (t, f);
                if (side == -1)
                    fb /= 2;
                side = -1;
            }
            else
            {
                (b, fb) = (t, f);
                if (side == 1)
                    fa /= 2;
                side = 1;
            }
        }
    }

    private LinePoint[] WithPlaces(IReadOnlyList<LinePoint> nodes, bool closed)
    {
        var result = new LinePoint[nodes.Count + (closed ? 1 : 0)];
        var length = 0.0;
        for (var k = 0; k < result.Length; k++)
        {
            var node = nodes[k % nodes.Count];
            if (k > 0)
                length += node.Point.DistanceTo(result[k - 1].Point);
            result[k] = node with { T = length };
        }

        for (var k = 0; k < result.Length; k++)
            result[k] = result[k] with { T = result[k].T / length };
        ChordLength = length;
        return result;
    }
}
