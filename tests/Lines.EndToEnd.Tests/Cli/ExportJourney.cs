using System.Text;
using System.Text.Json;
using Lines.EndToEnd.Tests.Support;
using Xunit;

namespace Lines.EndToEnd.Tests.Cli;

public sealed class ExportJourney(ExportedHull exported) : IClassFixture<ExportedHull>
{
    [Fact]
    public void All_four_formats_go_into_a_folder_named_after_the_design()
    {
        var (place, run) = (exported.Place, exported.Run);

        Assert.Equal((0, ""), (run.Code, run.Out));
        Assert.Matches(@"^wrote 4 files into mine-hull \(\d+ facets within 0\.5 mm of the surface\); open mine-hull/hull\.step in a CAD program\n$", run.Error);
        Assert.Equal(
            ["mine-hull", "mine-hull/hull.igs", "mine-hull/hull.obj", "mine-hull/hull.step", "mine-hull/hull.stl", "mine.toml"], place.Entries(), StringComparer.Ordinal);
        Assert.StartsWith("ISO-10303-21;", Head(place, "hull.step"), StringComparison.Ordinal);
        Assert.StartsWith("Hull, starboard skin", Head(place, "hull.igs"), StringComparison.Ordinal);
        Assert.StartsWith("Hull in mm: x aft, y to starboard, z up; chord error 0.5 mm\0", Head(place, "hull.stl"), StringComparison.Ordinal);
        Assert.StartsWith("# Hull in mm: x aft, y to starboard, z up; chord error 0.5 mm\n", Head(place, "hull.obj"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("hull.step", "step")]
    [InlineData("hull.stp", "step")]
    [InlineData("hull.IGS", "igs")]
    [InlineData("sub/hull.iges", "igs")]
    [InlineData("hull.stl", "stl")]
    [InlineData("hull.obj", "obj")]
    public void The_ending_of_a_file_says_the_format(string output, string same)
    {
        using var place = new Workplace();
        place.Write("mine.toml", Designs.Runner());

        var run = Command.Run(place.Root, "export", "mine.toml", "-o", output);

        Assert.Equal((0, ""), (run.Code, run.Out));
        Assert.Matches($@"^wrote {output}( \(\d+ facets within 0\.5 mm of the surface\))?; open it in ", run.Error);
        Assert.Equal(File.ReadAllBytes(exported.Place.PathOf("mine-hull/hull." + same)), File.ReadAllBytes(place.PathOf(output)));
    }

    [Fact]
    public void Formats_and_chord_error_are_those_asked_for_and_json_tells_them()
    {
        using var place = new Workplace();
        place.Write("mine.toml", Designs.Runner());

        var run = Command.Run(place.Root, "export", "mine.toml", "-o", "a/b", "--format", "stl", "OBJ", "--tolerance", "1/8 in", "--json");

        Assert.Equal(0, run.Code);
        Assert.Equal(["a", "a/b", "a/b/hull.obj", "a/b/hull.stl", "mine.toml"], place.Entries(), StringComparer.Ordinal);
        using var json = JsonDocument.Parse(run.Out);
        Assert.Equal(["a/b/hull.stl", "a/b/hull.obj"], json.RootElement.GetProperty("files").EnumerateArray().Select(f => f.GetString()), StringComparer.Ordinal);
        var mesh = json.RootElement.GetProperty("figures").GetProperty("mesh");
        Assert.Equal(0.003175, mesh.GetProperty("chord_error_m").GetDouble());
        Assert.Equal((new FileInfo(place.PathOf("a/b/hull.stl")).Length - 84) / 50, mesh.GetProperty("facets").GetInt64());
    }

    [Fact]
    public void With_force_the_files_of_an_earlier_run_are_replaced_and_others_stay()
    {
        using var place = new Workplace();
        place.Write("mine.toml", Designs.Runner());
        Directory.CreateDirectory(place.PathOf("out"));
        place.Write("out/hull.step", "old");
        place.Write("out/notes.txt", "mine");

        Assert.Equal(3, Command.Run(place.Root, "export", "mine.toml", "-o", "out", "--format", "step").Code);
        Assert.Equal(0, Command.Run(place.Root, "export", "mine.toml", "-o", "out", "--format", "step", "--force").Code);

        Assert.Equal(["mine.toml", "out", "out/hull.step", "out/notes.txt"], place.Entries(), StringComparer.Ordinal);
        Assert.StartsWith("ISO", File.ReadAllText(place.PathOf("out/hull.step")), StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(place.PathOf("out/notes.txt")));
    }

    private static string Head(Workplace place, string name) => Encoding.Latin1.GetString(File.ReadAllBytes(place.PathOf("mine-hull/" + name)).AsSpan(0, 80));
}
