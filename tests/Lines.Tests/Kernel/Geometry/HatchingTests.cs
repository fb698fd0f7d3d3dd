using Lines.Kernel.Geometry;
using Xunit;

namespace Lines.Tests.Kernel.Geometry;

public class HatchingTests
{
    private static readonly Point2[] s_square = [new(0.05, 0.05), new(10.05, 0.05), new(10.05, 10.05), new(0.05, 10.05)];
    private static readonly Point2[] s_hole = [new(3, 3), new(3, 7), new(7, 7), new(7, 3)];

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.7853981633974483)]
    [InlineData(2.0)]
    public void Length_of_lines_times_their_spacing_is_the_area_without_its_holes(double angle)
    {
        const double Spacing = 0.02;
        var length = Hatching.Lines([s_square, s_hole], Spacing, angle).Sum(l => l.From.DistanceTo(l.To));
        Assert.Equal(84, length * Spacing, 84 * 2e-3);
    }

    [Fact]
    public void No_line_enters_a_hole_or_leaves_the_region()
    {
        foreach (var (from, to) in Hatching.Lines([s_square, s_hole], 0.31, 0.9))
        {
            for (var t = 0.01; t < 1; t += 0.049)
            {
                var p = from + (t * (to - from));
                Assert.True(p.X > 0.05 && p.X < 10.05 && p.Y > 0.05 && p.Y < 10.05 && !(p.X > 3 && p.X < 7 && p.Y > 3 && p.Y < 7), $"{p}");
            }
        }
    }

    [Fact]
    public void Lines_through_corners_count_once()
    {
        // Level lines one apart, with corners of the region exactly on them.
        Point2[] diamond = [new(0, -2), new(2, 0), new(0, 2), new(-2, 0)];
        var lines = Hatching.Lines([diamond], 1, 0);
        Assert.Equal([2.0, 4, 2], lines.Select(l => l.From.DistanceTo(l.To)).Where(d => d > 0));
    }
}
