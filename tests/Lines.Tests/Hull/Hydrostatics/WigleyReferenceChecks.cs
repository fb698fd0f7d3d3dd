using Lines.Hull.Hydrostatics;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Hydrostatics;

/// <summary>Closed forms of the parabolic hull of Wigley (1942), exact by integrating its polynomial.</summary>
public class WigleyReferenceChecks
{
    private const double Tolerance = 1e-9;

    public static TheoryData<double, double, double, int> Hulls => new()
    {
        { 1, 0.1, 0.0625, 1 },
        { 10, 1, 0.625, 3 },
        { 5.2, 0.74, 0.115, 5 },
    };

    [Theory]
    [MemberData(nameof(Hulls))]
    public void Coefficients_are_four_ninths_and_two_thirds(double l, double b, double t, int pieces)
    {
        var water = UprightHydrostatics.Below(WigleyHull.Bicubic(l, b, t, pieces), t, Tolerance);
        Near(4 / 9.0 * l * b * t, water.Volume);
        Near(4 / 9.0, water.Block);
        Near(2 / 3.0, water.Prismatic);
        Near(2 / 3.0, water.GreatestSection);
        Near(2 / 3.0, water.WaterplaneFullness);
        Near(2 / 3.0 * b * t, water.Amidships?.Area);
        Near(l, water.Waterplane?.Length);
        Near(b, water.Waterplane?.Breadth);
        Near(t, water.Draft);
        Assert.Equal(0, water.TransomArea);
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void Centers_are_amidships_and_five_eighths_up(double l, double b, double t, int pieces)
    {
        var water = UprightHydrostatics.Below(WigleyHull.Bicubic(l, b, t, pieces), t, Tolerance);
        Near(l / 2, water.CenterAft);
        Near(0.5, water.CenterFraction);
        Near(l / 2, water.FlotationAft);
        Near(0.5, water.FlotationFraction);
        Near(5 / 8.0 * t, water.Center?.Z);
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void Metacentric_radii_and_second_moments_are_those_of_the_parabola(double l, double b, double t, int pieces)
    {
        var water = UprightHydrostatics.Below(WigleyHull.Bicubic(l, b, t, pieces), t, Tolerance);
        Near(3 * b * b / (35 * t), water.TransverseMetacentricRadius);
        Near(3 * l * l / (40 * t), water.LongitudinalMetacentricRadius);
        Near(4 * l * b * b * b / 105, water.Waterplane?.TransverseMoment);
        Near(b * l * l * l / 30, water.Waterplane?.LongitudinalMoment);
    }

    [Fact]
    public void Wetted_surface_is_the_converged_quadrature()
    {
        // S / L² = 0.14879063 for L/B = 10, B/T = 1.6: our own independent quadrature, which agrees with the
        // 0.1487 L² usually quoted for this hull (from memory: Chen & Noblesse 1983 and others); S / (L (2T + B)) = 0.66129169.
        var water = UprightHydrostatics.Below(WigleyHull.Bicubic(1, 0.1, 0.0625, 2), 0.0625, Tolerance);
        Assert.Equal(0.14879063, water.WettedSurface, 5e-9);
        Assert.Equal(0.66129169, water.WettedSurface / ((2 * 0.0625) + 0.1), 5e-9);
    }

    [Theory]
    [InlineData(0.31)]
    [InlineData(0.5)]
    [InlineData(0.93)]
    public void A_lower_water_plane_meets_the_integral_of_the_parabola_up_to_it(double fraction)
    {
        const double L = 5.2, B = 0.74, T = 0.2;
        var water = UprightHydrostatics.Below(WigleyHull.Bicubic(L, B, T, 3), fraction * T, Tolerance);
        // With v = z/T the section's half-breadths go as 2v − v²: area v² − v³/3, first moment 2v³/3 − v⁴/4.
        double v = fraction, area = (v * v) - (v * v * v / 3), moment = (2 * v * v * v / 3) - (v * v * v * v / 4);
        Near(2 / 3.0 * L * B * T * area, water.Volume);
        Near(T * moment / area, water.Center?.Z);
        Near(2 / 3.0 * L * B * ((2 * v) - (v * v)), water.Waterplane?.Area);
    }

    private static void Near(double expected, double? actual) => Assert.Equal(expected, actual!.Value, 1e-9 * Math.Abs(expected));
}
