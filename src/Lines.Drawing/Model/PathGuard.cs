using Lines.Kernel.Geometry;

namespace Lines.Drawing.Model;

/// <summary>Guards what every renderer asks of a path.</summary>
internal static class PathGuard
{
    /// <summary>Refuses a path that cannot be drawn.</summary>
    /// <exception cref="ArgumentException">The path has fewer than two vertices, or a vertex is not finite.</exception>
    public static void Require(ArcPath path)
    {
        if (path.Vertices.Count < 2)
            throw new ArgumentException(Invariant($"a path of {path.Vertices.Count} vertices cannot be drawn; it takes two"), nameof(path));
        foreach (var v in path.Vertices)
        {
            if (!(double.IsFinite(v.Point.X) && double.IsFinite(v.Point.Y) && double.IsFinite(v.Bulge)))
                throw new ArgumentException(Invariant($"a path's vertex ({v.Point.X}, {v.Point.Y}; bulge {v.Bulge}) is not finite"), nameof(path));
        }
    }
}
