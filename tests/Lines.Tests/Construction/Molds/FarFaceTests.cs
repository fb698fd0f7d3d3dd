using Lines.Construction;
using Lines.Construction.Molds;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Construction.Molds;

/// <summary>How far a far face stands proud, against sections known in closed form.</summary>
public class FarFaceTests
{
    private const double Quarter = Math.PI / 2;
    private const double Stock = 0.012;

    [Theory]
    [InlineData(3)]
    [InlineData(25)]
    public void On_a_cone_it_is_the_stock_times_the_slope_where_the_cone_narrows_and_nothing_where_it_widens(double degrees)
    {
        // Closed form: the inside of a cone's skin is a cone of the same slope, its sections circles about one center.
        var slope = Math.Tan(degrees * Math.PI / 180);
        SurfaceJet Cone(double u, double v)
        {
            double b = v * Quarter, s = Math.Sin(b), c = Math.Cos(b);
            return new SurfaceJet(
                new Point3(u, slope * u * s, -slope * u * c), new Vector3(1, slope * s, -slope * c), Quarter * slope * u * new Vector3(0, c, s),
                default, Quarter * slope * new Vector3(0, c, s), -Quarter * Quarter * slope * u * new Vector3(0, s, -c));
        }

        InsetSection small = Cut(Cone, 0.006, 3, 3), large = Cut(Cone, 0.006, 3 + Stock, 3 + Stock);
        Assert.Equal(0, Proud(small, large));
        Assert.Equal(Stock * slope, Proud(large, small), FarFace.Tolerance);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    [InlineData(12)]
    public void Under_a_cylinder_askew_it_is_the_rise_of_the_axis_over_the_stock(double degrees)
    {
        // Closed form: sections of a round cylinder whose axis rises aft are equal ellipses, each higher by the rise: the keel of the
        // mold stands below that of the far section by so much, and no other place by more.
        double a = degrees * Math.PI / 180, sa = Math.Sin(a), ca = Math.Cos(a);
        SurfaceJet Cylinder(double u, double v)
        {
            const double r = 0.5;
            double b = v * Quarter, s = Math.Sin(b), c = Math.Cos(b);
            Vector3 axis = new(ca, 0, sa), up = new(-sa, 0, ca), y = new(0, 1, 0), radial = (s * y) - (c * up), around = (c * y) + (s * up);
            return new SurfaceJet(default(Point3) + (u * axis) + (r * radial), axis, r * Quarter * around, default, default, -r * Quarter * Quarter * radial);
        }

        InsetSection low = Cut(Cylinder, 0.006, 1, 1 / ca), high = Cut(Cylinder, 0.006, 1 + Stock, (1 + Stock) / ca);
        Assert.Equal(Stock * Math.Tan(a), Proud(low, high), FarFace.Tolerance);
    }

    [Theory]
    [InlineData(0.4, 0.3)]
    [InlineData(0.25, 0.5)]
    public void On_an_ellipsoid_it_is_the_loss_of_the_longer_half_axis(double breadth, double depth)
    {
        // Closed form: sections at x are ellipses alike, f = √(1 - x²/a²) of the midship one. Of nested convex outlines the greatest distance
        // is the greatest difference of their support functions, (f - f') √((B cos)² + (C sin)²): at the longer half-axis.
        const double a = 2, near = 0.5, far = 0.6;
        SurfaceJet Ellipsoid(double u, double v)
        {
            double b = v * Quarter, s = Math.Sin(b), c = Math.Cos(b), su = Math.Sin(u), cu = Math.Cos(u);
            Vector3 x = new(a, 0, 0), radial = new(0, breadth * s, -depth * c), around = new(0, breadth * c, depth * s);
            return new SurfaceJet(
                new Point3(a * su, cu * radial.Y, cu * radial.Z), (cu * x) - (su * radial), Quarter * cu * around, (-su * x) - (cu * radial),
                -su * Quarter * around, -Quarter * Quarter * cu * radial);
        }

        InsetSection mold = Cut(Ellipsoid, 0, near, Math.Asin(near / a)), there = Cut(Ellipsoid, 0, far, Math.Asin(far / a));
        static double Part(double x) => Math.Sqrt(1 - (x * x / (a * a)));
        Assert.Equal((Part(near) - Part(far)) * Math.Max(breadth, depth), Proud(mold, there), FarFace.Tolerance);
        Assert.Equal(0, Proud(there, mold));
    }

    [Theory]
    [InlineData(-6)]
    [InlineData(7)]
    public void Of_a_shaped_hull_it_is_what_the_molds_at_the_far_faces_show(double flare)
    {
        // The outside of it: a second set of molds, shaped at the far faces of the first.
        var dials = FormDials.DoubleEnder;
        var hull = HullShape.Solve(dials with { Midship = dials.Midship with { Flare = flare * FormDials.Degree, Fullness = 0.74 } }).Surface!;
        var build = new BuildDials { Planking = 0.006, MoldSpacing = 0.6, MoldStock = Stock };
        var molds = Stations(MoldPlan.Of(hull, build));
        var far = Stations(MoldPlan.Of(hull, build with { MoldAt = [.. molds.Select(m => m.Face == MoldFace.Bow ? m.X + Stock : m.X - Stock)] }));
        Assert.Equal(molds.Count, far.Count);
        foreach (var (mold, there) in molds.Zip(far))
        {
            var outline = there.Outline;
            var proud = EdgeBelowSheer(mold).Max(p => outline.Contains(p) ? 0 : outline.DistanceTo(p));
            Assert.Equal(proud, mold.Proud!.Value, 3 * MoldShaping.FitTolerance);
            if (Math.Abs(mold.X - hull.WidestX) > 0.5)
                Assert.Equal(0, mold.Proud);
        }
    }

    private static List<Mold> Stations(MoldPlan plan) => [.. plan.Molds.Where(m => m.Kind == MoldKind.Station)];

    // The right edge of the outline between the sheer mark and the keel or the profile mold's slot, which is inside the planking anyway.
    private static IEnumerable<Point2> EdgeBelowSheer(Mold mold) =>
        mold.Outline.Flattened(1e-5).Where(p => p.X >= 0 && p.Y >= mold.Heights.Sheer && p.Y <= mold.Heights.Keel);

    private static double Proud(InsetSection mold, InsetSection far) => FarFace.Proud(mold, mold.Where(p => p.Point.Z - Sheer(mold)) ?? 0, mold.Length, far);

    // 50 mm were run up above v = 1.
    private static double Sheer(InsetSection section) => section.At(0.05).Point.Z;

    private static InsetSection Cut(Func<double, double, SurfaceJet> outside, double thickness, double x, double u)
    {
        Assert.True(InsetSection.TryCut(new InsetSkin(outside, thickness), Plane.AtX(x), u, 1, 0.05, p => p.Point.Y, out var section, out var reason), Invariant(reason));
        return section!;
    }
}
