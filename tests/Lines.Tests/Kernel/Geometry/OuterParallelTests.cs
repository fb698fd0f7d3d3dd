using CsCheck;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Kernel.Geometry;

public class OuterParallelTests
{
    // Closed form: the parallel of a circle is a circle about the same middle.
    [Fact]
    public void Outside_a_circle_runs_a_circle()
    {
        var found = Assert.Single(OuterParallel.Of(ArcPath.Circle(new(10, 20), 50), 3));
        Assert.True(found.Closed);
        Assert.All(PathDistance.Samples(found, 1), p => Assert.Equal(53, p.DistanceTo(new(10, 20)), 1e-9));
    }

    // Steiner's formulas (1840, from memory): outside a convex curve at d the length is L + 2 π d, the area A + L d + π d².
    [Fact]
    public void Outside_convex_corners_length_and_area_are_Steiners() => Gen.Select(Gen.Double[0.5, 20], Gen.Double[40, 300], Gen.Double[40, 300]).Sample((d, width, height) =>
    {
        var path = new ArcPath([new(new(0, 0), 0), new(new(width, 0), 0.2), new(new(width, height), 0), new(new(0, height), 0.1)], true);
        var found = Assert.Single(OuterParallel.Of(path, d));
        Assert.True(found.Closed);
        Assert.Equal(path.Length() + (2 * Math.PI * d), found.Length(), 1e-6);
        Assert.Equal(path.SignedArea() + (d * path.Length()) + (Math.PI * d * d), found.SignedArea(), 1e-4);
    });

    // By hand: an L of legs 40 wide; its outside at 5 has a sharp corner at (45, 45), where both legs' lines cross.
    [Fact]
    public void In_an_inside_corner_the_two_lines_meet_in_a_point()
    {
        var path = ArcPath.Through([new(0, 0), new(100, 0), new(100, 40), new(40, 40), new(40, 100), new(0, 100)], closed: true);
        var found = Assert.Single(OuterParallel.Of(path, 5));
        Assert.True(found.Closed);
        Assert.True(found.Vertices.Min(v => v.Point.DistanceTo(new(45, 45))) < 0.002);
        Assert.DoesNotContain(found.Vertices, v => PathDistance.To([path], v.Point) < 4.999);
    }

    [Fact]
    public void A_slot_too_narrow_for_it_is_passed_over_and_a_wide_one_is_not()
    {
        static ArcPath Slotted(double width) => ArcPath.Through(
            [new(0, 0), new(100, 0), new(100, 60), new(50 + (width / 2), 60), new(50 + (width / 2), 20), new(50 - (width / 2), 20), new(50 - (width / 2), 60), new(0, 60)], closed: true);
        Assert.All(OuterParallel.Of(Slotted(8), 5), p => Assert.True(p.Bounds().Holds(new Box2(-4.9, -4.9, 104.9, 64.9))));
        Assert.DoesNotContain(OuterParallel.Of(Slotted(8), 5).SelectMany(p => PathDistance.Samples(p, 1)), p => p.X is > 48 and < 52 && p.Y is > 20 and < 60);
        Assert.Contains(OuterParallel.Of(Slotted(20), 5).SelectMany(p => PathDistance.Samples(p, 1)), p => p.Y is > 24.9 and < 26 && p.X is > 45 and < 55);
    }

    // Its promise: the distance less a ten-thousandth; distances by plain geometry.
    [Fact]
    public void Every_point_outside_a_mold_is_at_the_distance()
    {
        foreach (var mold in ShapedTemplates.Of("line-layer").Molds.Parts)
        {
            var outline = mold.Outline.Mapped(p => new Point2(1000 * p.X, 1000 * p.Y));
            foreach (var p in OuterParallel.Of(outline, 3).SelectMany(f => PathDistance.Samples(f, 5)))
            {
                Assert.InRange(PathDistance.To([outline], p), 3 - 3.1e-4, 3 + 1e-6);
                Assert.False(outline.Contains(p));
            }
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void A_distance_that_is_not_positive_is_refused(double distance) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => OuterParallel.Of(ArcPath.Circle(new(0, 0), 5), distance));
}
