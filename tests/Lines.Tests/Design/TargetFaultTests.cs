using System.Text.RegularExpressions;
using Lines.Design;
using Lines.Design.Diagnostics;
using Lines.Hull.Form;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Design;

public sealed partial class TargetFaultTests
{
    [Theory]
    // too many, too few, the wrong ones
    [InlineData("displacement = \"130 kg\"", "", "8:16: hull.displacement: stands in place of a dial, and every dial is given; leave out length or beam or draft or entry_fullness or run_fullness or fullness, or this")]
    [InlineData("waterline_beam = \"60 cm\"", "run_fullness", "8:18: hull.waterline_beam: is not moved by a dial left out for it (run_fullness); leave out beam or draft or fullness instead")]
    [InlineData("waterline_length = \"5 m\"", "beam", "7:20: hull.waterline_length: is not moved by a dial left out for it (beam); leave out length instead")]
    [InlineData("center_of_buoyancy = 0.5", "fullness", "8:22: hull.center_of_buoyancy: is not moved by a dial left out for it (fullness); leave out entry_fullness or run_fullness instead")]
    [InlineData("prismatic = 0.56\nwaterline_length = \"5 m\"", "length", "7:13: hull.prismatic: stands in place of a dial, and 1 of the dials left out cannot meet 2 targets; leave out entry_fullness or run_fullness or fullness, or this|8:20: hull.waterline_length: stands in place of a dial, and 1 of the dials left out cannot meet 2 targets; leave out length, or this")]
    [InlineData("", "draft", "3:2: hull.draft: is missing; add a line like draft = \"115 mm\", or a target in its place: displacement, waterline_beam")]
    [InlineData("", "entry_fullness", "9:2: hull.bow.entry_fullness: is missing; add a line like entry_fullness = 0.62, or a target in its place: displacement, prismatic, center_of_buoyancy, entry_angle")]
    [InlineData("displacement = \"130 kg\"", "draft,beam", "3:2: hull.beam: is missing; add a line like beam = \"740 mm\", or a target in its place: waterline_beam|3:2: hull.draft: is missing; add a line like draft = \"115 mm\", or a target in its place: waterline_beam")]
    [InlineData("water = \"sea\"", "", "8:9: hull.water: says in which water displacement is meant, and none is given; leave it out, or give displacement")]
    // values
    [InlineData("displacement = 130", "draft", "7:16: hull.displacement: 130 has no unit; write \"130 kg\" or \"130 lb\", whichever is meant")]
    [InlineData("displacement = \"130 stone\"", "draft", "7:16: hull.displacement: \"130 stone\" has the unknown unit \"stone\"; masses are in kg or lb")]
    [InlineData("displacement = true", "draft", "7:16: hull.displacement: true is a true-or-false value; write a mass in quotes, like \"130 kg\"")]
    [InlineData("displacement = nan", "draft", "7:16: hull.displacement: nan is not a number anybody can build to; give 1 kg to 10000 kg")]
    [InlineData("displacement = \"1 lb\"", "draft", "7:16: hull.displacement: \"1 lb\" is below 2.3 lb; give 2.3 lb to 22046.2 lb")]
    [InlineData("displacement = \"130 kg\"\nwater = \"salt\"", "draft", "8:9: hull.water: has the unknown word \"salt\"; write \"fresh\" or \"sea\"")]
    [InlineData("prismatic = 56", "entry_fullness", "8:13: hull.prismatic: 56 is above 0.8; give 0.4 to 0.8, so 0.56 if per cent are meant")]
    [InlineData("lcb = 0.5", "entry_fullness", "8:1: hull.lcb: is not a key of a design file; did you mean center_of_buoyancy?")]
    public void A_fault_of_targets_is_told_at_its_place_with_what_would_be_right(string lines, string leftOut, string expected)
    {
        var text = leftOut.Split(',', StringSplitOptions.RemoveEmptyEntries).Aggregate(Plain(), Without);
        var at = text.Split('\n').ToList().IndexOf("[hull.bow]");
        text = lines.Length == 0 ? text : string.Join('\n', text.Split('\n').Take(at - 1).Append(lines).Concat(text.Split('\n').Skip(at - 1)));

        Assert.Equal(expected.Split('|').Select(e => "a.toml:" + e), Read(text).Select(d => d.Headline));
    }

    [Fact]
    public void The_angle_of_the_entry_is_a_target_only_where_no_other_accounts_for_its_fullness()
    {
        var alone = new EditedDesign(SampleDesigns.Pointed).With("hull.bow.entry_fullness", null);

        Assert.Equal([Target.EntryAngle], TargetsOf(alone));
        Assert.Null(Sound(alone).MainHull.Bow.EntryAngle);
        var beside = alone.With("hull.prismatic", "0.56");
        Assert.Equal([Target.Prismatic], TargetsOf(beside));
        Assert.NotNull(Sound(beside).MainHull.Bow.EntryAngle);

        IEnumerable<Target> TargetsOf(EditedDesign design) => Sound(design).Targets.Asked.Select(t => t.Target);
    }

    [Fact]
    public void A_dial_found_is_held_against_what_follows_from_it_like_one_given()
    {
        var text = new EditedDesign(Runner()).With("hull.length", null).With("hull.waterline_length", "\"3.90 m\"").With("build.joints", "[\"1.3 m\", \"4.5 m\"]").Text;

        var fault = Assert.Single(Explained(text, out _));

        Assert.Equal("build.joints", fault.Key);
        Assert.Matches("^a.toml:[0-9]+:20: build.joints: \"4.5 m\" is not between the ends of the hull; give less than 4\\.[0-9]+ m", fault.Headline);
    }

    [Theory]
    [InlineData("hull.bow.entry_fullness", "hull.prismatic=0.5")]
    [InlineData("hull.draft", "hull.displacement=\"20 kg\"")]
    [InlineData("hull.midship.fullness", "hull.displacement=\"200 kg\"")]
    [InlineData("hull.bow.entry_fullness,hull.stern.run_fullness", "hull.prismatic=0.56,hull.center_of_buoyancy=0.57")]
    public void What_cannot_be_met_is_told_with_the_nearest_value_and_that_builds(string leftOut, string targets)
    {
        var design = leftOut.Split(',').Aggregate(new EditedDesign(Runner()), (d, path) => d.With(path, null));
        design = targets.Split(',').Select(t => t.Split('=')).Aggregate(design, (d, t) => d.With(t[0], t[1]));

        var faults = Explained(design.Text, out var surface);

        Assert.Null(surface);
        var told = faults.Select(f => (f.Key, Match: Nearest().Match(f.Headline))).Where(f => f.Match.Success).ToList();
        Assert.NotEmpty(told);
        foreach (var (key, match) in told)
        {
            var value = match.Groups["value"].Value;
            var mended = design.With(key, value.Contains(' ', StringComparison.Ordinal) ? $"\"{value}\"" : value);
            Assert.Empty(Explained(mended.Text, out var hull).Select(f => f.Headline));
            Assert.NotNull(hull);
        }
    }

    private static IReadOnlyList<Diagnostic> Explained(string text, out HullSurface? surface)
    {
        var design = DesignFile.Read(text, "a.toml").Design!;
        var solution = HullShape.Solve(design.Vessel, design.Source.AsTold, design.Source.AsTold);
        surface = solution.Surface;
        return design.Source.Explain(solution);
    }

    private static Vessel Sound(EditedDesign design) => DesignFile.Read(design.Text, "a.toml").Design!.Vessel;

    private static IReadOnlyList<Diagnostic> Read(string text) => DesignFile.Read(text, "a.toml").Diagnostics;

    private static string Runner() => File.ReadAllText(Repository.PathOf("templates", "gauge-runner.toml"));

    /// <summary>A pointed design that gives what it must and no more.</summary>
    private static string Plain() => string.Join('\n', SampleDesigns.Pointed.Split('\n').Where(l => !Optional().IsMatch(l)));

    private static string Without(string text, string key) => string.Join('\n', text.Split('\n').Where(l => !l.StartsWith(key + " =", StringComparison.Ordinal)));

    [GeneratedRegex("^(widest|keel_low|hollow|sheer_fullness|vee|entry_angle|run_angle|joints|mold_at|strongback_top|mold_spacing) =", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Optional();

    [GeneratedRegex("nearest that can be reached (?<value>[^,(]+?)( \\(some line is then not yet fair\\))?, the others kept", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Nearest();
}
