using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Hydrostatics;

/// <summary>Bodies below a plane at any trim and heel against closed forms.</summary>
public class FloatingBodyReferenceChecks
{
    private const double Tolerance = 1e-9;

    private static double Radians(double degrees) => degrees * Math.PI / 180;

    /// <summary>Level, then trim, then heel, up to upside down.</summary>
    public static TheoryData<double, double, double> Planes
    {
        get
        {
            var planes = new TheoryData<double, double, double>();
            double[] heels = [0, 0.1, 17, 45, 89, 90, 130, 180, -60];
            foreach (var heel in heels)
            {
                planes.Add(0.05, 0, heel);
                planes.Add(-0.03, 4, heel);
                planes.Add(0, -11, heel);
            }

            return planes;
        }
    }

    [Theory]
    [MemberData(nameof(Planes))]
    public void An_ellipsoid_is_a_stretched_sphere(double level, double trim, double heel)
    {
        // The spline meets the ellipsoid to 4e-8 of an axis, so the figures can be no nearer than about 1e-7.
        var water = new WaterPlane(level, Radians(trim), Radians(heel));
        var found = SampleBodies.Ellipsoid(2.6, 0.37, 0.2).Below(water, Tolerance);
        var (volume, moment, area) = SampleBodies.Cap(2.6, 0.37, 0.2, water);
        Assert.Equal(1, found.Volume / volume, 1e-7);
        Assert.Equal(1, found.Area / area, 1e-7);
        Assert.True((found.Moment - moment).Length < 1e-7 * volume, $"{found.Moment} {moment}");
    }

    [Theory]
    [MemberData(nameof(Planes))]
    public void The_part_above_and_the_part_below_make_the_whole(double level, double trim, double heel)
    {
        var body = SampleBodies.Ellipsoid(2.6, 0.37, 0.2, new Vector3(0.3, 1.1, -0.02));
        var water = new WaterPlane(level, Radians(trim), Radians(heel));
        var turned = new WaterPlane(-level, -Radians(trim), Radians(heel) + Math.PI);
        Assert.Equal(body.Below(new WaterPlane(9, 0, 0), Tolerance).Volume, body.Below(water, Tolerance).Volume + body.Below(turned, Tolerance).Volume, 1e-9);
    }

    [Fact]
    public void Wigleys_hull_is_met_exactly()
    {
        double l = 5.2, b = 0.74, t = 0.115;
        var found = FloatingBody.Of(new PlacedHull("hull", WigleyHull.Bicubic(l, b, t, 4), default)).Below(WaterPlane.LevelAt(t), Tolerance);
        Near(4 / 9.0 * l * b * t, found.Volume);
        Near(2 / 3.0 * l * b, found.Area);
        Near(4 * l * b * b * b / 105, found.TransverseMoment);
        Near(b * l * l * l / 30, found.LongitudinalMoment);
        Near(0.625 * t, found.Center!.Value.Z);
        Near(l / 2, found.Center!.Value.X);
        Near(l / 2, found.Flotation!.Value.X);
    }

    /// <summary>The area of a rectangle below a line, by clipping its corners, times the length.</summary>
    [Theory]
    [InlineData(0.2, 10)]
    [InlineData(0.2, 35)] // past the deck edge
    [InlineData(0.31, 62)]
    [InlineData(0.05, 90)]
    [InlineData(-0.1, 155)]
    public void A_box_past_its_deck_edge_is_the_clipped_rectangle(double level, double heel)
    {
        double l = 4, b = 1.2, d = 0.4;
        var water = new WaterPlane(level, 0, Radians(heel));
        foreach (var open in (bool[])[true, false])
        {
            var found = SampleBodies.Box(l, b, d, open).Below(water, Tolerance);
            var (area, y, z, width) = ClippedRectangle.Below(b, d, water);
            Near(l * area, found.Volume);
            Near(y, found.Center!.Value.Y);
            Near(z, found.Center!.Value.Z);
            Near(l * width, found.Area);
            Near(l / 2, found.Center!.Value.X);
            Near(l * width * width * width / 12, found.TransverseMoment);
            Near(width * l * l * l / 12, found.LongitudinalMoment);
        }
    }

    /// <summary>Box, trimmed and dry: the volume is the prism under a tilted plane.</summary>
    [Fact]
    public void A_trimmed_box_is_a_truncated_prism()
    {
        double l = 4, b = 1.2, trim = Radians(2);
        var found = SampleBodies.Box(l, b, 0.4).Below(new WaterPlane(0.2 * Math.Cos(trim), trim, 0), Tolerance);
        double fore = 0.2, aft = 0.2 + (l * Math.Tan(trim));
        Near(b * l * (fore + aft) / 2, found.Volume);
        Near(b * l / Math.Cos(trim), found.Area);
        Near(l * (fore + (2 * aft)) / (3 * (fore + aft)), found.Center!.Value.X);
    }

    /// <summary>KM of a cylinder is its radius at any draft and heel; KB and BM at three drafts by circular segments.</summary>
    [Theory]
    [InlineData(1, 1, 1.570796, 0.575587, 0.424413)]
    [InlineData(1, 0.5, 0.614185, 0.294980, 0.705020)]
    [InlineData(0.3, 0.12, 0.0402566, double.NaN, 0.228932)]
    public void A_cylinder_has_its_metacenter_on_its_axis(double radius, double draft, double area, double keelToBuoyancy, double radiusOfStability)
    {
        var body = SampleBodies.Cylinder(3, radius);
        foreach (var heel in (double[])[0, 33, 90, 170])
        {
            var up = new WaterPlane(0, 0, Radians(heel));
            var water = up with { Level = (up.Up.Z * radius) + draft - radius };
            var found = body.Below(water, Tolerance);
            Assert.Equal(area, found.Volume / 3, 1e-6);
            Assert.Equal(radiusOfStability, found.TransverseMoment / found.Volume, 1e-6);
            var below = water.Up.Z * radius; // height of the axis along up, less that of the center of buoyancy, is BM
            Assert.Equal(found.TransverseMoment / found.Volume, below - water.Up.Dot((1 / found.Volume) * found.Moment), 1e-8);
            if (heel == 0 && double.IsFinite(keelToBuoyancy))
                Assert.Equal(keelToBuoyancy, found.Center!.Value.Z, 1e-6);
        }
    }

    /// <summary>Triangular prism, 1 m broad at its waterline: KB = 2T/3, BM = B²/(6T).</summary>
    [Fact]
    public void A_triangular_prism_has_its_closed_forms()
    {
        var found = SampleBodies.Prism(2, 1.2, 0.3).Below(WaterPlane.LevelAt(0.25), Tolerance);
        Assert.Equal(0.25 * 2 / 3, found.Center!.Value.Z, 1e-12);
        Assert.Equal(1 / (6 * 0.25), found.TransverseMoment / found.Volume, 1e-12);
    }

    /// <summary>Two boxes: I = 2 (L b³ / 12 + L b (w/2)²).</summary>
    [Fact]
    public void Two_boxes_add_up_about_the_common_axis()
    {
        var water = WaterPlane.LevelAt(0.15);
        var found = SampleBodies.Box(5, 0.3, 0.4, offset: new Vector3(0, 1, 0)).Below(water, Tolerance) + SampleBodies.Box(5, 0.3, 0.4, offset: new Vector3(0, -1, 0)).Below(water, Tolerance);
        Near(3.0225, found.TransverseMoment);
        Assert.Equal(6.716667, found.TransverseMoment / found.Volume, 1e-6);
        Near(0.075, found.Center!.Value.Z);
    }

    private static void Near(double expected, double? actual) => Assert.Equal(expected, actual!.Value, Tolerance * Math.Max(1, Math.Abs(expected)));
}
