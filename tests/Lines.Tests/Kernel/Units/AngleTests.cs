using CsCheck;
using Lines.Kernel.Units;
using Xunit;

namespace Lines.Tests.Kernel.Units;

public sealed class AngleTests
{
    [Theory]
    [InlineData("12 deg", 12)]
    [InlineData("12.5°", 12.5)]
    [InlineData("-10 deg", -10)]
    [InlineData("12 1/2 deg", 12.5)]
    [InlineData("0 deg", 0)]
    [InlineData("0.5 rad", 28.64788975654116)] // 0.5 * 180 / pi
    public void Degrees_and_radians_are_read(string text, double degrees)
    {
        Assert.Equal(degrees, Angle.Parse(text).Degrees, 1e-12);
    }

    [Theory]
    [InlineData("12", "has no unit; write 12 deg, or 12 rad")]
    [InlineData("12,5 deg", "so write 12.5 deg")]
    [InlineData("12 grad", "has the unknown unit \"grad\"; angles are in deg or rad")]
    [InlineData("steep", "is not an angle")]
    [InlineData("12 deg 30", "has \"30\" after the unit")]
    [InlineData("", "is empty")]
    public void What_is_not_an_angle_says_why_and_what_would_be_right(string text, string expected)
    {
        Assert.False(Angle.TryParse(text, out _, out var fault));
        Assert.Contains(expected, fault!.ToString(), StringComparison.Ordinal);
        Assert.Throws<FormatException>(() => Angle.Parse(text));
    }

    [Fact]
    public void Reading_back_what_was_shown_is_within_half_a_hundredth_of_a_degree()
    {
        Gen.Double[-180, 180].Sample(degrees =>
            Math.Abs(Angle.Parse(Angle.FromDegrees(degrees).ToText()).Degrees - degrees) <= 0.005 + 1e-9);
    }
}
