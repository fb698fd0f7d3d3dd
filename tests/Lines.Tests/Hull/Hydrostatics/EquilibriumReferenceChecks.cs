using Lines.Hull.Hydrostatics;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Hydrostatics;

/// <summary>Equilibrium and righting arms against worked examples and closed forms.</summary>
public class EquilibriumReferenceChecks
{
    private const double Salt = 1025;

    private static double Radians(double degrees) => degrees * Math.PI / 180;

    private static Craft Box(double length, double breadth, double depth) => new([SampleBodies.Box(length, breadth, depth)]);

    private static Weight At(double mass, double x, double y, double z) => new(mass, new Point3(x, y, z));

    /// <summary>Box 50 x 10 x 8 m, 1640 t in sea water: draft 3.2 m, KB 1.6 m (course page, units t/m³ 1.025).</summary>
    [Fact]
    public void A_box_floats_at_the_draft_of_its_weight()
    {
        var found = Equilibrium.Free(Box(50, 10, 8), At(1_640_000, 25, 0, 3), Salt, default)!;
        Assert.Equal(3.2, found.Water.Level, 1e-9);
        Assert.Equal(1.6, found.Immersed.Center!.Value.Z, 1e-9);
        Assert.True(found.Stable);
    }

    /// <summary>Derrett p. 130 ex. 2 and p. 111: KM of a box of 12 m at 4 m is 5 m; the least KM is B/√6 = 4.082 m of B = 10.</summary>
    [Theory]
    [InlineData(12, 4, 5)]
    [InlineData(10, 4.0824829, 4.0824829)]
    public void A_box_has_its_metacenter_where_the_formula_puts_it(double breadth, double draft, double metacenter)
    {
        var found = Equilibrium.Free(Box(65, breadth, 9), At(65 * breadth * draft * Salt, 32.5, 0, 1), Salt, default)!;
        Assert.Equal(metacenter, found.Immersed.Center!.Value.Z + (found.Immersed.TransverseMoment / found.Immersed.Volume), 1e-6);
        Assert.Equal(metacenter - 1, found.Stiffness, 1e-6);
    }

    /// <summary>Derrett p. 130 ex. 2: box 65 x 12 x 8 m, draft 4 m, KG 4 m, GM 1 m. At 5 degrees GZ = (GM + BM/2 tan²) sin = 0.088156 m; at 25
    /// degrees 0.560461 m, the deck still dry (the second answer computed).</summary>
    [Theory]
    [InlineData(5, 0.088156)]
    [InlineData(25, 0.560461)]
    public void The_wall_sided_formula_gives_the_righting_arm_of_a_box(double heel, double arm)
    {
        var found = Equilibrium.AtHeel(Box(65, 12, 8), At(65 * 12 * 4 * Salt, 32.5, 0, 4), Salt, new WaterPlane(0, 0, Radians(heel)))!;
        Assert.Equal(arm, found.LeverAcross, 1e-6);
    }

    /// <summary>Derrett p. 130 ex. 1: KB 3, KM 6, KG 5.5 m, 25 degrees; the wall-sided formula gives 0.349152 m (the book rounds to 0.35). As a box: T = 6,
    /// B²/(12 T) = 3.</summary>
    [Fact]
    public void The_wall_sided_formula_gives_the_arm_of_a_deep_box()
    {
        var breadth = Math.Sqrt(3 * 12 * 6);
        var found = Equilibrium.AtHeel(Box(60, breadth, 14), At(60 * breadth * 6 * Salt, 30, 0, 5.5), Salt, new WaterPlane(0, 0, Radians(25)))!;
        Assert.Equal(0.349152, found.LeverAcross, 1e-6);
        Assert.Equal(0.5, Equilibrium.Free(Box(60, breadth, 14), At(60 * breadth * 6 * Salt, 30, 0, 5.5), Salt, default)!.Stiffness, 1e-9);
    }

    /// <summary>Nicholls's Seamanship p. 527: box of 36 ft at 18 ft, BM 6 ft, KM 15 ft. Reed's ex. 5.3 (from a solution): B = 12, KG = T, GM = T/4 at T = 4 m.</summary>
    [Theory]
    [InlineData(36, 18, 10, 5)]
    [InlineData(12, 4, 4, 1)]
    public void Boxes_of_the_handbooks_have_their_metacentric_heights(double breadth, double draft, double gravity, double height) =>
        Assert.Equal(height, Equilibrium.Free(Box(100, breadth, 2 * draft), At(100 * breadth * draft * Salt, 50, 0, gravity), Salt, default)!.Stiffness, 1e-8);

    /// <summary>Past its deck edge the box is a clipped rectangle: lever by shoelace, level by bisection.</summary>
    [Theory]
    [InlineData(40)]
    [InlineData(75)]
    [InlineData(90)]
    [InlineData(140)]
    [InlineData(180)]
    public void Past_the_deck_edge_the_arm_is_that_of_the_clipped_rectangle(double heel)
    {
        double b = 12, d = 8, kg = 4, area = 12 * 4.3, low = -20, high = 20;
        while (high - low > 1e-13)
        {
            var middle = (low + high) / 2;
            (low, high) = ClippedRectangle.Below(b, d, new WaterPlane(middle, 0, Radians(heel))).Area < area ? (middle, high) : (low, middle);
        }

        var water = new WaterPlane(low, 0, Radians(heel));
        var (_, y, z, _) = ClippedRectangle.Below(b, d, water);
        var expected = ((y * water.Across.Y) + ((z - kg) * water.Across.Z));
        var found = Equilibrium.AtHeel(Box(65, b, d), At(65 * area * Salt, 32.5, 0, kg), Salt, water with { Level = 0 })!;
        Assert.Equal(low, found.Water.Level, 1e-7);
        Assert.Equal(expected, found.LeverAcross, 1e-7);
    }

    /// <summary>GZ = (R - KG) sin φ for a cylinder at any draft and heel.</summary>
    [Fact]
    public void A_cylinder_rights_with_the_sine()
    {
        var arms = new RightingArms(new Craft([SampleBodies.Cylinder(3, 0.5)]), At(900, 1.5, 0, 0.2), 1000, toPort: false);
        Assert.Equal(37, arms.Curve.Count);
        Assert.All(arms.Curve, a => Assert.Equal(0.3 * Math.Sin(a.Heel), a.Arm, 1e-7));
        Assert.Equal(0.6, arms.Area, 1e-5);
        Assert.Equal(0.3, arms.Greatest!.Arm, 1e-7);
        Assert.Equal(Math.PI / 2, arms.Greatest.Heel, 1e-3);
        Assert.Null(arms.Downflooding);
        Assert.Equal(Radians(30), arms.Steady(_ => 0.15)!.Value, 1e-5);
        Assert.Null(arms.Steady(_ => 0.31));
    }

    /// <summary>Derrett p. 229: tan φ = √(-2 GM / BM) of a wall-sided ship heeled by its own height.</summary>
    [Fact]
    public void A_tender_box_lolls_to_the_angle_of_the_formula()
    {
        // B = 12, T = 4: KM = 5, BM = 3. KG = 5.15 makes GM = -0.15.
        var weight = At(65 * 12 * 4 * Salt, 32.5, 0, 5.15);
        Assert.False(Equilibrium.Free(Box(65, 12, 9), weight, Salt, default)!.Stable);
        var lolls = Equilibrium.Free(Box(65, 12, 9), weight, Salt, new WaterPlane(4, 0, 0.3))!;
        Assert.Equal(Math.Sqrt(2 * 0.15 / 3), Math.Tan(lolls.Water.Heel), 1e-6);
        Assert.True(lolls.Stable);
    }

    /// <summary>A weight moved across: GG₁ = moment / displacement, the list follows from GZ = GG₁ cos φ (Derrett p. 117: 300 t m in 8500 t).</summary>
    [Fact]
    public void A_weight_to_starboard_lists_the_boat_to_starboard()
    {
        Assert.Equal(0.0353, 300.0 / 8500, 1e-4);
        double gm = 1, bm = 3, gg = 0.0353;
        var found = Equilibrium.Free(Box(65, 12, 8), At(65 * 12 * 4 * Salt, 32.5, gg, 4), Salt, default)!;
        var t = Math.Tan(found.Water.Heel);
        Assert.Equal(gg, (gm + (bm / 2 * t * t)) * t, 1e-7); // wall-sided GZ = GG₁ cos φ
        Assert.True(found.Water.Heel > 0);
    }

    [Fact]
    public void A_weight_moved_aft_trims_by_the_stern_through_the_longitudinal_metacenter()
    {
        // Box L = 65, T = 4, KG = 4: BM_L = L²/(12 T), GM_L = 2 + BM_L - 4; wall-sided in trim as in heel.
        double bm = 65 * 65 / 48.0, gm = bm - 2, shift = 0.5;
        var found = Equilibrium.Free(Box(65, 12, 8), At(65 * 12 * 4 * Salt, 32.5 + shift, 0, 4), Salt, default)!;
        var t = Math.Tan(found.Water.Trim);
        Assert.True(t > 0);
        Assert.Equal(shift, (gm + (bm / 2 * t * t)) * t, 1e-6);
    }

    [Fact]
    public void The_residuals_are_those_promised()
    {
        foreach (var craft in (Craft[])[SampleBodies.DoubleEnderCraft(), SampleBodies.OutriggedCraft()])
        {
            var found = Equilibrium.Free(craft, At(150, 2.72, 0.01, 0.2), Salt, default)!;
            Assert.True(Math.Abs(found.Surplus) < 1e-9);
            Assert.True(Math.Max(Math.Abs(found.LeverAft), Math.Abs(found.LeverAcross)) < 1e-7);
        }
    }

    [Fact]
    public void What_is_heavier_than_all_the_water_it_can_displace_does_not_float() =>
        Assert.Null(Equilibrium.Free(Box(4, 1, 0.3), At(1.3 * Salt, 2, 0, 0.1), Salt, default));
}
