using Lines.Hull.Offsets;
using Lines.Hull.Sections;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Offsets;

public class OffsetsRefitTests
{
    [Theory]
    [InlineData(2.0)]
    [InlineData(5.2)]
    [InlineData(12.0)]
    public void Wigleys_lengthwise_lines_come_back_within_a_step_in_every_rounding(double length)
    {
        var lines = HullLines.Of(WigleyHull.Of(length, length / 8, length / 16));
        foreach (var step in new[] { 0.0001, 0.0254 / 32, 0.0254 / 16 })
        {
            var refit = OffsetsRefit.Of(lines, step);
            foreach (var line in refit.Lines.Where(l => l.Kind is LineKind.Waterline or LineKind.Sheer or LineKind.Keel or LineKind.Diagonal))
            {
                Assert.InRange(line.AtStations, 0, (step / 2) + 1e-9);
                Assert.True(line.Between <= step, line.Name);
                Assert.True(line.Moved <= step);
            }
        }
    }

    [Fact]
    public void Without_rounding_a_parabola_comes_back_to_a_hundredth_of_a_millimeter() =>
        Assert.All(
            OffsetsRefit.Of(HullLines.Of(WigleyHull.Of(5, 0.5, 0.3125)), 1e-9).Lines.Where(l => l.Kind == LineKind.Waterline),
            l => Assert.InRange(l.Between, 0, 1e-5));

    [Fact]
    public void A_table_that_does_not_hold_is_said_with_line_and_place()
    {
        // A step under the nanometer to which lines are refitted cannot be held by a batten.
        var refit = OffsetsRefit.Of(HullLines.Of(SampleHulls.DoubleEnder()), 1e-8);
        Assert.False(refit.Holds);
        Assert.Equal(refit.Lines.Max(l => l.Between), refit.Worst.Between);
        Assert.InRange(refit.Worst.X, 0, 5.2);
    }

    [Fact]
    public void A_step_of_nothing_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => OffsetsRefit.Of(HullLines.Of(WigleyHull.Of(5, 0.5, 0.3)), 0));
}
