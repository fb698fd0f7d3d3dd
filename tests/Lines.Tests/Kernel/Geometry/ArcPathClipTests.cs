using CsCheck;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Kernel.Geometry;

public class ArcPathClipTests
{
    private static readonly Gen<Point2> Points = Gen.Select(Gen.Double[-50, 50], Gen.Double[-50, 50], (x, y) => new Point2(x, y));

    private static readonly Gen<ArcSegment> Arcs =
        Gen.Select(Points, Points, Gen.OneOf(Gen.Double[-4, 4], Gen.Double[-1e-6, 1e-6], Gen.Const(0.0)), (a, b, bulge) => new ArcSegment(a, b, bulge))
            .Where(s => s.From.DistanceTo(s.To) > 0.1);

    // The oracle measures from the center, which loses its digits on nearly straight arcs; those are covered by the box and length tests.
    private static readonly Gen<double> Bulges = Gen.OneOf(Gen.Const(0.0), Gen.Double[0.001, 1.5], Gen.Double[-1.5, -0.001]);

    private static readonly Gen<ArcPath> Paths = Gen.Select(
        Gen.Select(Points, Bulges, (p, b) => new ArcVertex(p, b)).Array[2, 8],
        Gen.Bool,
        (v, closed) => new ArcPath(v, closed && v.Length > 2));

    [Fact]
    public void Center_radius_length_of_a_quarter_circle_are_those_of_the_circle()
    {
        var quarter = new ArcSegment(new(3, 0), new(0, 3), Math.Tan(Math.PI / 8));
        Assert.Equal(0, quarter.Center.DistanceTo(new Point2(0, 0)), 14);
        Assert.Equal(3, quarter.Radius, 14);
        Assert.Equal(3 * Math.PI / 2, quarter.Length, 14);
        Assert.Equal(0, quarter.PointAt(1 / 3.0).DistanceTo(new Point2(3 * Math.Cos(Math.PI / 6), 1.5)), 14);
        Assert.Equal(0, (quarter.StartDirection - new Vector2(0, 1)).Length, 14);
    }

    [Fact]
    public void A_circle_cut_by_a_box_from_its_center_leaves_one_quarter_arc()
    {
        var cut = Assert.Single(ArcPath.Circle(new(0, 0), 3).Inside(new Box2(0, 0, 10, 10)));
        Assert.False(cut.Closed);
        Assert.Equal(3 * Math.PI / 2, cut.Segments().Sum(s => s.Length), 12);
        Assert.All(cut.Segments(), s => Assert.Equal(3, s.Radius, 12));
        Assert.Equal(0, cut.Vertices[0].Point.DistanceTo(new(3, 0)), 12);
        Assert.Equal(0, cut.Vertices[^1].Point.DistanceTo(new(0, 3)), 12);
    }

    [Fact]
    public void A_path_wholly_inside_comes_back_as_it_was()
    {
        var circle = ArcPath.Circle(new(5, 5), 5);
        Assert.Same(circle, Assert.Single(circle.Inside(new Box2(0, 0, 10, 10))));
    }

    [Fact]
    public void A_closed_path_entered_across_its_first_corner_stays_one_piece()
    {
        var square = new Box2(0, 0, 10, 10).Outline;
        var cut = Assert.Single(square.Inside(new Box2(-5, -5, 5, 5)));
        Assert.Equal([new(0, 5), new(0, 0), new(5, 0)], cut.Vertices.Select(v => v.Point));
    }

    [Fact]
    public void The_box_around_an_arc_holds_it_and_is_touched_on_all_sides() => Arcs.Sample(s =>
    {
        var bounds = s.Bounds();
        var samples = Enumerable.Range(0, 2001).Select(i => s.PointAt(i / 2000.0)).ToList();
        Assert.All(samples, p => Assert.True(bounds.Grown(1e-9).Holds(p)));
        var seen = Box2.Around(samples);
        // A sample is within half a step of a turning point: sagitta (step/2)^2 / 2R.
        var step = s.Length / 2000;
        var slack = 1e-9 + (s.IsLine ? 0 : step * step / (2 * s.Radius));
        Assert.True(seen.Grown(slack).Holds(bounds));
    });

    [Fact]
    public void Pieces_lie_on_the_path_and_inside_the_box() =>
        Gen.Select(Paths, Points, Points).Sample((path, a, b) =>
        {
            var box = Box2.Around([a, b]);
            foreach (var p in path.Inside(box).SelectMany(x => PathDistance.Samples(x, 2)))
            {
                Assert.True(box.Grown(1e-9).Holds(p));
                Assert.True(PathDistance.To([path], p) < 1e-7);
            }
        });

    [Fact]
    public void Nothing_of_the_path_inside_the_box_is_lost() =>
        Gen.Select(Paths, Points, Points).Sample((path, a, b) =>
        {
            var box = Box2.Around([a, b]);
            var pieces = path.Inside(box);
            foreach (var p in PathDistance.Samples(path, 2).Where(box.Grown(-1e-9).Holds))
                Assert.True(PathDistance.To(pieces, p) < 1e-7);
        });

    [Fact]
    public void A_segment_enters_a_box_when_a_piece_of_it_is_kept() =>
        Gen.Select(Arcs, Points, Points).Sample(
            (s, a, b) =>
            {
                // A segment that only grazes an edge, by less than 1e-7, may be told either way.
                var box = Box2.Around([a, b]);
                var path = new ArcPath([new ArcVertex(s.From, s.Bulge), new ArcVertex(s.To, 0)], false);
                if (s.Enters(box))
                    Assert.NotEmpty(path.Inside(box.Grown(1e-7)));
                else
                    Assert.Empty(path.Inside(box.Grown(-1e-7)));
            });

    [Fact]
    public void Cutting_with_two_halves_of_a_box_keeps_the_length_of_cutting_with_the_whole() =>
        Gen.Select(Paths, Points, Points).Sample((path, a, b) =>
        {
            var box = Box2.Around([a, b]);
            // A box of no breadth has no halves: a line along it is in both. Points are drawn on a grid now and then, the seam is on none.
            if (a.X == b.X)
                return;
            var middle = box.Left + (0.4142 * box.Width);
            double Length(Box2 window) => path.Inside(window).SelectMany(p => p.Segments()).Sum(s => s.Length);
            Assert.Equal(Length(box), Length(box with { Right = middle }) + Length(box with { Left = middle }), 1e-6);
        });

    [Fact]
    public void An_area_cut_by_a_box_keeps_the_common_area()
    {
        var cut = new Box2(0, 0, 10, 10).Outline.AreaInside(new Box2(4, -5, 20, 3), 0.01);
        Assert.Equal(18, Area(cut), 12);
    }

    private static double Area(ArcPath polygon)
    {
        var p = polygon.Vertices.Select(v => v.Point).ToList();
        return Enumerable.Range(0, p.Count).Sum(i => (p[i].X * p[(i + 1) % p.Count].Y) - (p[(i + 1) % p.Count].X * p[i].Y)) / 2;
    }
}
