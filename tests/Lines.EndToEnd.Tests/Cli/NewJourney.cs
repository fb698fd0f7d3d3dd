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
    public void A_template_starts_a_design_word_for_word_under_a_header_of_its_own(string template)
    {
        using var place = new Workplace();

        var run = Command.Run(place.Root, "new", "mine.toml", "--from", template);

        Assert.Equal(0, run.Code);
        Assert.Empty(run.Out);
        Assert.StartsWith("Fair: ", run.Error, StringComparison.Ordinal);
        Assert.EndsWith($"\nwrote mine.toml from {template}; open it in an editor, then: lines check mine.toml\n", run.Error, StringComparison.Ordinal);
        string[] expected =
        [
            $"# Started from the template {template}. Change what you like, then: lines check FILE",
            "# Lengths and angles stand in quotes with their unit; what follows a # is a remark.",
            .. File.ReadAllLines(Lines.Tests.Support.Repository.PathOf("templates", template + ".toml")).SkipWhile(l => l.StartsWith('#')),
        ];
        Assert.Equal(expected, File.ReadAllLines(place.PathOf("mine.toml")), StringComparer.Ordinal);
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

    [Fact]
    public void Dimensions_that_do_not_go_together_are_written_and_told_with_what_to_ease_where_it_stands()
    {
        using var place = new Workplace();

        // A section of 7 deg deadrise, some 250 mm half as broad and 45 mm deep, is no fuller than 1 - 250 tan 7 / (2 x 45) = 0.66; the template asks 0.74.
        var run = Command.Run(place.Root, "new", "mine.toml", "--draft", "45 mm");

        Assert.Equal((0, ""), (run.Code, run.Out));
        Assert.StartsWith("These dimensions do not go together yet: no fair hull has them all. Ease one in the file:\nmine.toml:", run.Error, StringComparison.Ordinal);
        Assert.EndsWith("\nwrote mine.toml from gauge-runner; open it in an editor, then: lines check mine.toml\n", run.Error, StringComparison.Ordinal);
        Assert.Equal(0.045, Read(place, "mine.toml").Vessel.MainHull.Draft);
        Assert.Equal(2, Command.Run(place.Root, "check", "mine.toml").Code);
    }

    [Theory]
    [InlineData("in")]
    [InlineData("ft-in")]
    [InlineData("ft-in-8ths")]
    public void Every_length_of_the_file_is_in_the_notation_asked_for(string units)
    {
        using var place = new Workplace();

        var run = Command.Run(place.Root, "new", "mine.toml", "--from", "line-layer", "--length", "9 m", "--beam", "24 in", "--units", units);

        Assert.Equal(0, run.Code);
        Assert.DoesNotMatch("\"[0-9.]+ (mm|cm|m)\"", File.ReadAllText(place.PathOf("mine.toml")));
        Assert.Equal(9, Read(place, "mine.toml").Vessel.MainHull.Length, 0.0008);

        // Thin stock would be changed by a rounding to 1/32 in: 0.4 mm is 0.0157 in, 6 mm is 0.2362 in.
        Assert.Equal(0.0004, Read(place, "mine.toml").Build.Sheathing, 0.000013);
        Assert.Equal(0.006, Read(place, "mine.toml").Build.Planking, 0.000013);
    }

    [Theory]
    [InlineData("--length", "40 m", "--length: \"40 m\" is above 15 m; give 1.8 m to 15 m")]
    [InlineData("--length", "-4 m", "--length: \"-4 m\" is below 1 m; give 1.8 m to 15 m\nlines: one fault, nothing written\n")]
    [InlineData("--depth", "-1 mm", "--depth: \"-1 mm\" is below 80 mm; give more than 120 mm up to 1.5 m\nlines: one fault, nothing written\n")]
    [InlineData("--length", "nonsense", "--length: \"nonsense\" is not a length; write it like 740 mm")]
    [InlineData("--length", "5200", "--length: \"5200\" has no unit; write \"5200 mm\"")]
    [InlineData("--length", "1 m", "--beam, not given: \"720 mm\" makes the hull less than 2.5 times as long as broad")]
    [InlineData("--beam", "110 mm", "--beam: stretches hull.midship.deadrise too far: \"38.8 deg\" is above 35 deg; ask for a smaller --depth or a larger --beam")]
    [InlineData("--title", "a\nb", "--title: has a line break or another control character")]
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
    public void A_dimension_out_of_range_is_told_as_it_was_given_whatever_the_notation_of_the_file()
    {
        using var place = new Workplace();

        var run = Command.Run(place.Root, "new", "mine.toml", "--length", "-4 m", "--beam", "700 mm", "--units", "in");

        Assert.Equal((2, "", "--length: \"-4 m\" is below 1 m; give 1.7503 m to 15 m\nlines: one fault, nothing written\n"), (run.Code, run.Out, run.Error));
        Assert.Empty(place.Entries());
    }

    [Fact]
    public void What_is_there_already_stays_unless_told_otherwise()
    {
        using var place = new Workplace();
        place.Write("mine.toml", "mine");

        var run = Command.Run(place.Root, "new", "mine.toml");
        Assert.Equal(3, run.Code);
        Assert.Equal("lines: mine.toml: exists already; --force replaces it, or name another file\n", run.Error);
        Assert.Equal("mine", File.ReadAllText(place.PathOf("mine.toml")));

        Assert.Equal(0, Command.Run(place.Root, "new", "mine.toml", "--force").Code);
        Assert.Contains("[hull.bow]", File.ReadAllText(place.PathOf("mine.toml")), StringComparison.Ordinal);
        Assert.Equal(["mine.toml"], place.Entries());
    }

    private static VesselDesign Read(Workplace place, string name) => DesignFile.Read(File.ReadAllText(place.PathOf(name)), name).Design!;
}
