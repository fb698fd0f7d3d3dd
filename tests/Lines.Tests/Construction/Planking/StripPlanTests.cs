using Lines.Construction;
using Lines.Construction.Materials;
using Lines.Construction.Planking;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Construction.Planking;

/// <summary>Strips on bodies where counts, lengths, facets and twist are known in closed form.</summary>
public class StripPlanTests
{
    private static readonly BuildDials Build = new() { Planking = 0.006, StripWidth = 0.019 };

    private static readonly Wood Cedar = Wood.Table[0];

    [Fact]
    public void Round_a_half_cylinder_strips_are_as_many_as_widths_go_into_the_arc_and_as_long_as_the_cylinder()
    {
        const double radius = 0.25, length = 3;
        var plan = StripPlan.Of(HalfCylinder(length, radius), Build, Cedar, [1.5]);
        // A quarter circle a side: 0.3927 m, 20.67 strips.
        Assert.Equal((int)Math.Ceiling(Math.PI * radius / 2 / 0.019), plan.Strips.Count);
        Assert.All(plan.Strips, s => Assert.Equal(length, s.Length, 0.005));
        var section = Assert.Single(plan.Sections);
        Assert.Equal(Math.PI * radius / 2, section.Girth, 1e-5);
        Assert.Equal(21, section.Count);
        // A chord of the width over an arc: the rise is w2 / 8R.
        Assert.Equal(radius, section.Radius, 1e-4);
        Assert.Equal(0.019 * 0.019 / 8 / radius, section.Facet, 1e-7);
    }

    [Theory]
    [InlineData(0.25, 0.15, 20)]
    [InlineData(0.25, 0.15, 21)]
    [InlineData(0.30, 0.10, 8)]
    public void The_least_radius_is_that_of_the_roundest_place_between_the_middles_of_strips_too(double semiBreadth, double semiHeight, int strips)
    {
        // Half an ellipse lying on its side: its radius is least at the end of the longer half-axis, b2 / a, halfway down the girth.
        var side = HalfEllipse(2, semiBreadth, semiHeight);
        var girth = StripPlan.Of(side, Build, Cedar, [1]).Sections[0].Girth;
        var section = Assert.Single(StripPlan.Of(side, Build with { StripWidth = girth / (strips - 0.01) }, Cedar, [1]).Sections);
        Assert.Equal(strips, section.Count);
        Assert.Equal(semiHeight * semiHeight / semiBreadth, section.Radius, 1e-3 * section.Radius);
    }

    [Fact]
    public void On_a_cylinder_strips_of_19_mm_take_a_radius_of_75_mm_and_no_less()
    {
        // w2 / 8R = t / 10 gives R = 75.2 mm for 19 by 6 mm.
        Assert.DoesNotContain(StripPlan.Of(HalfCylinder(2, 0.077), Build, Cedar, []).Bends, b => b.Kind == StripBendKind.Facet);
        var bend = Assert.Single(StripPlan.Of(HalfCylinder(2, 0.060), Build, Cedar, []).Bends, b => b.Kind == StripBendKind.Facet);
        Assert.Equal(0.019 * 0.019 / 8 / 0.060, bend.Value, 1e-6);
        Assert.Equal(0.0006, bend.Limit, 1e-12);
        // Strips that narrow leave a tenth of the planking: w2 = 8 R t / 10.
        Assert.Equal(Math.Sqrt(8 * 0.060 * 0.0006), bend.Remedy, 1e-4);
        Assert.InRange(bend.Aft - bend.Fore, 1.9, 2);
    }

    [Fact]
    public void A_warped_side_twists_its_strips_by_the_turn_of_its_rulings()
    {
        // y = B + k x (z - H/2): along the middle line z = H/2 the normal turns by atan(k x), so the twist is k / (1 + k2 x2), greatest amidships.
        const double turn = 1.2, length = 2, height = 0.304;
        var poles = new Point3[2, 2];
        for (var i = 0; i < 2; i++)
        {
            for (var j = 0; j < 2; j++)
                poles[i, j] = new Point3(i * length, 1 + (turn * ((i * length) - (length / 2)) * ((j * height) - (height / 2))), j * height);
        }

        var basis = SplineBasis.Clamped(1, [0, 1]);
        var plan = StripPlan.Of(new BSplineSurface(basis, basis, poles), Build, Cedar, []);
        var bend = Assert.Single(plan.Bends, b => b.Kind == StripBendKind.Twist);
        Assert.Equal(turn, bend.Value, 0.01);
        Assert.Equal(length / 2, bend.X, 0.05);
        Assert.Equal(1, bend.Limit / (turn * bend.Remedy / 0.006), 0.01);
    }

    [Fact]
    public void A_level_run_fills_up_to_a_sheer_that_rises_to_both_ends_with_strips_in_two_parts()
    {
        var hull = SampleHulls.DoubleEnder();
        var sheer = StripPlan.Of(hull.Side, Build, Cedar, [hull.WidestX]);
        var level = StripPlan.Of(hull.Side, Build with { Strips = StripRun.Level }, Cedar, [hull.WidestX]);
        Assert.Contains(level.Strips, s => s.Lengths.Count == 2);
        Assert.All(sheer.Strips, s => Assert.Single(s.Lengths));
        // Both cover the same skin: the length times the width is its area, and more by the half strips lost at ragged edges.
        var area = SkinLayer.Of(hull.Side, double.NegativeInfinity, double.PositiveInfinity, double.PositiveInfinity, 0, 1e-5).Outside;
        Assert.InRange(sheer.Length * 0.019 / area, 1.00, 1.06);
        Assert.InRange(level.Length * 0.019 / area, 1.00, 1.08);
        Assert.Equal(sheer.Sections[0], level.Sections[0]);
    }

    [Theory]
    [InlineData(2.4, 0)]
    [InlineData(2.41, 1)]
    [InlineData(4.752, 1)]
    [InlineData(4.753, 2)]
    [InlineData(0.3, 0)]
    public void Scarfs_are_as_few_as_boards_that_overlap_by_eight_thicknesses_allow(double length, int scarfs) =>
        Assert.Equal(scarfs, StripStock.ScarfsIn(length, 2.4, 0.048)); // two boards reach 2 x 2.4 - 0.048 m

    [Fact]
    public void Wood_to_buy_is_what_lies_on_the_hull_with_scarfs_waste_and_kerf()
    {
        var plan = StripPlan.Of(HalfCylinder(3, 0.25), Build, Cedar, []);
        var stock = StripStock.Of(plan, Build);
        // 42 strips of 3 m from boards of 2.4 m: one scarf of 48 mm each.
        Assert.Equal(42, stock.Scarfs);
        Assert.Equal(42 * 0.048, stock.ScarfLength, 1e-9);
        Assert.Equal((stock.Net + stock.ScarfLength) * 1.15, stock.ToBuy, 1e-9);
        Assert.Equal(stock.Net * 0.019 * 0.006 / 0.002359737216, stock.NetBoardFeet, 1e-6);
        Assert.Equal(stock.ToBuy * 0.019 * 0.009 / 0.002359737216, stock.BoardFeet, 1e-6);
    }

    // The lower quarter of a cylinder, keel at the bottom, sheer at the height of the axis.
    private static BSplineSurface HalfEllipse(double length, double semiBreadth, double semiHeight)
    {
        var round = SampleBodies.CylinderSkin(length, 1);
        var poles = new Point3[round.U.Count, round.V.Count];
        for (var i = 0; i < round.U.Count; i++)
        {
            for (var j = 0; j < round.V.Count; j++)
                poles[i, j] = round.PoleAt(i, j) is var p ? new Point3(p.X, semiBreadth * p.Y, semiHeight * p.Z) : default;
        }

        return new BSplineSurface(round.U, round.V, poles);
    }

    private static BSplineSurface HalfCylinder(double length, double radius) => SampleBodies.CylinderSkin(length, radius, Math.PI / 2);
}
