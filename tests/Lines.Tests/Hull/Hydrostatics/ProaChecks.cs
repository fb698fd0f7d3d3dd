using Lines.Hull.Hydrostatics;
using Lines.Kernel.Geometry;
using Lines.Plans.Figures;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Hydrostatics;

/// <summary>A boat with one float to starboard, both hulls boxes of one length so that sections tell all: 200 kg on an open main hull 5 x 0.4 x 0.5 m and a
/// closed float 5 x 0.1 x 0.1 m at 1.2 m, 0.08 m up. Closed forms by hand, areas by clipped rectangles.</summary>
public class ProaChecks
{
    private const double Length = 5, Density = 1000, Mass = 200, Breadth = 0.4, Depth = 0.5, Slim = 0.1, Spacing = 1.2, Up = 0.08, High = 0.4;

    private static readonly Craft s_proa = new([SampleBodies.Box(Length, Breadth, Depth), SampleBodies.Box(Length, Slim, Slim, open: false, new Vector3(0, Spacing, Up))]);

    [Fact]
    public void With_her_weight_toward_the_float_she_rests_where_both_hulls_carry_it()
    {
        var weight = At(0.1);
        var found = CaseAfloat.Of(s_proa, weight, Density);
        Assert.Equal(FloatState.Floats, found.State);
        var water = found.Afloat!.Water;
        Assert.InRange(water.Heel, 1e-3, 0.1);
        var main = ClippedRectangle.Below(Breadth, Depth, water);
        var own = ClippedRectangle.Below(Slim, Slim, water with { Level = water.Level - water.Up.Dot(new Vector3(0, Spacing, Up)) });
        Assert.Equal(Mass, Density * Length * (main.Area + own.Area), 1e-6);
        Assert.Equal(Density * Length * own.Area, found.Hulls[1].Displacement, 1e-6);
        double Across(double y, double z) => water.Across.Dot(new Vector3(0, y, z));
        Assert.Equal(
            Across(0.1, High), ((main.Area * Across(main.Y, main.Z)) + (own.Area * Across(own.Y + Spacing, own.Z + Up))) / (main.Area + own.Area), 1e-7);
    }

    // Clear of the water, the float leaves 200 kg to a box of 0.1 m draft: tan = (0.1 - 0.08) / 1.15 at its inner corner. From there the wall-sided formula
    // holds until the bilge comes out at tan = 0.5: GZ = 0.08 cos + sin (0.05 + BM (1 + tan² / 2) - 0.4), BM = 0.4² / 12 / 0.1.
    [Fact]
    public void Heeled_away_from_the_float_it_lifts_clear_and_the_arm_ends_where_the_box_alone_says()
    {
        var arms = new RightingArms(s_proa, At(0.08), Density, toPort: true);
        Assert.Equal(Math.Atan(0.02 / 1.15), Assert.Single(arms.Floats()).LiftsClear!.Value, 1e-5);
        double Alone(double heel) => (0.08 * Math.Cos(heel)) + (Math.Sin(heel) * (0.05 + (0.4 / 3 * (1 + (Math.Pow(Math.Tan(heel), 2) / 2))) - High));
        foreach (var heel in (double[])[0.05, 0.1, 0.3])
            Assert.Equal(Alone(heel), arms.At(heel)!.Arm, 1e-7);
        Assert.InRange(Math.Tan(arms.Vanishing!.Value), 0.35, 0.45);
        Assert.Equal(0, Alone(arms.Vanishing!.Value), 1e-6);
    }

    // Weight 10 mm toward the float: she falls away from it till it all but lifts clear at tan = 0.02 / 1.15, and past that the box alone, as above, turns her back
    // to sin = 0.01 / 0.217 only. All of it lies between upright and the first angle of the curve, 5 degrees.
    [Fact]
    public void A_range_narrower_than_the_steps_of_the_curve_is_found_and_so_is_what_it_holds()
    {
        var arms = new RightingArms(s_proa, At(0.01), Density, toPort: true);
        double Alone(double heel) => (0.01 * Math.Cos(heel)) + (Math.Sin(heel) * (0.05 + (0.4 / 3 * (1 + (Math.Pow(Math.Tan(heel), 2) / 2))) - High));
        Assert.True(arms.Rests);
        Assert.InRange(arms.From!.Value, 0.01, Math.Atan(0.02 / 1.15));
        Assert.Equal(0, Alone(arms.Vanishing!.Value), 1e-6);
        Assert.InRange(arms.Vanishing.Value, 0.04, 0.05);
        var peak = Alone(Math.Atan(0.02 / 1.15));
        Assert.NotNull(arms.Steady(_ => 0.98 * peak));
        Assert.Null(arms.Steady(_ => 1.02 * peak));
    }

    [Fact]
    public void With_her_weight_outside_the_main_hull_she_capsizes_away_from_the_float_and_the_lever_is_told()
    {
        var found = CaseAfloat.Of(s_proa, At(-0.03), Density);
        Assert.Equal(FloatState.Capsizes, found.State);

        // Level, the hulls are 2.5 d - 0.04 = 0.2 m³ deep: 0.016 m of float, 8 kg at 1.2 m, put the buoyancy 48 mm to starboard, 78 mm from the weight.
        Assert.Contains("held upright, the weight stands 78 mm to port of the buoyancy", LoadCaseFigures.StateOf(found), StringComparison.Ordinal);
        var arms = new RightingArms(s_proa, At(-0.03), Density, toPort: true);
        Assert.Null(arms.From);
        Assert.Equal(0, arms.Range);
    }

    // Weight a little to starboard of a main hull that is tender, with a float to port: she goes over to starboard where nothing carries her, though heeled far to port she would rest on the float.
    [Fact]
    public void She_falls_to_the_side_of_her_weight_and_a_rest_on_the_other_is_none()
    {
        var craft = new Craft([s_proa.Bodies[0], SampleBodies.Box(Length, 0.3, 0.3, open: false, new Vector3(0, -Spacing, 0.30))]);
        Assert.Equal(FloatState.Capsizes, CaseAfloat.Of(craft, At(0.004), Density).State);
        var port = CaseAfloat.Of(craft, At(-0.004), Density);
        Assert.Equal(FloatState.Floats, port.State);
        Assert.InRange(port.Afloat!.Water.Heel, -0.3, -0.1);
        Assert.Equal(port.Afloat.Water.Heel, Equilibrium.Free(craft, At(0.004), Density, port.Afloat.Water)!.Water.Heel, 0.02);
    }

    // The float whole under water lifts 50 kg at 1.2 m: 0.3 m of the whole weight.
    [Theory]
    [InlineData(0.25, FloatState.Floats)]
    [InlineData(0.35, FloatState.Capsizes)]
    public void With_more_weight_outboard_than_the_float_lifts_she_capsizes_over_it(double y, FloatState state) =>
        Assert.Equal(state, CaseAfloat.Of(s_proa, At(y), Density).State);

    // Sides of 0.09 m: upright they would be under water, and she heels 0.0510 rad toward the float. With the water d + t y high on the section, the weight
    // wants 0.5 d + 0.12 t = 0.048, the moments about 0.2 m nearly 0.12 d + 0.1493 t = 0.0177: t = 0.051, d = 0.084, 0.2 t + d = 0.094.
    [Fact]
    public void A_heel_that_puts_the_sheer_under_floods_her_with_the_side_and_the_depth_told()
    {
        var low = new Craft([SampleBodies.Box(Length, Breadth, 0.09), s_proa.Bodies[1]]);
        var found = CaseAfloat.Of(low, new Weight(Mass, new Point3(Length / 2, 0.2, 0.1)), Density);
        Assert.Equal(FloatState.Floods, found.State);
        Assert.Equal(0.051, found.Afloat!.Water.Heel, 1e-3);
        Assert.Contains("the sheer is 4 mm under water at", LoadCaseFigures.StateOf(found), StringComparison.Ordinal);
        Assert.EndsWith("starboard", LoadCaseFigures.StateOf(found), StringComparison.Ordinal);
    }

    // Her weight so far aft that no trim under 45 degrees carries it: a box's buoyancy reaches its end at most.
    [Fact]
    public void A_weight_beyond_the_stern_finds_no_equilibrium_and_is_told_where_it_is()
    {
        var found = CaseAfloat.Of(s_proa, new Weight(Mass, new Point3(Length + 0.5, 0, High)), Density);
        Assert.Equal(FloatState.NotFound, found.State);
        Assert.Null(found.Afloat);
        Assert.Contains("200.0 kg at 5.50 m, 0.40 m up", LoadCaseFigures.StateOf(found), StringComparison.Ordinal);
    }

    private static Weight At(double y) => new(Mass, new Point3(Length / 2, y, High));
}
