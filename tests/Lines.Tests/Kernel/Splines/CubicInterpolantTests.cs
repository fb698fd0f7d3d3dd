using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;
using Xunit;

namespace Lines.Tests.Kernel.Splines;

public class CubicInterpolantTests
{
    [Fact]
    public void It_passes_through_its_points_with_the_directions_given()
    {
        Point2[] points = [new(0, 0), new(1, 2), new(3, 2.5), new(4, 1)];
        var curve = new CubicInterpolant(points, new Vector2(0, 3), new Vector2(1, -1));
        for (var k = 0; k < 4; k++)
            Assert.Equal(0, curve.PointAt(curve.Lengths[k]).DistanceTo(points[k]), 14);
        Assert.Equal(0, (curve.FirstAt(0) - new Vector2(0, 1)).Length, 14);
        Assert.Equal(0, (curve.FirstAt(curve.Lengths[^1]) - new Vector2(1, -1).Unit()).Length, 14);
    }

    [Fact]
    public void Free_ends_do_not_bend_and_the_second_derivative_is_continuous()
    {
        var curve = new CubicInterpolant([new(0, 0), new(1, 1), new(2, 0), new(3, 1)]);
        Assert.Equal(0, curve.SecondAt(0).Length, 14);
        Assert.Equal(0, curve.SecondAt(curve.Lengths[^1]).Length, 14);
        var s = curve.Lengths[1];
        Assert.Equal(0, (curve.SecondAt(s - 1e-10) - curve.SecondAt(s + 1e-10)).Length, 8);
    }

    [Fact]
    public void The_natural_spline_through_0_1_0_is_the_textbook_one()
    {
        // On even knots h = 1 the middle second derivative of values 0, 1, 0 is 6 (0 - 2 + 0) / 4 = -3: any numerical text.
        // Points (k h, y_k) nearly level so that chord lengths are even to second order.
        const double e = 1e-6;
        var curve = new CubicInterpolant([new(0, 0), new(1, e), new(2, 0)]);
        Assert.Equal(-3 * e, curve.SecondAt(1).Y, 15);
        Assert.Equal(11.0 / 16 * e, curve.PointAt(0.5).Y, 15);
    }

    [Fact]
    public void Through_a_circle_it_errs_by_the_fourth_power_of_the_spacing()
    {
        double Error(int n)
        {
            var points = Enumerable.Range(0, n + 1).Select(k => On(k / (double)n)).ToArray();
            var curve = new CubicInterpolant(points, new Vector2(0, 1), new Vector2(-1, 0));
            return Enumerable.Range(0, 1000).Max(k => Math.Abs(curve.DistanceTo(On(k / 999.0), k / 999.0 * curve.Lengths[^1]).Distance));
        }

        Assert.InRange(Error(8) / Error(16), 12, 20);
        Assert.InRange(Error(16), 0, 1e-5);
        static Point2 On(double f) => new(Math.Cos(f * Math.PI / 2), Math.Sin(f * Math.PI / 2));
    }

    [Fact]
    public void Distance_is_positive_to_the_left()
    {
        var curve = new CubicInterpolant([new(0, 0), new(1, 0), new(2, 0)]);
        Assert.Equal(0.25, curve.DistanceTo(new Point2(0.7, 0.25), 0.2).Distance, 14);
        Assert.Equal(-0.25, curve.DistanceTo(new Point2(0.7, -0.25), 0.2).Distance, 14);
        Assert.Equal(0.7, curve.DistanceTo(new Point2(0.7, -0.25), 0.2).Foot, 12);
    }

    [Fact]
    public void Points_that_coincide_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new CubicInterpolant([new(0, 0)]));
        Assert.Throws<ArgumentException>(() => new CubicInterpolant([new(0, 0), new(0, 0)]));
    }
}
