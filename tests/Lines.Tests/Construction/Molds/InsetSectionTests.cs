using Lines.Construction.Molds;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;
using Xunit;

namespace Lines.Tests.Construction.Molds;

public class InsetSectionTests
{
    private const double Thickness = 0.006;

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.35)]
    [InlineData(-0.6)]
    public void A_sphere_is_inset_to_the_sphere_one_thickness_smaller(double x)
    {
        // Closed form: the inside of a spherical shell of radius 1 m is a sphere of 0.994 m, its section a circle of √(0.994² - x²).
        var section = Cut(Sphere, Plane.AtX(x), (0.5 + (Math.Asin(x) / 2.4), 1), p => p.Point.Y);
        var radius = Math.Sqrt(((1 - Thickness) * (1 - Thickness)) - (x * x));
        for (var k = 0; k <= 50; k++)
        {
            var p = section.At(section.Length * k / 50);
            Assert.Equal(x, p.Point.X, 1e-11);
            Assert.Equal(radius, Math.Sqrt((p.Point.Y * p.Point.Y) + (p.Point.Z * p.Point.Z)), 1e-11);
            // The tangent of a circle is square to its radius.
            Assert.Equal(0, (p.Down.Y * p.Point.Y) + (p.Down.Z * p.Point.Z), 1e-11);
            Assert.Equal(0, p.Down.X, 1e-12);
        }

        var keel = section.At(section.Length).Point;
        Assert.Equal(0, keel.Y, 1e-11);
        Assert.Equal(-radius, keel.Z, 1e-11);
        // The chords of the nodes sum to a quarter circle and the run-up, short of it by second order in 15 mm steps.
        Assert.Equal((radius * Math.PI / 2) + 0.05, section.Length, 1e-4);
    }

    [Theory]
    [InlineData(10)]
    [InlineData(25)]
    [InlineData(40)]
    public void A_cone_is_inset_by_the_thickness_over_the_cosine_of_its_half_angle(double degrees)
    {
        // Closed form: square to a cone that runs in at the angle a, the section shrinks by t / cos a, more than t by t (1 / cos a - 1).
        var a = degrees * Math.PI / 180;
        var slope = Math.Tan(a);
        SurfaceJet Cone(double u, double v)
        {
            double b = v * Math.PI / 2, s = Math.Sin(b), c = Math.Cos(b), q = Math.PI / 2;
            return new SurfaceJet(
                new Point3(u, slope * u * s, -slope * u * c), new Vector3(1, slope * s, -slope * c), q * slope * u * new Vector3(0, c, s),
                default, q * slope * new Vector3(0, c, s), -q * q * slope * u * new Vector3(0, s, -c));
        }

        var section = Cut(Cone, Plane.AtX(1), (1, 1), p => p.Point.Y);
        var expected = slope - (Thickness / Math.Cos(a));
        for (var k = 0; k <= 20; k++)
        {
            var p = section.At(section.Length * k / 20).Point;
            Assert.Equal(expected, Math.Sqrt((p.Y * p.Y) + (p.Z * p.Z)), 1e-11);
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_parallel_body_is_cut_in_a_plane_along_it_level_from_its_start_the_way_that_is_asked(bool forward)
    {
        // Closed form: the inside of a round cylinder of radius 0.3 m along x is one of 0.294 m; a plane along the axis cuts it in a level line.
        const double radius = 0.3, half = 0.0095;
        SurfaceJet Cylinder(double u, double v)
        {
            double q = Math.PI / 2, b = v * q, s = Math.Sin(b), c = Math.Cos(b);
            Vector3 radial = new(0, s, -c), around = new(0, c, s);
            return new SurfaceJet(new Point3(u, radius * s, -radius * c), new Vector3(1, 0, 0), q * radius * around, default, default, -q * q * radius * radial);
        }

        var way = forward ? -1 : 1;
        var section = Cut(Cylinder, Plane.AtY(half), (0.5, Math.Asin(half / (radius - Thickness)) * 2 / Math.PI), p => 0.2 - (way * (p.Point.X - 0.5)));
        Assert.Equal(0.25, section.Length, 1e-9);
        for (var k = 0; k <= 20; k++)
        {
            var p = section.At(section.Length * k / 20);
            Assert.Equal(0.5 + (way * ((section.Length * k / 20) - 0.05)), p.Point.X, 1e-9);
            Assert.Equal(-Math.Sqrt(((radius - Thickness) * (radius - Thickness)) - (half * half)), p.Point.Z, 1e-11);
            Assert.Equal(way, p.Down.X, 1e-12);
        }
    }

    [Fact]
    public void A_parallel_body_is_cut_across_to_its_own_outline_one_thickness_smaller()
    {
        // Closed form, as above; every section is the same circle.
        SurfaceJet Cylinder(double u, double v)
        {
            double q = Math.PI / 2, b = v * q, s = Math.Sin(b), c = Math.Cos(b);
            return new SurfaceJet(new Point3(u, 0.3 * s, -0.3 * c), new Vector3(1, 0, 0), q * 0.3 * new Vector3(0, c, s), default, default, -q * q * 0.3 * new Vector3(0, s, -c));
        }

        foreach (var x in new[] { 0, 0.3, 1 })
        {
            var section = Cut(Cylinder, Plane.AtX(x), (x, 1), p => p.Point.Y);
            for (var k = 0; k <= 20; k++)
            {
                var p = section.At(section.Length * k / 20);
                Assert.Equal(0.294, Math.Sqrt((p.Point.Y * p.Point.Y) + (p.Point.Z * p.Point.Z)), 1e-11);
                Assert.Equal(x, p.Point.X, 1e-12);
                Assert.Equal(0, p.Normal.X, 1e-12);
            }
        }
    }

    [Theory]
    [InlineData(12, 0.0289)]
    [InlineData(6, 0.0574)]
    public void At_a_sharp_stem_the_insides_meet_the_thickness_over_the_sine_of_the_half_angle_aft(double degrees, double published)
    {
        // Trigonometry: 6 mm planking meets 28.9 mm aft of the face at 12 degrees and 57.4 mm at 6.
        var a = degrees * Math.PI / 180;
        SurfaceJet Wedge(double u, double v) => new(
            new Point3(u, u * Math.Tan(a), v), new Vector3(1, Math.Tan(a), 0), new Vector3(0, 0, 1), default, default, default);
        Assert.Equal(published, Thickness / Math.Sin(a), 5e-5);
        foreach (var half in new[] { 0, 0.0095 })
        {
            var expected = (Thickness / Math.Sin(a)) + (half / Math.Tan(a));
            var section = Cut(Wedge, Plane.AtY(half), (expected, 1), p => p.Point.Z);
            Assert.Equal(expected, section.At(0).Point.X, 1e-11);
            Assert.Equal(expected, section.At(section.Length / 2).Point.X, 1e-11);
            Assert.Equal(1.05, section.Length, 1e-9);
        }
    }

    [Fact]
    public void A_turn_tighter_than_the_planking_is_thick_is_refused_with_its_place()
    {
        // A round gunwale of 4 mm radius cannot be planked 6 mm thick from outside.
        SurfaceJet Pipe(double u, double v)
        {
            double b = v * Math.PI / 2, s = Math.Sin(b), c = Math.Cos(b), r = 0.004, q = Math.PI / 2;
            return new SurfaceJet(
                new Point3(u, r * s, -r * c), new Vector3(1, 0, 0), r * q * new Vector3(0, c, s), default, default, -r * q * q * new Vector3(0, s, -c));
        }

        var skin = new InsetSkin(Pipe, Thickness);
        Assert.False(InsetSection.TryCut(skin, Plane.AtX(0.5), 0.5, 1, 0.01, p => p.Point.Y + 1, out _, out var reason));
        Assert.Contains("too thick", Invariant(reason), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.002)]
    [InlineData(0.0055)]
    [InlineData(0.010)]
    public void Round_a_bilge_tighter_than_the_planking_the_insides_of_side_and_bottom_meet_in_a_corner(double radius)
    {
        // A plumb side at y = 100 mm and a level bottom joined by a round: insets of straight lines are straight lines one thickness in,
        // so a round of less than 6 mm leaves the corner (94, 6) mm; one of 10 mm leaves a round of 4 mm.
        SurfaceJet Box(double u, double v)
        {
            double side = 0.2 - radius, bend = radius * Math.PI / 2, total = side + bend + 0.1, w = (1 - v) * total;
            Vector3 x = new(1, 0, 0);
            if (w <= side)
                return new SurfaceJet(new Point3(u, 0.1, 0.2 - w), x, new Vector3(0, 0, total), default, default, default);
            if (w >= side + bend)
                return new SurfaceJet(new Point3(u, 0.1 - radius - (w - side - bend), 0), x, new Vector3(0, total, 0), default, default, default);
            var a = (w - side) / radius;
            Vector3 radial = new(0, Math.Cos(a), -Math.Sin(a)), around = new(0, Math.Sin(a), Math.Cos(a));
            return new SurfaceJet(
                new Point3(u, 0.1 - radius + (radius * radial.Y), radius + (radius * radial.Z)), x, total * around, default, default, -(total * total / radius) * radial);
        }

        var section = Cut(Box, Plane.AtX(0.5), (0.5, 1), p => p.Point.Y - 0.05);
        if (radius > Thickness)
        {
            Assert.Empty(section.Corners);
        }
        else
        {
            var corner = section.At(Assert.Single(section.Corners)).Point;
            Assert.Equal(0.094, corner.Y, 1e-10);
            Assert.Equal(0.006, corner.Z, 1e-10);
        }

        for (var k = 0; k <= 200; k++)
        {
            var p = section.At(section.Length * k / 200).Point;
            var inset = radius > Thickness && p.Y > 0.1 - radius && p.Z < radius
                ? Math.Abs(radius - Math.Sqrt(Math.Pow(p.Y - 0.1 + radius, 2) + Math.Pow(p.Z - radius, 2)))
                : Math.Min(0.1 - p.Y, p.Z);
            Assert.Equal(Thickness, inset, 1e-10);
        }
    }

    [Theory]
    [InlineData(-0.001)]
    [InlineData(double.NaN)]
    public void Planking_needs_a_thickness(double thickness) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new InsetSkin(Sphere, thickness));

    private static InsetSection Cut(Func<double, double, SurfaceJet> outside, Plane plane, (double U, double V) start, Func<InsetPoint, double> remaining)
    {
        Assert.True(InsetSection.TryCut(new InsetSkin(outside, Thickness), plane, start.U, start.V, 0.05, remaining, out var section, out var reason), Invariant(reason));
        return section!;
    }

    // Radius 1 m about the origin; u runs along the boat over 137 degrees, v from the keel to the widest.
    private static SurfaceJet Sphere(double u, double v)
    {
        double k = 2.4, q = Math.PI / 2, a = k * (u - 0.5), b = q * v;
        double sa = Math.Sin(a), ca = Math.Cos(a), sb = Math.Sin(b), cb = Math.Cos(b);
        Vector3 radial = new(0, sb, -cb), around = new(0, cb, sb);
        return new SurfaceJet(
            new Point3(sa, ca * sb, -ca * cb),
            k * (new Vector3(ca, 0, 0) - (sa * radial)),
            q * ca * around,
            -k * k * (new Vector3(sa, 0, 0) + (ca * radial)),
            -k * q * sa * around,
            -q * q * ca * radial);
    }
}
