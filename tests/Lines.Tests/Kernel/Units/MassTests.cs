using Lines.Kernel.Units;
using Xunit;

namespace Lines.Tests.Kernel.Units;

public sealed class MassTests
{
    [Theory]
    [InlineData("130 kg", 130, false)]
    [InlineData("130.5kg", 130.5, false)]
    [InlineData(" 1 lb ", 0.45359237, true)] // the international pound of 1959, exact
    [InlineData("287 1/2 lbs", 287.5 * 0.45359237, true)]
    public void Kilograms_and_pounds_are_read_with_their_unit(string text, double kilograms, bool pounds)
    {
        Assert.True(Mass.TryParse(text, out var mass, out var inPounds, out _));

        Assert.Equal(kilograms, mass.Kilograms, 1e-12);
        Assert.Equal(pounds, inPounds);
    }

    [Theory]
    [InlineData("", "is empty")]
    [InlineData("heavy", "is not a mass")]
    [InlineData("130", "has no unit; write 130 kg, or 130 lb, whichever is meant")]
    [InlineData("130 stone", "has the unknown unit \"stone\"; masses are in kg or lb")]
    [InlineData("130,5 kg", "has a comma; the decimal mark is a point, so write 130.5 kg")]
    [InlineData("130 kg net", "has \"net\" after the unit")]
    [InlineData("-130 kg", "is not a mass")]
    public void What_is_no_mass_is_told_why(string text, string expected)
    {
        Assert.False(Mass.TryParse(text, out _, out _, out var fault));

        Assert.StartsWith(expected, fault!.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.04)]
    [InlineData(130)]
    [InlineData(4321.987)]
    public void What_is_shown_is_read_back_to_half_a_tenth_of_its_unit(double kilograms)
    {
        foreach (var inPounds in (bool[])[false, true])
        {
            Assert.True(Mass.TryParse(new Mass(kilograms).ToText(inPounds), out var back, out var pounds, out _));
            Assert.Equal(inPounds, pounds);
            Assert.Equal(kilograms, back.Kilograms, (0.05 * (inPounds ? Mass.Pound : 1)) + 1e-12);
        }
    }
}
