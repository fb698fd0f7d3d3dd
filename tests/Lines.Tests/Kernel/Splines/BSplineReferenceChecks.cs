using System.Globalization;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Kernel.Splines;

/// <summary>B-spline evaluation against scipy.interpolate.BSpline: tests/data/reference/bspline-scipy.csv, made by bspline.py beside it.</summary>
public class BSplineReferenceChecks
{
    private static readonly SplineBasis U = SplineBasis.Clamped(3, [0, 0.1, 0.25, 0.4, 0.55, 0.8, 1]);
    private static readonly SplineBasis V = SplineBasis.Clamped(3, [0, 0.3, 0.35, 0.7, 1]);

    [Fact]
    public void A_surface_and_its_derivatives_agree_with_scipy_at_24_places()
    {
        var net = new Point3[9, 7];
        for (var i = 0; i < 9; i++)
        {
            for (var j = 0; j < 7; j++)
                net[i, j] = new Point3((i / 8.0 * 5) + (0.1 * Math.Sin(j)), 0.4 * Math.Sin(0.7 * i) * Math.Sqrt(j), (0.06 * j * j) + (0.02 * Math.Cos(i * j)));
        }

        var surface = new BSplineSurface(U, V, net);
        var rows = ReferenceData.Table("bspline-scipy.csv").Where(r => r.Length == 7).Skip(1).ToArray();
        Assert.Equal(144, rows.Length);
        foreach (var row in rows)
        {
            var n = Array.ConvertAll(row, c => double.Parse(c, CultureInfo.InvariantCulture));
            var jet = surface.JetAt(n[0], n[1]);
            var value = (n[2], n[3]) switch
            {
                (0, 0) => new Vector3(jet.Point.X, jet.Point.Y, jet.Point.Z),
                (1, 0) => jet.U,
                (0, 1) => jet.V,
                (2, 0) => jet.UU,
                (1, 1) => jet.UV,
                _ => jet.VV,
            };
            var expected = new Vector3(n[4], n[5], n[6]);
            Assert.InRange((value - expected).Length, 0, 1e-12 * (1 + expected.Length));
        }
    }

    [Fact]
    public void A_point_agrees_with_the_point_of_the_jet()
    {
        var net = new Point3[9, 7];
        for (var i = 0; i < 9; i++)
        {
            for (var j = 0; j < 7; j++)
                net[i, j] = new Point3(i, Math.Cos(i + j), j);
        }

        var surface = new BSplineSurface(U, V, net);
        for (var k = 0; k <= 100; k++)
        {
            double u = k / 100.0, v = k * 37 % 100 / 100.0;
            Assert.InRange(surface.PointAt(u, v).DistanceTo(surface.JetAt(u, v).Point), 0, 1e-14);
        }
    }
}
