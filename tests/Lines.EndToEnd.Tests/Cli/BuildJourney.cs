using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Lines.EndToEnd.Tests.Support;
using Lines.Tests.Support;
using Xunit;

namespace Lines.EndToEnd.Tests.Cli;

public sealed class BuildJourney
{
    [Fact]
    public void A_mold_that_is_listed_and_cannot_be_made_is_told_everywhere_and_fails_the_run()
    {
        using var place = new Workplace();
        place.Write("mine.toml", Designs.Runner().Replace("mold_spacing = \"300 mm\"", "mold_at = [\"0.2 m\", \"0.3 m\", \"5.1 m\"]", StringComparison.Ordinal)
            .Replace("planking     = \"6 mm\"", "planking     = \"30 mm\"", StringComparison.Ordinal));
        const string at = "mine.toml:35:12: warning: build.mold_at: no mold at x = 200 mm: ", told = "No mold at x = 200 mm: ";
        const string missing = "lines: 2 parts are missing: mold at x = 200 mm, mold at x = 5100 mm\n";

        var build = Command.Run(place.Root, "build", "mine.toml", "-o", "out");

        Assert.Equal(1, build.Code);
        Assert.Contains(at, build.Error, StringComparison.Ordinal);
        Assert.Contains("mine.toml:35:30: warning: build.mold_at: no mold at x = 5100 mm: ", build.Error, StringComparison.Ordinal);
        Assert.EndsWith(missing, build.Error, StringComparison.Ordinal);
        Assert.Contains("<strong>Warning:</strong> " + told, File.ReadAllText(place.PathOf("out/report.html")), StringComparison.Ordinal);
        Assert.Contains(told, File.ReadAllText(place.PathOf("out/molds/setting-up.csv")), StringComparison.Ordinal);
        using var numbers = JsonDocument.Parse(File.ReadAllBytes(place.PathOf("out/numbers.json")));
        var warning = numbers.RootElement.GetProperty("diagnostics")[0];
        Assert.Equal(("build.mold_at", "warning", 35, 12), (
            warning.GetProperty("key").GetString(), warning.GetProperty("severity").GetString(), warning.GetProperty("line").GetInt32(), warning.GetProperty("column").GetInt32()));
        foreach (var verb in (string[][])[["check", "mine.toml", "--json"], ["molds", "mine.toml"], ["print", "mine.toml"]])
        {
            var run = Command.Run(place.Root, verb);
            Assert.Equal(1, run.Code);
            Assert.Contains(at, run.Error, StringComparison.Ordinal);
            Assert.Equal(verb[0] != "check", run.Error.EndsWith(missing, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void A_mold_told_to_stand_where_the_warning_says_is_made()
    {
        using var place = new Workplace();
        place.Write("mine.toml", Designs.Runner().Replace("mold_spacing = \"300 mm\"", "mold_at = [\"0.1 m\", \"2.6 m\"]", StringComparison.Ordinal));
        var advised = Regex.Match(Command.Run(place.Root, "molds", "mine.toml", "-o", "first").Error, @"; (?<x>[0-9.]+ mm) or further aft would do", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5));
        Assert.True(advised.Success);
        place.Write("mine.toml", File.ReadAllText(place.PathOf("mine.toml")).Replace("0.1 m", advised.Groups["x"].Value, StringComparison.Ordinal));

        var run = Command.Run(place.Root, "molds", "mine.toml", "-o", "second");

        Assert.Equal((0, false), (run.Code, run.Error.Contains("warning", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_station_that_the_spacing_puts_into_the_room_of_an_end_is_told_and_fails_nothing()
    {
        using var place = new Workplace();
        place.Write("mine.toml", Designs.Runner().Replace("widest = 0.50", "widest = 0.525", StringComparison.Ordinal));

        var run = Command.Run(place.Root, "molds", "mine.toml");

        Assert.Equal(0, run.Code);
        Assert.Contains("note: build.mold_spacing: no mold at x = ", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("missing", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_design_gives_the_same_bytes_whatever_the_folder_the_locale_the_clock_and_the_processor()
    {
        using var place = new Workplace();
        // One station falls into the room of the stem, so that the numbers hold a diagnostic with its file too.
        place.Write("mine.toml", Designs.Runner().Replace("entry_fullness = 0.62", "entry_fullness = 0.74", StringComparison.Ordinal));
        Directory.CreateDirectory(place.PathOf("elsewhere"));
        var foreign = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["LC_ALL"] = "sv_SE.UTF-8",
            ["LANG"] = "sv_SE.UTF-8",
            ["TZ"] = "Asia/Kathmandu",
            ["DOTNET_PROCESSOR_COUNT"] = "1",
            ["DOTNET_TieredCompilation"] = "0",
        };

        Assert.Equal(0, Command.Run(place.Root, "build", "mine.toml", "-o", "one").Code);
        Assert.Equal(0, Command.Run(place.PathOf("elsewhere"), foreign, "build", "../mine.toml", "-o", "two").Code);

        var names = Directory.EnumerateFiles(place.PathOf("one"), "*", SearchOption.AllDirectories).Select(p => Path.GetRelativePath(place.PathOf("one"), p)).ToList();
        Assert.True(names.Count > 20);
        Assert.All(names, n => Assert.Equal(File.ReadAllBytes(place.PathOf("one/" + n)), File.ReadAllBytes(place.PathOf("elsewhere/two/" + n))));
    }

    [Fact]
    public void Paper_of_the_rest_of_the_world_gives_a_file_named_for_it_and_building_again_with_force_takes_it_away_with_molds_that_are_no_more_and_nothing_of_the_users()
    {
        using var place = new Workplace();
        place.Write("mine.toml", Designs.Runner());
        Assert.Equal(0, Command.Run(place.Root, "build", "mine.toml", "--paper", "a4").Code);
        Assert.Contains("mine/templates-a4.pdf", place.Entries(), StringComparer.Ordinal);
        Assert.DoesNotContain("mine/templates-letter.pdf", place.Entries(), StringComparer.Ordinal);
        var before = place.Entries().Count(e => e.StartsWith("mine/molds/mold-", StringComparison.Ordinal));
        place.Write("mine/molds/notes.txt", "mine");
        place.Write("mine.toml", new EditedDesign(Designs.Runner()).With("build.mold_spacing", "\"600 mm\"").Text);

        Assert.Equal(0, Command.Run(place.Root, "build", "mine.toml", "--force").Code);

        Assert.Contains("mine/templates-letter.pdf", place.Entries(), StringComparer.Ordinal);
        Assert.DoesNotContain("mine/templates-a4.pdf", place.Entries(), StringComparer.Ordinal);
        var after = place.Entries().Count(e => e.StartsWith("mine/molds/mold-", StringComparison.Ordinal));
        Assert.InRange(after, 5, before - 5);
        Assert.Equal("mine", File.ReadAllText(place.PathOf("mine/molds/notes.txt")));
        Assert.DoesNotContain(place.Entries(), e => e.EndsWith(".part", StringComparison.Ordinal));
    }

    [Fact]
    public void Molds_written_again_with_force_are_those_of_the_design_alone()
    {
        using var place = new Workplace();
        place.Write("mine.toml", Designs.Runner());
        Assert.Equal(0, Command.Run(place.Root, "molds", "mine.toml", "-o", "new/cnc").Code);
        place.Write("new/cnc/mine.dxf", "mine");
        var coarse = new EditedDesign(Designs.Runner()).With("build.mold_spacing", "\"600 mm\"").Text;
        place.Write("mine.toml", coarse);
        Assert.Equal(0, Command.Run(place.Root, "molds", "mine.toml", "-o", "fresh").Code);

        Assert.Equal(0, Command.Run(place.Root, "molds", "mine.toml", "-o", "new/cnc", "--force").Code);

        string[] In(string folder) => [.. Directory.EnumerateFiles(place.PathOf(folder)).Select(p => Path.GetFileName(p)!).Order(StringComparer.Ordinal)];
        Assert.Equal(In("fresh").Append("mine.dxf").Order(StringComparer.Ordinal), In("new/cnc"), StringComparer.Ordinal);
    }

    [Fact]
    public void An_unfair_hull_is_built_whole_and_the_exit_code_says_so()
    {
        using var place = new Workplace();
        place.Write("lumpy.toml", Designs.Unfair());

        var check = Command.Run(place.Root, "check", "lumpy.toml");
        var build = Command.Run(place.Root, "build", "lumpy.toml", "-o", "out");

        Assert.Equal(1, check.Code);
        Assert.All(check.Error.Split('\n').Where(l => l.StartsWith("lumpy.toml:", StringComparison.Ordinal)), l => Assert.Contains(": note: build.mold_spacing: ", l, StringComparison.Ordinal));
        Assert.Contains("Not fair: ", check.Out, StringComparison.Ordinal);
        // What is said to be fair is.
        var advice = Regex.Match(check.Out, "; raise hull.bow.rocker to (?<value>[0-9.]+ mm), with which the hull is fair", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5));
        Assert.True(advice.Success, check.Out);
        place.Write("eased.toml", Designs.Unfair().Replace("80 mm", advice.Groups["value"].Value, StringComparison.Ordinal));
        Assert.Contains("Fair: ", Command.Run(place.Root, "check", "eased.toml").Out, StringComparison.Ordinal);
        using var json = JsonDocument.Parse(Command.Run(place.Root, "check", "lumpy.toml", "--json").Out);
        var eased = json.RootElement.GetProperty("fairness").EnumerateArray().Where(l => l.TryGetProperty("ease", out _)).ToList();
        Assert.All(eased, l => Assert.Equal(("hull.bow.rocker", 1, advice.Groups["value"].Value), (
            l.GetProperty("ease").GetString(), l.GetProperty("ease_toward").GetInt32(), l.GetProperty("ease_fair_at_shown").GetString())));
        Assert.Equal((1, ""), (build.Code, build.Out));
        Assert.Contains("lines: Not fair: ", build.Error, StringComparison.Ordinal);
        Assert.True(File.Exists(place.PathOf("out/report.html")));
        using var numbers = JsonDocument.Parse(File.ReadAllBytes(place.PathOf("out/numbers.json")));
        Assert.Contains(numbers.RootElement.GetProperty("fairness").EnumerateArray(), l => !l.GetProperty("fair").GetBoolean());
    }

    [Fact]
    public void A_design_in_inches_is_shown_in_inches_unless_asked_otherwise()
    {
        using var place = new Workplace();
        Assert.Equal(0, Command.Run(place.Root, "new", "mine.toml", "--length", "17 ft", "--units", "in").Code);

        Assert.Matches("Length +204 in", Command.Run(place.Root, "check", "mine.toml").Out);
        Assert.Matches("Length +5181.6 mm", Command.Run(place.Root, "check", "mine.toml", "--units", "mm").Out);
        Assert.Contains("Inches and fractions to 1/32.", Command.Run(place.Root, "offsets", "mine.toml").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_holds_the_figures_of_the_text_in_units_of_their_names()
    {
        using var place = new Workplace();
        place.Write("mine.toml", Designs.Runner());

        var text = Command.Run(place.Root, "check", "mine.toml");
        using var json = JsonDocument.Parse(Command.Run(place.Root, "check", "mine.toml", "--json", "--units", "in").Out);

        var length = json.RootElement.GetProperty("figures").GetProperty("dimensions").GetProperty("length_m").GetDouble();
        Assert.Matches(Invariant($"Length +{Math.Round(length * 1000, 1)} mm"), text.Out);
        Assert.True(json.RootElement.GetProperty("figures").GetProperty("afloat").GetProperty("displacement_fresh_kg").GetDouble() > 50);
        Assert.Equal(0, json.RootElement.GetProperty("diagnostics").GetArrayLength());
    }

    [Fact]
    public void Float_prints_the_hydrostatics_at_the_design_draft_and_against_draft_with_its_cautions()
    {
        using var place = new Workplace();
        place.Write("mine.toml", Designs.Runner());

        var text = Command.Run(place.Root, "float", "mine.toml");
        using var json = JsonDocument.Parse(Command.Run(place.Root, "float", "mine.toml", "--json").Out);

        Assert.Equal(0, text.Code);
        Assert.Contains("estimates for design", text.Out, StringComparison.Ordinal);
        var figures = json.RootElement.GetProperty("figures");
        var masses = Enumerable.Range(1, 10).Select(k => figures.GetProperty(Invariant($"curves_of_form_{k:00}")).GetProperty("displacement_fresh_kg").GetDouble()).ToList();
        Assert.Equal(masses.Order(), masses);
        Assert.Equal(figures.GetProperty("afloat").GetProperty("displacement_fresh_kg").GetDouble(), masses[4]);
        var row = text.Out.Split('\n').First(l => l.StartsWith("Displacement in fresh water, kg", StringComparison.Ordinal)).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(masses.Take(5).Select(m => m.ToString("F1", CultureInfo.InvariantCulture)), row[^5..]);
    }
}
