using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Resistance;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Resistance;

/// <summary>The drag of a boat as she lies in the water, and of the air on what stands out of it.</summary>
public class LyingChecks
{
    // Michell's theorem of reverse flow (from memory; Newman 1977): a hull alike at both ends, trimmed by the bow, is the same hull trimmed by the stern
    // and towed backward, which takes the same.
    [Theory]
    [InlineData(0.8)]
    [InlineData(1.3)]
    public void A_hull_alike_at_both_ends_drags_the_same_by_the_bow_and_by_the_stern(double speed)
    {
        DragAtSpeed bow = Trimmed(-0.015).At(speed), stern = Trimmed(0.015).At(speed), level = Trimmed(0).At(speed);
        Assert.Equal(bow.Friction, stern.Friction, 1e-4 * bow.Friction);
        Assert.Equal(bow.Wave, stern.Wave, 1e-3 * bow.Wave);
        Assert.NotEqual(level.Wave, bow.Wave, 1e-3 * level.Wave);
    }

    // ITTC 1978, C_AA = 0.001 A_T / S on wetted area and half rho U squared: 1 m² at 2 m/s in water of 1000 kg/m³ is 2 N. Hoerner 1965, from memory: a seated
    // person has 6 ft² of drag area, in air of 1.225 kg/m³ at 2 m/s 1.366 N.
    [Fact]
    public void Air_takes_what_the_published_allowances_say()
    {
        Assert.Equal(2, new AirDrag(1, 0).At(2, 1000), 1e-12);
        Assert.Equal(1.366, new AirDrag(0, 1).At(2, 1000), 1e-3);
    }

    // The same allowances by the square of the speed through the air, by hand: 2 + 3 m/s against the wind, (5 / 2)² of what still air takes; with 5 m/s from astern
    // at 2 m/s the air drives the boat with (3 / 2)² of it.
    [Fact]
    public void A_head_wind_adds_to_the_speed_and_a_faster_one_from_astern_drives_the_boat()
    {
        var air = new AirDrag(1, 2);
        Assert.Equal(6.25 * air.At(2, 1000), air.At(2, 1000, 3), 1e-12);
        Assert.Equal(-2.25 * air.At(2, 1000), air.At(2, 1000, -5), 1e-12);
        var shape = new VesselShape(ShapedTemplates.Of("gauge-runner").Hull, []);
        DragAtSpeed still = new DragEstimate(shape, Water.Fresh).At(2), against = new DragEstimate(shape, Water.Fresh, headWind: 3).At(2);
        Assert.Equal(5.25 * still.Air, against.Total - still.Total, 1e-9);
    }

    // ITTC 1957 at a Reynolds number of 1e6 is 0.075 / 16 (by hand), both sides of 0.1 m² in fresh water of 999.1026 kg/m³, a thickness of a tenth adds 0.2 + 0.006.
    [Fact]
    public void A_rudder_takes_the_friction_of_its_sides_and_what_its_thickness_adds()
    {
        const double Chord = 0.4;
        var speed = 1e6 * Water.Fresh.Viscosity / Chord;
        Assert.Equal(0.5 * 999.1026 * speed * speed * 0.2 * 0.075 / 16 * 1.206, new Appendage(0.1, Chord, 0.1).At(speed, Water.Fresh), 1e-4);
        var shape = new VesselShape(ShapedTemplates.Of("gauge-runner").Hull, []);
        double with = new DragEstimate(shape, Water.Fresh, appendage: new Appendage(0.1, Chord, 0.1)).At(speed).Total, without = new DragEstimate(shape, Water.Fresh).At(speed).Total;
        Assert.Equal(new Appendage(0.1, Chord, 0.1).At(speed, Water.Fresh), with - without, 1e-9);
    }

    [Fact]
    public void Topsides_are_the_beam_times_what_stands_out_of_the_water()
    {
        var hull = ShapedTemplates.Of("gauge-runner").Hull;
        Assert.Equal(hull.Dials.Beam * (hull.Dials.Depth - hull.Draft), AirDrag.Of(hull, WaterPlane.LevelAt(hull.Draft), 1).Topsides, 1e-6);
    }

    // The middle of the waterline stays four fifths of the depth up.
    private static DragEstimate Trimmed(double trim)
    {
        const double Length = 1, Depth = 0.0625;
        var hull = WigleyHull.Of(Length, 0.1, Depth);
        var middle = (hull.Side.PointAt(0, 0).X + hull.Side.PointAt(1, 0).X) / 2;
        return new DragEstimate(new VesselShape(hull, []), Water.Fresh, new WaterPlane((0.8 * Depth * Math.Cos(trim)) - (middle * Math.Sin(trim)), trim, 0));
    }
}
