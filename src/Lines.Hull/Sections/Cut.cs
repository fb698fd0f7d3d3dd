using Lines.Hull.Form;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Sections;

/// <summary>Cuts the lines of a hull from its skin.</summary>
/// <remarks>
/// <para>A plane may meet the skin more than once (a waterline above the least sheer has a fore and an after part): every cut
/// returns all its branches, foremost or lowest first, and an empty list where plane and skin do not meet.</para>
/// <para><b>Accuracy.</b> That of <see cref="HullLine"/>: on the skin, within 1e-9 m of the plane.</para>
/// </remarks>
public static class Cut
{
    /// <summary>The section at x [m].</summary>
    public static IReadOnlyList<HullLine> Station(HullSurface hull, double x) => By(hull, Plane.AtX(x), LineTag.Station(x));

    /// <summary>The waterline at height z [m].</summary>
    public static IReadOnlyList<HullLine> Waterline(HullSurface hull, double z) => By(hull, Plane.AtZ(z), LineTag.Waterline(z));

    /// <summary>The buttock at half-breadth y [m], more than 0.</summary>
    public static IReadOnlyList<HullLine> Buttock(HullSurface hull, double y) => By(hull, Plane.AtY(y), LineTag.Buttock(y));

    /// <summary>The diagonal that leaves the centerplane at a height and runs down to starboard.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="height">Height on the centerplane [m].</param>
    /// <param name="angle">Angle below level [rad], 0 to under 90 degrees.</param>
    public static IReadOnlyList<HullLine> Diagonal(HullSurface hull, double height, double angle) =>
        By(hull, DiagonalPlane(height, angle), LineTag.Diagonal(height, angle));

    /// <summary>The plane of a diagonal; its normal points up and to starboard.</summary>
    /// <param name="height">Height on the centerplane [m].</param>
    /// <param name="angle">Angle below level [rad].</param>
    public static Plane DiagonalPlane(double height, double angle) =>
        new(new Vector3(0, Math.Sin(angle), Math.Cos(angle)), height * Math.Cos(angle));

    /// <summary>The cut by any plane, with the name given.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="plane">The plane, hull frame.</param>
    /// <param name="tag">Name and axes of the lines.</param>
    public static IReadOnlyList<HullLine> By(HullSurface hull, Plane plane, LineTag tag)
    {
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(tag);
        if (!double.IsFinite(plane.Offset))
            throw new ArgumentOutOfRangeException(nameof(plane), plane.Offset, "the place of a cut is not a finite number");
        var upward = tag.Kind == LineKind.Station || (tag.Kind == LineKind.Stern && hull.Transom is not null);
        double Order(Point3 p) => upward ? p.Z : p.X;
        var lines = new List<HullLine>(1);
        foreach (var (nodes, closed) in PlaneTrace.Branches(hull, plane))
        {
            if (Order(nodes[0].Point) > Order(nodes[^1].Point))
                nodes.Reverse();
            lines.Add(new HullLine(hull, tag, plane, nodes, closed));
        }

        lines.Sort((a, b) => Order(a.Start.Point).CompareTo(Order(b.Start.Point)));
        return lines;
    }

    /// <summary>The sheer, bow to stern.</summary>
    public static HullLine Sheer(HullSurface hull) => Edge(hull, LineTag.Sheer, alongU: true, at: 1, backward: false);

    /// <summary>The keel from the forefoot to the heel or the transom's foot.</summary>
    public static HullLine Keel(HullSurface hull) => Edge(hull, LineTag.Keel, alongU: true, at: 0, backward: false);

    /// <summary>The stem profile from its head down to the forefoot.</summary>
    public static HullLine Stem(HullSurface hull) => Edge(hull, LineTag.Stem, alongU: false, at: 0, backward: true);

    /// <summary>The sternpost from the keel up, or the outline of the transom from its foot to the sheer.</summary>
    public static HullLine Stern(HullSurface hull)
    {
        ArgumentNullException.ThrowIfNull(hull);
        return Edge(hull, hull.Transom is null ? LineTag.Sternpost : LineTag.Transom(TransomAxes(hull)), alongU: false, at: 1, backward: false);
    }

    /// <summary>Axes in the transom's own plane: y to the right, up along the transom from its foot.</summary>
    /// <param name="hull">A hull with a transom.</param>
    /// <exception cref="ArgumentException">The hull has a pointed stern.</exception>
    public static FlatAxes TransomAxes(HullSurface hull)
    {
        ArgumentNullException.ThrowIfNull(hull);
        var normal = (hull.Transom ?? throw new ArgumentException("the hull has no transom", nameof(hull))).Normal;
        return new FlatAxes(hull.Side.PointAt(1, 0), new Vector3(0, 1, 0), new Vector3(-normal.Z, 0, normal.X));
    }

    private static HullLine Edge(HullSurface hull, LineTag tag, bool alongU, int at, bool backward)
    {
        ArgumentNullException.ThrowIfNull(hull);
        var grid = SkinGrid.Of(hull);
        var count = (alongU ? grid.Us : grid.Vs).Length;
        var nodes = new List<LinePoint>(count);
        for (var k = 0; k < count; k++)
        {
            var (i, j) = alongU ? (k, at * (grid.Vs.Length - 1)) : (at * (grid.Us.Length - 1), k);
            nodes.Add(new LinePoint(0, grid.Us[i], grid.Vs[j], grid.JetAt(i, j).Point));
        }

        if (backward)
            nodes.Reverse();
        return new HullLine(hull, tag, null, nodes, closed: false);
    }
}
