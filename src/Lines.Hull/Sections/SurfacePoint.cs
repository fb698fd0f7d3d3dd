using Lines.Hull.Form;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Sections;

/// <summary>A point of the skin with its parameters.</summary>
/// <param name="U">Parameter u.</param>
/// <param name="V">Parameter v.</param>
/// <param name="Point">The point, the skin evaluated at (U, V) [m].</param>
public readonly record struct SurfacePoint(double U, double V, Point3 Point)
{
    /// <summary>The point of the skin at a station and a height: its y is the half-breadth there.</summary>
    /// <remarks>
    /// <para><b>Method.</b> Newton's method in (u, v) from the nearest point of a grid; where that fails, the section at x is cut
    /// and crossed with the level plane.</para>
    /// <para><b>Accuracy.</b> x and z within 1e-9 m.</para>
    /// </remarks>
    /// <param name="hull">The hull.</param>
    /// <param name="x">Distance aft of the hull's foremost point [m].</param>
    /// <param name="z">Height above the base line [m].</param>
    /// <returns>The point; null where the profile of the hull does not cover (x, z).</returns>
    public static SurfacePoint? At(HullSurface hull, double x, double z)
    {
        ArgumentNullException.ThrowIfNull(hull);
        var grid = SkinGrid.Of(hull);
        var (i, j) = grid.NearestInProfile(x, z);
        double u = grid.Us[i], v = grid.Vs[j];
        var before = double.PositiveInfinity;
        while (true)
        {
            var s = hull.Side.JetAt(u, v);
            double dx = s.Point.X - x, dz = s.Point.Z - z, miss = Math.Abs(dx) + Math.Abs(dz);
            if (miss <= PlaneTrace.Touching)
                break;
            if (!(miss < before / 2))
                return ByCut(hull, x, z);
            before = miss;
            var det = (s.U.X * s.V.Z) - (s.U.Z * s.V.X);
            u -= ((dx * s.V.Z) - (dz * s.V.X)) / det;
            v -= ((dz * s.U.X) - (dx * s.U.Z)) / det;
        }

        return u is >= 0 and <= 1 && v is >= 0 and <= 1 ? new SurfacePoint(u, v, hull.Side.PointAt(u, v)) : ByCut(hull, x, z);
    }

    /// <summary>The point of the keel at x [m]; null before the forefoot and behind the heel.</summary>
    public static SurfacePoint? OnKeel(HullSurface hull, double x) => On(Cut.Keel(hull), Plane.AtX(x));

    /// <summary>The point of the sheer at x [m]; null where the sheer does not reach.</summary>
    public static SurfacePoint? OnSheer(HullSurface hull, double x) => On(Cut.Sheer(hull), Plane.AtX(x));

    /// <summary>The point of the stem profile at height z [m]; null below the forefoot and above its head.</summary>
    public static SurfacePoint? OnStem(HullSurface hull, double z) => On(Cut.Stem(hull), Plane.AtZ(z));

    /// <summary>The point of the sternpost, or of the transom's edge, at height z [m]; null where it does not reach.</summary>
    public static SurfacePoint? OnStern(HullSurface hull, double z) => On(Cut.Stern(hull), Plane.AtZ(z));

    /// <summary>The lowest point of the profile at x [m]: of stem, keel or sternpost, or of the transom's edge; null outside the hull.</summary>
    public static SurfacePoint? OnProfile(HullSurface hull, double x)
    {
        ArgumentNullException.ThrowIfNull(hull);
        return OnKeel(hull, x) ?? On(Cut.Stem(hull), Plane.AtX(x)) ?? On(Cut.Stern(hull), Plane.AtX(x));
    }

    private static SurfacePoint? On(HullLine line, Plane plane) =>
        line.FirstCrossingWith(plane) is { } p ? new SurfacePoint(p.U, p.V, p.Point) : null;

    private static SurfacePoint? ByCut(HullSurface hull, double x, double z)
    {
        foreach (var section in Cut.Station(hull, x))
        {
            if (section.FirstCrossingWith(Plane.AtZ(z)) is { } p)
                return new SurfacePoint(p.U, p.V, p.Point);
        }

        return null;
    }
}
