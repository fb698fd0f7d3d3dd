using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Tests.Support;

/// <summary>Closed hulls, for tests of what counts the deck.</summary>
internal static class CrownedHulls
{
    /// <summary>A hull with another crown.</summary>
    public static HullSurface With(HullSurface hull, double? crown) =>
        new(hull.Side, hull.Dials with { Crown = crown }, hull.WidestU, hull.WaterlineV);

    /// <summary>A wall-sided float of parabolic plan on a level bottom: half-breadth 4 b t (1 − t) over x = L t, from z = 0 to H, and a crowned deck.</summary>
    /// <remarks>Its cubic net holds that plan exactly.</remarks>
    public static HullSurface WallSided(double length, double halfBreadth, double height, double crown)
    {
        var u = SplineBasis.Clamped(3, [0, 1]);
        var v = SplineBasis.Clamped(1, [0, 1]);
        double[] breadth = [0, 4 * halfBreadth / 3, 4 * halfBreadth / 3, 0];
        var net = new Point3[4, 2];
        for (var i = 0; i < 4; i++)
        {
            net[i, 0] = new Point3(length * i / 3, breadth[i], 0);
            net[i, 1] = new Point3(length * i / 3, breadth[i], height);
        }

        return new HullSurface(new BSplineSurface(u, v, net), WigleyHull.Dials(length, 2 * halfBreadth, height / 2) with { Crown = crown }, 0.5, 0.5);
    }
}
