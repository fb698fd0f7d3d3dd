using Lines.Kernel.Units;
using Xunit;

namespace Lines.Tests.Kernel.Units;

public sealed class ArealMassTests
{
    [Theory]
    [InlineData("200 g/m2", 0.2, false)]
    [InlineData("200 g/m²", 0.2, false)]
    [InlineData("0.163 kg/m2", 0.163, false)]
    [InlineData("6 oz/yd2", 0.203434, true)] // 33.9057 g/m2 in 1 oz/yd2
    [InlineData("6 oz", 0.203434, true)] // as cloth is sold
    [InlineData("1/2 oz/yd2", 0.0169528, true)]
    public void Weights_of_cloth_are_read_in_grams_and_ounces(string text, double expected, bool expectedOunces)
    {
        Assert.True(ArealMass.TryParse(text, out var mass, out var inOunces, out _));
        Assert.Equal(expected, mass.KilogramsPerSquareMeter, 1e-6);
        Assert.Equal(expectedOunces, inOunces);
    }

    [Theory]
    [InlineData("", "is empty")]
    [InlineData("200", "has no unit")]
    [InlineData("0,2 kg/m2", "has a comma")]
    [InlineData("200 g", "unknown unit")]
    [InlineData("heavy", "is not a weight of cloth")]
    [InlineData("200 g/m2 and more than anybody would write in one value", "too long")]
    public void What_is_no_weight_of_cloth_is_told_why(string text, string problem)
    {
        Assert.False(ArealMass.TryParse(text, out _, out _, out var fault));
        Assert.Contains(problem, fault!.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_shown_is_read_back_to_half_its_last_place()
    {
        var random = new Random(20260726);
        for (var i = 0; i < 200; i++)
        {
            var mass = random.NextDouble();
            Assert.True(ArealMass.TryParse(new ArealMass(mass).ToText(inOunces: false), out var grams, out _, out _));
            Assert.Equal(mass, grams.KilogramsPerSquareMeter, 0.0005 + 1e-12);
            Assert.True(ArealMass.TryParse(new ArealMass(mass).ToText(inOunces: true), out var ounces, out _, out _));
            Assert.Equal(mass, ounces.KilogramsPerSquareMeter, (0.05 * ArealMass.OuncePerSquareYard) + 1e-12);
        }
    }
}
