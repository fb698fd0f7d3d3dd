using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Tests.Support;

/// <summary>A pointed hull on a net fine enough to plant small faults in: Wigley's half-breadths on a bicubic surface.</summary>
internal static class FineHull
{
    /// <summary>Length of the hull [m].</summary>
    public const double Length = 5.25;

    /// <summary>Width of one span of the net along the hull [m]: a pole moves the surface over four of them.</summary>
    public const double Span = 0.0375;

    /// <summary>The fair hull with poles moved to starboard.</summary>
    /// <param name="moved">Displacement of the pole over (x, z) [m].</param>
    public static HullSurface Of(Func<double, double, double> moved)
    {
        const double beam = 0.74, depth = 0.36;
        var u = SplineBasis.Clamped(3, [.. Enumerable.Range(0, 141).Select(i => i / 140.0)]);
        var v = SplineBasis.Clamped(3, [.. Enumerable.Range(0, 7).Select(i => i / 6.0)]);
        var net = new Point3[u.Count, v.Count];
        for (var i = 0; i < u.Count; i++)
        {
            for (var j = 0; j < v.Count; j++)
            {
                double x = Length * u.GrevilleAt(i), z = depth * v.GrevilleAt(j);
                net[i, j] = new Point3(x, WigleyHull.HalfBreadth(Length, beam, depth, x, z) + moved(x, z), z);
            }
        }

        var dials = WigleyHull.Of(Length, beam, depth).Dials with { Draft = 0.12 };
        return new HullSurface(new BSplineSurface(u, v, net), dials, 0.5, 1.0 / 3);
    }
}
