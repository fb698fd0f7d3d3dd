using Lines.Hull.Hydrostatics;
using Lines.Kernel.Numerics;
using Xunit;

namespace Lines.Tests.Hull.Hydrostatics;

/// <summary>Worked examples of two handbooks. Derrett: C. B. Barrass, D. R. Derrett, Ship Stability for Masters and Mates, printed
/// page numbers. Tupper: E. C. Tupper, Introduction to Naval Architecture, waterplane example of chapter 3.</summary>
public class DerrettReferenceChecks
{
    [Fact]
    public void Waterplane_area_and_tonnes_per_centimeter_of_page_74()
    {
        // L 120 m, seven half-ordinates: 1207 m², TPC 12.37 t in salt water of 1.025 t/m³.
        var plane = new WaterplaneTable([0, 3.7, 5.9, 7.6, 7.5, 4.6, 0.1], 20);
        Assert.Equal(1206.6667, plane.Area, 1e-4);
        Assert.Equal(1207, plane.Area, 0.5);
        Assert.Equal(12.37, plane.Area * 1.025 / 100, 0.005);
    }

    [Fact]
    public void Volume_displacement_and_fresh_water_allowance_of_page_79()
    {
        // The page gives the sum of the area functions, 7918, and the load waterplane, 660 m², at 1 m intervals; any areas with that
        // sum have that volume, so all but the load waterplane are taken equal: 660 + 17 c = 7918.
        const double C = 7258 / 17.0;
        var volume = SimpsonRules.First([C, C, C, C, C, C, 660], 1);
        Assert.Equal(2639 + (1 / 3.0), volume, 1e-4);
        Assert.Equal(2705.3, volume * 1.025, 0.05);
        // Displacement over 4 TPC is, at 1.025 against 1.000 t/m³, the sinkage to first order: 99.9 mm with the book's rounded TPC.
        Assert.Equal(99.9, 1000 * Immersion.Sinkage(volume, 660, 1025, 1000)!.Value, 0.1);
    }

    [Fact]
    public void Longitudinal_second_moment_of_page_262()
    {
        // Printed: A 51.6 m², I about the fore end 5983 m⁴, center of flotation 9.77 m, I about it 1058 m⁴ (with 9.77 rounded first).
        var plane = new WaterplaneTable([0, 1.2, 1.5, 1.8, 1.8, 1.5, 1.2], 3);
        Assert.Equal(51.6, plane.Area, 1e-9);
        Assert.Equal(5983.2, plane.LongitudinalMomentAbout(0), 1e-9);
        Assert.Equal(9.767442, plane.FlotationAft, 1e-6);
        Assert.Equal(1060.409, plane.LongitudinalMoment, 1e-3);
        Assert.Equal(1058, plane.LongitudinalMoment, 0.003 * 1058);
        // Our own sum by the same rule for the transverse moment, not printed: 2/3 × h/3 × Σ SM y³.
        Assert.Equal(42.588, plane.TransverseMoment, 1e-9);
    }

    [Fact]
    public void Second_moments_of_the_large_ship_in_Tupper()
    {
        // The example gives sums: Σ of longitudinal functions 1896 and of cubes 52423 at h = 14.1 m, for I_L 3,543,000 and I_T
        // 164,300 m⁴. Any ordinates with these sums will do: here both ends 948, or amidships the cube root of 52423/4.
        Assert.Equal(3_543_000, new WaterplaneTable([948, 0, 948], 14.1).LongitudinalMomentAbout(14.1), 1e-3 * 3_543_000);
        Assert.Equal(164_300, new WaterplaneTable([0, Math.Cbrt(52423 / 4.0), 0], 14.1).TransverseMoment, 1e-3 * 164_300);
    }
}
