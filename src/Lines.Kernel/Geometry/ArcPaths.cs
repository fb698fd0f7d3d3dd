namespace Lines.Kernel.Geometry;

/// <summary>Paths put together from paths.</summary>
public static class ArcPaths
{
    /// <summary>One path of open paths laid end to end; where the next starts elsewhere a straight line leads to it.</summary>
    /// <remarks><b>Accuracy.</b> Ends nearer than <paramref name="tolerance"/> become one vertex, that of the later path; corners stay corners.</remarks>
    /// <param name="parts">Open paths in order.</param>
    /// <param name="closed">Whether the last end joins the first.</param>
    /// <param name="tolerance">Distance below which two ends are one point, same unit as the paths.</param>
    /// <exception cref="ArgumentException">A part is closed or empty.</exception>
    public static ArcPath Joined(IEnumerable<ArcPath> parts, bool closed, double tolerance)
    {
        ArgumentNullException.ThrowIfNull(parts);
        var vertices = new List<ArcVertex>();
        foreach (var part in parts)
        {
            if (part.Closed || part.Vertices.Count == 0)
                throw new ArgumentException("only open paths with vertices can be laid end to end", nameof(parts));
            if (vertices.Count > 0 && vertices[^1].Point.DistanceTo(part.Vertices[0].Point) <= tolerance)
                vertices.RemoveAt(vertices.Count - 1);
            vertices.AddRange(part.Vertices);
            vertices[^1] = vertices[^1] with { Bulge = 0 };
        }

        if (closed && vertices.Count > 1 && vertices[^1].Point.DistanceTo(vertices[0].Point) <= tolerance)
            vertices.RemoveAt(vertices.Count - 1);
        return new ArcPath(vertices, closed);
    }

    /// <summary>The open path on the other side of the ordinate, run the other way: behind a path that ends on the axis it goes on as its mirror image.</summary>
    /// <exception cref="ArgumentException">The path is closed.</exception>
    public static ArcPath Mirrored(ArcPath edge)
    {
        ArgumentNullException.ThrowIfNull(edge);
        return edge.Mapped(p => p with { X = -p.X }, mirrors: true).Reversed();
    }

    /// <summary>The open path run the other way.</summary>
    /// <exception cref="ArgumentException">The path is closed.</exception>
    public static ArcPath Reversed(this ArcPath path)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (path.Closed)
            throw new ArgumentException("only an open path has two ends to exchange", nameof(path));
        var v = path.Vertices;
        return new ArcPath([.. Enumerable.Range(0, v.Count).Select(i => new ArcVertex(v[^(i + 1)].Point, i + 1 < v.Count ? -v[^(i + 2)].Bulge : 0))], false);
    }
}
