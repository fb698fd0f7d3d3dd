using Lines.Hull.Fairness;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Fairness;

/// <summary>Closed forms of surfaces whose principal curvatures stand in any text on differential geometry (do Carmo 1976; from memory).</summary>
public class PrincipalCurvaturesTests
{
    // "Rounding only": some hundred roundings of a number with 53 bits.
    private const double Rounding = 1e-13;

    [Theory]
    [InlineData(0.2, 0.3)]
    [InlineData(1.1, -0.7)]
    [InlineData(2.9, 1.2)]
    public void A_sphere_bulges_by_one_over_its_radius_every_way(double u, double v)
    {
        var k = PrincipalCurvatures.Of(Ellipsoid(0.35, 0.35, 0.35, u, v));
        Near(1 / 0.35, k.Greater);
        Near(1 / 0.35, k.Lesser);
        Near(1 / (0.35 * 0.35), k.Gaussian);
        Near(1 / 0.35, k.NormalSectionAt(0.4));
    }

    [Theory]
    [InlineData(0.0, 0.1)]
    [InlineData(0.8, 2.0)]
    [InlineData(-1.3, 0.5)]
    public void A_cylinder_bulges_around_its_girth_alone(double angle, double lean)
    {
        // Radius 0.4 m; the second parameter runs along a helix, so the two are not square to each other.
        const double R = 0.4;
        var (sin, cos) = Math.SinCos(angle);
        var k = PrincipalCurvatures.Of(Outward(
            new SurfaceJet(new Point3(0, R * sin, -R * cos), new Vector3(2, R * lean * cos, R * lean * sin), new Vector3(0, R * cos, R * sin),
            new Vector3(0, -R * lean * lean * sin, R * lean * lean * cos), new Vector3(0, -R * lean * sin, R * lean * cos), new Vector3(0, -R * sin, R * cos)),
            new Vector3(0, sin, -cos)));
        Near(1 / R, k.Greater);
        Assert.Equal(0, k.Lesser, Rounding / R);
        Assert.Equal(0, k.Along.X, Rounding);
        Assert.Equal(1, Math.Abs((k.Along.Y * cos) + (k.Along.Z * sin)), Rounding);
    }

    [Theory]
    [InlineData(0.3, 0.2)]
    [InlineData(1.9, -0.9)]
    [InlineData(4.0, 1.3)]
    public void An_ellipsoid_has_the_gaussian_and_mean_curvature_of_its_axes(double u, double v)
    {
        const double A = 2.6, B = 0.37, C = 0.5;
        var jet = Ellipsoid(A, B, C, u, v);
        var k = PrincipalCurvatures.Of(jet);

        // K = 1 / (abc s)², H = (a² + b² + c² - r²) / (2 (abc)² s³) with s² = x²/a⁴ + y²/b⁴ + z²/c⁴.
        var (p, abc) = (jet.Point, A * B * C);
        var s = Math.Sqrt(Math.Pow(p.X / (A * A), 2) + Math.Pow(p.Y / (B * B), 2) + Math.Pow(p.Z / (C * C), 2));
        var r = (p.X * p.X) + (p.Y * p.Y) + (p.Z * p.Z);
        Near(((A * A) + (B * B) + (C * C) - r) / (2 * abc * abc * s * s * s), k.Mean);
        Near(1 / Math.Pow(abc * s * s, 2), k.Gaussian, 10 * Rounding * k.Greater / k.Lesser);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(1.0)]
    [InlineData(2.0)]
    [InlineData(3.1)]
    public void A_torus_is_an_egg_outside_and_a_saddle_inside(double v)
    {
        // Tube of radius 0.3 around a circle of radius 1; κ = 1/r around the tube, cos v / (R + r cos v) along it.
        const double R = 1, Tube = 0.3, U = 0.6;
        var (su, cu) = Math.SinCos(U);
        var (sv, cv) = Math.SinCos(v);
        var reach = R + (Tube * cv);
        var k = PrincipalCurvatures.Of(Outward(
            new SurfaceJet(new Point3(reach * cu, reach * su, Tube * sv), new Vector3(-reach * su, reach * cu, 0), new Vector3(-Tube * sv * cu, -Tube * sv * su, Tube * cv),
            new Vector3(-reach * cu, -reach * su, 0), new Vector3(Tube * sv * su, -Tube * sv * cu, 0), new Vector3(-Tube * cv * cu, -Tube * cv * su, -Tube * sv)),
            new Vector3(cv * cu, cv * su, sv)));
        Near(1 / Tube, k.Greater);
        Assert.Equal(cv / reach, k.Lesser, Rounding / Tube);
    }

    [Fact]
    public void A_saddle_held_exactly_by_a_spline_has_the_curvatures_of_its_formula()
    {
        // y = 1 + x z on a bilinear patch, y outward: K = -1 / (1 + x² + z²)², H = x z / (1 + x² + z²)^1.5 with that sign of y.
        var basis = SplineBasis.Clamped(1, [0, 1]);
        var net = new Point3[2, 2];
        for (var i = 0; i < 2; i++)
        {
            for (var j = 0; j < 2; j++)
                net[i, j] = new Point3(i, 1 + (i * j), j);
        }

        var patch = new BSplineSurface(basis, basis, net);
        foreach (var (x, z) in new[] { (0.0, 0.0), (0.3, 0.8), (1.0, 0.25) })
        {
            var k = PrincipalCurvatures.Of(patch.JetAt(x, z));
            var w = 1 + (x * x) + (z * z);
            Assert.Equal(-1 / (w * w), k.Gaussian, Rounding);
            Assert.Equal(x * z / Math.Pow(w, 1.5), k.Mean, Rounding);
        }
    }

    [Fact]
    public void Wigleys_hull_bulges_as_the_graph_of_its_formula()
    {
        const double L = 5.2, B = 0.74, T = 0.3;
        var hull = WigleyHull.Bicubic(L, B, T, 4);
        foreach (var (u, v) in new[] { (0.5, 1.0), (0.2, 0.4), (0.77, 0.9) })
        {
            // y(x, z) by the formula, with its first and second derivatives; a graph y bulges where its second derivatives are negative.
            double s = (2 * u) - 1, w = v - 1;
            double yx = -2 * B / L * s * (1 - (w * w)), yz = -B / T * (1 - (s * s)) * w;
            double yxx = -4 * B / (L * L) * (1 - (w * w)), yzz = -B / (T * T) * (1 - (s * s)), yxz = 4 * B / (L * T) * s * w;
            var g = 1 + (yx * yx) + (yz * yz);
            var k = PrincipalCurvatures.Of(hull.Side.JetAt(u, v));
            Assert.Equal(((yxx * yzz) - (yxz * yxz)) / (g * g), k.Gaussian, 1e-11);
            Assert.Equal(-(((1 + (yz * yz)) * yxx) - (2 * yx * yz * yxz) + ((1 + (yx * yx)) * yzz)) / (2 * Math.Pow(g, 1.5)), k.Mean, 1e-11);
        }
    }

    [Fact]
    public void Sections_square_to_the_skin_follow_Eulers_formula()
    {
        // The curvature of a curve on the skin, taken to the inward normal, is II / I of its direction, whatever the parameters.
        var side = SampleHulls.DoubleEnder().Side;
        foreach (var (u, v) in new[] { (0.1, 0.3), (0.45, 0.8), (0.9, 0.5) })
        {
            var jet = side.JetAt(u, v);
            var k = PrincipalCurvatures.Of(jet);
            var inward = jet.U.Cross(jet.V).Unit();
            Assert.True(k.Greater >= k.Lesser);
            for (var turn = 0.0; turn < Math.PI; turn += 0.3)
            {
                double a = Math.Cos(turn), b = Math.Sin(turn);
                var direction = (a * jet.U) + (b * jet.V);
                var bend = ((a * a * jet.UU) + (2 * a * b * jet.UV) + (b * b * jet.VV)).Dot(inward) / direction.Dot(direction);
                var angle = Math.Acos(Math.Clamp(direction.Unit().Dot(k.Along), -1, 1));
                Assert.Equal(bend, k.NormalSectionAt(angle), 1e-10);
                Assert.InRange(bend, k.Lesser - 1e-12, k.Greater + 1e-12);
            }
        }
    }

    [Fact]
    public void Size_scales_as_one_over_the_boat()
    {
        var jet = SampleHulls.TransomBoat().Side.JetAt(0.6, 0.4);
        var large = new SurfaceJet(jet.Point, 3 * jet.U, 3 * jet.V, 3 * jet.UU, 3 * jet.UV, 3 * jet.VV);
        Near(PrincipalCurvatures.Of(jet).Greater / 3, PrincipalCurvatures.Of(large).Greater);
        Near(PrincipalCurvatures.Of(jet).Lesser / 3, PrincipalCurvatures.Of(large).Lesser, 1e-12);
    }

    // Axes a along x, b along y, c along z; v is the latitude, u runs around.
    private static SurfaceJet Ellipsoid(double a, double b, double c, double u, double v)
    {
        var (su, cu) = Math.SinCos(u);
        var (sv, cv) = Math.SinCos(v);
        var jet = new SurfaceJet(
            new Point3(a * cu * cv, b * su * cv, c * sv),
            new Vector3(-a * su * cv, b * cu * cv, 0),
            new Vector3(-a * cu * sv, -b * su * sv, c * cv),
            new Vector3(-a * cu * cv, -b * su * cv, 0),
            new Vector3(a * su * sv, -b * cu * sv, 0),
            new Vector3(-a * cu * cv, -b * su * cv, -c * sv));
        return Outward(jet, new Vector3(cu * cv / a, su * cv / b, sv / c));
    }

    // With its parameters in the order in which the skin's are: the outward normal is V × U.
    private static SurfaceJet Outward(SurfaceJet s, Vector3 outward) =>
        s.V.Cross(s.U).Dot(outward) > 0 ? s : new SurfaceJet(s.Point, s.V, s.U, s.VV, s.UV, s.UU);

    private static void Near(double expected, double actual, double relative = Rounding) => Assert.Equal(expected, actual, relative * Math.Abs(expected));
}
