using Lines.Construction;
using Lines.Construction.Molds;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Construction.Molds;

public class ProfileMoldTests
{
    // Paths are compared on chords this near to them.
    private const double Chord = 2e-6;

    private static readonly Lazy<(HullSurface Hull, MoldPlan Plan)> s_slim = new(() =>
    {
        // A stem that meets the keel only 900 mm aft: three stations stand ahead of its foot.
        var dials = FormDials.DoubleEnder;
        var hull = HullShape.Solve(dials with { Length = 6.5, Beam = 0.5, Bow = dials.Bow with { Forefoot = 0.9 } }).Surface!;
        return (hull, MoldPlan.Of(hull, new BuildDials { Planking = 0.006 }));
    });

    public static TheoryData<string> Hulls => [.. ShapedTemplates.Names, "slim"];

    [Theory]
    [MemberData(nameof(Hulls))]
    public void The_edge_runs_without_a_gap_from_the_sheer_past_the_foot_of_the_stem_to_the_mold_it_butts_against(string name)
    {
        var (hull, plan) = Of(name);
        foreach (var (end, bow) in Ends(plan))
        {
            var butt = Butt(plan, bow);
            var foot = hull.Side.PointAt(bow ? 0 : 1, 0).X;
            Assert.True(bow ? butt.X >= foot : butt.X <= foot, $"{butt.Name} stands ahead of the foot");

            // Definition: at every station the edge is where the inside is half the siding out, so the outside is one thickness from its corner.
            double half = end.Stock / 2, sheer = Sheer(end).X, inner = plan.Strongback.DistanceTo(butt.X);
            var outline = end.Outline.Flattened(Chord);
            for (var k = 1; k <= 16; k++)
            {
                var across = sheer + ((inner - sheer) * k / 16) - (k == 16 ? 1e-7 * (bow ? 1 : -1) : 0);
                var corner = end.Frame.ToHull(new Point2(across, Top(outline, across))) with { Y = half };
                Assert.Equal(end.Planking, NearestOnSkin.Distance(hull.Side.PointAt, corner, bow ? (-0.02, 0.28) : (0.72, 1.02), (-0.02, 1.3)), 0.00002);
            }

            // There it meets the mold's own edge, no lower under the keel than sides at 72 degrees, the steepest here, come to half the siding.
            var meeting = Top(outline, inner - (1e-7 * (bow ? 1 : -1)));
            Assert.True(butt.Outline.DistanceTo(new Point2(half, meeting)) < 0.00003);
            Assert.InRange(butt.Heights.Keel - meeting, 0, half * Math.Tan(72 * FormDials.Degree));
        }
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void A_profile_mold_and_the_molds_it_passes_never_fill_the_same_place_and_leave_a_millimeter(string name)
    {
        var (_, plan) = Of(name);
        foreach (var (end, bow) in Ends(plan))
        {
            foreach (var passed in Passed(plan, bow))
            {
                double x = plan.Strongback.DistanceTo(passed.X), stock = passed.Face == MoldFace.Bow ? passed.Stock : -passed.Stock, half = end.Stock / 2;
                for (var i = 0; i <= 4; i++)
                {
                    for (var j = -2; j <= 2; j++)
                    {
                        double across = x + (stock * (0.001 + (0.998 * i / 4))), y = half * j / 2;
                        double under = Crossings(passed.Outline.Flattened(Chord), y).Max(), over = Crossings(end.Outline.Flattened(Chord), across).Order().First();
                        Assert.Equal(passed.LapFloor!.Value, under, 1e-9);
                        Assert.Equal(0.001, over - under, 1e-9);
                    }
                }

                // 1 mm easy across, the wall at the labeled face on the station line.
                var wall = end.Outline.Vertices.Where(v => Math.Abs(v.Point.Y - passed.LapFloor!.Value - 0.001) < 1e-9).Select(v => v.Point.X).ToList();
                Assert.Contains(wall, w => Math.Abs(w - x) < 1e-9);
                Assert.Contains(wall, w => Math.Abs(w - x - stock - (Math.Sign(stock) * 0.001)) < 1e-9);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void The_molds_it_passes_keep_8_mm_beside_their_slot_and_70_mm_of_the_profile_mold_stand_over_it(string name)
    {
        var (_, plan) = Of(name);
        foreach (var (end, bow) in Ends(plan))
        {
            foreach (var passed in Passed(plan, bow))
            {
                var outline = passed.Outline.Flattened(Chord);
                for (var k = 1; k < 10; k++)
                {
                    var y = passed.LapFloor!.Value + ((passed.Heights.Keel - passed.LapFloor.Value) * k / 10);
                    if (y < passed.Heights.Keel - 1e-9)
                        Assert.True(Across(outline, y).Max() >= (end.Stock / 2) + 0.008 - 1e-5);
                }

                var edge = Top(end.Outline.Flattened(Chord), plan.Strongback.DistanceTo(passed.X) + (bow ? 1e-7 : -1e-7));
                Assert.True(edge - passed.LapFloor!.Value >= 0.070 - 0.00002);
                Assert.True(passed.Heights.Keel <= edge, "the level top stands under the profile mold's edge");
                var mark = Assert.Single(end.Marks, m => m.Kind == MoldMarkKind.Station && string.Equals(m.Name, passed.Name, StringComparison.Ordinal));
                Assert.All(mark.Path.Vertices, v => Assert.Equal(plan.Strongback.DistanceTo(passed.X), v.Point.X, 1e-9));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void The_line_beside_it_is_where_the_insides_of_both_sides_meet_on_the_centerplane(string name)
    {
        // Definition: on the centerplane, one thickness from the outside of either side.
        var (hull, plan) = Of(name);
        foreach (var (end, bow) in Ends(plan))
        {
            var apex = Assert.Single(end.Marks, m => m.Kind == MoldMarkKind.Apex).Path.Flattened(Chord);
            for (var k = 0; k <= 40; k++)
            {
                var p = apex[(apex.Count - 1) * k / 40];
                Assert.False(end.Outline.Contains(p), "it runs outside the mold");
                Assert.Equal(
                    end.Planking, NearestOnSkin.Distance(hull.Side.PointAt, end.Frame.ToHull(p), bow ? (-0.02, 0.28) : (0.72, 1.02), (-0.02, 1.3)), 0.00002);
            }

            // At the finest bevel half the siding over its tangent, but for how the planking curves between edge and apex.
            Assert.Equal(apex.Max(end.Outline.DistanceTo), end.InnerStemDepth!.Value, 0.0001);
            Assert.Equal(1, end.InnerStemDepth.Value / end.Bevels!.Places.Max(b => end.Stock / 2 / Math.Tan(b.FromSide)), 0.25);

            // It ends on the keel of the mold that the profile butts against.
            Assert.Equal(Butt(plan, bow).Heights.Keel, apex[^1].Y, 0.0001);
        }
    }

    [Fact]
    public void Molds_are_numbered_from_the_bow_whether_or_not_the_profile_mold_passes_them()
    {
        var plan = s_slim.Value.Plan;
        Assert.Equal(2, Passed(plan, bow: true).Count);
        Assert.Equal(["STEM", "M1", "M2", "M3"], plan.Molds.Take(4).Select(m => m.Name));
        Assert.Null(plan.Molds[3].LapFloor);
    }

    [Fact]
    public void A_listed_mold_ahead_of_the_foot_is_kept_and_passed()
    {
        var hull = s_slim.Value.Hull;
        var plan = MoldPlan.Of(hull, new BuildDials { Planking = 0.006, MoldAt = [0.5, 1.5, 3, 4.5, 5.8] });
        Assert.Equal(0.5, Assert.Single(Passed(plan, bow: true)).X);
        Assert.Equal(1.5, Butt(plan, bow: true).X);
    }

    [Fact]
    public void A_profile_mold_never_runs_past_the_widest_station_for_want_of_a_mold()
    {
        // One mold ahead of the foot and none before the widest station: it butts against that; the stern's meets the far face of the same.
        var hull = s_slim.Value.Hull;
        var plan = MoldPlan.Of(hull, new BuildDials { Planking = 0.006, MoldAt = [0.6] });
        Assert.Null(Assert.Single(plan.Molds, m => m.Kind == MoldKind.Station).LapFloor);
        Assert.Equal(plan.Strongback.DistanceTo(0.6), plan.Molds[0].Foot.Aft, 1e-12);
        Assert.Equal(plan.Strongback.DistanceTo(0.612), plan.Molds[^1].Foot.Fore, 1e-12);
    }

    private static (HullSurface Hull, MoldPlan Plan) Of(string name) =>
        string.Equals(name, "slim", StringComparison.Ordinal) ? s_slim.Value : (ShapedTemplates.Of(name).Hull, ShapedTemplates.Of(name).Molds);

    private static IEnumerable<(Mold End, bool Bow)> Ends(MoldPlan plan)
    {
        Assert.Equal(MoldKind.Stem, plan.Molds[0].Kind);
        Assert.True(plan.Molds[^1].Kind is MoldKind.Stern or MoldKind.Transom, "an end was left out");
        return plan.Molds.Where(m => m.Kind is MoldKind.Stem or MoldKind.Stern).Select(m => (m, m.Kind == MoldKind.Stem));
    }

    private static List<Mold> Passed(MoldPlan plan, bool bow) =>
        [.. plan.Molds.Where(m => m.LapFloor is not null && m.X < plan.Strongback.Length / 2 == bow)];

    private static Mold Butt(MoldPlan plan, bool bow)
    {
        var stations = plan.Molds.Where(m => m.Kind == MoldKind.Station && m.LapFloor is null);
        return bow ? stations.First() : stations.Last();
    }

    private static Point2 Sheer(Mold end) => end.Marks.First(m => m.Kind == MoldMarkKind.Sheer).Path.Vertices[0].Point;

    private static double Top(IReadOnlyList<Point2> outline, double across) => Crossings(outline, across).Max();

    // Heights at which an outline crosses an upright line; the foot on the strongback is left out.
    private static IEnumerable<double> Crossings(IReadOnlyList<Point2> outline, double across) =>
        Pairs(outline).Where(s => s.A.X > across != s.B.X > across)
            .Select(s => s.A.Y + ((across - s.A.X) / (s.B.X - s.A.X) * (s.B.Y - s.A.Y))).Where(y => y > 0.005);

    private static IEnumerable<double> Across(IReadOnlyList<Point2> outline, double y) =>
        Pairs(outline).Where(s => s.A.Y > y != s.B.Y > y).Select(s => s.A.X + ((y - s.A.Y) / (s.B.Y - s.A.Y) * (s.B.X - s.A.X)));

    private static IEnumerable<(Point2 A, Point2 B)> Pairs(IReadOnlyList<Point2> outline) =>
        outline.Zip(outline.Skip(1).Append(outline[0]), (a, b) => (a, b));
}
