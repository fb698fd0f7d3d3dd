using System.Globalization;
using Lines.Design;
using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Hull.Form;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.LinesPlan;
using Lines.Plans.Paper;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.LinesPlan;

public class LinesPlanSheetTests
{
    public static TheoryData<string, LengthNotation> Cases => new()
    {
        { "double-ender", LengthNotation.Millimeters },
        { "double-ender", LengthNotation.FeetInchesEighths },
        { "transom", LengthNotation.Millimeters },
        { "transom", LengthNotation.FeetInches },
        { "gauge-runner.toml", LengthNotation.Millimeters },
        { "gauge-runner-blunt.toml", LengthNotation.Inches },
        { "gauge-runner-fine.toml", LengthNotation.FeetInchesEighths },
        { "silt-sampler.toml", LengthNotation.Millimeters },
        { "line-layer.toml", LengthNotation.FeetInchesEighths },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Nothing_leaves_the_border(string hull, LengthNotation notation)
    {
        var sheet = Plan(hull, notation).Sheet;
        Assert.Equal((420, 297), (sheet.Width, sheet.Height));
        var border = new Box2(10, 10, 410, 287);
        foreach (var mark in sheet.Marks)
            Assert.True(border.Grown(1e-9).Holds(BoundsOf(mark)), $"{mark.Layer.Name} {(mark as TextMark)?.Text} {BoundsOf(mark)}");
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_diagonal_is_named_on_both_sides_of_the_body_plan_and_where_it_is_laid_flat(string hull, LengthNotation notation)
    {
        var texts = Plan(hull, notation).Sheet.Marks.OfType<TextMark>().Select(t => t.Text).ToList();
        Assert.All((string[])["D 1", "D 2", "D 3"], d => Assert.Equal(3, texts.Count(t => t.Equals(d, StringComparison.Ordinal))));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void No_two_texts_touch(string hull, LengthNotation notation)
    {
        var texts = Plan(hull, notation).Sheet.Marks.OfType<TextMark>().ToList();
        for (var i = 0; i < texts.Count; i++)
        {
            for (var j = 0; j < i; j++)
                Assert.False(BoundsOf(texts[i]).Grown(0.1).Overlaps(BoundsOf(texts[j]).Grown(0.1)), $"\"{texts[i].Text}\" and \"{texts[j].Text}\" at {texts[i].At}");
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Letters_are_tall_enough_to_read_at_arms_length(string hull, LengthNotation notation) =>
        // 1.5 mm is the body text of a small-print book (common practice, no source); at 3,000 px the A3 sheet then has 10 px to the capital.
        Assert.All(Plan(hull, notation).Sheet.Marks.OfType<TextMark>(), t => Assert.True(t.Height >= 1.4, Invariant($"\"{t.Text}\" is {t.Height} mm high")));

    [Fact]
    public void The_beam_on_the_drawing_is_the_beam_of_the_figures_though_it_is_greatest_between_stations()
    {
        // Tumblehome puts the greatest breadth below the sheer and the drawn stations miss it.
        var dials = DesignFile.Read(File.ReadAllText(Repository.PathOf("templates", "gauge-runner.toml")), "gauge-runner.toml").Design!.Vessel.MainHull;
        var lines = HullLines.Of(HullShape.Solve(dials with { Midship = dials.Midship with { Flare = -6 * Math.PI / 180 } }).Surface!);
        var figures = SampleHulls.Figures(lines.Hull);
        var texts = LinesPlanSheet.Of(lines, figures, new LinesPlanSettings("Trial", PaperSize.A3, LengthNotation.Millimeters)).Marks.OfType<TextMark>().Select(t => t.Text).ToList();
        var beam = new Length(figures.SelectMany(g => g.Figures).Single(f => f.Key is "beam").Value!.Value).ToFigure(LengthNotation.Millimeters);
        Assert.Contains($"beam {beam}", texts);
        Assert.Equal(figures.SelectMany(g => g.Figures).Single(f => f.Key is "beam").Value!.Value * 1000, double.Parse(texts[texts.IndexOf("Beam") + 1], CultureInfo.InvariantCulture), 0.051);
        Assert.Matches(@"^[0-9]+\.[0-9]$", texts[texts.IndexOf("Beam") + 1]);
        Assert.Contains("Depth", texts);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Lines_of_one_block_are_of_one_height_and_no_section_number_touches_the_outline(string hull, LengthNotation notation)
    {
        var sheet = Plan(hull, notation).Sheet;
        var texts = sheet.Marks.OfType<TextMark>().ToList();
        foreach (var first in (string[])["Length", "Scale 1:"])
        {
            var at = texts.Find(t => t.Text.StartsWith(first, StringComparison.Ordinal) && t.Anchor == Anchor.Left)!.At;
            Assert.Single(texts.Where(t => t.At.X == at.X && t.At.Y <= at.Y && t.Layer.Name is "lettering" && t.Anchor == Anchor.Left).Select(t => t.Height).Distinct());
        }

        var title = texts.Find(t => t.Text is "Body plan")!.At;
        var outline = sheet.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "outline").Select(m => m.Path).Where(p => p.Bounds().Top < title.Y).ToList();
        foreach (var number in texts.Where(t => t.Anchor == Anchor.Center && t.At.Y < title.Y - 2 && t.At.Y > title.Y - 60 && Math.Abs(t.At.X - title.X) < 60 && char.IsAsciiDigit(t.Text[0])))
            Assert.All(outline, p => Assert.Empty(p.Inside(BoundsOf(number).Grown(0.3))));
    }

    [Fact]
    public void The_bow_is_to_the_right_and_stations_are_spaced_at_the_stated_scale()
    {
        var (sheet, lines) = Plan("double-ender", LengthNotation.Millimeters);
        var numbers = sheet.Marks.OfType<TextMark>().Where(t => t.Text is "0" or "10" && t.Height == 2).GroupBy(t => t.Text, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.MaxBy(t => t.At.Y)!.At.X, StringComparer.Ordinal);
        var length = lines.Hull.WaterlineAft - lines.Hull.WaterlineFore;
        Assert.Contains(sheet.Marks.OfType<TextMark>(), t => t.Text.StartsWith("Scale 1:15, body plan 1:", StringComparison.Ordinal));
        Assert.Equal(length * 1000 / 15, numbers["0"] - numbers["10"], 1e-9);
    }

    [Fact]
    public void The_fore_body_is_right_of_the_body_plans_centerline_and_the_after_body_left()
    {
        var (sheet, lines) = Plan("double-ender", LengthNotation.Millimeters);
        var title = sheet.Marks.OfType<TextMark>().Single(t => t.Text is "Body plan");
        // Station numbers over the sections are the only ones of that height below the body plan's title.
        double XOf(string station) => sheet.Marks.OfType<TextMark>().Single(t => t.Text == station && t.Height == 2 && t.At.Y < title.At.Y && t.At.Y > title.At.Y - 60).At.X;
        Assert.True(XOf("1") > title.At.X && XOf("2") > XOf("1") && XOf("3") > XOf("2"));
        Assert.True(XOf("9") < title.At.X && XOf("8") < XOf("9") && XOf("7") < XOf("8"));
        Assert.Equal(11, lines.Stations.Count(s => !s.Label.Contains('/', StringComparison.Ordinal)));
    }

    [Fact]
    public void Drawn_lines_stay_within_a_hundredth_of_a_millimeter_of_the_cut_ones()
    {
        var (sheet, lines) = Plan("transom", LengthNotation.Millimeters);
        var outlines = sheet.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "outline").Select(m => m.Path).ToList();
        // The profile is the topmost outline; its keel, lowest point on the base line, gives the origin.
        var datum = sheet.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "datum").Select(m => m.Path.Segments()[0]).MaxBy(s => s.From.Y);
        var stem = outlines.Max(p => p.Bounds().Right);
        foreach (var line in new[] { lines.Keel, lines.Sheer, lines.Stem })
        {
            for (var i = 0; i <= 100; i++)
            {
                var p = line.At(i / 100.0).Point;
                var onPaper = new Point2(stem - (p.X * 1000 / 15), datum.From.Y + (p.Z * 1000 / 15));
                Assert.True(PathDistance.To(outlines, onPaper) <= 0.01);
            }
        }
    }

    [Fact]
    public void Line_families_are_told_apart_by_weight_or_dash()
    {
        string[] families = ["outline", "waterlines", "design-waterline", "buttocks", "diagonals", "grid", "datum", "half-sections", "curvature-combs"];
        var layers = Plan("double-ender", LengthNotation.Millimeters).Sheet.Marks.Select(m => m.Layer).Where(l => families.Contains(l.Name, StringComparer.Ordinal)).Distinct().ToList();
        Assert.Equal(families.Length, layers.Count);
        Assert.Equal(families.Length, layers.Select(l => string.Join(' ', [Invariant($"{l.Ink.Width}"), .. l.Ink.Dash?.Select(d => Invariant($"{d}")) ?? []])).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Every_waterline_and_buttock_is_labeled_with_its_place_and_every_diagonal_with_its_own()
    {
        var (sheet, lines) = Plan("double-ender", LengthNotation.Millimeters);
        var texts = sheet.Marks.OfType<TextMark>().Select(t => t.Text).ToList();
        foreach (var line in lines.Waterlines.Concat(lines.Buttocks))
            Assert.Contains(Invariant($"{line.Label}  {1000 * line.Position:F1}"), texts);
        Assert.All(lines.Diagonals, d => Assert.Contains(d.Label, texts));
    }

    public static TheoryData<string, string, LengthNotation> DeskCases => new()
    {
        { "silt-sampler.toml", "Letter", LengthNotation.Millimeters },
        { "silt-sampler.toml", "A4", LengthNotation.FeetInches },
        { "gauge-runner.toml", "Letter", LengthNotation.FeetInches },
        { "gauge-runner-blunt.toml", "A4", LengthNotation.Millimeters },
        { "line-layer.toml", "Letter", LengthNotation.FeetInches },
        { "line-layer.toml", "A4", LengthNotation.Millimeters },
    };

    [Theory]
    [MemberData(nameof(DeskCases))]
    public void On_a_desks_paper_the_boat_takes_more_than_half_the_width_and_nothing_is_overprinted(string hull, string paper, LengthNotation notation)
    {
        var size = paper is "A4" ? PaperSize.A4 : PaperSize.Letter;
        var (sheet, lines) = Plan(hull, notation, size);
        Assert.Equal((size.Height, size.Width), (sheet.Width, sheet.Height));
        var border = new Box2(10, 10, sheet.Width - 10, sheet.Height - 10);
        Assert.All(sheet.Marks, m => Assert.True(border.Grown(1e-9).Holds(BoundsOf(m)), $"{m.Layer.Name} {(m as TextMark)?.Text}"));
        Assert.Empty(Lettered.Overlaps(sheet));

        // More than half the sheet is the boat's, and the scale is as the title block says it.
        var texts = sheet.Marks.OfType<TextMark>().ToList();
        var outline = sheet.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "outline").Max(m => m.Path.Bounds().Width);
        Assert.True(outline > sheet.Width / 2, Invariant($"{outline} mm of {sheet.Width} mm"));
        var said = texts.Single(t => t.Text.StartsWith("Scale 1:", StringComparison.Ordinal)).Text["Scale 1:".Length..].Split(',', ' ')[0];
        Assert.Equal(lines.Hull.Dials.Length * 1000 / int.Parse(said, CultureInfo.InvariantCulture), outline, 0.05);

        // Every line is named, and no line runs through the figures of the draft and the beam.
        Assert.All((string[])["D 1", "D 2", "D 3"], d => Assert.Equal(3, texts.Count(t => t.Text.Equals(d, StringComparison.Ordinal))));
        Assert.All(texts.Where(t => t.Text.StartsWith("draft ", StringComparison.Ordinal) || t.Text.StartsWith("beam ", StringComparison.Ordinal)), t => Assert.Empty(Lettered.Under(sheet, t.Text)));

        // 5 pt type has capitals some 1.2 mm high (common practice, no source).
        Assert.All(texts, t => Assert.True(t.Height >= 1.2, Invariant($"\"{t.Text}\" is {t.Height} mm high")));
    }

    [Theory]
    [InlineData("silt-sampler.toml")]
    [InlineData("gauge-runner.toml")]
    [InlineData("line-layer.toml")]
    public void The_longest_labels_stand_inside_the_frame(string hull)
    {
        // Feet and inches have the longest figures; a tabloid sheet is wider than A3 and lower.
        foreach (var paper in (PaperSize[])[PaperSize.Tabloid, PaperSize.A3])
        {
            var (sheet, _) = Plan(hull, LengthNotation.FeetInches, paper);
            Assert.All(sheet.Marks.OfType<TextMark>().Where(t => t.Anchor == Anchor.MiddleRight), t => Assert.True(BoundsOf(t).Left > 12, Invariant($"\"{t.Text}\" begins at {BoundsOf(t).Left} mm")));
        }
    }

    [Theory]
    [InlineData("Tabloid")]
    [InlineData("A2")]
    public void Other_papers_take_the_plan_at_their_own_scale(string paper)
    {
        var size = new[] { PaperSize.Tabloid, PaperSize.A2 }.Single(p => p.Name == paper);
        var (sheet, _) = Plan("double-ender", LengthNotation.Millimeters, size);
        Assert.Equal((size.Height, size.Width), (sheet.Width, sheet.Height));
        var border = new Box2(10, 10, sheet.Width - 10, sheet.Height - 10);
        Assert.All(sheet.Marks, m => Assert.True(border.Grown(1e-9).Holds(BoundsOf(m))));
    }

    [Fact]
    public void A_joint_is_a_dashed_line_in_profile_and_half_breadths_named_with_its_distance_from_the_bow()
    {
        var lines = HullLines.Of(SampleHulls.DoubleEnder());
        var sheet = LinesPlanSheet.Of(lines, SampleHulls.Figures(lines.Hull), new LinesPlanSettings("Trial", PaperSize.A3, LengthNotation.Millimeters) { Joints = [1.3, 3.9] });
        var joints = sheet.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "joints").Select(m => m.Path.Bounds()).ToList();
        Assert.Equal(4, joints.Count);
        Assert.All(joints, j => Assert.Equal(0, j.Width, 1e-9));
        // The bow is to the right: joint 2 is half the hull's length, 2.6 m of 5.2 m, left of joint 1.
        var outline = sheet.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "outline").Select(m => m.Path.Bounds()).MaxBy(b => b.Width);
        Assert.Equal(outline.Width / 2, joints[0].Left - joints[1].Left, 0.05);
        var texts = sheet.Marks.OfType<TextMark>().ToList();
        Assert.Equal(joints[0].Left, Assert.Single(texts, t => t.Text is "joint 1  1300").At.X, 1e-9);
        Assert.Equal(joints[1].Left, Assert.Single(texts, t => t.Text is "joint 2  3900").At.X, 1e-9);
        Assert.Empty(Lettered.Overlaps(sheet));
        Assert.Empty(Lettered.Under(sheet, "joint 1  1300"));
        Assert.Empty(Lettered.Under(sheet, "joint 2  3900"));
    }

    [Fact]
    public void Names_of_joints_close_together_stand_clear_of_each_other()
    {
        var lines = HullLines.Of(SampleHulls.DoubleEnder());
        var sheet = LinesPlanSheet.Of(lines, SampleHulls.Figures(lines.Hull), new LinesPlanSettings("Trial", PaperSize.A3, LengthNotation.Millimeters) { Joints = [2, 2.1] });
        Assert.Empty(Lettered.Overlaps(sheet));
        Assert.Empty(Lettered.Under(sheet, "joint 1  2000"));
        Assert.Empty(Lettered.Under(sheet, "joint 2  2100"));
    }

    [Fact]
    public void A_hull_that_is_not_fair_is_marked_so_in_the_title_block()
    {
        var lines = HullLines.Of(SampleHulls.DoubleEnder());
        Sheet Of(bool isFair) => LinesPlanSheet.Of(lines, SampleHulls.Figures(lines.Hull), new LinesPlanSettings("Trial", PaperSize.Letter, LengthNotation.Millimeters) { IsFair = isFair });
        Assert.Single(Of(false).Marks.OfType<TextMark>(), t => t.Text.EndsWith("NOT FAIR: see report", StringComparison.Ordinal));
        Assert.Empty(Lettered.Overlaps(Of(false)));
        Assert.DoesNotContain(Of(true).Marks.OfType<TextMark>(), t => t.Text.Contains("NOT FAIR", StringComparison.Ordinal));
    }

    [Fact]
    public void Paper_that_is_too_small_is_refused() =>
        Assert.Throws<ArgumentException>(() => LinesPlanSheet.Of(
            HullLines.Of(SampleHulls.DoubleEnder()), SampleHulls.Figures(SampleHulls.DoubleEnder()), new LinesPlanSettings("Trial", new PaperSize("stamp", 40, 50), LengthNotation.Millimeters)));

    private static (Sheet Sheet, HullLines Lines) Plan(string hull, LengthNotation notation, PaperSize? paper = null)
    {
        var lines = hull switch
        {
            "transom" => HullLines.Of(SampleHulls.TransomBoat()),
            "double-ender" => HullLines.Of(SampleHulls.DoubleEnder()),
            _ => ShapedTemplates.Of(Path.GetFileNameWithoutExtension(hull)).Lines,
        };
        return (LinesPlanSheet.Of(lines, SampleHulls.Figures(lines.Hull), new LinesPlanSettings("Trial", paper ?? PaperSize.A3, notation)), lines);
    }

    private static Box2 BoundsOf(Mark mark)
    {
        var strokes = mark is TextMark text ? StrokeLettering.Strokes(text) : [((PathMark)mark).Path];
        return strokes.Aggregate(Box2.Nothing, (b, s) => b.With(s.Bounds()));
    }
}
