using Lines.Design;
using Lines.EndToEnd.Tests.Support;
using Lines.Hull.Form;
using Xunit;

namespace Lines.EndToEnd.Tests.Cli;

public sealed class NewJourney
{
    public static TheoryData<string> Templates =>
        [.. Directory.EnumerateFiles(Lines.Tests.Support.Repository.PathOf("templates"), "*.toml").Select(p => Path.GetFileNameWithoutExtension(p)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Templates))]
    public void A_template_starts_a_design_word_for_word(string template)
    {
        using var place = new Workplace();

        var run = Command.Run(place.Root, "new", "mine.toml", "--from", template);

        Assert.Equal(0, run.Code);
        Assert.Empty(run.Out);
        Assert.StartsWith($"wrote mine.toml from {template}. Fair: ", run.Error, StringComparison.Ordinal);
        Assert.EndsWith("\nnext: lines check mine.toml\n", run.Error, StringComparison.Ordinal);
        Assert.Equal(File.ReadAllText(Lines.Tests.Support.Repository.PathOf("templates", template + ".toml")), File.ReadAllText(place.PathOf("mine.toml")));
    }

    [Fact]
    public void A_stretched_design_has_the_dimensions_asked_the_others_in_proportion_and_its_comments()
    {
        using var place = new Workplace();
        Command.Run(place.Root, "new", "plain.toml", "--from", "gauge-runner");
        var before = Read(place, "plain.toml").Vessel.MainHull;

        var run = Command.Run(
            place.Root, "new", "long.toml", "--from", "gauge-runner", "--length", "18 ft", "--beam", "30 1/2 in", "--depth", "400 mm", "--title", "Long \"Runner\"");

        Assert.Equal((0, ""), (run.Code, run.Out));
        var design = Read(place, "long.toml");
        var after = design.Vessel.MainHull;
        var (x, y, z) = (18 * 0.3048 / before.Length, 30.5 * 0.0254 / before.Beam, 0.4 / before.Depth);
        Assert.Equal("Long \"Runner\"", design.Title);
        Assert.Equal(18 * 0.3048, after.Length, 1e-12);
        Assert.Equal(30.5 * 0.0254, after.Beam, 1e-12);
        Assert.Equal(0.4, after.Depth, 1e-12);
        // Lengths that follow are rounded to 1 mm, angles to 0.1 degrees.
        Assert.Equal(before.Draft * z, after.Draft, 0.000501);
        Assert.Equal(before.Bow.Rocker * z, after.Bow.Rocker, 0.000501);
        Assert.Equal(before.Bow.Sheer * z, after.Bow.Sheer, 0.000501);
        Assert.Equal(before.Bow.Forefoot * x, after.Bow.Forefoot, 0.000501);
        Assert.Equal(((PointedStern)before.Stern).Heel * x, ((PointedStern)after.Stern).Heel, 0.000501);
        Assert.Equal(Math.Atan(Math.Tan(before.Midship.Deadrise) * z / y), after.Midship.Deadrise, 0.000873);
        Assert.Equal(Math.Atan(Math.Tan(before.Midship.Flare) * y / z), after.Midship.Flare, 0.000873);
        Assert.Equal((before.Bow.EntryFullness, before.Midship.Fullness), (after.Bow.EntryFullness, after.Midship.Fullness));
        Assert.Equal(
            File.ReadLines(place.PathOf("plain.toml")).Count(l => l.Contains('#', StringComparison.Ordinal)),
            File.ReadLines(place.PathOf("long.toml")).Count(l => l.Contains('#', StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("--length", "40 m", "--length: \"40 m\" is above 15 m; give")]
    [InlineData("--draft", "2 ft", "--draft: \"2 ft\" reaches the sheer")]
    [InlineData("--beam", "20 mm", "--beam: \"20 mm\" is below 100 mm")]
    [InlineData("--title", "", "--title: is empty")]
    public void What_would_be_no_sound_design_is_not_written(string option, string value, string message)
    {
        using var place = new Workplace();

        var run = Command.Run(place.Root, "new", "mine.toml", option, value);

        Assert.Equal(2, run.Code);
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
        Assert.Empty(place.Entries());
    }

    [Fact]
    public void What_is_there_already_stays_unless_told_otherwise()
    {
        using var place = new Workplace();
        place.Write("mine.toml", "mine");

        var run = Command.Run(place.Root, "new", "mine.toml");
        Assert.Equal(3, run.Code);
        Assert.Equal("lines: mine.toml: exists already; --force replaces it, or name another with -o\n", run.Error);
        Assert.Equal("mine", File.ReadAllText(place.PathOf("mine.toml")));

        Assert.Equal(0, Command.Run(place.Root, "new", "mine.toml", "--force").Code);
        Assert.Contains("[hull.bow]", File.ReadAllText(place.PathOf("mine.toml")), StringComparison.Ordinal);
        Assert.Equal(["mine.toml"], place.Entries());
    }

    private static VesselDesign Read(Workplace place, string name) => DesignFile.Read(File.ReadAllText(place.PathOf(name)), name).Design!;
}
