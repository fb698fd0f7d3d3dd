using Lines.Kernel.Geometry;
using Xunit;

namespace Lines.Tests.Kernel.Geometry;

public class ArcPathMeasuresTests
{
    [Fact]
    public void A_circle_of_two_arcs_has_the_length_area_and_bounds_of_a_circle()
    {
        var circle = ArcPath.Circle(new Point2(3, -2), 0.75);
        Assert.Equal(2 * Math.PI * 0.75, circle.Length(), 1e-12);
        Assert.Equal(Math.PI * 0.75 * 0.75, circle.SignedArea(), 1e-12);
        var box = circle.Bounds();
        Assert.Equal([2.25, -2.75, 3.75, -1.25], [box.Left, box.Bottom, box.Right, box.Top]);
    }

    [Fact]
    public void A_bulge_of_one_is_a_half_circle_to_the_left()
    {
        // DXF reference (group code 42): the bulge is the tangent of a quarter of the included angle, 1 is a semicircle,
        // positive where the arc goes counter-clockwise.
        var s = new ArcSegment(new Point2(0, 0), new Point2(2, 0), 1);
        Assert.Equal(Math.PI, s.Turn, 1e-12);
        Assert.Equal(1, s.Radius, 1e-12);
        Assert.True(s.PointAt(0.5).DistanceTo(new Point2(1, -1)) < 1e-12);
        Assert.True((s.StartDirection - new Vector2(0, -1)).Length < 1e-12);
        Assert.True((s.EndDirection - new Vector2(0, 1)).Length < 1e-12);
    }

    [Fact]
    public void Distance_and_side_agree_with_the_circle_the_arcs_lie_on()
    {
        var circle = ArcPath.Circle(new Point2(0, 0), 1);
        for (var i = 0; i < 200; i++)
        {
            double angle = 0.37 * i, r = 0.01 * (i + 0.5);
            var p = new Point2(r * Math.Cos(angle), r * Math.Sin(angle));
            Assert.Equal(Math.Abs(r - 1), circle.DistanceTo(p), 1e-12);
            Assert.Equal(r < 1, circle.Contains(p));
            Assert.Equal(r < 1, new ArcPath([.. circle.Vertices.Select(v => v with { Bulge = -1 })], true).Contains(p));
        }
    }

    [Fact]
    public void A_flattened_path_stays_within_its_tolerance_and_keeps_its_vertices()
    {
        var path = new ArcPath([new ArcVertex(new Point2(0, 0), 0.4), new ArcVertex(new Point2(1, 0), 0), new ArcVertex(new Point2(1, 1), -0.2)], true);
        var points = path.Flattened(1e-4);
        Assert.Equal(points[0], points[^1]);
        Assert.All(path.Vertices, v => Assert.Contains(v.Point, points));
        for (var i = 1; i < points.Count; i++)
            Assert.InRange(path.DistanceTo(points[i - 1] + (0.5 * (points[i] - points[i - 1]))), 0, 1e-4);
    }

    [Fact]
    public void A_path_run_backward_twice_is_itself()
    {
        var path = new ArcPath([new ArcVertex(new Point2(0, 0), 0.4), new ArcVertex(new Point2(1, 0), -0.1), new ArcVertex(new Point2(1, 1), 0)], false);
        Assert.Equal(path.Vertices, path.Reversed().Reversed().Vertices);
        Assert.Equal(path.Length(), path.Reversed().Length(), 1e-12);
        Assert.Equal(path.Vertices[^1].Point, path.Reversed().Vertices[0].Point);
    }
}
