using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Strength;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Strength;

/// <summary>Shear and bending moment against beams in closed form.</summary>
public class BendingReferenceChecks
{
    private const double Density = 1000;

    // Wall-sided, of parabolic plan: its buoyancy is w 6 t (1 - t) / L of its weight w in still water.
    private static readonly VesselShape s_parabola = new(CrownedHulls.With(CrownedHulls.WallSided(4, 0.3, 0.4, 0), null), []);

    private static Weight At(double mass, double x, double z = 0.1) => new(mass, new Point3(x, 0, z));

    private static Bending In(VesselShape vessel, Weight structure, Weight[] loads, WaveForm wave, params double[] joints)
    {
        var afloat = Equilibrium.Free(Craft.Of(vessel), Weight.Of([structure, .. loads]), Density, default)!;
        return new BendingStudy(vessel).In(afloat, structure, loads, Density, wave, joints)!;
    }

    /// <summary>∫ 6 W t (1 - t) (1/2 - t) L dt from 0 to 1/2 = 3/32 W L: a point weight amidships sags the middle by that.</summary>
    [Fact]
    public void A_weight_amidships_sags_the_middle_by_three_thirty_seconds_of_weight_times_length()
    {
        var weight = At(160, 2);
        var found = In(s_parabola, At(1e-9, 2), [weight], WaveForm.Still, 2);
        Assert.Equal(3 / 32.0 * 160 * Standards.Gravity * 4, found.Worst.Moment, 0.5);
        Assert.Equal(2, found.Worst.X, 1e-9);
        var joint = Assert.Single(found.Joints);
        Assert.Equal(joint.Moment / (0.8 * 0.4), joint.Tension, 1e-6);
    }

    /// <summary>A sine of wave under a wall-sided hull, its moment amidships by direct quadrature of the closed forms.</summary>
    [Theory]
    [InlineData(WaveForm.Hogging, -1)]
    [InlineData(WaveForm.Sagging, 1)]
    public void A_wave_bends_a_wall_sided_hull_by_the_integral_of_its_profile(WaveForm wave, int sign)
    {
        const double Length = 4, HalfBreadth = 0.3, Mass = 200;
        double length = s_parabola.Main.WaterlineAft - s_parabola.Main.WaterlineFore, amplitude = length / 40;
        double Plan(double t) => 8 * HalfBreadth * t * (1 - t);
        double Lift(Func<double, double> of, double to)
        {
            const int N = 200_000;
            double sum = 0;
            for (var k = 0; k < N; k++)
                sum += of((k + 0.5) * to / N) * to / N;
            return sum;
        }

        double Wave(double t) => -sign * amplitude * Math.Cos(2 * Math.PI * (t - 0.5) * Length / length);
        var draft = ((Mass / Density / Length) - Lift(t => Plan(t) * Wave(t), 1)) / Lift(Plan, 1);
        var water = Density * Standards.Gravity * Length * Length * Lift(t => Plan(t) * (draft + Wave(t)) * (0.5 - t), 0.5);
        var weight = Standards.Gravity * Mass * Length / 8; // spread evenly
        var found = In(s_parabola, At(Mass, 2), [], wave, 2);
        Assert.Equal(Length / 20, found.Height, 1e-9);
        Assert.Equal(water - weight, found.Joints[0].Moment, 0.002 * weight);
        Assert.Equal(0, found.Joints[0].Shear, 0.01);
    }

    [Fact]
    public void Shear_and_moment_close_at_the_stern()
    {
        var outrigged = new VesselShape(SampleHulls.DoubleEnder(), [(new Outrigger(SampleHulls.DoubleEnder().Dials, OutriggerSide.Port, 1.1, 0.02, 0.6), Slim())]);
        foreach (var vessel in (VesselShape[])[new(SampleHulls.DoubleEnder(), []), new(SampleHulls.TransomBoat(), []), outrigged])
        {
            foreach (var wave in Enum.GetValues<WaveForm>())
            {
                var found = In(vessel, At(60, 2.2), [At(75, 1.9), At(30, 2.6)], wave);
                Assert.Equal(0, found.Points[^1].Shear, 1e-6 * 165 * 9.8);
                Assert.Equal(0, found.Points[^1].Moment, 1e-6 * 165 * 9.8 * 5.2);
            }
        }
    }

    private static HullSurface Slim() => CrownedHulls.With(CrownedHulls.WallSided(3.4, 0.12, 0.3, 0.02), 0.02);
}
