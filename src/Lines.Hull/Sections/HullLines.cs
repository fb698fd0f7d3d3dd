using Lines.Hull.Form;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Sections;

/// <summary>The lines of one hull, cut once and handed on to fairness, offsets and plans.</summary>
/// <param name="Hull">The hull.</param>
/// <param name="Grid">Where they were cut.</param>
/// <param name="Stations">Stations, bow first; a station that misses the skin (a plumb stem at station 0) is absent.</param>
/// <param name="Waterlines">Waterlines, lowest first; one in two parts is there twice.</param>
/// <param name="Buttocks">Buttocks, innermost first.</param>
/// <param name="Diagonals">Diagonals, in the order of the grid.</param>
/// <param name="Sheer">The sheer.</param>
/// <param name="Keel">The keel.</param>
/// <param name="Stem">The stem profile, head to forefoot.</param>
/// <param name="Stern">The sternpost from the keel up, or the outline of the transom.</param>
public sealed record HullLines(
    HullSurface Hull,
    LinesGrid Grid,
    IReadOnlyList<HullLine> Stations,
    IReadOnlyList<HullLine> Waterlines,
    IReadOnlyList<HullLine> Buttocks,
    IReadOnlyList<HullLine> Diagonals,
    HullLine Sheer,
    HullLine Keel,
    HullLine Stem,
    HullLine Stern)
{
    /// <summary>Every line: sheer, keel, stem, stern, waterlines, buttocks, diagonals, stations.</summary>
    public IEnumerable<HullLine> All => [Sheer, Keel, Stem, Stern, .. Waterlines, .. Buttocks, .. Diagonals, .. Stations];

    /// <summary>The parts of one line of the grid, in order; more than one where its plane cuts the skin in several.</summary>
    /// <param name="kind">What the line is.</param>
    /// <param name="label">Its label.</param>
    public IReadOnlyList<HullLine> Parts(LineKind kind, string label) => [.. All.Where(l => l.Kind == kind && string.Equals(l.Label, label, StringComparison.Ordinal))];

    /// <summary>The design waterline.</summary>
    public HullLine? DesignWaterline => Waterlines.FirstOrDefault(w => w.Position == Hull.Draft);

    /// <summary>The lines of a hull on its standard grid.</summary>
    /// <param name="hull">The hull.</param>
    public static HullLines Of(HullSurface hull) => Of(hull, LinesGrid.For(hull));

    /// <summary>The lines of a hull.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="grid">Where to cut.</param>
    public static HullLines Of(HullSurface hull, LinesGrid grid)
    {
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(grid);
        string Number(int k) => Invariant($"{k + 1}");
        return new HullLines(
            hull,
            grid,
            [.. grid.Stations.SelectMany(s => Cut.By(hull, Plane.AtX(s.X), LineTag.Station(s.X, s.Number)))],
            [.. grid.Waterlines.SelectMany((z, k) =>
                Cut.By(hull, Plane.AtZ(z), z == hull.Draft ? LineTag.DesignWaterline(z) : LineTag.Waterline(z, Number(k))))],
            [.. grid.Buttocks.SelectMany((y, k) => Cut.By(hull, Plane.AtY(y), LineTag.Buttock(y, Number(k))))],
            [.. grid.Diagonals.SelectMany((d, k) =>
                Cut.By(hull, Cut.DiagonalPlane(d.Height, d.Angle), LineTag.Diagonal(d.Height, d.Angle, Number(k))))],
            Cut.Sheer(hull),
            Cut.Keel(hull),
            Cut.Stem(hull),
            Cut.Stern(hull));
    }
}
