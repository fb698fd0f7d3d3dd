using System.Text.Json;
using System.Text.RegularExpressions;
using Lines.EndToEnd.Tests.Support;
using Xunit;

namespace Lines.EndToEnd.Tests.Cli;

/// <summary>A template, from its file to everything that is made of it.</summary>
[Collection(nameof(BuiltTemplates))]
public sealed class TemplateJourney(BuiltTemplates templates)
{
    [Theory]
    [InlineData("gauge-runner", "stern.dxf")]
    [InlineData("silt-sampler", "transom.dxf")]
    public void One_command_writes_everything_a_builder_needs(string template, string stern)
    {
        var (place, run) = templates.Of(template);
        var folder = place.PathOf(template);

        Assert.Equal((0, ""), (run.Code, run.Out));
        using var numbers = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(folder, "numbers.json")));
        var molds = numbers.RootElement.GetProperty("molds").EnumerateArray().Select(m => m.GetProperty("file").GetString()!).ToList();
        // Two thicknesses of stock; the molds of the larger boat take four sheets, those of the slim one two; a transom is of plywood of its own.
        string[] sheets = [.. Enumerable.Range(1, template is "silt-sampler" ? 6 : 3).Select(k => Invariant($"molds/sheet-{k:D2}.dxf"))];
        string[] expected =
        [
            "curves-of-form.csv", "curves-of-form.pdf", "drag.csv", "drag.pdf", "hull.igs", "hull.step", "hull.stl", "lines-plan.dxf", "lines-plan.pdf", "lines-plan.png", "lines-plan.svg", "materials.csv", "molds", "molds/all-molds.dxf", "molds/cutting-list.csv", "molds/cutting-list.pdf", .. molds, "molds/setting-up.csv",
            "molds/setting-up.pdf", .. sheets, "numbers.json", "offsets.csv", "offsets.pdf", "offsets.txt", "planking.csv", "report.html", "templates-letter.pdf",
        ];
        Assert.Equal(
            expected.Select(n => template + "/" + n).Append(template).Order(StringComparer.Ordinal), place.Entries(), StringComparer.Ordinal);
        Assert.Equal(["molds/stem.dxf", "molds/mold-01.dxf"], molds.Take(2), StringComparer.Ordinal);
        Assert.Equal("molds/" + stern, molds[^1]);
        Assert.Matches(Invariant($@"^wrote {expected.Length - 1} files into {Regex.Escape(folder)} \(the patterns take \d+ pages of Letter\); open {Regex.Escape(folder)}/report\.html first\n$"), run.Error);
        Assert.Equal(
            ["version", "file", "figures", "fairness", "hollow_between_lines", "molds", "diagnostics"],
            numbers.RootElement.EnumerateObject().Select(p => p.Name), StringComparer.Ordinal);
        Assert.Equal($"{template}.toml", numbers.RootElement.GetProperty("file").GetString());
    }
}
