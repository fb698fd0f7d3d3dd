using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Propulsion;
using Lines.Hull.Resistance;
using Lines.Kernel.Units;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Propulsion;

/// <summary>Paddlers' power and speed, and the drag behind it, against what is known of paddled boats.</summary>
public class CrewPowerChecks
{
    private static readonly DragEstimate s_drag = new(new VesselShape(ShapedTemplates.Of("gauge-runner").Hull, []), Water.Fresh);

    [Fact]
    public void Each_of_the_crew_gives_drag_times_speed_over_efficiency_and_crew()
    {
        const double Speed = 2.2;
        var towing = s_drag.At(Speed).Total * Speed;
        Assert.Equal(towing / 0.75, new CrewPower(s_drag, Drive.FlatBlade, 1).WattsEach(Speed), 1e-9);
        Assert.Equal(towing / 0.89 / 2, new CrewPower(s_drag, Drive.WingBlade, 2).WattsEach(Speed), 1e-9);
    }

    [Theory]
    [InlineData(30)]
    [InlineData(75)]
    [InlineData(200)]
    [InlineData(350)]
    public void The_speed_of_a_power_takes_that_power(double watts)
    {
        var crew = new CrewPower(s_drag, Drive.FlatBlade, 1);
        Assert.Equal(watts, crew.WattsEach(crew.SpeedAt(watts)!.Value), 1e-5 * watts);
        Assert.True(new CrewPower(s_drag, Drive.FlatBlade, 2).SpeedAt(watts) > crew.SpeedAt(watts));
    }

    [Fact]
    public void Nothing_is_told_beyond_a_Froude_number_of_one() => Assert.Null(new CrewPower(s_drag, Drive.FlatBlade, 1).SpeedAt(1e5));

    // Passive drag of a racing single, 5.20 m, paddler of 65 to 85 kg: 21.37 N at 2.78 m/s, 89.32 N at 5.56 m/s (Gomes et al., Sports Biomechanics,
    // 10.1080/14763141.2017.1357748; forces from memory), so a sanity check only: a round-bilged hull of our own of that length and 90 kg, within 30 %.
    [Theory]
    [InlineData(2.78, 21.37)]
    [InlineData(5.56, 89.32)]
    public void A_racing_single_drags_as_measured_within_a_third(double speed, double newtons) =>
        Assert.InRange(new DragEstimate(new VesselShape(Single(), []), Water.Fresh).At(speed).Total / newtons, 0.7, 1.3);

    // Common practice, no source: a float 12 ft long at 10 kn runs at more than twice the speed-length ratio of its own wave, 1.34, and still moves: slim
    // enough, its waves take less than its friction.
    [Fact]
    public void A_slim_float_runs_at_twice_its_hull_speed()
    {
        const double Feet = 12, Knots = 10;
        var hull = HullShape.Solve(Slim(Feet * Length.Foot, 0.06, 0.10)).Surface!;
        var drag = new DragEstimate(new VesselShape(hull, []), Water.Sea).At(Knots * Standards.Knot);
        Assert.True(Knots / Math.Sqrt((hull.WaterlineAft - hull.WaterlineFore) / Length.Foot) > 2 * 1.34);
        Assert.InRange(drag.Wave, 0, drag.Friction);
    }

    // T. Brewer, Understanding Boat Design, p. 18 (the set of Skene's Elements): the best prismatic coefficient is 0.525 up to a speed-length ratio of 1.0,
    // 0.62 at 1.3 and 0.68 at 1.6. A trend here: of five hulls of one length, beam and displacement the best one's must rise with speed.
    [Fact]
    public void The_prismatic_coefficient_of_least_drag_rises_with_speed()
    {
        var hulls = Array.ConvertAll((double[])[0.58, 0.61, 0.64, 0.67, 0.70], OfFullness);
        var prismatics = Array.ConvertAll(hulls, h => UprightHydrostatics.Below(h, h.Draft, 1e-6).Prismatic!.Value);
        Assert.Equal(prismatics.Order(), prismatics);
        var drags = Array.ConvertAll(hulls, h => new DragEstimate(new VesselShape(h, []), Water.Fresh));
        double BestAt(double speedLength) => prismatics[Enumerable.Range(0, hulls.Length).MinBy(k =>
            drags[k].At(speedLength * Standards.Knot * Math.Sqrt(drags[k].Length / Length.Foot)).Total)];
        Assert.True(BestAt(1.0) < BestAt(1.6));
        Assert.True(BestAt(1.0) <= BestAt(1.3) && BestAt(1.3) <= BestAt(1.6));
    }

    private static HullSurface Single() => Displacing(Slim(5.2, 0.42, 0.10) with { Depth = 0.30, Midship = new MidshipDials(5 * FormDials.Degree, 0.78, 8 * FormDials.Degree) }, 90);

    private static HullDials Slim(double length, double beam, double draft) => FormDials.DoubleEnder with
    {
        Length = length,
        Beam = Math.Max(beam, length / 15),
        Depth = draft + 0.14,
        Draft = draft,
        Bow = new BowDials(0.63, 0.2 * draft, draft + 0.20, 0.05 * length),
        Stern = new PointedStern(0.62, 0.2 * draft, draft + 0.18, 0.05 * length),
    };

    private static HullSurface Displacing(HullDials dials, double mass) => HullShape.Solve(
        new Vessel(dials) { Targets = new HullTargets([new(Target.Displacement, mass)], [Dial.Draft], Water.Fresh) }, DialAccess.ToStep, (_, value, _) => value).Surface!;

    private static HullSurface OfFullness(double fullness)
    {
        var d = ShapedTemplates.Of("gauge-runner").Hull.Dials;
        return Displacing(d with { Bow = d.Bow with { EntryFullness = fullness }, Stern = (PointedStern)d.Stern with { RunFullness = fullness } }, 130);
    }
}
