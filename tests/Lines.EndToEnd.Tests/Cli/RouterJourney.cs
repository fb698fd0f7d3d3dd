using System.Text.Json;
using Lines.EndToEnd.Tests.Support;
using Lines.Tests.Support;
using Xunit;

namespace Lines.EndToEnd.Tests.Cli;

/// <summary>Files for a router, made to order and looked through.</summary>
public sealed class RouterJourney
{
    [Fact]
    public void Files_for_an_old_controller_in_inches_are_written_and_found_sound_until_someone_spoils_one()
    {
        using var place = new Workplace();
        place.Write("mine.toml", new EditedDesign(Designs.Runner()).With("build.mold_spacing", "\"600 mm\"").Text);

        var molds = Command.Run(place.Root, "molds", "mine.toml", "-o", "cnc", "--dxf", "R12", "--dxf-units", "in", "--no-arcs", "--tool", "1/4 in", "--half");
        Assert.Equal((0, ""), (molds.Code, molds.Out));
        Assert.StartsWith("999\nlengths in inches\n", File.ReadAllText(place.PathOf("cnc/mold-01.dxf")), StringComparison.Ordinal);
        Assert.True(File.Exists(place.PathOf("cnc/sheet-01.dxf")));

        var sound = Command.Run(place.Root, "check", "cnc");
        Assert.Equal((0, ""), (sound.Code, sound.Error));
        Assert.Matches(@"^\d+ router files: outlines closed", sound.Out);

        var stem = File.ReadAllText(place.PathOf("cnc/stem.dxf"));
        place.Write("cnc/stem.dxf", stem.Replace("lengths in inches", "lengths in millimeters", StringComparison.Ordinal));
        var spoiled = Command.Run(place.Root, "check", "cnc");
        Assert.Equal((1, ""), (spoiled.Code, spoiled.Error));
        Assert.Matches(@"(?m)^cnc/stem\.dxf:\d+:1: mark: the test square is 3\.94 mm wide in place of 100 mm: mm and inches are mixed up; ", spoiled.Out);

        using var json = JsonDocument.Parse(Command.Run(place.Root, "check", "cnc", "--json").Out);
        Assert.Equal("cnc/stem.dxf", json.RootElement.GetProperty("diagnostics")[0].GetProperty("file").GetString());
        File.Delete(place.PathOf("cnc/mold-05.dxf"));
        Assert.Contains("cnc/mold-05.dxf:1:1: file: is missing, for mold-06.dxf is there; ", Command.Run(place.Root, "check", "cnc").Out, StringComparison.Ordinal);
        Assert.Contains("cnc/sheet-01.dxf", json.RootElement.GetProperty("files").EnumerateArray().Select(f => f.GetString()));
    }

    [Fact]
    public void A_tool_too_thick_for_the_slots_is_told_and_options_out_of_range_are_refused()
    {
        using var place = new Workplace();
        place.Write("mine.toml", Designs.Coarse());

        var thick = Command.Run(place.Root, "molds", "mine.toml", "-o", "cnc", "--tool", "12.7 mm");
        Assert.Equal(0, thick.Code);
        Assert.Contains("lines: STEM: a tool of 12.7 mm does not reach into ", thick.Error, StringComparison.Ordinal);
        foreach (var (option, value, told) in ((string, string, string)[])[("--tool", "30 mm", "--tool takes 0.5 mm to 25 mm, not \"30 mm\""), ("--dxf", "2010", "--dxf does not know \"2010\"; it takes 2000, r12"), ("--dxf-units", "cm", "--dxf-units does not know \"cm\"; it takes mm, in")])
        {
            var run = Command.Run(place.Root, "molds", "mine.toml", "-o", "other", option, value);
            Assert.Equal(2, run.Code);
            Assert.Contains(told, run.Error, StringComparison.Ordinal);
        }
    }
}
