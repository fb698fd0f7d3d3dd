using Lines.Kernel.Geometry;

namespace Lines.Construction.Molds;

/// <summary>The half of a mold to one side of its centerline, as a pattern that is turned over for the other.</summary>
public static class HalfMold
{
    /// <summary>Whether a mold is the same on both sides of its centerline; profile molds stand in the centerplane and have no halves; bulkheads, with
    /// holes on theirs, and molds with the marks of an opening aside of it are cut whole.</summary>
    public static bool Exists(Mold mold)
    {
        ArgumentNullException.ThrowIfNull(mold);
        return mold is { StarboardRight: not null, IsHalf: false, Kind: not MoldKind.Bulkhead }
            && mold.Marks.Where(m => m.Kind == MoldMarkKind.Opening).GroupBy(m => m.Name, StringComparer.Ordinal).All(o => Math.Abs(o.Sum(m => m.Path.Vertices[0].Point.X)) < MoldShaping.Coincident);
    }

    /// <summary>The right half of a mold as its drawing shows it, its centerline an edge.</summary>
    /// <remarks><b>Accuracy.</b> Rounding only: the edge keeps its lines and arcs, cut where they cross the centerline.</remarks>
    /// <exception cref="ArgumentException">The mold has no halves.</exception>
    public static Mold Of(Mold mold)
    {
        if (!Exists(mold))
            throw new ArgumentException($"{mold.Name} has no halves", nameof(mold));
        var side = new Box2(0, double.NegativeInfinity, double.PositiveInfinity, double.PositiveInfinity);
        var edge = mold.Outline.Inside(side).MaxBy(p => p.Length())
            ?? throw new ArgumentException($"{mold.Name} has nothing to the right of its centerline", nameof(mold));
        return mold with
        {
            IsHalf = true,
            Outline = Closed(edge),
            Marks = [.. mold.Marks.Where(m => m.Kind != MoldMarkKind.Centerline).SelectMany(m => m.Path.Inside(side), (m, p) => m with { Path = p })],
            Holes = [.. mold.Holes.Where(h => h.At.X > 0)],
        };
    }

    // What crosses the centerline at a vertex leaves a piece without length there; rounding does not put the edge on the centerline beside it.
    private static ArcPath Closed(ArcPath edge)
    {
        List<ArcVertex> v = [.. edge.Vertices.Select(a => Math.Abs(a.Point.X) < MoldShaping.Coincident ? a with { Point = a.Point with { X = 0 } } : a)];
        return new ArcPath([.. v.Where((a, i) => a.Point.DistanceTo(v[(i + 1) % v.Count].Point) > MoldShaping.Coincident)], true);
    }
}
