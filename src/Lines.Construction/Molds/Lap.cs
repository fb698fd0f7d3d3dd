using Lines.Hull.Form;
using Lines.Kernel.Geometry;

namespace Lines.Construction.Molds;

/// <summary>How a profile mold and a station mold that it passes are slotted into each other.</summary>
/// <remarks>
/// <para>A profile mold runs from the sheer past the foot of the stem to the first station mold abaft it. The station molds on its way
/// have a slot for it from the keel down, hull upside down, and it has slots for their stock from the foot up: both stand on the
/// strongback, and each holds the other upright.</para>
/// <para>The sides of the slot end level where they are <see cref="LeastHorn"/> thick: nearer to the keel the profile mold's own edge carries the
/// planking.</para>
/// <para><b>Source.</b> Depth, thickness and clearance: common practice, no source.</para>
/// </remarks>
/// <param name="Top">Parameter of the section at which the edge ends.</param>
/// <param name="TopHeight">Height of that end above the base line [m].</param>
/// <param name="Floor">Height of the slot's floor on the drawing [m].</param>
internal sealed record Lap(double Top, double TopHeight, double Floor)
{
    /// <summary>What is easy in a slot: its width over the board's thickness, and the height of the one floor over the other [m].</summary>
    public const double Clearance = 0.001;

    /// <summary>How far the station mold's slot reaches under the profile mold's edge [m].</summary>
    private const double Depth = 0.070;

    /// <summary>Least thickness of a side of the slot [m].</summary>
    private const double LeastHorn = 0.008;

    /// <summary>Least depth of a station mold from the sheer mark to its level top [m].</summary>
    private const double LeastDepth = 0.060;

    /// <summary>The station at which the profile mold of an end stops [m].</summary>
    /// <returns>The first station inward from the foot of the stem or sternpost; where there is none on that end's side of the widest station, the
    /// farthest on that side; where that has none either, the nearest of all.</returns>
    /// <param name="hull">The hull.</param>
    /// <param name="stations">All mold stations from the bow [m], at least one.</param>
    /// <param name="bow">Whether it is the stem's mold.</param>
    public static double Reach(HullSurface hull, IReadOnlyList<double> stations, bool bow)
    {
        var foot = hull.Side.PointAt(bow ? 0 : 1, 0).X;
        List<double> inward = [.. bow ? stations : stations.Reverse()], own = [.. inward.Where(x => bow == x <= hull.WidestX)];
        return own.Count == 0 ? inward[0] : own.FirstOrDefault(x => bow ? x >= foot : x <= foot, own[^1]);
    }

    /// <summary>The lap of a station mold, or why the profile mold finds no room to pass.</summary>
    public static bool TryFind(MoldShaping shaping, CrossSection section, out Lap? lap, out FormattableString reason)
    {
        var half = shaping.Build.StemSiding / 2;
        lap = null;
        reason = $"the inside is too narrow there for the profile mold to pass through a mold";
        if (section.Where(half + LeastHorn) is not { } top || section.Where(half) is not { } edge)
            return false;
        var z = section.HullHeightAt(top);
        lap = new Lap(top, z, Math.Min(section.HeightOf(z), section.PointAt(edge).Y - Depth));
        return section.Sheer - z >= LeastDepth && lap.Floor - section.HeightOf(section.Sheer) >= LeastDepth;
    }

    /// <summary>The station mold's outline from the end of its right edge to that of its left.</summary>
    public ArcPath Across(Point2 right, double siding)
    {
        var slot = (siding + Clearance) / 2;
        return ArcPath.Through(Floor < right.Y
            ? [right, right with { X = slot }, new Point2(slot, Floor), new Point2(-slot, Floor), right with { X = -slot }, right with { X = -right.X }]
            : [right, right with { X = -right.X }]);
    }
}
