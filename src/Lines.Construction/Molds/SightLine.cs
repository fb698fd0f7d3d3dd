using Lines.Kernel.Geometry;

namespace Lines.Construction.Molds;

/// <summary>Sighting holes through the station molds on two level lines, one to each side of the centerplane and clear of the profile molds.</summary>
/// <remarks>
/// <para><b>Method.</b> Every line of heights above the highest sheer mark, in steps of <see cref="Step"/>, is tried; the one whose holes go
/// through most molds is taken, of several the one furthest from the waterlines, of those the lowest. A mold with no wood for them has none.</para>
/// </remarks>
internal static class SightLine
{
    /// <summary>Diameter of the holes [m]: a string or a light shows whether it stands in the middle. Common practice, no source.</summary>
    public const double Diameter = 0.010;

    private const double Step = 0.005;
    private const double Wood = 0.008;
    private const double AboveSheer = 0.020;
    private const double ClearOfProfile = 0.015;

    /// <summary>Below a waterline and above it, with its name, no hole stands nearer than these [m].</summary>
    private const double Under = 0.009, Over = 0.016;

    /// <summary>The molds with their holes; the same molds where no line goes through three of them.</summary>
    /// <param name="stations">The station molds.</param>
    /// <param name="siding">Thickness of the profile molds [m].</param>
    public static IReadOnlyList<Mold> Drilled(IReadOnlyList<Mold> stations, double siding)
    {
        const int fewest = 3;
        if (stations.Count < fewest)
            return stations;
        var aside = (siding / 2) + ClearOfProfile;
        double from = stations.Max(m => m.Heights.Sheer) + AboveSheer, to = stations.Max(m => m.Heights.Keel);
        var lines = Enumerable.Range(0, Math.Max(0, (int)((to - from) / Step))).Select(k => Math.Ceiling(from / Step) * Step + (k * Step))
            .Select(h => (Height: h, Through: stations.Where(m => Takes(m, new Point2(aside, h))).ToHashSet(), Clear: stations.Min(m => FromWaterlines(m, h))))
            .ToList();
        if (lines.Count == 0)
            return stations;
        var (height, through, _) = lines.OrderByDescending(l => l.Through.Count).ThenByDescending(l => Math.Min(l.Clear, 0.03)).First();
        return through.Count < fewest
            ? stations
            : [.. stations.Select(m => through.Contains(m) ? m with { Holes = [.. m.Holes, Hole(aside, height), Hole(-aside, height)] } : m)];
    }

    private static MoldHole Hole(double aside, double height) => new(new Point2(aside, height), Diameter, MoldHoleKind.Sight);

    private static bool Takes(Mold mold, Point2 at) =>
        mold.Outline.Contains(at) && mold.Outline.DistanceTo(at) >= (Diameter / 2) + Wood
        && !Levels(mold).Any(w => at.Y > w - Under && at.Y < w + Over);

    private static double FromWaterlines(Mold mold, double height) => Levels(mold).Select(w => Math.Abs(height - w)).DefaultIfEmpty(1).Min();

    private static IEnumerable<double> Levels(Mold mold) =>
        mold.Marks.Where(k => k.Kind is MoldMarkKind.Waterline or MoldMarkKind.DesignWaterline).Select(k => k.Path.Vertices[0].Point.Y);
}
