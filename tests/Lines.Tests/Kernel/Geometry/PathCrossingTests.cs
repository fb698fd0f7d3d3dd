using Lines.Kernel.Geometry;
using NetTopologySuite.Geometries;
using Xunit;

namespace Lines.Tests.Kernel.Geometry;

/// <summary>Paths that cross themselves, against an outside library's verdict on the same rings.</summary>
public class PathCrossingTests
{
    [Fact]
    public void Random_rings_cross_themselves_where_an_outside_library_says_so()
    {
        var random = new Random(7);
        var crossed = 0;
        for (var n = 0; n < 400; n++)
        {
            // Stars around a point never cross; a vertex thrown anywhere often makes them.
            var points = Enumerable.Range(0, 12).Select(k => (Angle: k * Math.PI / 6, Radius: 0.3 + random.NextDouble())).Select(p => new Point2(p.Radius * Math.Cos(p.Angle), p.Radius * Math.Sin(p.Angle))).ToArray();
            if (n % 2 == 0)
                points[3] = new Point2((2 * random.NextDouble()) - 1, (2 * random.NextDouble()) - 1);
            var ring = new LinearRing([.. points.Append(points[0]).Select(p => new Coordinate(p.X, p.Y))]);
            var found = PathCrossing.Of(ArcPath.Through([.. points]) with { Closed = true }, 1e-3);
            Assert.Equal(!ring.IsSimple, found is not null);
            if (found is not { } at)
                continue;
            crossed++;
            Assert.True(ring.Distance(new Point(at.X, at.Y)) < 1e-12);
        }

        Assert.InRange(crossed, 20, 380);
    }

    [Fact]
    public void An_arc_that_bulges_over_the_other_side_crosses_it_and_one_that_stays_short_does_not()
    {
        // A slot 2 wide, its lower side an arc of rise b: it reaches the upper side where the rise is 1.
        ArcPath Slot(double rise) => new([new(new Point2(2, 0), 0), new(new Point2(2, 1), 0), new(new Point2(0, 1), 0), new(new Point2(0, 0), -rise)], true);
        Assert.Null(PathCrossing.Of(Slot(0.99), 1e-3));
        Assert.NotNull(PathCrossing.Of(Slot(1.01), 1e-3));
    }
}
