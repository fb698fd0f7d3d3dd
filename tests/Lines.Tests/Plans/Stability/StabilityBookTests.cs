using System.Text.Json;
using Lines.Drawing.Model;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Loading;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Figures;
using Lines.Plans.Paper;
using Lines.Plans.Report;
using Lines.Plans.Stability;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Stability;

/// <summary>Load cases and stability as tables, numbers and pictures.</summary>
public class StabilityBookTests
{
    private static readonly LoadSettings s_settings = new(Water.Sea, 0.1, 6, [1.7, 3.5]);

    private static readonly StabilityBook s_book = Book(60);

    private static StabilityBook Book(double crew, double wind = 6, bool floats = true)
    {
        var shape = new VesselShape(
            SampleHulls.DoubleEnder(),
            !floats ? [] : [(new Outrigger(SampleHulls.DoubleEnder().Dials, OutriggerSide.Both, 1.0, 0.02, 1.0), CrownedHulls.With(SampleHulls.DoubleEnder(), 0.03))]);
        var vessel = new Vessel(SampleHulls.DoubleEnder().Dials)
        {
            Loads =
            [
                new Load("paddler", crew, new Point3(2.6, 0, 0.3), ["solo"]),
                new Load("crew", 75, new Point3(2.6, -0.6, 0.4), ["under way"]),
            ],
            Compartments = [new("bow", 0, 1.6, true), new("stern", 3.7, 5.2, true)],
            Rig = new Rig(5, 2.3, 2),
        };
        return new StabilityBook("Trial", shape.Main, LoadCaseStudy.All(shape, vessel, new Structure(40, new Point3(2.6, 0, 0.2)), s_settings with { Wind = wind }), s_settings with { Wind = wind }, LengthNotation.Millimeters) { HasOutriggers = floats };
    }

    [Fact]
    public void Light_ship_comes_first_then_the_cases_of_the_file() => Assert.Equal(["light ship", "solo", "under way"], s_book.Studies.Select(s => s.Name));

    // 5 m² of sail set 2.3 m up in 40 m/s: some 12 kN m over a boat of 100 kg that is under 3 m broad, so over 4 times what her weight can bring against it.
    [Fact]
    public void A_wind_she_does_not_hold_is_said_to_capsize_her()
    {
        Assert.DoesNotContain("capsizes", s_book.Text(), StringComparison.Ordinal);
        Assert.Contains("capsizes", Book(60, wind: 40).Text(), StringComparison.Ordinal);
    }

    // Without outriggers the open hull takes water over her sheer before her righting arm ends.
    [Fact]
    public void A_wind_that_puts_her_open_sheer_under_is_said_to_fill_her()
    {
        var text = Book(60, wind: 40, floats: false).Text();
        Assert.Contains("fills", text, StringComparison.Ordinal);
        Assert.DoesNotContain("capsizes", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Numbers_for_programs_hold_every_figure_of_every_case()
    {
        using var json = JsonDocument.Parse(FigureJson.Write(new Results("trial.toml") { Figures = s_book.Groups }, "1"));
        var figures = json.RootElement.GetProperty("figures");
        var solo = figures.GetProperty("case_solo");
        Assert.Equal(100, solo.GetProperty("mass_kg").GetDouble(), 1e-6);
        Assert.Equal(1, solo.GetProperty("floats").GetInt32());
        Assert.Equal(100, solo.EnumerateObject().Where(p => p.Name.EndsWith("_displacement_kg", StringComparison.Ordinal)).Sum(p => p.Value.GetDouble()), 1e-5);
        var arms = figures.GetProperty("case_solo_to_starboard");
        Assert.Equal(37, arms.EnumerateObject().Count(p => p.Name.StartsWith("arm_", StringComparison.Ordinal)));
        Assert.Equal(0, arms.GetProperty("arm_000_deg_m").GetDouble(), 1e-6);
        Assert.True(figures.TryGetProperty("case_under_way_to_port", out _)); // not alike on both sides
        Assert.True(figures.TryGetProperty("case_solo_swamped_bow_holed", out _));
        Assert.True(figures.GetProperty("case_solo_bending_hogging").TryGetProperty("joint_2_tension_n", out _));
    }

    [Fact]
    public void Every_table_has_a_cell_for_every_column()
    {
        Assert.All(s_book.Tables, t => Assert.All(t.Table.Rows, r => Assert.Equal(t.Table.Columns.Count, r.Count)));
        Assert.All(s_book.Cases.Rows, r => Assert.DoesNotContain("NaN", string.Join(' ', r), StringComparison.Ordinal));
    }

    [Fact]
    public void Arms_past_downflooding_stand_in_brackets()
    {
        var arms = s_book.Studies[1].Arms[0];
        var column = s_book.Arms.Columns.Select(c => c.Name).ToList().IndexOf("solo");
        foreach (var row in s_book.Arms.Rows)
        {
            var heel = double.Parse(row[0], System.Globalization.CultureInfo.InvariantCulture) * Math.PI / 180;
            Assert.Equal(arms.Downflooding < heel, row[column].StartsWith('('));
        }

        Assert.True(arms.Range <= arms.Downflooding);
    }

    [Fact]
    public void A_case_that_sinks_says_so_with_its_numbers()
    {
        var book = Book(5000);
        Assert.False(book.AllFloat);
        Assert.Contains("SINKS: 5040.0 kg on hulls that displace", string.Join('\n', book.Verdicts), StringComparison.Ordinal);
        Assert.Contains("SINKS", book.Text(), StringComparison.Ordinal);
        Assert.NotEmpty(StabilityPages.Of(book, PaperSize.Letter));
    }

    [Fact]
    public void A_case_that_capsizes_says_so_and_tells_no_drafts()
    {
        var shape = new VesselShape(SampleHulls.DoubleEnder(), []);
        var vessel = new Vessel(SampleHulls.DoubleEnder().Dials) { Loads = [new Load("climber", 90, new Point3(2.6, 0, 2), null)] };
        var book = new StabilityBook("Trial", shape.Main, LoadCaseStudy.All(shape, vessel, new Structure(40, new Point3(2.6, 0, 0.15)), s_settings), s_settings, LengthNotation.Inches) { HasOutriggers = false };
        Assert.Contains("loaded: CAPSIZES: comes to no rest under 90 deg of heel", book.Text(), StringComparison.Ordinal);
        Assert.Null(book.Groups.First(g => g.Key is "case_loaded").Figures.First(f => f.Key is "draft_fore").Value);
        Assert.NotEmpty(StabilityPages.Of(book, PaperSize.Letter));
    }

    [Theory]
    [InlineData(10)]
    [InlineData(5000)]
    public void Only_a_boat_with_outriggers_is_told_that_she_does_not_right_herself_even_one_that_sinks(double mass)
    {
        foreach (var has in (bool[])[true, false])
        {
            var dials = SampleHulls.DoubleEnder().Dials;
            var shape = new VesselShape(
                SampleHulls.DoubleEnder(), has ? [(new Outrigger(dials, OutriggerSide.Both, 1.0, 0.02, 1.0), CrownedHulls.With(SampleHulls.DoubleEnder(), 0.03))] : []);
            var vessel = new Vessel(dials) { Loads = [new Load("cargo", mass, new Point3(2.6, 0, 0.2), null)] };
            var studies = LoadCaseStudy.All(shape, vessel, new Structure(mass, new Point3(2.6, 0, 0.2)), s_settings);
            var book = new StabilityBook("Trial", shape.Main, studies, s_settings, LengthNotation.Millimeters) { HasOutriggers = has };
            var words = string.Concat(StabilityPages.Of(book, PaperSize.A4).SelectMany(p => p.Marks.OfType<TextMark>()).Select(t => t.Text + "\n"));
            foreach (var told in (string[])[book.Text(), words, string.Join('\n', book.Cautioned)])
                Assert.Equal(has, told.Contains(Cautions.Outriggers, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Cautions_and_the_scope_of_rules_stand_with_the_numbers()
    {
        var text = s_book.Text();
        foreach (var line in (string[])[Cautions.CalmWater, Cautions.Outriggers, Cautions.Trials, RuleGuides.Scope, StabilityBook.Strength])
            Assert.Contains(line, text, StringComparison.Ordinal);
        Assert.DoesNotContain("complies", text, StringComparison.OrdinalIgnoreCase);
        var words = string.Concat(StabilityPages.Of(s_book, PaperSize.A4).SelectMany(p => p.Marks.OfType<TextMark>()).Select(t => t.Text + "\n"));
        Assert.Contains(Cautions.Outriggers, words, StringComparison.Ordinal);
        Assert.Contains(Cautions.Figures, words, StringComparison.Ordinal);
    }

    [Fact]
    public void Dashed_arms_begin_where_the_range_ends()
    {
        var sheet = StabilityPages.Arms(s_book, PaperSize.Letter);
        var full = sheet.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "arms").ToList();
        var dashed = sheet.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "arms-out-of-range").ToList();
        Assert.Equal(s_book.Studies.Sum(s => s.Arms.Count), full.Count);
        Assert.All(full.Zip(dashed), p => Assert.Equal(0, p.First.Path.Vertices[^1].Point.DistanceTo(p.Second.Path.Vertices[0].Point), 1e-9));
        Assert.All(dashed, m => Assert.NotNull(m.Layer.Ink.Dash));
    }

    // Ten cases of nearly one weight have nearly one curve: the numbers, 2.4 mm high in patches of 3 by 3.6 mm, still stand beside each other on it.
    [Fact]
    public void Numbers_of_curves_that_lie_on_each_other_do_not()
    {
        var shape = new VesselShape(SampleHulls.DoubleEnder(), []);
        var vessel = new Vessel(SampleHulls.DoubleEnder().Dials) { Loads = [.. Enumerable.Range(1, 10).Select(k => new Load(Invariant($"load {k}"), 50 + (k / 10.0), new Point3(2.6, 0, 0.2), [Invariant($"case {k}")]))] };
        var studies = LoadCaseStudy.All(shape, vessel, new Structure(40, new Point3(2.6, 0, 0.15)), s_settings);
        var book = new StabilityBook("Trial", shape.Main, studies, s_settings, LengthNotation.Millimeters) { HasOutriggers = false };
        var numbers = StabilityPages.Arms(book, PaperSize.Letter).Marks.OfType<TextMark>().Where(t => t.Height == 2.4).ToList();
        Assert.Equal(11, numbers.Count);
        Assert.All(numbers.SelectMany((a, k) => numbers.Skip(k + 1).Select(b => a.At.DistanceTo(b.At))), d => Assert.InRange(d, 4.7, 500));
    }

    [Fact]
    public void The_sheet_of_bending_says_that_a_case_that_capsizes_is_held_upright()
    {
        var shape = new VesselShape(SampleHulls.DoubleEnder(), []);
        var vessel = new Vessel(SampleHulls.DoubleEnder().Dials) { Loads = [new Load("climber", 90, new Point3(2.6, 0, 2), null)] };
        var book = new StabilityBook("Trial", shape.Main, LoadCaseStudy.All(shape, vessel, new Structure(40, new Point3(2.6, 0, 0.15)), s_settings), s_settings, LengthNotation.Millimeters) { HasOutriggers = false };
        Assert.Contains(StabilityPages.Bending(book, PaperSize.Letter)!.Marks.OfType<TextMark>(), t => t.Text.Contains("loaded, held upright, the case", StringComparison.Ordinal));
    }

    [Fact]
    public void Marks_stay_on_their_pages()
    {
        foreach (var page in StabilityPages.Of(s_book, PaperSize.Letter))
        {
            foreach (var text in page.Marks.OfType<TextMark>())
                Assert.True(text.At.X >= 0 && text.At.X <= page.Width && text.At.Y >= 0 && text.At.Y <= page.Height, text.Text);
        }
    }
}
