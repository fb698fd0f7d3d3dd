using Lines.Hull.Hydrostatics;
using Lines.Hull.Loading;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Loading;

/// <summary>Heel under sail of a boat of two boxes, her float to starboard, 200 kg 0.1 m to starboard: without wind she leans on the float.</summary>
public class SailHeelChecks
{
    private const double Draft = 0.1, Density = 1000, Wind = 2;

    private static readonly Craft s_proa = new([SampleBodies.Box(5, 0.4, 0.5), SampleBodies.Box(5, 0.1, 0.1, open: false, new Vector3(0, 1.2, 0.08))]);

    private static readonly Weight s_weight = new(200, new Point3(2.5, 0.1, 0.4));

    private static readonly Rig s_rig = new(4, 2, 2);

    [Fact]
    public void A_wind_too_weak_to_lift_her_crew_leaves_her_leaning_to_windward_where_the_moments_balance()
    {
        RightingArms leeward = new(s_proa, s_weight, Density, toPort: true), windward = new(s_proa, s_weight, Density, toPort: false);
        var found = SailHeel.Of(s_rig, leeward, windward, s_weight.Mass, Draft, Wind);
        var heel = -found.Heel!.Value;
        Assert.InRange(heel, 1e-4, windward.From!.Value);

        // By hand: 1.225 / 2 · 2² · 1.5 · 4 m² at 2 - 0.1 / 2 m over 200 kg.
        var upright = 1.225 / 2 * Wind * Wind * 1.5 * 4 * (2 - (Draft / 2)) / (200 * Standards.Gravity);
        Assert.Equal(upright * Math.Pow(Math.Cos(heel), 2), -windward.At(heel)!.Arm, 1e-5);
    }

    [Fact]
    public void A_stronger_one_heels_her_to_leeward()
    {
        RightingArms leeward = new(s_proa, s_weight, Density, toPort: true), windward = new(s_proa, s_weight, Density, toPort: false);
        var arm = leeward.Curve[0].Arm;
        var balancing = Math.Sqrt(arm * 200 * Standards.Gravity / (1.225 / 2 * 1.5 * 4 * (2 - (Draft / 2))));
        Assert.True(SailHeel.Of(s_rig, leeward, windward, s_weight.Mass, Draft, 0.99 * balancing).Heel < 0);
        Assert.True(SailHeel.Of(s_rig, leeward, windward, s_weight.Mass, Draft, 1.01 * balancing).Heel > 0);
    }
}
