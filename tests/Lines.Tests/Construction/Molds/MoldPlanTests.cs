using Lines.Construction;
using Lines.Construction.Molds;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Construction.Molds;

public class MoldPlanTests
{
    private static readonly BuildDials Build = new() { Planking = 0.006 };

    public static TheoryData<string> Hulls => ["double-ender", "transom boat"];

    public static TheoryData<string> ShapedHulls => ["double-ender", "transom boat", "solved double-ender", "solved transom boat"];

    [Fact]
    public void One_mold_stands_at_the_widest_station_and_the_others_at_the_spacing_from_it()
    {
        var hull = SampleHulls.DoubleEnder();
        var molds = Stations(MoldPlan.Of(hull, Build));
        Assert.Contains(molds, m => m.X == hull.WidestX);
        Assert.Equal(Enumerable.Range(1, molds.Count), molds.Select(m => m.Number));
        for (var i = 1; i < molds.Count; i++)
            Assert.Equal(0.300, molds[i].X - molds[i - 1].X, 1e-12);
    }

    [Fact]
    public void Listed_stations_override_the_spacing_and_one_without_room_is_left_out_with_its_reason()
    {
        var plan = MoldPlan.Of(SampleHulls.DoubleEnder(), Build with { MoldAt = [3.0, 1.5, 0.04, 2.2] });
        Assert.Equal([1.5, 2.2, 3.0], Stations(plan).Select(m => m.X));
        var left = Assert.Single(plan.LeftOut);
        Assert.Equal(0.04, left.X);
        Assert.Contains("stem mold", left.Reason(LengthNotation.Millimeters), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(ShapedHulls))]
    public void Every_point_of_every_edge_lies_one_thickness_under_the_outside(string name)
    {
        // Definition: planking is measured square to the skin in space, so the nearest point of the outside is one thickness away.
        var hull = Hull(name);
        foreach (var mold in MoldPlan.Of(hull, Build).Molds)
        {
            foreach (var p in EdgePoints(mold, 9))
            {
                var space = mold.Frame.ToHull(p);
                if (mold.Kind is MoldKind.Stem or MoldKind.Stern)
                    space = space with { Y = Build.StemSiding / 2 };
                var starboard = space with { Y = Math.Abs(space.Y) };
                Assert.Equal(Build.Planking, NearestOnSkin.Distance(hull.Side.PointAt, starboard, (-0.05, 1.05), (0, 1.3)), 0.00002);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void The_outline_is_one_closed_path_as_wide_as_the_strongback_at_the_foot_and_the_same_on_both_sides(string name)
    {
        var plan = MoldPlan.Of(Hull(name), Build);
        foreach (var mold in Stations(plan))
        {
            Assert.True(mold.Outline.Closed);
            Assert.True(mold.Outline.SignedArea() > 0, "counter-clockwise");
            var onStrongback = mold.Outline.Vertices.Where(v => v.Point.Y == 0).Select(v => v.Point.X).ToList();
            Assert.Equal(-plan.Strongback.Width / 2, onStrongback.Min(), 1e-12);
            Assert.Equal(plan.Strongback.Width / 2, onStrongback.Max(), 1e-12);
            Assert.Equal(0, mold.Outline.Bounds().Bottom, 1e-12);
            foreach (var v in mold.Outline.Vertices)
                Assert.Contains(mold.Outline.Vertices, w => w.Point.DistanceTo(new Point2(-v.Point.X, v.Point.Y)) < 1e-9);
        }
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void The_edge_runs_on_past_the_sheer_by_at_least_25_mm_without_a_corner(string name)
    {
        foreach (var mold in MoldPlan.Of(Hull(name), Build).Molds)
        {
            var sheer = mold.Marks.First(m => m.Kind == MoldMarkKind.Sheer).Path.Vertices[0].Point;
            Assert.True(mold.Outline.DistanceTo(sheer) < 0.00002);
            // From the mark along the outline, away from the keel, to the first corner: the end of the run-on.
            var run = RunToCorner(mold, sheer);
            Assert.InRange(run, 0.025, 0.040);
        }
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void Sheer_and_waterlines_are_marked_at_the_heights_of_the_hull_and_end_on_the_edge(string name)
    {
        var hull = Hull(name);
        var plan = MoldPlan.Of(hull, Build);
        foreach (var mold in plan.Molds)
        {
            foreach (var mark in mold.Marks.Where(m => m.Height is not null))
            {
                Assert.Equal(mark.Height!.Value, mold.Frame.ToHull(mark.Path.Vertices[0].Point).Z, 1e-9);
                Assert.Equal(mark.Path.Vertices[0].Point.Y, mark.Path.Vertices[1].Point.Y, 1e-12);
                Assert.True(mold.Outline.DistanceTo(mark.Path.Vertices[0].Point) < 0.00002);
            }

            if (mold.Kind == MoldKind.Station)
            {
                // The oracle finds the station's sheer by bisection on the edge of the skin.
                var sheer = SheerAt(hull, mold.X);
                Assert.Equal(sheer, mold.Marks.First(m => m.Kind == MoldMarkKind.Sheer).Height!.Value, 1e-9);
                Assert.Equal(plan.Strongback.Top - sheer, mold.Heights.Sheer, 1e-9);
                // A mold that a profile mold passes may end above the waterline.
                Assert.Equal(mold.LapFloor is null || mold.Heights.Waterline is not null ? plan.Strongback.Top - hull.Draft : null, mold.Heights.Waterline);
            }
        }
    }

    [Fact]
    public void The_stock_stands_on_the_midship_side_of_the_line_and_the_label_on_the_other()
    {
        var hull = SampleHulls.DoubleEnder();
        foreach (var mold in Stations(MoldPlan.Of(hull, Build)))
        {
            Assert.Equal(mold.X <= hull.WidestX ? MoldFace.Bow : MoldFace.Stern, mold.Face);
            // Who looks at a face that looks to the bow stands forward of it: -x.
            Assert.Equal(mold.Face == MoldFace.Bow ? -1 : 1, mold.Frame.TowardViewer.X, 1e-12);
        }
    }

    [Fact]
    public void Upside_down_and_seen_from_the_bow_starboard_is_on_the_right()
    {
        // Stand forward of an upright boat, facing aft: her starboard side is at your left hand. Turn her keel up: it changes to the right.
        var molds = Stations(MoldPlan.Of(SampleHulls.DoubleEnder(), Build));
        Assert.True(molds[0].StarboardRight);
        Assert.True(molds[0].Frame.ToHull(new Point2(0.1, 0.1)).Y > 0);
        Assert.False(molds[^1].StarboardRight);
        Assert.True(molds[^1].Frame.ToHull(new Point2(0.1, 0.1)).Y < 0);
    }

    [Fact]
    public void Toward_the_ends_the_far_face_clears_and_at_the_widest_station_the_sheet_says_by_how_much_it_does_not()
    {
        var hull = SampleHulls.DoubleEnder();
        var molds = Stations(MoldPlan.Of(hull, Build));
        var widest = molds.Single(m => m.X == hull.WidestX);
        Assert.InRange(widest.Proud!.Value, 1e-6, 0.0002);
        Assert.Equal(0, molds[1].Proud);
        Assert.Equal(0, molds[^2].Proud);
    }

    [Fact]
    public void The_profile_mold_lands_the_planking_on_its_corners_and_butts_against_the_first_mold_it_does_not_pass()
    {
        var hull = SampleHulls.DoubleEnder();
        var plan = MoldPlan.Of(hull, Build);
        var whole = Stations(plan).Where(m => m.LapFloor is null).ToList();
        foreach (var (end, next) in new[] { (plan.Molds[0], whole[0]), (plan.Molds[^1], whole[^1]) })
        {
            var inner = plan.Strongback.DistanceTo(next.X);
            Assert.Contains(end.Outline.Vertices, v => v.Point == new Point2(inner, 0));
            // Where it meets the mold, the mold's own edge is half the siding out.
            var meeting = end.Outline.Vertices.Where(v => Math.Abs(v.Point.X - inner) < 1e-9).MaxBy(v => v.Point.Y).Point;
            Assert.True(next.Outline.DistanceTo(new Point2(Build.StemSiding / 2, meeting.Y)) < 0.00002);
        }
    }

    /// <summary>A segment under 0.5 mm stands in a bend tighter than the planking is thick, or next but one to its arcs.</summary>
    private static void AssertShortOnlyInBends(ArcSegment[] segments)
    {
        for (var k = 0; k < segments.Length; k++)
        {
            if (segments[k].Length > 0.0005)
                continue;
            var near = Enumerable.Range(k - 2, 5).Select(j => segments[(j + segments.Length) % segments.Length]);
            Assert.Contains(near, s => Math.Abs(s.Turn) * Build.Planking > s.Length);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(9)]
    [InlineData(24)]
    public void Hulls_of_random_dials_get_molds_that_hold_the_shape(int number)
    {
        // Of the solver's own random dials, those whose keel turns so tightly near the ends that the edge takes its closest arcs there.
        foreach (var mold in Stations(RandomHullHolds(number)))
            AssertShortOnlyInBends([.. mold.Outline.Segments()]);
    }

    [Theory]
    [InlineData(30)]
    [InlineData(162)]
    public void A_turn_tighter_than_the_planking_or_a_fold_of_the_skin_leaves_no_mold_out(int number) =>
        // 162 has a fold of 0.1 mm in the outside itself.
        RandomHullHolds(number);

    private static MoldPlan RandomHullHolds(int number)
    {
        var random = new Random(7);
        var dials = FormDials.Random(random);
        for (var i = 0; i < number; i++)
            dials = FormDials.Random(random);
        var hull = HullShape.Solve(dials).Surface!;
        var plan = MoldPlan.Of(hull, Build);
        Assert.True(plan.Molds.Count > 10);
        Assert.All(plan.LeftOut, l => Assert.True(IsNearAnEnd(l.Reason(LengthNotation.Millimeters)), l.Reason(LengthNotation.Millimeters)));
        Assert.Contains(plan.Molds, m => m.Kind == MoldKind.Stem);
        Assert.Contains(plan.Molds, m => m.Kind is MoldKind.Stern or MoldKind.Transom);
        foreach (var mold in Stations(plan))
        {
            var u = mold.X / dials.Length;
            foreach (var p in EdgePoints(mold, 12))
            {
                var space = mold.Frame.ToHull(p);
                space = space with { Y = Math.Abs(space.Y) };
                Assert.Equal(Build.Planking, NearestOnSkin.Distance(hull.Side.PointAt, space, (u - 0.1, u + 0.1), (0, 1.3)), 0.00002);
            }
        }

        return plan;
    }

    [Fact]
    public void The_transom_is_in_true_shape_and_its_bevel_is_that_of_the_planking()
    {
        var hull = SampleHulls.TransomBoat();
        var transom = MoldPlan.Of(hull, Build).Molds[^1];
        Assert.Equal(MoldKind.Transom, transom.Kind);
        foreach (var p in EdgePoints(transom, 9))
            Assert.Equal(0, hull.Transom!.Value.DistanceTo(transom.Frame.ToHull(p)), 1e-9);
        // Heights on a plane raked 15 degrees are longer by 1 / cos 15°.
        var levels = transom.Marks.Where(m => m.Kind is MoldMarkKind.Waterline or MoldMarkKind.DesignWaterline).ToList();
        var (a, b) = (levels[0], levels[^1]);
        Assert.Equal(
            (b.Height!.Value - a.Height!.Value) / Math.Cos(15 * Math.PI / 180), a.Path.Vertices[0].Point.Y - b.Path.Vertices[0].Point.Y, 1e-9);
        Assert.NotNull(transom.Bevel);
        Assert.InRange(transom.Bevel.Value.Greatest, transom.Bevel.Value.Least, Math.PI / 3);
    }

    [Fact]
    public void A_strongback_too_low_is_refused_with_the_lowest_that_clears()
    {
        var error = Assert.Throws<BuildDialException>(() => MoldPlan.Of(SampleHulls.DoubleEnder(), Build with { StrongbackTop = 0.40 }));
        Assert.Equal("strongback_top", error.Key);
        Assert.Equal(0.58, error.Nearest!.Value, 1e-9);
    }

    [Theory]
    [InlineData("planking")]
    [InlineData("mold_stock")]
    [InlineData("stem_siding")]
    [InlineData("mold_spacing")]
    public void A_dial_that_is_no_thickness_is_named(string key)
    {
        var build = key switch
        {
            "planking" => Build with { Planking = 0 },
            "mold_stock" => Build with { MoldStock = double.NaN },
            "stem_siding" => Build with { StemSiding = -0.01 },
            _ => Build with { MoldSpacing = 0.01 },
        };
        Assert.Equal(key, Assert.Throws<BuildDialException>(() => MoldPlan.Of(SampleHulls.DoubleEnder(), build)).Key);
    }

    [Theory]
    [InlineData(0, 0.0239, "at least 24 mm apart")]
    [InlineData(0, 0.024, null)]
    [InlineData(0.5, 0.0119, "at least 12 mm apart")]
    [InlineData(0.5, 0.012, null)]
    public void Listed_molds_need_room_for_their_stock_twice_over_abaft_the_widest_station(double abaft, double gap, string? remedy)
    {
        // Closed form: forward molds have their 12 mm of stock abaft the station, after ones forward of it.
        var hull = SampleHulls.DoubleEnder();
        var build = Build with { MoldStock = 0.012, MoldAt = [hull.WidestX + abaft, hull.WidestX + abaft + gap] };

        var fault = Record.Exception(() => MoldStations.Of(hull, build)) as BuildDialException;

        Assert.Equal(remedy is null, fault is null);
        Assert.Contains(remedy ?? "", fault?.Remedy ?? "", StringComparison.Ordinal);
    }

    private static HullSurface Hull(string name) => name switch
    {
        "double-ender" => SampleHulls.DoubleEnder(),
        "transom boat" => SampleHulls.TransomBoat(),
        "solved double-ender" => HullShape.Solve(FormDials.DoubleEnder).Surface!,
        _ => HullShape.Solve(FormDials.TransomBoat).Surface!,
    };

    // A mold station next to an end has no room beside its mold; nothing else is a reason to leave a mold out.
    private static bool IsNearAnEnd(string reason) =>
        reason.StartsWith("it stands only", StringComparison.Ordinal) || reason.StartsWith("it stands less than", StringComparison.Ordinal)
        || reason.EndsWith("edge at the sheer lies beyond it", StringComparison.Ordinal);

    private static List<Mold> Stations(MoldPlan plan) => [.. plan.Molds.Where(m => m.Kind == MoldKind.Station)];

    // The edge: the arcs of the outline, and lines that are no leg, foot or inner edge, sampled on the right half.
    internal static IEnumerable<Point2> EdgePoints(Mold mold, int count)
    {
        var edge = Edge(mold);
        var total = edge.Sum(s => s.Length);
        for (var k = 0; k <= count; k++)
        {
            var at = total * k / count;
            var i = 0;
            while (i < edge.Count - 1 && at > edge[i].Length)
                at -= edge[i++].Length;
            yield return edge[i].PointAt(Math.Min(1, at / edge[i].Length));
        }
    }

    private static List<ArcSegment> Edge(Mold mold)
    {
        var segments = mold.Outline.Segments().ToList();
        var sheer = mold.Marks.First(m => m.Kind == MoldMarkKind.Sheer).Path.Vertices[0].Point;
        var at = segments.FindIndex(s => s.DistanceTo(sheer) < 0.00002);
        var edge = new List<ArcSegment> { segments[at] };
        for (var i = at + 1; Smooth(segments[(i - 1) % segments.Count], segments[i % segments.Count]); i++)
            edge.Add(segments[i % segments.Count]);
        for (var i = at + segments.Count - 1; Smooth(segments[i % segments.Count], segments[(i + 1) % segments.Count]); i--)
            edge.Insert(0, segments[i % segments.Count]);

        // A plumb leg may leave a plumb stem without a corner; it is the line that ends on the strongback.
        edge.RemoveAll(s => s.From.Y == 0 || s.To.Y == 0);
        return edge;
    }

    private static double RunToCorner(Mold mold, Point2 sheer)
    {
        var edge = Edge(mold);
        var at = edge.FindIndex(s => s.DistanceTo(sheer) < 0.00002);
        var before = edge.Take(at).Sum(s => s.Length) + edge[at].From.DistanceTo(sheer);
        return Math.Min(before, edge.Sum(s => s.Length) - before);
    }

    private static bool Smooth(ArcSegment a, ArcSegment b) => a.EndDirection.Dot(b.StartDirection) > Math.Cos(0.2 * Math.PI / 180);

    private static double SheerAt(HullSurface hull, double x)
    {
        double low = 0, high = 1;
        for (var i = 0; i < 60; i++)
        {
            var mid = (low + high) / 2;
            if (hull.Side.PointAt(mid, 1).X < x)
                low = mid;
            else
                high = mid;
        }

        return hull.Side.PointAt(low, 1).Z;
    }
}
