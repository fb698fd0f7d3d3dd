using Lines.Construction.Materials;
using Lines.Construction.Planking;
using Lines.Kernel.Units;
using Xunit;

namespace Lines.Tests.Construction.Materials;

/// <summary>Published rules for cloth, resin and lumber.</summary>
public class LayupReferenceChecks
{
    private const double SquareYard = 0.9144 * 0.9144;

    [Fact]
    public void The_printed_example_of_a_canoe_of_17_and_a_half_feet_takes_210_and_a_half_square_feet_of_cloth()
    {
        // Parker in Epoxyworks: 17.5 ft by a girth of 4.5 ft for each side of the planking, 79 ft2; 17.5 by 3 ft below the waterline, 52.5 ft2; in
        // all 210.5 ft2. The article rounds 78.75 up to 79.
        double side = Feet(LayupRules.ClothToBuy(17.5 * Length.Foot, 4.5 * Length.Foot)), bottom = Feet(LayupRules.ClothToBuy(17.5 * Length.Foot, 3 * Length.Foot));
        Assert.Equal(79, side, 0.26);
        Assert.Equal(52.5, bottom, 1e-9);
        Assert.Equal(210.5, (2 * side) + bottom, 0.51);
    }

    [Theory]
    [InlineData(4, 15)]
    [InlineData(6, 10)]
    [InlineData(10, 6.5)]
    public void A_gallon_of_resin_wets_60_ounces_of_cloth(double ounces, double squareYards)
    {
        // Suppliers' worksheets: 15 yd2 of 4 oz, 10 of 6 oz, 6.5 of 10 oz; the last is rounded from 6.
        var cloth = ounces * ArealMass.OuncePerSquareYard * squareYards * SquareYard;
        Assert.Equal(1, LayupRules.ResinToBuy(cloth) / LayupRules.Gallon, 0.09);
        Assert.Equal(3.785411784e-3, LayupRules.Gallon, 1e-12); // NIST Handbook 44: 231 cubic inches
    }

    [Theory]
    [InlineData(4, 0.135623)]
    [InlineData(6, 0.203434)]
    [InlineData(10, 0.339057)]
    public void Ounces_on_a_square_yard_are_33_9057_grams_on_a_square_meter(double ounces, double kilograms) =>
        Assert.Equal(kilograms, ounces * ArealMass.OuncePerSquareYard, 1e-6);

    [Theory]
    [InlineData("western redcedar", 358, 51.711e6, 7.653e9)]
    [InlineData("northern white cedar", 347, 44.816e6, 5.516e9)]
    [InlineData("Douglas-fir", 538, 85.495e6, 13.445e9)]
    [InlineData("Sitka spruce", 430, 70.327e6, 10.825e9)]
    [InlineData("okoume", 430, 75e6, 8.47e9)]
    public void Woods_have_the_handbooks_figures_with_the_water_they_hold(string name, double density, double rupture, double elasticity)
    {
        // Wood Handbook: specific gravity is oven-dry weight over volume at 12 %, so the density with its water is 1.12 times that; 1 psi = 6894.757 Pa.
        // The last two are data sheets.
        var wood = Wood.Find(name)!;
        Assert.Equal(density, wood.Density, 0.5);
        Assert.Equal(1, wood.Rupture / rupture, 1e-4);
        Assert.Equal(1, wood.Elasticity / elasticity, 1e-4);
        Assert.NotEmpty(wood.Source);
    }

    [Fact]
    public void A_board_foot_is_a_foot_square_and_an_inch_thick() =>
        Assert.Equal(0.3048 * 0.3048 * 0.0254, StripStock.BoardFoot, 1e-15); // 144 in3: American Softwood Lumber Standard

    private static double Feet(double squareMeters) => squareMeters / Area.SquareFoot;
}
