using Lines.Kernel.Units;
using Xunit;

namespace Lines.Tests.Kernel.Units;

public sealed class AreaTests
{
    [Theory]
    [InlineData("7.5 m2", 7.5, false)]
    [InlineData(" 7.5m² ", 7.5, false)]
    [InlineData("81 ft2", 81 * 0.09290304, true)] // the foot is 0.3048 m exactly
    [InlineData("81 1/2 sq ft", 81.5 * 0.09290304, true)]
    public void Square_meters_and_square_feet_are_read_with_their_unit(string text, double squareMeters, bool feet)
    {
        Assert.True(Area.TryParse(text, out var area, out var inFeet, out _));

        Assert.Equal(squareMeters, area.SquareMeters, 1e-12);
        Assert.Equal(feet, inFeet);
    }

    [Theory]
    [InlineData("", "is empty")]
    [InlineData("large", "is not an area")]
    [InlineData("7.5", "has no unit; write 7.5 m2, or 7.5 ft2, whichever is meant")]
    [InlineData("7.5 acres", "has the unknown unit \"acres\"; areas are in m2 or ft2")]
    [InlineData("7,5 m2", "has a comma; the decimal mark is a point, so write 7.5 m2")]
    [InlineData("-7 m2", "is not an area")]
    public void What_is_no_area_is_told_why(string text, string expected)
    {
        Assert.False(Area.TryParse(text, out _, out _, out var fault));

        Assert.StartsWith(expected, fault!.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(7.43)]
    [InlineData(59.999)]
    public void What_is_shown_is_read_back_to_half_a_hundredth_of_its_unit(double squareMeters)
    {
        foreach (var feet in new[] { false, true })
        {
            Assert.True(Area.TryParse(new Area(squareMeters).ToText(feet), out var read, out var inFeet, out _));
            Assert.Equal(feet, inFeet);
            Assert.Equal(squareMeters, read.SquareMeters, 0.0051 * (feet ? Area.SquareFoot : 1));
        }
    }
}
