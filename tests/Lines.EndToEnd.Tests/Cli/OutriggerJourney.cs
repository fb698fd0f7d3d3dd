using System.Text.Json;
using Lines.EndToEnd.Tests.Support;
using Lines.Tests.Support;
using Xunit;

namespace Lines.EndToEnd.Tests.Cli;

/// <summary>A boat of several hulls, from a template to files.</summary>
public sealed class OutriggerJourney
{
    [Fact]
    public void A_build_holds_a_set_of_molds_and_patterns_for_every_shape_and_a_second_one_takes_away_what_is_made_no_more()
    {
        using var place = new Workplace();

        // The boat with her float, without loads and what follows them in the file: no mold hangs on them.
        var whole = File.ReadAllText(Repository.PathOf("templates", "sample-courier.toml"));
        var courier = new EditedDesign(whole.Remove(whole.IndexOf("[[load]]", StringComparison.Ordinal)));
        place.Write("mine.toml", courier.With("build.mold_spacing", "\"600 mm\"").Text);

        var run = Command.Run(place.Root, "build", "mine.toml", "-o", "out");

        Assert.Equal((0, ""), (run.Code, run.Out));
        var files = place.Entries();
        foreach (var name in (string[])["lines-plan.pdf", "offsets.csv", "molds/stem.dxf", "molds/mold-01.dxf", "molds/setting-up.csv", "hull.step", "hull.stl", "templates-letter.pdf"])
        {
            Assert.Contains($"out/{name}", files);
            Assert.Contains($"out/outrigger-1/{name}", files);
        }

        Assert.Contains("Deck at centerline above sheer", File.ReadAllText(place.PathOf("out/outrigger-1/molds/setting-up.csv")), StringComparison.Ordinal);
        Assert.DoesNotContain("Deck at centerline", File.ReadAllText(place.PathOf("out/molds/setting-up.csv")), StringComparison.Ordinal);
        using var numbers = JsonDocument.Parse(File.ReadAllBytes(place.PathOf("out/numbers.json")));
        Assert.True(numbers.RootElement.GetProperty("outriggers")[0].GetProperty("fair").GetBoolean());
        Assert.Equal(0.03, numbers.RootElement.GetProperty("figures").GetProperty("outrigger_1").GetProperty("crown_m").GetDouble());
        var molds = numbers.RootElement.GetProperty("molds").EnumerateArray().Select(m => m.GetProperty("file").GetString()!).ToList();
        Assert.All(molds, m => Assert.Contains("out/" + m, files));
        Assert.Contains(molds, m => m.StartsWith("outrigger-1/", StringComparison.Ordinal));

        // Built again, it loses the molds of a float that are made no more.
        Assert.Contains("out/outrigger-1/molds/mold-05.dxf", place.Entries());
        place.Write("mine.toml", courier.With("build.mold_spacing", "\"1.2 m\"").Text);

        Assert.Equal(0, Command.Run(place.Root, "build", "mine.toml", "-o", "out", "--force").Code);

        Assert.DoesNotContain("out/outrigger-1/molds/mold-05.dxf", place.Entries());
        Assert.Contains("out/outrigger-1/molds/mold-02.dxf", place.Entries());
    }

    [Fact]
    public void Every_verb_that_makes_one_thing_takes_the_hull_it_is_to_make_it_of()
    {
        using var place = new Workplace();
        Command.Run(place.Root, "new", "mine.toml", "--from", "sample-courier");
        foreach (var (verb, made) in ((string, string)[])[("draw", "mine-outrigger-1-lines-plan.pdf"), ("print", "mine-outrigger-1-templates-letter.pdf"), ("molds", "mine-outrigger-1-molds"), ("export", "mine-outrigger-1-hull")])
        {
            Assert.Equal(0, Command.Run(place.Root, verb, "mine.toml", "--hull", "outrigger-1").Code);
            Assert.Contains(made, place.Entries());
        }

        var table = Command.Run(place.Root, "offsets", "mine.toml", "--hull", "outrigger-1");
        Assert.Contains("Sample Courier, outrigger 1", table.Out, StringComparison.Ordinal);

        var none = Command.Run(place.Root, "draw", "mine.toml", "--hull", "outrigger-2");
        Assert.Equal((2, "lines: --hull: mine.toml has no hull \"outrigger-2\"; it has main, outrigger-1\n"), (none.Code, none.Error));
    }

    [Fact]
    public void Check_tables_the_hulls_and_judges_each_and_an_unfair_float_fails_it()
    {
        using var place = new Workplace();
        Command.Run(place.Root, "new", "mine.toml", "--from", "sample-courier");

        var fair = Command.Run(place.Root, "check", "mine.toml");

        Assert.Equal(0, fair.Code);
        Assert.Matches(@"main hull +5800 mm +550 mm +150 mm +\d+\.\d kg\n +outrigger 1, port and starboard, each +3600 mm +230 mm +80 mm +\d+\.\d kg\n", fair.Out);
        Assert.Contains("Fairness of outrigger 1, port and starboard, each\n  Fair: convex throughout", fair.Out, StringComparison.Ordinal);

        // A midship section that no convex line of that deadrise and flare can fill.
        place.Write("mine.toml", File.ReadAllText(place.PathOf("mine.toml")).Replace("fullness = 0.74", "fullness = 0.95", StringComparison.Ordinal));
        var excluded = Command.Run(place.Root, "check", "mine.toml");
        Assert.Equal(2, excluded.Code);
        Assert.Contains("outrigger.hull.midship.fullness: 0.95: ", excluded.Error, StringComparison.Ordinal);
        Assert.Empty(excluded.Out);
    }
}
