using Lines.Kernel.Geometry;

namespace Lines.Construction.Molds;

/// <summary>What a router asks of molds beside their shape.</summary>
/// <param name="Tool">Diameter of the tool that cuts outlines [m]: inside corners of notches are cut out round for it; null leaves them sharp.</param>
/// <param name="Halves">Whether molds that are the same on both sides are cut as halves.</param>
public sealed record CutSettings(double? Tool, bool Halves)
{
    /// <summary>Whole molds, their corners sharp.</summary>
    public static CutSettings Usual { get; } = new(null, false);

    /// <summary>A mold as it is cut.</summary>
    /// <param name="mold">The mold.</param>
    /// <param name="tight">Inside corners that the tool does not reach, in the mold's frame [m].</param>
    public Mold Of(Mold mold, out IReadOnlyList<Point2> tight)
    {
        ArgumentNullException.ThrowIfNull(mold);
        tight = [];
        if (Tool is { } tool)
        {
            var cut = CornerRelief.Of(mold.Outline, tool / 2, out tight);
            mold = mold with { Outline = cut, Marks = [.. mold.Marks.Select(m => m.Kind == MoldMarkKind.Centerline ? m with { Path = Within(cut, m.Path) } : m)] };
        }

        return Halves && HalfMold.Exists(mold) ? HalfMold.Of(mold) : mold;
    }

    // The centerline of a mold begins at its notch, which may have become deeper.
    private static ArcPath Within(ArcPath outline, ArcPath line)
    {
        var foot = line.Vertices[0].Point;
        return line.Vertices.Count == 2 && outline.Segments().Where(s => s.Bulge == -1 && s.Center.DistanceTo(foot) < s.Radius).ToList() is [var notch]
            ? ArcPath.Line(notch.Center + (notch.Radius * (line.Vertices[1].Point - foot).Unit()), line.Vertices[1].Point)
            : line;
    }

    /// <summary>All molds as they are cut.</summary>
    public MoldPlan Of(MoldPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return this == Usual ? plan : plan with { Molds = [.. plan.Molds.Select(m => Of(m, out _))], Bulkheads = [.. plan.Bulkheads.Select(m => Of(m, out _))] };
    }
}
