using Lines.Construction;
using Lines.Plans.Figures;
using Xunit;

namespace Lines.Tests.Construction;

public class TakeApartTests
{
    private const double Foot = 0.3048;

    [Fact]
    public void Two_ends_of_four_feet_on_a_middle_of_twelve_make_twenty_and_fit_a_space_of_twelve()
    {
        // Common practice, no source.
        var pieces = TakeApart.PieceLengths(20 * Foot, [4 * Foot, 16 * Foot]);
        Assert.Equal([4 * Foot, 12 * Foot, 4 * Foot], pieces, (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Equal(20 * Foot, pieces.Sum(), 1e-12);
        var group = Assert.Single(PieceFigures.Of(20 * Foot, [4 * Foot, 16 * Foot]));
        Assert.Equal(12 * Foot, group.Figures.Single(f => f.Key is "longest_piece").Value!.Value, 1e-12);
    }

    [Fact]
    public void A_hull_without_joints_has_no_pieces_to_tell() => Assert.Empty(PieceFigures.Of(5.2, []));

    [Theory]
    [InlineData(4.0, 3.0)]
    [InlineData(1.0, 6.0)]
    [InlineData(0.0, 2.0)]
    public void Joints_out_of_order_or_outside_the_hull_are_refused(double first, double second) =>
        Assert.Throws<ArgumentException>(() => TakeApart.PieceLengths(5, [first, second]));
}
