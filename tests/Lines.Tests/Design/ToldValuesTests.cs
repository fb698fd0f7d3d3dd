using System.Text.RegularExpressions;
using Lines.Design;
using Lines.Hull.Form;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Design;

/// <summary>What a conflict tells is what a user types next: it must build as it stands.</summary>
public sealed partial class ToldValuesTests
{
    [Theory]
    [InlineData("gauge-runner", "hull.bow.vee", "\"30 deg\"")]
    [InlineData("silt-sampler", "hull.bow.vee", "\"40 deg\"")]
    [InlineData("gauge-runner", "hull.bow.sheer_fullness", "0.94")]
    [InlineData("gauge-runner", "hull.beam", "\"58 1/2 in\"")]
    [InlineData("line-layer", "hull.midship.flare", "\"34 deg\"")]
    [InlineData("silt-sampler", "hull.midship.fullness", "0.82")]
    public void Every_value_told_builds_as_it_is_told(string template, string key, string value)
    {
        var text = File.ReadAllText(Repository.PathOf("templates", template + ".toml"));
        var design = new EditedDesign(text).With(key, value);
        var read = DesignFile.Read(design.Text, "a.toml").Design!;
        var conflict = Assert.Single(HullShape.Solve(read.Vessel.MainHull, read.Source.AsTold).Conflicts);

        var told = read.Source.Explain([conflict]).Select(f => (f.Key, Value: ToldIn(f.Headline))).ToList();
        Assert.NotEmpty(told);
        if (conflict.Together)
            Assert.False(Refused(design.With(told.Select(t => (t.Key, t.Value!)))));
        else
            Assert.All(told, t => Assert.False(Refused(design.With(t.Key, t.Value))));
    }

    private static bool Refused(EditedDesign design)
    {
        var reading = DesignFile.Read(design.Text, "a.toml");
        return reading.Design is null || HullAttempt.Make(reading.Design.Vessel.MainHull).Fault is not null;
    }

    /// <summary>The value told in a line, as it would be typed into the file.</summary>
    private static string? ToldIn(string headline)
    {
        if (headline.Contains("; true would do", StringComparison.Ordinal))
            return "true";
        var value = Told().Match(headline).Groups["value"].Value;
        return value.Length == 0 ? null : value.Any(c => c is not ((>= '0' and <= '9') or '.')) ? '"' + value.Replace("\"", "\\\"", StringComparison.Ordinal) + '"' : value;
    }

    [GeneratedRegex(@"(?:nearest feasible|feasible) (?<value>.+?)(?: if the others| \(|, the others)", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Told();
}
