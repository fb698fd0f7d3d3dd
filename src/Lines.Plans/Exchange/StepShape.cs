using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Plans.Exchange;

/// <summary>Geometry and topology of ISO 10303-42 in millimeters.</summary>
/// <param name="entities">Receives the entities.</param>
internal sealed class StepShape(StepEntities entities)
{
    /// <summary>Ends closer than this are one vertex: 1 µm, the model length.</summary>
    public const double SamePoint = 1e-6;

    private readonly Dictionary<Point3, string> _vertices = [];

    /// <summary>A vertex; corners that coincide share one.</summary>
    public string Vertex(Point3 p)
    {
        var known = _vertices.Keys.Where(k => k.DistanceTo(p) <= SamePoint).Take(1).ToList();
        if (known.Count > 0)
            return _vertices[known[0]];
        return _vertices[p] = entities.Add("VERTEX_POINT(''," + Point(p) + ")");
    }

    /// <summary>An edge along a curve of poles; null where the whole curve is one point.</summary>
    public string? Edge(SplineBasis basis, IReadOnlyList<Point3> poles)
    {
        if (poles.All(p => p.DistanceTo(poles[0]) <= SamePoint))
            return null;
        var (multiplicities, knots) = Knots(basis);
        var points = StepEntities.List(poles.Select(Point));
        var curve = entities.Add(Invariant($"B_SPLINE_CURVE_WITH_KNOTS('',{basis.Degree},") + points + ",.UNSPECIFIED.,.F.,.F.," + multiplicities + "," + knots + ",.UNSPECIFIED.)");
        return Edge(poles[0], poles[^1], curve);
    }

    /// <summary>A straight edge; null between two points that are one.</summary>
    public string? Straight(Point3 from, Point3 to)
    {
        var along = to - from;
        if (along.Length <= SamePoint)
            return null;
        var vector = entities.Add("VECTOR(''," + Direction(along.Unit()) + "," + StepEntities.Real(1) + ")");
        return Edge(from, to, entities.Add("LINE(''," + Point(from) + "," + vector + ")"));
    }

    /// <summary>A B-spline surface whose first index runs along <paramref name="first"/>.</summary>
    public string Surface(SplineBasis first, SplineBasis second, Func<int, int, Point3> pole)
    {
        var rows = Enumerable.Range(0, first.Count).Select(i => StepEntities.List(Enumerable.Range(0, second.Count).Select(j => Point(pole(i, j)))));
        var (firstMultiplicities, firstKnots) = Knots(first);
        var (secondMultiplicities, secondKnots) = Knots(second);
        return entities.Add(
            Invariant($"B_SPLINE_SURFACE_WITH_KNOTS('',{first.Degree},{second.Degree},") + StepEntities.List(rows) + ",.UNSPECIFIED.,.F.,.F.,.F.,"
            + firstMultiplicities + "," + secondMultiplicities + "," + firstKnots + "," + secondKnots + ",.UNSPECIFIED.)");
    }

    /// <summary>A plane through a point.</summary>
    public string Flat(Point3 origin, Vector3 normal, Vector3 along) => entities.Add("PLANE(''," + Placement(origin, normal, along) + ")");

    /// <summary>A placement: origin, third axis, first axis.</summary>
    public string Placement(Point3 origin, Vector3 axis, Vector3 along) =>
        entities.Add("AXIS2_PLACEMENT_3D(''," + Point(origin) + "," + Direction(axis) + "," + Direction(along) + ")");

    /// <summary>A face on a surface, bounded by edges counter-clockwise about its normal; edges that are null are left out.</summary>
    public string Face(string name, string surface, IEnumerable<(string? Edge, bool Forward)> edges)
    {
        var oriented = edges.Where(e => e.Edge is not null).Select(e => entities.Add("ORIENTED_EDGE('',*,*," + e.Edge + (e.Forward ? ",.T.)" : ",.F.)"))).ToList();
        var loop = entities.Add("EDGE_LOOP(''," + StepEntities.List(oriented) + ")");
        var bound = entities.Add("FACE_OUTER_BOUND(''," + loop + ",.T.)");
        return entities.Add("ADVANCED_FACE(" + StepEntities.Quoted(name) + ",(" + bound + ")," + surface + ",.T.)");
    }

    private static (string Multiplicities, string Knots) Knots(SplineBasis basis)
    {
        var groups = basis.Knots.GroupBy(k => k).ToList();
        return (StepEntities.List(groups.Select(g => Invariant($"{g.Count()}"))), StepEntities.List(groups.Select(g => StepEntities.Real(g.Key))));
    }

    private string Edge(Point3 from, Point3 to, string curve) =>
        entities.Add("EDGE_CURVE(''," + Vertex(from) + "," + Vertex(to) + "," + curve + ",.T.)");

    private string Point(Point3 p) => entities.Add("CARTESIAN_POINT(''," + StepEntities.List(new[] { p.X, p.Y, p.Z }.Select(c => StepEntities.Real(1000 * c))) + ")");

    private string Direction(Vector3 d) => entities.Add("DIRECTION(''," + StepEntities.List(new[] { d.X, d.Y, d.Z }.Select(StepEntities.Real)) + ")");
}
