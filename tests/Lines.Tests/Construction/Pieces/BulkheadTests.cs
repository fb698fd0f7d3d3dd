using Lines.Construction;
using Lines.Construction.Molds;
using Lines.Construction.Pieces;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Construction.Pieces;

/// <summary>Bulkheads at the joints, against bodies whose insides are known and against the outer skin by search.</summary>
public class BulkheadTests
{
    private static readonly BuildDials Build = new() { Planking = 0.006, Sheathing = 0.0004, Joints = [1.3, 3.7] };

    [Theory]
    [InlineData(0.3, 0.02)]
    [InlineData(0.25, 0.08)]
    public void Under_a_round_body_a_bulkhead_is_the_circle_of_its_inside_at_its_own_face(double radius, double slope)
    {
        // Closed form: the inside of a cone is one whose radius is less by t / cos of its slope.
        var side = SampleBodies.ConeSkin(4, radius, radius + (4 * slope), 1.3);
        var hull = new HullSurface(side, WigleyHull.Dials(4, 2 * radius, radius / 2), 0.5, 0.5);
        var build = Build with { Planking = 0.010, Sheathing = 0.001, Joints = [2.0], BulkheadOpening = 0.05 };
        var bulkheads = Bulkhead.Of(new MoldShaping(hull, build, new Strongback(-0.1, 4.2, 1, 0.2), []), []);
        Assert.Equal([1.998, 2.002], bulkheads.Select(b => b.X), (a, b) => Math.Abs(a - b) < 1e-12);
        foreach (var bulkhead in bulkheads)
        {
            var inside = radius + (slope * bulkhead.X) - (0.011 / Math.Cos(Math.Atan(slope)));
            var edge = bulkhead.Outline.Flattened(1e-6).Where(p => p.Y > 0.0005).Select(bulkhead.Frame.ToHull).ToList();
            Assert.All(edge, p => Assert.Equal(inside, double.Hypot(p.Y, p.Z - radius), 0.00002));
        }
    }

    [Theory]
    [InlineData("double-ender", 0.55)]
    [InlineData("double-ender", 2.6)]
    [InlineData("transom boat", 3.6)]
    [InlineData("sample-courier", 2)]
    [InlineData("line-layer", 4.6)]
    public void Every_point_of_its_edge_lies_planking_and_cloth_under_the_outside(string name, double joint)
    {
        // Definition, by search on the skin itself; shop tolerance 0.02 mm.
        var hull = Hull(name);
        var plan = MoldPlan.Of(hull, Build with { Joints = [joint] });
        Assert.Equal([joint - 0.002, joint + 0.002], plan.Bulkheads.Select(b => b.X), (a, b) => Math.Abs(a - b) < 1e-12);
        foreach (var bulkhead in plan.Bulkheads)
        {
            Assert.Equal(bulkhead.IsForward ? MoldFace.Stern : MoldFace.Bow, bulkhead.Face);
            var edge = bulkhead.Outline.Flattened(1e-6).Where(p => p.X >= 0 && p.Y > 0.0005).ToList();
            foreach (var p in Enumerable.Range(0, 24).Select(k => bulkhead.Frame.ToHull(edge[k * (edge.Count - 1) / 23])))
            {
                Assert.Equal(bulkhead.X, p.X, 1e-12);
                Assert.Equal(0.0064, NearestOnSkin.Distance(hull.Side.PointAt, p with { Y = Math.Abs(p.Y) }, (-0.05, 1.05), (0, 1.3)), 0.00002);
            }
        }
    }

    [Theory]
    [InlineData("double-ender", 2.6, 0.05)]
    [InlineData("double-ender", 0.7, 0.12)]
    [InlineData("transom boat", 3.6, 0.08)]
    [InlineData("sample-courier", 2, 0.001)]
    public void Under_a_crowned_deck_it_rises_to_its_underside(string name, double joint, double crown)
    {
        var open = Hull(name);
        var hull = CrownedHulls.With(open, crown);
        var plan = MoldPlan.Of(hull, Build with { Joints = [joint] });
        Assert.Equal(2, plan.Bulkheads.Count);
        foreach (var (bulkhead, level) in plan.Bulkheads.Zip(MoldPlan.Of(open, Build with { Joints = [joint] }).Bulkheads))
        {
            // Definition, by search on side and deck; shop tolerance 0.02 mm.
            var edge = bulkhead.Outline.Flattened(1e-6).Where(p => p.X >= 0).Select(p => (Drawn: p, Space: bulkhead.Frame.ToHull(p))).Select(p => (p.Drawn, Space: p.Space with { Y = Math.Abs(p.Space.Y) })).ToList();
            var top = edge.MinBy(p => p.Drawn.Y);
            Assert.Equal(0, top.Drawn.X, 1e-6);
            foreach (var (drawn, space) in edge.Where((_, k) => k % 7 == 0))
            {
                var toDeck = NearestOnSkin.Distance(hull.Deck!.PointAt, space, (0, 1), (-0.05, 1));
                var toSide = NearestOnSkin.Distance(hull.Side.PointAt, space, (-0.05, 1.05), (0, 1.3));
                Assert.Equal(0.0064, Math.Min(toDeck, toSide), 0.00002);
                Assert.True(drawn.Y < 0.02 || toDeck > 0.0064, $"{drawn}");
            }

            // The deck stands over the sheer by the crown times the breadth there over the greatest; the underside's middle by a thickness less, square to a ridge that is nearly level.
            Assert.Equal(hull.Deck!.PointAt(0.5, 1).Z - hull.Deck.PointAt(0.5, 0).Z, crown * hull.Side.PointAt(0.5, 1).Y / Enumerable.Range(0, 2001).Max(k => hull.Side.PointAt(k / 2000.0, 1).Y), 1e-6);
            Assert.Equal(level.Holes.Select(h => h.Kind), bulkhead.Holes.Select(h => h.Kind));
            Assert.Equal(Math.Sign(bulkhead.Outline.SignedArea() - level.Outline.SignedArea()), crown > 0.02 ? 1 : -1);
        }
    }

    [Theory]
    [InlineData("double-ender", 2.6)]
    [InlineData("sample-courier", 2)]
    [InlineData("sample-courier", 0.7)]
    public void Bolts_go_through_both_and_stand_clear_of_every_edge_as_does_the_opening(string name, double joint)
    {
        var build = Build with { Joints = [joint], BulkheadOpening = 0.05 };
        var plan = MoldPlan.Of(Hull(name), build);
        var (fore, aft) = (plan.Bulkheads[0], plan.Bulkheads[1]);
        // Seen from opposite sides, and at one place in the boat: they are bolted together before the saw goes between them.
        Assert.Equal(fore.Holes.Count, aft.Holes.Count);
        Assert.All(fore.Holes.Zip(aft.Holes), h =>
        {
            Assert.Equal(h.First with { At = h.Second.At }, h.Second);
            Assert.Equal(h.First.At.X, h.Second.At.X);
            Assert.Equal(fore.Frame.ToHull(h.First.At).Z, aft.Frame.ToHull(h.Second.At).Z, 1e-12);
        });
        Assert.Contains(fore.Holes, h => h.Kind == MoldHoleKind.Opening);
        Assert.True(fore.Holes.Count(h => h.Kind == MoldHoleKind.Bolt) >= 3);
        foreach (var (bulkhead, hole) in plan.Bulkheads.SelectMany(b => b.Holes.Select(h => (b, h))))
        {
            var clear = hole.Kind == MoldHoleKind.Opening ? Bulkhead.Clear(build) + (hole.Diameter / 2) : Bulkhead.Clear(build);
            Assert.True(bulkhead.Outline.Contains(hole.At));
            Assert.True(bulkhead.Outline.DistanceTo(hole.At) >= clear - 1e-4);
            Assert.Contains(bulkhead.Holes, h => h.At.DistanceTo(hole.At with { X = -hole.At.X }) < 1e-12);
        }

        Assert.Throws<BuildDialException>(() => MoldPlan.Of(Hull(name), build with { BulkheadOpening = 0.5 }));
    }

    [Theory]
    [InlineData("double-ender", 0.7)]
    [InlineData("transom boat", 3.6)]
    [InlineData("sample-courier", 5)]
    public void Over_a_wide_gap_in_a_tapering_hull_bolts_still_stand_from_sheer_to_keel(string name, double joint)
    {
        var plans = new[] { 0.001, 0.010, 0.020 }.Select(gap => MoldPlan.Of(Hull(name), Build with { Joints = [joint], JointGap = gap })).ToList();
        foreach (var plan in plans)
        {
            foreach (var bulkhead in plan.Bulkheads)
            {
                var deep = bulkhead.Outline.Bounds().Top;
                var bolts = bulkhead.Holes.Where(h => h.Kind == MoldHoleKind.Bolt).Select(h => h.At).ToList();
                Assert.Equal(plans[0].Bulkheads[0].Holes.Count, bulkhead.Holes.Count);
                Assert.InRange(bolts.Min(b => b.Y), Bulkhead.Clear(Build) - 1e-4, Bulkhead.Clear(Build) + 0.030);
                Assert.InRange(deep - bolts.Max(b => b.Y), Bulkhead.Clear(Build) - 1e-4, Math.Max(0.3 * deep, 0.08));
                Assert.All(bolts, b => Assert.True(bulkhead.Outline.Contains(b) && bulkhead.Outline.DistanceTo(b) >= Bulkhead.Clear(Build) - 1e-4));
            }
        }
    }

    [Theory]
    [InlineData(0.25)]
    [InlineData(0.3)]
    [InlineData(0.37)]
    public void No_mold_stands_in_the_room_of_a_joint(double spacing)
    {
        var hull = SampleHulls.DoubleEnder();
        for (var joint = 0.8; joint < 4.4; joint += 0.0173)
        {
            var build = Build with { Joints = [joint, joint + 0.4], MoldSpacing = spacing };
            foreach (var x in MoldStations.Of(hull, build))
            {
                var (from, to) = x <= hull.WidestX ? (x, x + build.MoldStock) : (x - build.MoldStock, x);
                Assert.All(build.Joints, j => Assert.True(to <= j - MoldStations.JointRoom(build) + 1e-9 || from >= j + MoldStations.JointRoom(build) - 1e-9, Invariant($"{x} at {j}")));
            }
        }

        var refused = Assert.Throws<BuildDialException>(() => MoldStations.Of(hull, Build with { MoldAt = [1, 2, 3.71] }));
        Assert.Equal("mold_at", refused.Key);
    }

    private static HullSurface Hull(string name) => name switch
    {
        "double-ender" => SampleHulls.DoubleEnder(),
        "transom boat" => SampleHulls.TransomBoat(),
        _ => ShapedTemplates.Of(name).Hull,
    };
}
