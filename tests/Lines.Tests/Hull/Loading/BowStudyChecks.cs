using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Loading;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Loading;

/// <summary>What keeps a bow up, on a wall-sided hull of parabolic plan, whose figures are closed forms.</summary>
public class BowStudyChecks
{
    private const double Length = 4, HalfBreadth = 0.3, Height = 0.4, Draft = 0.15, Center = 0.2, Density = 1000;

    // Half the waterplane is 2bL/3; over the water stands as much times the freeboard.
    [Fact]
    public void Waterplane_and_reserve_forward_are_those_of_half_the_plan()
    {
        var bow = Under(20, 1);
        var half = 2 * HalfBreadth * Length / 3;
        Assert.Equal(Length / 2, bow.Middle, 1e-9);
        Assert.Equal(half, bow.Waterplane, 1e-6);
        Assert.Equal(half * (Height - Draft), bow.Reserve, 1e-6);
        Assert.Equal(Height - Draft, bow.Head, 1e-9);
    }

    // Trim for a small couple is the moment over the weight times the longitudinal metacentric height; BM_L = L²/(20 T) for this plan, KB = T/2.
    [Theory]
    [InlineData(5, 0.5)]
    [InlineData(20, 1)]
    public void A_small_thrust_trims_as_the_metacenter_says(double force, double height)
    {
        double lever = (Draft / 2) + (Length * Length / (20 * Draft)) - Center;
        double couple = force * (height + (Draft / 2));
        Assert.Equal(couple / (Mass * Standards.Gravity * lever), Under(force, height).BowDown!.Value, 1e-3 * couple / (Mass * Standards.Gravity * lever));
    }

    [Fact]
    public void The_greatest_thrust_puts_the_sheer_to_the_water()
    {
        var most = Under(20, 1).GreatestThrust;
        Assert.True(Under(most, 1).HeadDriven is > 0 and < 0.01);
    }

    private static double Mass => Density * Draft * 4 * HalfBreadth * Length / 3;

    private static BowStudy Under(double force, double height)
    {
        var hull = CrownedHulls.With(CrownedHulls.WallSided(Length, HalfBreadth, Height, 0.02), null);
        return BowStudy.Of(
            new VesselShape(hull, []), new Weight(Mass, new Point3(Length / 2, 0, Center)), WaterPlane.LevelAt(Draft), Density, new ForwardThrust(force, height));
    }
}
