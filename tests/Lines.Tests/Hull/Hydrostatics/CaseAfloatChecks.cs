using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Loading;
using Lines.Kernel.Geometry;
using Lines.Plans.Figures;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Hydrostatics;

/// <summary>Load cases, allowances, compartments and swamped boats against closed forms.</summary>
public class CaseAfloatChecks
{
    private const double Density = 1000;

    private static readonly Craft s_box = new([SampleBodies.Box(4, 1, 0.5)]);

    private static Weight At(double mass, double x, double y, double z) => new(mass, new Point3(x, y, z));

    /// <summary>Box 4 x 1 x 0.5 m with 800 kg: draft 0.2 m; KB, BM, immersion by the formulas of a box.</summary>
    [Fact]
    public void A_box_floats_with_the_figures_of_its_formulas()
    {
        var found = CaseAfloat.Of(s_box, At(800, 2, 0, 0.25), Density);
        Assert.Equal(FloatState.Floats, found.State);
        Assert.Equal(0.2, found.DraftAt(0)!.Value, 1e-9);
        Assert.Equal(0.3, found.Freeboard!.Value.Height, 1e-9);
        Assert.Equal(0.1 + (1 / 2.4) - 0.25, found.TransverseMetacentricHeight!.Value, 1e-9);
        Assert.Equal(0.1 + (16 / 2.4) - 0.25, found.LongitudinalMetacentricHeight!.Value, 1e-9);
        Assert.Equal(40, found.WeightToSink!.Value, 1e-9);
        Assert.Equal(800 * (0.1 + (16 / 2.4) - 0.25) / 400, found.MomentToTrim(4)!.Value, 1e-9);
        Assert.Equal(2000, found.Capacity, 1e-6);
        var hull = Assert.Single(found.Hulls);
        Assert.Equal(0.4, hull.Immersion, 1e-9);
        Assert.Equal(800, hull.Displacement, 1e-6);
        Assert.Equal(0.2, hull.Depth, 1e-6);
        Assert.Equal(0.3, hull.Top, 1e-6);
    }

    /// <summary>A float forward to starboard and one aft to port, all boxes 0.1 or 0.05 m deep in the water: heeled, she trims, which takes
    /// Ixy² / (IL + V (KB - KG)) from the waterplane's moment athwart; moments of rectangles by hand.</summary>
    [Fact]
    public void Staggered_floats_give_less_metacentric_height_at_free_trim_and_the_arms_begin_with_it()
    {
        var craft = new Craft([SampleBodies.Box(5, 0.4, 0.5), Float(0, 1.2), Float(4, -1.2)]);
        const double Volume = (5 * 0.4 * 0.1) + (2 * 0.1 * 0.05), Gravity = 0.3;
        var weight = At(Density * Volume, 2.5, 0, Gravity);
        double rise = (((0.2 * 0.05) + (0.01 * 0.075)) / Volume) - Gravity;
        double across = (5 * Math.Pow(0.4, 3) / 12) + (2 * ((Math.Pow(0.1, 3) / 12) + (0.1 * 1.2 * 1.2)));
        double along = (0.4 * 125 / 12) + (2 * ((0.1 / 12) + (0.1 * 2 * 2))), product = -2 * 0.1 * 2 * 1.2;
        double held = rise + (across / Volume), free = held - (product * product / (along + (Volume * rise)) / Volume);
        var found = CaseAfloat.Of(craft, weight, Density);
        Assert.Equal(held, found.TransverseMetacentricHeight!.Value, 1e-9);
        Assert.Equal(free, found.FreeMetacentricHeight!.Value, 1e-9);
        Assert.InRange(free / held, 0.5, 0.9);

        // By the arm itself at a heel so small that its cube is nothing.
        var arms = new RightingArms(craft, weight, Density, toPort: false);
        Assert.Equal(free, arms.At(1e-3)!.Arm / 1e-3, 1e-4 * free);

        static FloatingBody Float(double x, double y) => SampleBodies.Box(1, 0.1, 0.3, open: false, new Vector3(x, y, 0.05));
    }

    /// <summary>Each further kilogram sinks a box by 1 / (density L B).</summary>
    [Fact]
    public void A_box_carries_what_its_waterplane_allows() =>
        Assert.Equal((0.3 - 0.1) * Density * 4, Allowance.Further(s_box, At(800, 2, 0, 0.1), Density, default, new Point3(2, 0, 0.1), 0.1).Mass, 0.02);

    [Fact]
    public void No_more_is_allowed_where_the_freeboard_is_too_small_already() =>
        Assert.Equal(new Allowance(0, AllowanceEnd.Freeboard), Allowance.Further(s_box, At(1800, 2, 0, 0.1), Density, default, new Point3(2, 0, 0.1), 0.1));

    // Mass m stacked 1.2 m up on 400 kg at 0.1 m: the draft of the box is T = (400 + m) / 4000, and GM = T/2 + 1/(12 T) - KG by hand; where it is 0 she stands no more.
    [Fact]
    public void A_mass_set_high_ends_where_the_metacenter_of_a_box_comes_down_to_it_and_that_is_told()
    {
        double Height(double m) => ((400 + m) / 8000) + (4000 / (12 * (400 + m))) - (((400 * 0.1) + (m * 1.2)) / (400 + m));
        double low = 0, high = 1000;
        while (high - low > 1e-6)
            (low, high) = Height((low + high) / 2) > 0 ? ((low + high) / 2, high) : (low, (low + high) / 2);
        var found = Allowance.Further(s_box, At(400, 2, 0, 0.1), Density, default, new Point3(2, 0, 1.2), 0.1);
        Assert.Equal(AllowanceEnd.Rest, found.End);
        Assert.Equal(low, found.Mass, 0.02);
        Assert.Equal(AllowanceEnd.Freeboard, Allowance.Further(s_box, At(400, 2, 0, 0.1), Density, default, new Point3(2, 0, 0.1), 0.1).End);
    }

    [Fact]
    public void A_box_loaded_to_one_side_floods()
    {
        var found = CaseAfloat.Of(s_box, At(1400, 2, 0.2, 0.1), Density);
        Assert.Equal(FloatState.Floods, found.State);
        Assert.True(found.Freeboard!.Value.Height < 0);
        Assert.True(found.Freeboard.Value.At.Y > 0);
    }

    // A decked box with an opening whose rim stands 0.4 m up and 0.4 m out: heeled, its sides wet, water rises there to 0.25 + 0.4 tan, and comes in
    // at tan = 0.375; its deck edge, at 0.5 m, goes under and its bilge comes out at tan = 0.5 alone.
    [Fact]
    public void Water_comes_into_an_opening_in_the_deck_at_the_heel_of_the_wall_sided_formula_and_ends_the_range()
    {
        Point3[] rim = [new(1, -0.4, 0.4), new(1, 0.4, 0.4), new(3, -0.4, 0.4), new(3, 0.4, 0.4)];
        var decked = new Craft([SampleBodies.Box(4, 1, 0.5, open: false)]) { Rims = [("cockpit", rim)] };
        var arms = new RightingArms(decked, At(1000, 2, 0, 0.1), Density, toPort: true);
        Assert.Equal(Math.Atan(0.375), arms.Downflooding!.Value, 1e-6);
        Assert.Equal(Math.Atan(0.375), arms.Range, 1e-6);
        Assert.Null(new RightingArms(decked with { Rims = [] }, At(1000, 2, 0, 0.1), Density, toPort: true).Downflooding);
        Assert.Equal(0.2, CaseAfloat.Of(decked, At(800, 2, 0, 0.1), Density).Opening!.Value.Height, 1e-9);

        // With 0.1 m kept to the rim it sinks to 0.3 m, where its deck edge still stands 0.2 m up.
        Assert.Equal((0.3 - 0.2) * Density * 4, Allowance.Further(decked, At(800, 2, 0, 0.1), Density, default, new Point3(2, 0, 0.1), 0.1).Mass, 0.02);
        var deep = CaseAfloat.Of(decked, At(1700, 2, 0, 0.1), Density);
        Assert.Equal(FloatState.Floods, deep.State);
        Assert.Contains("cockpit, open through the deck, is 25 mm under water", LoadCaseFigures.StateOf(deep), StringComparison.Ordinal);
    }

    // The float of parabolic plan 4 b t (1 - t), its deck a parabola athwart: z = H + crown (y_s / b) (1 - (y / y_s)²), by hand.
    [Fact]
    public void The_rim_of_an_opening_lies_on_the_deck()
    {
        var hull = CrownedHulls.WallSided(4, 0.3, 0.4, 0.06);
        var rim = new DeckOpening("cockpit", 1, 2.5, 0.2, 0.05, IsSealed: false).Rim(hull);
        Assert.Equal([-0.05, 0.15], rim.Select(p => Math.Round(p.Y, 9)).Distinct().Order());
        Assert.Equal(1, rim.Min(p => p.X), 1e-9);
        Assert.Equal(2.5, rim.Max(p => p.X), 1e-9);
        Assert.All(rim, p =>
        {
            double t = p.X / 4, side = 4 * 0.3 * t * (1 - t);
            Assert.Equal(0.4 + (0.06 * side / 0.3 * (1 - (p.Y * p.Y / side / side))), p.Z, 1e-9);
        });
        Assert.Empty(new DeckOpening("cockpit", 1, 2.5, 0.2, 0, IsSealed: false).Rim(CrownedHulls.With(hull, null)));
    }

    /// <summary>A cylinder with its weight above its axis has a metacenter below it at every heel, and turns over.</summary>
    [Fact]
    public void A_cylinder_with_its_weight_above_the_axis_capsizes() =>
        Assert.Equal(FloatState.Capsizes, CaseAfloat.Of(new Craft([SampleBodies.Cylinder(3, 0.5)]), At(900, 1.5, 0, 0.6), Density).State);

    [Fact]
    public void What_weighs_more_than_it_displaces_sinks() => Assert.Equal(FloatState.Sinks, CaseAfloat.Of(s_box, At(2001, 2, 0, 0.1), Density).State);

    /// <summary>Derrett p. 229: a box with GM below 0 rests at the angle of loll.</summary>
    [Fact]
    public void A_tender_box_rests_at_its_angle_of_loll()
    {
        var found = CaseAfloat.Of(new Craft([SampleBodies.Box(65, 12, 9)]), At(65 * 12 * 4 * Density, 32.5, 0, 5.15), Density);
        Assert.Equal(FloatState.Floats, found.State);
        Assert.Equal(Math.Sqrt(2 * 0.15 / 3), Math.Abs(Math.Tan(found.Afloat!.Water.Heel)), 1e-6);
        Assert.Equal("floats at an angle of loll of 17.5 deg: she does not stay upright", LoadCaseFigures.StateOf(found));
    }

    // Derrett: a list from a weight off the centerline is no loll.
    [Fact]
    public void A_weight_aside_gives_a_list_and_no_loll()
    {
        var found = CaseAfloat.Of(s_box, At(800, 2, 0.02, 0.1), Density);
        Assert.True(found.Afloat!.Water.Heel > 0.01);
        Assert.Equal("floats", LoadCaseFigures.StateOf(found));
    }

    // The same off the tender box: with a weight aside she has no balance upright to be turned over from.
    [Fact]
    public void A_tender_box_with_a_weight_aside_has_a_list_and_no_loll()
    {
        var found = CaseAfloat.Of(new Craft([SampleBodies.Box(65, 12, 9)]), At(65 * 12 * 4 * Density, 32.5, 0.05, 5.15), Density);
        Assert.True(found.Afloat!.Water.Heel > Math.Atan(Math.Sqrt(2 * 0.15 / 3)));
        Assert.Equal("floats", LoadCaseFigures.StateOf(found));
    }

    /// <summary>Wigley's hull between x0 and x1: B T (2/3) ∫ (1 - s²) dx with s = 2x/L - 1, exact.</summary>
    [Theory]
    [InlineData(0, 5.2)]
    [InlineData(1.1, 1.9)]
    [InlineData(3.9, 5.2)]
    public void A_compartment_of_Wigleys_hull_has_its_closed_volume(double from, double to)
    {
        double l = 5.2, b = 0.74, t = 0.115;
        double Whole(double x) => (2 / 3.0) * b * t * (l / 2) * (((2 * x / l) - 1) - (Math.Pow((2 * x / l) - 1, 3) / 3));
        var body = CompartmentBody.Between(new PlacedHull("hull", WigleyHull.Bicubic(l, b, t, 4), default), "middle", from, to);
        Assert.Equal(1, body.Below(WaterPlane.LevelAt(1), 1e-9).Volume / (Whole(to) - Whole(from)), 1e-6);
    }

    [Fact]
    public void Compartments_end_to_end_make_the_hull_at_any_heel()
    {
        foreach (var hull in (HullSurface[])[SampleHulls.DoubleEnder(), SampleHulls.TransomBoat(), CrownedHulls.With(SampleHulls.DoubleEnder(), 0.05)])
        {
            var placed = new PlacedHull("hull", hull, default);
            double[] bulkheads = [-0.1, 0.12, 1.7, 4.05, 6];
            List<FloatingBody> parts = [.. bulkheads.Zip(bulkheads.Skip(1), (a, b) => CompartmentBody.Between(placed, "part", a, b))];
            foreach (var heel in (double[])[0, 0.3, 1.4, 2.8])
            {
                var water = new WaterPlane(0.1, 0.01, heel);
                Immersed whole = FloatingBody.Of(placed).Below(water, 1e-9), sum = new Craft(parts).Below(water, 1e-9);
                Assert.Equal(1, sum.Volume / whole.Volume, 1e-6);
                Assert.Equal(whole.Area, sum.Area, 1e-6);
                Assert.True((sum.Moment - whole.Moment).Length < 1e-5 * whole.Volume);
            }
        }
    }

    [Fact]
    public void A_swamped_hull_floats_on_its_sealed_ends_and_sinks_without_them()
    {
        var vessel = new VesselShape(SampleHulls.DoubleEnder(), []);
        Compartment[] ends = [new("fore", 0, 1.6, true), new("aft", 3.6, 5.2, true), new("well", 1.6, 3.6, false)];
        var cases = new Swamped(vessel, ends).Under(At(60, 2.6, 0, 0.1), Density);
        Assert.Equal([null, "fore", "aft"], cases.Select(c => c.Holed));
        var volume = CompartmentBody.Between(vessel.Hulls[0], "fore", 0, 1.6).Below(WaterPlane.LevelAt(2), 1e-9).Volume
            + CompartmentBody.Between(vessel.Hulls[0], "aft", 3.6, 5.2).Below(WaterPlane.LevelAt(2), 1e-9).Volume;
        Assert.Equal((Density * volume) - 60, cases[0].Reserve, 1e-3);
        Assert.True(cases[0].Afloat.State is FloatState.Floats or FloatState.Capsizes);
        Assert.NotNull(cases[0].Sheer);
        var none = Assert.Single(new Swamped(vessel, []).Under(At(60, 2.6, 0, 0.1), Density));
        Assert.Equal(FloatState.Sinks, none.Afloat.State);
        Assert.Equal(-60, none.Reserve);
    }
}
