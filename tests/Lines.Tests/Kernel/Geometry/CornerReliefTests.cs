using CsCheck;
using Lines.Kernel.Geometry;
using Xunit;

namespace Lines.Tests.Kernel.Geometry;

/// <summary>Inside corners cut out for a round tool: closed forms of the circle through a corner.</summary>
public class CornerReliefTests
{
    // A square plate with a slot 12 wide and 30 deep in its upper edge, counter-clockwise.
    private static readonly ArcPath Slotted = ArcPath.Through(
        [new(0, 0), new(100, 0), new(100, 80), new(56, 80), new(56, 50), new(44, 50), new(44, 80), new(0, 80)], closed: true);

    [Fact]
    public void A_square_corner_becomes_half_the_tools_circle_through_it()
    {
        var relieved = CornerRelief.Of(Slotted, 3, out var tight);
        Assert.Empty(tight);
        var arcs = relieved.Segments().Where(s => !s.IsLine).ToList();
        Assert.Equal(2, arcs.Count);
        foreach (var (arc, corner) in arcs.Zip(new Point2[] { new(56, 50), new(44, 50) }))
        {
            Assert.Equal(3, arc.Radius, 1e-12);
            Assert.Equal(-Math.PI, arc.Turn, 1e-12);
            Assert.Equal(0, arc.DistanceTo(corner), 1e-12);
            // The tool's center stands on the bisector, one radius from the corner, in the slot.
            Assert.Equal(3, arc.Center.DistanceTo(corner), 1e-12);
            Assert.InRange(arc.Center.X, 44, 56);
            Assert.True(arc.Center.Y > 50);
        }

        // Each corner loses half a circle, less the half square 2 r² / 2 under its chord that was cut before.
        Assert.Equal(Slotted.SignedArea() - (2 * ((Math.PI * 9 / 2) - 9)), relieved.SignedArea(), 1e-9);
    }

    // The region a round tool can clear is the union of its circles clear of the part: with the relief every corner point is on such a circle.
    [Fact]
    public void At_any_angle_the_corner_lies_on_the_arc_and_the_tools_circle_keeps_off_the_rest() =>
        Gen.Select(Gen.Double[35, 145], Gen.Double[0.5, 4]).Sample((degrees, radius) =>
        {
            var half = degrees * Math.PI / 360;
            var tip = new Point2(0, 0);
            Vector2 left = new(-Math.Sin(half), Math.Cos(half)), right = new(Math.Sin(half), Math.Cos(half));
            var path = ArcPath.Through([new(-200, -50), new(200, -50), new(200, 60), tip + (60 * right), tip, tip + (60 * left), new(-200, 60)], closed: true);
            var relieved = CornerRelief.Of(path, radius, out var tight);
            Assert.Empty(tight);
            var arc = Assert.Single(relieved.Segments(), s => !s.IsLine);
            Assert.Equal(radius, arc.Radius, 1e-9);
            Assert.Equal(0, arc.DistanceTo(tip), 1e-9);
            Assert.Equal(radius, relieved.DistanceTo(arc.Center), 1e-9);
            Assert.False(relieved.Contains(arc.Center));
        });

    // A half circle of radius 4 in the lower edge of a plate.
    [Theory]
    [InlineData(3, 4)]
    [InlineData(6, 6.3)]
    [InlineData(60, 4)]
    public void A_half_circle_in_a_side_is_widened_until_the_tool_goes_in_where_the_side_has_room(double tool, double radius)
    {
        var plate = new ArcPath([new(new(54, 0), 0), new(new(100, 0), 0), new(new(100, 80), 0), new(new(0, 80), 0), new(new(0, 0), 0), new(new(46, 0), -1)], true);
        var arc = Assert.Single(CornerRelief.Of(plate, tool, out _).Segments(), s => !s.IsLine);
        Assert.Equal(radius, arc.Radius, 1e-12);
        Assert.Equal(-1, arc.Bulge);
        Assert.Equal(0, arc.Center.DistanceTo(new Point2(50, 0)), 1e-12);
    }

    [Fact]
    public void Outside_corners_arcs_and_corners_too_tight_for_the_tool_stay()
    {
        Assert.Equal(Slotted.Vertices, CornerRelief.Of(Slotted, 5, out var tight).Vertices);
        Assert.Equal([new Point2(56, 50), new Point2(44, 50)], tight);
        var circle = ArcPath.Circle(new Point2(0, 0), 10);
        Assert.Equal(circle.Vertices, CornerRelief.Of(circle, 2, out _).Vertices);
        Assert.Throws<ArgumentException>(() => CornerRelief.Of(ArcPath.Line(new(0, 0), new(1, 0)), 1, out _));
        Assert.Throws<ArgumentOutOfRangeException>(() => CornerRelief.Of(Slotted, 0, out _));
        Assert.Throws<ArgumentOutOfRangeException>(() => CornerRelief.Of(Slotted, double.NaN, out _));
    }
}
