using Lines.Kernel.Geometry;
using Xunit;

namespace Lines.Tests.Kernel.Geometry;

public class ThinnedTests
{
    [Theory]
    [InlineData(0.3)]
    [InlineData(0.01)]
    public void Every_corner_left_out_is_within_the_tolerance(double tolerance)
    {
        Point2[] loop = [.. Enumerable.Range(0, 500).Select(k => Math.PI * k / 250).Select(a => new Point2((30 + (4 * Math.Sin(5 * a))) * Math.Cos(a), 12 * Math.Sin(a)))];
        var thin = Thinned.Loop(loop, tolerance);
        Assert.All(thin, p => Assert.Contains(p, loop));
        Assert.InRange(thin.Count, 8, 200);
        Assert.All(loop, p => Assert.InRange(Enumerable.Range(0, thin.Count).Min(k => FromSide(p, thin[k], thin[(k + 1) % thin.Count])), 0, tolerance));
    }

    [Fact]
    public void Corners_on_a_side_vanish_and_true_corners_stay()
    {
        Point2[] square = [new(0, 0), new(1, 0), new(2, 0), new(2, 1), new(2, 2), new(1, 2), new(0, 2), new(0, 1)];
        Assert.Equal([new(0, 0), new(2, 0), new(2, 2), new(0, 2)], Thinned.Loop(square, 1e-9));
        Assert.Equal(square[..3], Thinned.Loop(square[..3], 1));
    }

    private static double FromSide(Point2 p, Point2 a, Point2 b)
    {
        Vector2 side = b - a, to = p - a;
        var along = Math.Clamp(to.Dot(side) / side.Dot(side), 0, 1);
        return (to - (along * side)).Length;
    }
}
