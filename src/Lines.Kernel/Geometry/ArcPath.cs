namespace Lines.Kernel.Geometry;

/// <summary>A path of straight lines and circular arcs in a plane.</summary>
/// <remarks>
/// <para><b>Sign.</b> The bulge of a vertex is the tangent of a quarter of the arc's angle to the next vertex, positive
/// where the arc turns left (counter-clockwise); 0 is a straight line.</para>
/// </remarks>
/// <param name="Vertices">The corners in order; a closed path does not repeat its first.</param>
/// <param name="Closed">Whether the last vertex joins the first.</param>
public sealed record ArcPath(IReadOnlyList<ArcVertex> Vertices, bool Closed)
{
    /// <summary>The path of straight lines through points.</summary>
    public static ArcPath Through(IEnumerable<Point2> points, bool closed = false) =>
        new([.. points.Select(p => new ArcVertex(p, 0))], closed);

    /// <summary>One straight line.</summary>
    public static ArcPath Line(Point2 from, Point2 to) => Through([from, to]);

    /// <summary>A full circle as two half-circle arcs, counter-clockwise unless asked otherwise.</summary>
    public static ArcPath Circle(Point2 center, double radius, bool clockwise = false)
    {
        var bulge = clockwise ? -1 : 1;
        return new([new ArcVertex(new Point2(center.X + radius, center.Y), bulge), new ArcVertex(new Point2(center.X - radius, center.Y), bulge)], true);
    }

    /// <summary>The path with every vertex mapped; <paramref name="mirrors"/> says whether the map turns left into right.</summary>
    public ArcPath Mapped(Func<Point2, Point2> map, bool mirrors = false)
    {
        ArgumentNullException.ThrowIfNull(map);
        var mapped = new ArcVertex[Vertices.Count];
        for (var i = 0; i < mapped.Length; i++)
            mapped[i] = new ArcVertex(map(Vertices[i].Point), mirrors ? -Vertices[i].Bulge : Vertices[i].Bulge);
        return new ArcPath(mapped, Closed);
    }
}

/// <summary>A corner of an <see cref="ArcPath"/>.</summary>
/// <param name="Point">The place.</param>
/// <param name="Bulge">Tangent of a quarter of the arc's angle to the next vertex; 0 for a straight line.</param>
public readonly record struct ArcVertex(Point2 Point, double Bulge);
