using System.Text.Json;
using Lines.Hull.Fairness;
using Lines.Hull.Form;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Plans.Figures;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Fairness;

public class FairnessReportTests
{
    private static FairnessReport Judge(Func<double, double, double> moved, bool hollowAsked = false)
    {
        var hull = FineHull.Of(moved);
        return FairnessReport.Of(HullLines.Of(new HullSurface(hull.Side, hull.Dials with { Hollow = hollowAsked }, hull.WidestU, hull.WaterlineV)));
    }

    [Fact]
    public void Wigleys_hull_is_fair_and_convex_throughout()
    {
        var report = FairnessReport.Of(HullLines.Of(WigleyHull.Of(5, 0.5, 0.3125)));
        Assert.True(report.Fair);
        Assert.True(report.ConvexThroughout);
        Assert.All(report.Lines, l => Assert.Equal((0, null), (l.UnaskedInflections, l.Ease)));
        Assert.StartsWith("Fair: convex throughout", report.Verdict, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_kind_of_line_is_judged_and_the_sheer_in_both_views()
    {
        var report = Judge((_, _) => 0);
        Assert.True(report.Fair, report.Verdict);
        Assert.Equal(2, report.Lines.Count(l => l.Line.Kind == LineKind.Sheer));
        foreach (var kind in Enum.GetValues<LineKind>().Where(k => k != LineKind.Other))
            Assert.Contains(report.Lines, l => l.Line.Kind == kind);
        Assert.Equal(7, report.Lines.Count(l => l.Line.Kind == LineKind.Waterline));
    }

    [Theory]
    [InlineData(1.20)]
    [InlineData(2.64)]
    [InlineData(4.11)]
    public void A_rib_1_2_mm_proud_over_150_mm_is_found_on_every_waterline_at_its_station(double at)
    {
        // One column of poles moved: a cubic B-spline bump four spans = 150 mm wide, 2/3 of the move high.
        var report = Judge((x, z) => Math.Abs(x - at) < FineHull.Span / 2 && z > 0 ? 0.0018 : 0);
        Assert.False(report.Fair);
        foreach (var l in report.Lines.Where(l => l.Line.Kind == LineKind.Waterline))
        {
            Assert.False(l.Fair);
            Assert.InRange(l.Batten.Depth, 0.75 * 0.0012, 1.25 * 0.0012);
            Assert.Equal(at, l.Batten.Place.X, 0.1);
            Assert.Equal(at, StationX(l, report), FineHull.Length / 40);
            Assert.NotNull(l.Ease);
        }
    }

    [Fact]
    public void A_hollow_near_the_bow_is_found_on_the_waterlines_and_names_the_entry()
    {
        // A dent 8 mm deep and some 0.7 m long, cos² in x, around x = 0.8 m.
        static double Dent(double x, double z) => z > 0 && Math.Abs(x - 0.8) < 0.35 ? -0.008 * Math.Pow(Math.Cos(Math.PI * (x - 0.8) / 0.7), 2) : 0;
        var line = Assert.Single(Judge(Dent).Lines, l => l is { Name: "design waterline" });
        var expected = PlaneHollow(x => WigleyHull.HalfBreadth(FineHull.Length, 0.74, 0.36, x, 0.12) + Dent(x, 0.12));
        Assert.False(line.Fair);
        Assert.True(line.IsHollow);
        Assert.InRange(line.Hollow.Depth, 0.75 * expected, 1.25 * expected);
        Assert.Equal(0.8, line.Hollow.Place.X, 0.15);
        Assert.Equal(2, line.UnaskedInflections);
        Assert.Equal(Dial.EntryFullness, line.Ease);
        Assert.Contains("hollow by", line.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_hollow_is_no_fault_where_hollow_ends_are_asked_for_but_is_not_convex()
    {
        static double Dent(double x, double z) => z > 0 && Math.Abs(x - 0.8) < 0.35 ? -0.008 * Math.Pow(Math.Cos(Math.PI * (x - 0.8) / 0.7), 2) : 0;
        var report = Judge(Dent, hollowAsked: true);
        var line = Assert.Single(report.Lines, l => l is { Name: "design waterline" });
        Assert.Equal(0, line.Hollow.Depth);
        Assert.Equal(0, line.UnaskedInflections);
        Assert.Equal(2, line.Inflections);
        Assert.True(line.DeepestHollow > 0.001);
        Assert.False(report.ConvexThroughout);
    }

    [Fact]
    public void Amidships_a_hollow_is_a_fault_even_where_hollow_ends_are_asked_for()
    {
        static double Dent(double x, double z) => z > 0 && Math.Abs(x - 2.6) < 0.35 ? -0.012 * Math.Pow(Math.Cos(Math.PI * (x - 2.6) / 0.7), 2) : 0;
        Assert.False(Judge(Dent, hollowAsked: true).Lines.Single(l => l is { Name: "design waterline" }).Fair);
    }

    [Fact]
    public void Below_the_design_waterline_a_hollow_may_be_2_mm_or_the_length_over_2000()
    {
        var report = Judge((_, _) => 0);
        Assert.Equal(5.25 / 2000, report.Lines.Single(l => l is { Name: "waterline 1" }).HollowLimit);
        Assert.Equal(0.0001, report.Lines.Single(l => l is { Name: "design waterline" }).HollowLimit);
        Assert.Equal(0.002, Limits.HollowUnderWater(3));
    }

    [Fact]
    public void One_line_is_outside_its_limits_and_two_are_outside_theirs()
    {
        var fair = Judge((_, _) => 0);
        var line = fair.Lines.Single(l => l is { Name: "design waterline" });
        var bad = line with { Batten = line.Batten with { Depth = 0.0012 } };

        Assert.StartsWith(
            Invariant($"Not fair: 1 of {fair.Lines.Count + 1} lines is outside its limits; worst, the design waterline stands 1.20 mm off a batten"),
            (fair with { Lines = [.. fair.Lines, bad] }).Verdict, StringComparison.Ordinal);
        Assert.StartsWith(
            Invariant($"Not fair: 2 of {fair.Lines.Count + 2} lines are outside their limits; worst"), (fair with { Lines = [.. fair.Lines, bad, bad] }).Verdict, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.00012, 0.0001, "0.12")]
    [InlineData(0.0001, 0.0001, "0.10")]
    [InlineData(0.000104, 0.0001, "0.104")]
    [InlineData(0.00010004, 0.0001, "0.10004")]
    [InlineData(0.0000996, 0.0001, "0.10")]
    public void A_size_over_its_limit_is_shown_with_digits_enough_to_see_it(double size, double limit, string expected) =>
        Assert.Equal(expected, Limits.Millimeters(size, limit));

    [Fact]
    public void A_deep_hollow_of_a_fair_hull_is_told_with_the_line_that_may_have_it()
    {
        var fair = Judge((_, _) => 0);
        var low = fair.Lines.Single(l => l is { Name: "waterline 1" });
        var hollow = low with { Hollow = low.Hollow with { Depth = 0.0013 } };
        var report = fair with { Lines = [.. fair.Lines, hollow], ConvexThroughout = false };

        Assert.StartsWith("Fair: deepest hollow nobody asked for 1.30 mm, on waterline 1, which may have 2.62; ", report.Verdict, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hollow_that_is_meant_is_told_with_its_line_place_size_and_reason()
    {
        var fair = Judge((_, _) => 0);
        var buttock = fair.Lines.First(l => l.Line.Kind == LineKind.Buttock);
        var reversed = buttock with { Meant = new Blemish(0.00351, new Point3(4.8, 0.1, 0.3), "9"), MeantBecause = "above the water, as in topsides it may" };
        var report = fair with { Lines = [.. fair.Lines, reversed], ConvexThroughout = false };

        const string told = "buttock 1 reverses by 3.51 mm near station 9, 4800 mm from the bow, above the water, as in topsides it may";
        Assert.StartsWith($"Fair: hollow only where that is meant ({told}); ", report.Verdict, StringComparison.Ordinal);
        Assert.Contains($"\n  - meant: {told}\n", FairnessText.Of(report), StringComparison.Ordinal);
        using var json = JsonDocument.Parse(FigureJson.Write(new Results("x.toml") { Fairness = report }, "1"));
        var line = json.RootElement.GetProperty("fairness").EnumerateArray().Last();
        Assert.Equal((0.00351, 4.8, "9", reversed.MeantBecause), (
            line.GetProperty("meant_hollow_m").GetDouble(), line.GetProperty("meant_hollow_at_m")[0].GetDouble(),
            line.GetProperty("meant_hollow_station").GetString(), line.GetProperty("meant_hollow_because").GetString()));
    }

    [Fact]
    public void The_deepest_hollow_between_the_lines_is_told_to_people_and_to_programs()
    {
        var report = Judge((_, _) => 0) with { Between = ("the diagonal from 90 mm up at 35 deg", 0.00007, 0.0001) };
        Assert.Contains("the deepest hollow nobody asked for is 0.07 mm, on the diagonal from 90 mm up at 35 deg (allowed 0.10 mm)", FairnessText.Of(report), StringComparison.Ordinal);
        using var json = JsonDocument.Parse(FigureJson.Write(new Results("x.toml") { Fairness = report, Outriggers = [("port", report)] }, "1"));
        foreach (var told in (JsonElement[])[json.RootElement, json.RootElement.GetProperty("outriggers")[0]])
        {
            var between = told.GetProperty("hollow_between_lines");
            Assert.Equal(("the diagonal from 90 mm up at 35 deg", 0.00007, 0.0001), (
                between.GetProperty("line").GetString(), between.GetProperty("hollow_m").GetDouble(), between.GetProperty("hollow_limit_m").GetDouble()));
        }
    }

    [Fact]
    public void A_buttock_may_reverse_in_the_topsides_and_nothing_may_under_water()
    {
        var hull = ShapedTemplates.Of("gauge-runner").Hull;
        var buttock = ShapedTemplates.Of("gauge-runner").Lines.All.First(l => l.Kind == LineKind.Buttock);
        var end = buttock.Start.Point;
        Assert.Equal("above the water, as in topsides it may", Intention.Of(buttock, hull).Meant(end with { Z = hull.Draft + 0.01 }));
        Assert.Null(Intention.Of(buttock, hull).Meant(end with { Z = hull.Draft - 0.01 }));
        Assert.Null(Intention.Of(buttock, hull).Meant(end with { X = hull.WidestX, Z = hull.Draft + 0.01 }));
    }

    [Fact]
    public void A_comb_has_the_curvature_of_its_line_and_points_out_of_the_boat()
    {
        var sheer = Cut.Sheer(WigleyHull.Of(1, 0.1, 0.0625));
        var comb = CurvatureComb.Of(sheer, 11);
        Assert.Equal(0.4, comb[5].Curvature, 9); // 4B/L², Wigley's waterline amidships
        Assert.Equal((0.0, 1.0), (Math.Round(comb[5].Normal.X, 12), Math.Round(comb[5].Normal.Y, 12)));
        Assert.All(comb, t => Assert.True(t.Curvature > 0 && t.Normal.Y > 0));
    }

    private static double StationX(LineFairness line, FairnessReport report) =>
        report.Lines.First(l => l.Line.Kind == LineKind.Station && string.Equals(l.Line.Label, line.Batten.Station, StringComparison.Ordinal)).Line.Position;

    // The greatest height of any chord over the curve between its ends, by trying chords.
    private static double PlaneHollow(Func<double, double> y)
    {
        var points = Enumerable.Range(0, 526).Select(k => (X: k * 0.01, Y: y(k * 0.01))).ToArray();
        var worst = 0.0;
        for (var k = 1; k < points.Length - 1; k++)
        {
            for (var a = 0; a < k; a += 2)
            {
                for (var b = k + 1; b < Math.Min(points.Length, k + 150); b += 2)
                {
                    var over = points[a].Y + ((points[b].Y - points[a].Y) * (points[k].X - points[a].X) / (points[b].X - points[a].X)) - points[k].Y;
                    worst = Math.Max(worst, over);
                }
            }
        }

        return worst;
    }
}
