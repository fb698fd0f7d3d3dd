using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Resistance;
using Lines.Kernel.Units;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Resistance;

/// <summary>Michell's integral for Wigley's hull, L/B 10, L/T 16, against values on which three independent evaluations agree to 1e-7: the trapezoid
/// rule in t, adaptive quadrature in the angle (scipy), and parabolic arcs through 41 x 9 offsets. No published digit of it is known to us.</summary>
public class WaveResistanceReferenceChecks
{
    private static readonly HullSurface s_wigley = WigleyHull.Of(1, 0.1, 0.0625);

    [Theory]
    [InlineData(0.20, 0.264121959e-5)]
    [InlineData(0.25, 0.494691492e-5)]
    [InlineData(0.30, 1.433969816e-5)]
    [InlineData(0.316, 1.360568882e-5)]
    [InlineData(0.35, 1.137284476e-5)]
    [InlineData(0.40, 3.254262996e-5)]
    [InlineData(0.45, 6.258409962e-5)]
    [InlineData(0.50, 8.401553808e-5)]
    [InlineData(0.60, 10.494404113e-5)]
    [InlineData(0.80, 12.356962956e-5)]
    [InlineData(1.00, 13.661665223e-5)]
    public void The_wave_resistance_of_the_wigley_hull_is_that_of_three_evaluations(double froude, double overWeight) =>
        Relative(overWeight, Of([(s_wigley, 0, 0)], froude) / Standards.Gravity, 1e-4);

    // At high speeds the spectrum begins with next to nothing; beside much friction that was taken for its end, and the waves for none.
    [Theory]
    [InlineData(0.4)]
    [InlineData(2)]
    [InlineData(3)]
    public void Friction_beside_the_waves_takes_none_of_them_away(double froude)
    {
        var waves = new WaveResistance([new HullInWater(s_wigley.Side, s_wigley.Draft, 0, 0)]);
        var speed = froude * Math.Sqrt(Standards.Gravity);
        var alone = waves.Parts(speed, 1e-6).Together;
        Assert.Equal(alone, waves.Parts(speed, 1e-4, 20 * alone).Together, 0.004 * alone);
    }

    [Theory]
    [InlineData(0.25)]
    [InlineData(0.40)]
    [InlineData(0.80)]
    public void Two_hulls_in_one_place_make_four_times_the_resistance(double froude) =>
        Relative(4, Of([(s_wigley, 0, 0), (s_wigley, 0, 0)], froude) / Of([(s_wigley, 0, 0)], froude), 1e-10);

    // Values of the same kind, thickness effects only: R of both over twice R of one.
    [Theory]
    [InlineData(0.25, 0.3, 0.568254)]
    [InlineData(0.30, 0.3, 1.168549)]
    [InlineData(0.35, 0.3, 0.770047)]
    [InlineData(0.40, 0.3, 1.571613)]
    [InlineData(0.50, 0.3, 1.301812)]
    [InlineData(0.80, 0.3, 0.951651)]
    [InlineData(0.50, 3.0, 1.000175)]
    public void Two_hulls_abreast_hinder_or_help_each_other(double froude, double spacing, double part) =>
        Relative(part, Of([(s_wigley, 0, -spacing / 2), (s_wigley, 0, spacing / 2)], froude) / (2 * Of([(s_wigley, 0, 0)], froude)), 1e-4);

    [Theory]
    [InlineData(0.3)]
    [InlineData(0.5)]
    public void A_hull_twice_as_broad_makes_four_times_the_resistance(double froude) =>
        Relative(4, Of([(WigleyHull.Of(1, 0.2, 0.0625), 0, 0)], froude) / Of([(s_wigley, 0, 0)], froude), 1e-4);

    // Froude's law: at one Froude number the force grows as the weight.
    [Theory]
    [InlineData(0.3)]
    [InlineData(0.5)]
    public void At_one_Froude_number_the_resistance_grows_as_the_cube_of_the_length(double froude)
    {
        var model = new WaveResistance([new(s_wigley.Side, 0.0625, 0, 0)]);
        var boat = new WaveResistance([new(WigleyHull.Of(5, 0.5, 0.3125).Side, 0.3125, 0, 0)]);
        double Speed(double length) => froude * Math.Sqrt(Standards.Gravity * length);
        Relative(125, boat.OverDensity(Speed(5), 1e-6) / model.OverDensity(Speed(1), 1e-6), 1e-5);
    }

    // L = 5 m, B = 0.5 m, T = 0.3125 m in water of 1000 kg/m³ at Fn 0.4: 39.8918 N, by the same evaluations.
    [Fact]
    public void A_boat_of_five_meters_makes_forty_newtons_at_five_and_a_half_knots() =>
        Relative(39.8918, 1000 * new WaveResistance([new(WigleyHull.Of(5, 0.5, 0.3125).Side, 0.3125, 0, 0)]).OverDensity(2.80094, 1e-6), 1e-4);

    // Michell's theorem of reverse flow, exact for any hull (from memory; Newman 1977): bow or stern first, the same resistance.
    [Theory]
    [InlineData("gauge-runner-fine", 1.5)]
    [InlineData("gauge-runner-fine", 3.0)]
    public void A_hull_makes_the_same_waves_stern_first(string name, double speed)
    {
        var hull = ShapedTemplates.Of(name).Hull;
        var forward = new WaveResistance([new(hull.Side, hull.Draft, 0, 0)]).OverDensity(speed, 1e-6);
        var backward = new WaveResistance([new(Reversed(hull).Side, hull.Draft, 0, 0)]).OverDensity(speed, 1e-6);
        Relative(forward, backward, 1e-5);
    }

    // The same integral by plain sums over panels, which are themselves within 3e-4.
    [Theory]
    [InlineData("gauge-runner", 3)]
    [InlineData("gauge-runner-blunt", 4)]
    [InlineData("sample-courier", 3)]
    [InlineData("sample-courier", 6)]
    public void A_template_makes_the_waves_of_its_panels(string name, double knots)
    {
        var hull = ShapedTemplates.Of(name).Hull;
        var waves = new WaveResistance([new(hull.Side, hull.Draft, 0, 0)]).OverDensity(knots * Standards.Knot, 1e-5);
        Relative(PanelWaves.OverDensity(hull, knots * Standards.Knot, 500, 150, 600), waves, 1e-3);
    }

    // The same integral by Gauss points on the skin, which are themselves within 1e-5. The error is counted by the whole drag.
    [Theory]
    [InlineData("gauge-runner", 0.15)]
    [InlineData("line-layer", 0.15)]
    [InlineData("line-layer", 0.30)]
    [InlineData("silt-sampler", 0.15)]
    [InlineData("silt-sampler", 0.20)]
    [InlineData("silt-sampler", 0.30)]
    public void Waves_are_within_a_ten_thousandth_of_the_drag_with_and_without_a_transom(string name, double froude)
    {
        var hull = ShapedTemplates.Of(name).Hull;
        var speed = froude * Math.Sqrt(Standards.Gravity * (hull.WaterlineAft - hull.WaterlineFore));
        var drag = new DragEstimate(new VesselShape(hull, []), Water.Fresh).At(speed);
        Assert.Equal(Water.Fresh.Density * GaussWaves.OverDensity(hull, speed), drag.Wave, 1e-4 * drag.Total);
    }

    private static double Of((HullSurface Hull, double Aft, double Side)[] hulls, double froude) =>
        new WaveResistance([.. hulls.Select(h => new HullInWater(h.Hull.Side, 0.0625, h.Aft, h.Side))]).OverDensity(froude * Math.Sqrt(Standards.Gravity), 1e-6);

    private static HullSurface Reversed(HullSurface hull)
    {
        var side = hull.Side;
        var poles = new Lines.Kernel.Geometry.Point3[side.U.Count, side.V.Count];
        for (var i = 0; i < side.U.Count; i++)
        {
            for (var j = 0; j < side.V.Count; j++)
            {
                var p = side.PoleAt(side.U.Count - 1 - i, j);
                poles[i, j] = p with { X = hull.Dials.Length - p.X };
            }
        }

        var u = Lines.Kernel.Splines.SplineBasis.Clamped(3, [.. side.U.Breaks.Reverse().Select(b => 1 - b)]);
        return new HullSurface(new(u, side.V, poles), hull.Dials, 1 - hull.WidestU, hull.WaterlineV);
    }

    private static void Relative(double expected, double actual, double tolerance) =>
        Assert.InRange(actual / expected, 1 - tolerance, 1 + tolerance);
}
