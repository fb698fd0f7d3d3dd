using System.Buffers;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Sections;

/// <summary>Follows a plane through the skin, from grid edge to grid edge, branch by branch.</summary>
/// <remarks>
/// <para><b>Method.</b> The signed distance f(u, v) of the skin from the plane changes sign along the grid edges that the curve
/// crosses. Between grid points f is one polynomial, so for a bicubic skin each crossing is the root of a known cubic; any other
/// degree is polished on the skin itself. A distance under <see cref="Touching"/> counts as above, which settles planes that
/// hold a grid line or an edge of the skin.</para>
/// <para><b>Accuracy.</b> Nodes lie on the skin by construction and within 1e-9 m of the plane. A loop or a clip smaller than one
/// cell of the grid (about 1/48 of the length by 1/30 of the girth) that crosses no grid edge is not seen.</para>
/// </remarks>
internal sealed class PlaneTrace : IDisposable
{
    /// <summary>Distance from the plane that counts as lying on it [m]: well above rounding, well below the promise for nodes.</summary>
    internal const double Touching = 1e-11;

    /// <summary>Nodes nearer than this [m] are one node.</summary>
    private const double SameNode = 1e-7;

    private readonly HullSurface _hull;
    private readonly Plane _plane;
    private readonly SkinGrid _grid;
    private readonly int _nu;
    private readonly int _nv;
    private readonly bool[] _above;
    private readonly bool[] _seen; // edges along u first, then edges along v
    private readonly int _corners;

    private PlaneTrace(HullSurface hull, Plane plane)
    {
        _hull = hull;
        _plane = plane;
        _grid = SkinGrid.Of(hull);
        (_nu, _nv) = (_grid.Us.Length - 1, _grid.Vs.Length - 1);
        _corners = (_nu + 1) * (_nv + 1);
        _above = ArrayPool<bool>.Shared.Rent(_corners);
        for (var i = 0; i <= _nu; i++)
        {
            for (var j = 0; j <= _nv; j++)
                _above[Corner(i, j)] = plane.DistanceTo(_grid.JetAt(i, j).Point) >= -Touching;
        }

        _seen = ArrayPool<bool>.Shared.Rent(2 * _corners);
        Array.Clear(_seen);
    }

    /// <summary>One branch of a cut: nodes in order, and whether the last joins the first.</summary>
    internal readonly record struct Branch(List<LinePoint> Nodes, bool Closed);

    /// <summary>All branches of the curve where the plane meets the skin.</summary>
    public static List<Branch> Branches(HullSurface hull, Plane plane)
    {
        using var trace = new PlaneTrace(hull, plane);
        var found = new List<Branch>();
        trace.StartAtBorders(found);
        trace.StartInside(found);
        return found;
    }

    /// <summary>Gives back the room that the trace took.</summary>
    public void Dispose()
    {
        ArrayPool<bool>.Shared.Return(_above);
        ArrayPool<bool>.Shared.Return(_seen);
    }

    private void StartAtBorders(List<Branch> found)
    {
        for (var i = 0; i < _nu; i++)
        {
            Follow(new Edge(i, 0, true), i, 0, found);
            Follow(new Edge(i, _nv, true), i, _nv - 1, found);
        }

        for (var j = 0; j < _nv; j++)
        {
            Follow(new Edge(0, j, false), 0, j, found);
            Follow(new Edge(_nu, j, false), _nu - 1, j, found);
        }
    }

    private void StartInside(List<Branch> found)
    {
        for (var i = 0; i < _nu; i++)
        {
            for (var j = 1; j < _nv; j++)
                Follow(new Edge(i, j, true), i, j, found);
        }
    }

    private void Follow(Edge start, int i, int j, List<Branch> found)
    {
        if (!Crossed(start) || _seen[Id(start)])
            return;
        var nodes = new List<LinePoint>(96);
        var edge = start;
        var closed = false;
        while (true)
        {
            _seen[Id(edge)] = true;
            Add(nodes, Node(edge));
            edge = Exit(edge, i, j);
            if (edge == start)
            {
                closed = true;
                break;
            }

            (i, j) = Across(edge, i, j);
            if (i < 0 || j < 0 || i >= _nu || j >= _nv)
            {
                _seen[Id(edge)] = true;
                Add(nodes, Node(edge));
                break;
            }
        }

        if (nodes.Count > 1)
            found.Add(new Branch(nodes, closed));
    }

    private static void Add(List<LinePoint> nodes, LinePoint node)
    {
        if (nodes.Count == 0 || nodes[^1].Point.DistanceTo(node.Point) > SameNode)
            nodes.Add(node);
    }

    // The edge through which the curve leaves a cell it entered by another.
    private Edge Exit(Edge entry, int i, int j)
    {
        Span<Edge> sides = [new(i, j, true), new(i + 1, j, false), new(i, j + 1, true), new(i, j, false)];
        Span<int> crossed = stackalloc int[4];
        int count = 0, from = 0;
        for (var k = 0; k < 4; k++)
        {
            if (sides[k] == entry)
                from = k;
            if (Crossed(sides[k]))
                crossed[count++] = k;
        }

        if (count == 2)
            return sides[crossed[0] == from ? crossed[1] : crossed[0]];

        // A saddle: the middle of the cell says which two corners belong together.
        double u = (_grid.Us[i] + _grid.Us[i + 1]) / 2, v = (_grid.Vs[j] + _grid.Vs[j + 1]) / 2;
        var middle = _plane.DistanceTo(_hull.Side.PointAt(u, v)) >= -Touching;
        ReadOnlySpan<int> partner = middle == _above[Corner(i, j)] ? [1, 0, 3, 2] : [3, 2, 1, 0];
        return sides[partner[from]];
    }

    private static (int I, int J) Across(Edge edge, int i, int j) =>
        edge.AlongU ? (i, edge.J == j ? j - 1 : j + 1) : (edge.I == i ? i - 1 : i + 1, j);

    private LinePoint Node(Edge e)
    {
        ref readonly var a = ref _grid.JetAt(e.I, e.J);
        ref readonly var b = ref e.AlongU ? ref _grid.JetAt(e.I + 1, e.J) : ref _grid.JetAt(e.I, e.J + 1);
        var length = e.AlongU ? _grid.Us[e.I + 1] - _grid.Us[e.I] : _grid.Vs[e.J + 1] - _grid.Vs[e.J];
        double fa = _plane.DistanceTo(a.Point), fb = _plane.DistanceTo(b.Point);
        var ma = length * _plane.Normal.Dot(e.AlongU ? a.U : a.V);
        var mb = length * _plane.Normal.Dot(e.AlongU ? b.U : b.V);
        var s = Math.Abs(fa) <= Touching ? 0 : Math.Abs(fb) <= Touching ? 1 : CubicRoot(fa, fb, ma, mb);
        var p = NodeAt(e, s);
        return Math.Abs(_plane.DistanceTo(p.Point)) > Touching ? Polished(e, fa) : p;
    }

    private LinePoint Polished(Edge e, double fa) => NodeAt(e, RootOnSkin(t => _plane.DistanceTo(NodeAt(e, t).Point), fa));

    /// <summary>The point of the skin a part of the way along an edge.</summary>
    private LinePoint NodeAt(Edge e, double part)
    {
        double u = _grid.Us[e.I], v = _grid.Vs[e.J];
        if (e.AlongU)
            u += part * (_grid.Us[e.I + 1] - u);
        else
            v += part * (_grid.Vs[e.J + 1] - v);
        return new LinePoint(0, u, v, _hull.Side.PointAt(u, v));
    }

    // Root in (0, 1) of the cubic with end values fa, fb of opposite sign and end slopes ma, mb: Newton kept in its bracket.
    private static double CubicRoot(double fa, double fb, double ma, double mb)
    {
        double c3 = (2 * (fa - fb)) + ma + mb, c2 = (3 * (fb - fa)) - (2 * ma) - mb;
        double low = 0, high = 1, s = fa / (fa - fb);
        while (high - low > 1e-16)
        {
            var f = fa + (s * (ma + (s * (c2 + (s * c3)))));
            if (f == 0)
                return s;
            if (f < 0 == fa < 0)
                low = s;
            else
                high = s;
            var next = s - (f / (ma + (s * ((2 * c2) + (3 * s * c3)))));
            if (!(next > low && next < high))
                next = (low + high) / 2;
            if (Math.Abs(next - s) <= 1e-16)
                return next;
            s = next;
        }

        return s;
    }

    // Bisection on the skin for degrees above the cubic; ends when the bracket is at rounding.
    private static double RootOnSkin(Func<double, double> f, double fa)
    {
        double low = 0, high = 1;
        while (true)
        {
            var s = (low + high) / 2;
            if (s <= low || s >= high)
                return s;
            var fs = f(s);
            if (Math.Abs(fs) <= Touching)
                return s;
            if (fs < 0 == fa < 0)
                low = s;
            else
                high = s;
        }
    }

    private bool Crossed(Edge e) =>
        _above[Corner(e.I, e.J)] != _above[e.AlongU ? Corner(e.I + 1, e.J) : Corner(e.I, e.J + 1)];

    private int Corner(int i, int j) => (i * (_nv + 1)) + j;

    private int Id(Edge e) => Corner(e.I, e.J) + (e.AlongU ? 0 : _corners);

    private readonly record struct Edge(int I, int J, bool AlongU);
}
