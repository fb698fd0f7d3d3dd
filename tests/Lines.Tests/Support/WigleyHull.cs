using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Tests.Support;

/// <summary>Wigley's parabolic hull, y = B/2 (1 - (2x/L)²)(1 - (z/T)²), as a B-spline surface that represents it exactly.</summary>
/// <remarks>Here x runs aft from the fore end, 0 to L, and z up from the keel, 0 to T: the design waterline is the upper edge.</remarks>
internal static class WigleyHull
{
    /// <summary>The hull with its design waterline as sheer.</summary>
    public static HullSurface Of(double length, double beam, double draft)
    {
        // One biquadratic patch: Bezier ordinates of (1 - s²) on s = -1..1 are 0, 2, 0, of 1 - w² on w = -1..0 are 0, 1, 1.
        double[] across = [0, 2, 0], up = [0, 1, 1];
        var net = new Point3[3, 3];
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
                net[i, j] = new Point3(length * i / 2, beam / 2 * across[i] * up[j], draft * j / 2);
        }

        var basis = SplineBasis.Clamped(2, [0, 1]);
        return new HullSurface(new BSplineSurface(basis, basis, net), Dials(length, beam, draft), 0.5, 1);
    }

    /// <summary>The same hull as a bicubic surface of several polynomial pieces each way.</summary>
    public static HullSurface Bicubic(double length, double beam, double draft, int pieces)
    {
        var basis = SplineBasis.Clamped(3, [.. Enumerable.Range(0, pieces + 1).Select(i => i / (double)pieces)]);
        var net = new Point3[basis.Count, basis.Count];
        for (var i = 0; i < basis.Count; i++)
        {
            for (var j = 0; j < basis.Count; j++)
            {
                // 1 - s² = 4 u (1 - u) and 1 - w² = v (2 - v); poles are the blossoms of these at three knots.
                var (u, uu) = Blossoms(basis, i);
                var (v, vv) = Blossoms(basis, j);
                net[i, j] = new Point3(length * u, beam / 2 * 4 * (u - uu) * ((2 * v) - vv), draft * v);
            }
        }

        return new HullSurface(new BSplineSurface(basis, basis, net), Dials(length, beam, draft), 0.5, 1);
    }

    /// <summary>Nominal dials, for a hull whose surface alone is meant.</summary>
    public static HullDials Dials(double length, double beam, double draft) => new()
    {
        Length = length,
        Beam = beam,
        Depth = draft,
        Draft = draft,
        Bow = new BowDials(2.0 / 3, 0, draft, 0),
        Stern = new PointedStern(2.0 / 3, 0, draft, 0),
        Midship = new MidshipDials(Math.PI / 2, 2.0 / 3, 0),
    };

    /// <summary>Half-breadth by the formula; x from the fore end, z from the keel.</summary>
    public static double HalfBreadth(double length, double beam, double draft, double x, double z)
    {
        double s = ((2 * x) - length) / length, w = (z - draft) / draft;
        return beam / 2 * (1 - (s * s)) * (1 - (w * w));
    }

    // Blossoms of t and t² at the three knots a pole sees: the mean of the knots, and of their products two by two.
    private static (double First, double Second) Blossoms(SplineBasis basis, int index)
    {
        double a = basis.Knots[index + 1], b = basis.Knots[index + 2], c = basis.Knots[index + 3];
        return ((a + b + c) / 3, ((a * b) + (b * c) + (c * a)) / 3);
    }
}
