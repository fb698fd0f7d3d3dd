using Lines.Construction.Molds;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;
using Xunit;

namespace Lines.Tests.Construction.Molds;

/// <summary>Bevels, and what flat shrinking would get wrong, against bodies of closed form: of revolution about the x axis, and a wedge.</summary>
public class EdgeBevelReferenceChecks
{
    private const double Thickness = 0.006;
    private const double Quarter = Math.PI / 2;

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(25)]
    public void Of_a_cone_the_bevel_is_its_half_angle_and_flat_shrinking_wrong_by_the_thickness_over_its_cosine(double degrees)
    {
        // Closed form: square to a cone of half-angle a the inside lies t / cos a in, across. At 0 it is a cylinder, and nothing is wrong.
        var a = degrees * Math.PI / 180;
        var bevels = Across((x, r) => (x, 0.4 + (x * Math.Tan(a))), x => (1, Math.Tan(a)), _ => (0, 0), 0.3, u: 0.3);
        foreach (var bevel in bevels.Places.Append(bevels.Flattest))
        {
            Assert.Equal(a, Math.Abs(bevel.Angle), 1e-10);
            Assert.Equal(Thickness * ((1 / Math.Cos(a)) - 1), bevel.FlatError!.Value, 1e-9);
        }
    }

    [Theory]
    [InlineData(1, 1, 0.5)]
    [InlineData(2, 0.4, 0.3)]
    [InlineData(2, 0.4, 1.1)]
    [InlineData(0.5, 0.8, -0.9)]
    public void Of_an_ellipsoid_of_revolution_it_is_that_of_the_normal_at_the_skin_and_flat_shrinking_wrong_by_the_circles_radii(double a, double b, double angle)
    {
        // Closed form: n is along (sin θ / a, cos θ / b) at (a sin θ, b cos θ); the inside lies t n in. A sphere where a = b: sin β = x / (R - t).
        double s = Math.Sin(angle), c = Math.Cos(angle), scale = 1 / Math.Sqrt((s * s / (a * a)) + (c * c / (b * b))), nx = s / a * scale, nr = c / b * scale;
        double x = (a * s) - (Thickness * nx), radius = (b * c) - (Thickness * nr);
        var bevels = Across((u, _) => (a * Math.Sin(u), b * Math.Cos(u)), u => (a * Math.Cos(u), -b * Math.Sin(u)), u => (-a * Math.Sin(u), -b * Math.Cos(u)), x, angle);
        if (a == b)
            Assert.Equal(nx, x / (a - Thickness), 1e-12);
        foreach (var bevel in bevels.Places.Append(bevels.Flattest))
        {
            Assert.Equal(Math.Asin(nx), bevel.Angle, 1e-9);
            Assert.Equal(radius, Math.Sqrt((bevel.At.Y * bevel.At.Y) + (bevel.At.Z * bevel.At.Z)), 1e-10);
            Assert.Equal((b * Math.Sqrt(1 - (x * x / (a * a)))) - radius - Thickness, bevel.FlatError!.Value, 1e-9);
        }

        Assert.Equal(["SHEER", "BILGE", "KEEL"], bevels.Places.Select(p => p.Name));
        // The bilge is where the circle runs at 45 degrees, to the 128 places that are tried.
        Assert.Equal(1, -bevels.Places[1].At.Y / bevels.Places[1].At.Z, 0.03);
    }

    [Theory]
    [InlineData(6)]
    [InlineData(12)]
    [InlineData(40)]
    public void On_the_inner_stem_of_a_plumb_wedge_the_side_meets_the_planking_at_the_half_angle(double degrees)
    {
        // Trigonometry: in the plane of the stem's side the planking takes t / sin a.
        var a = degrees * Math.PI / 180;
        SurfaceJet Wedge(double u, double v) => new(new Point3(u, u * Math.Tan(a), v), new Vector3(1, Math.Tan(a), 0), new Vector3(0, 0, 1), default, default, default);
        const double half = 0.0095;
        Assert.True(InsetSection.TryCut(
            new InsetSkin(Wedge, Thickness), Plane.AtY(half), (Thickness / Math.Sin(a)) + (half / Math.Tan(a)), 1, 0.05, p => p.Point.Z, out var section, out var reason), Invariant(reason));
        var bevels = EdgeBevels.Along(section!, 0.05, section!.Length, [("SHEER", 0.05), ("FOOT", section.Length)]);
        foreach (var bevel in bevels.Places.Append(bevels.Flattest))
        {
            Assert.Equal(a, bevel.FromSide, 1e-10);
            Assert.Equal(Thickness * ((1 / Math.Sin(a)) - 1), bevel.FlatError!.Value, 1e-9);
        }
    }

    // The bevels of a section at x of a body of revolution, keel down, v from there to its side: (x, r) along u with first and second derivatives.
    private static EdgeBevels Across(Func<double, double, (double X, double R)> at, Func<double, (double X, double R)> first, Func<double, (double X, double R)> second, double x, double u)
    {
        SurfaceJet Body(double p, double v)
        {
            double b = Quarter * v, sin = Math.Sin(b), cos = Math.Cos(b);
            var (here, d, dd) = (at(p, v), first(p), second(p));
            Vector3 e = new(1, 0, 0), radial = new(0, sin, -cos), around = new(0, cos, sin);
            return new SurfaceJet(
                default(Point3) + (here.X * e) + (here.R * radial), (d.X * e) + (d.R * radial), Quarter * here.R * around,
                (dd.X * e) + (dd.R * radial), Quarter * d.R * around, -Quarter * Quarter * here.R * radial);
        }

        Assert.True(InsetSection.TryCut(new InsetSkin(Body, Thickness), Plane.AtX(x), u, 1, 0.02, p => p.Point.Y, out var section, out var reason), Invariant(reason));
        return EdgeBevels.Across(section!, 0.02, section!.Length);
    }
}
