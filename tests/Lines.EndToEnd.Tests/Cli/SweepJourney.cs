using System.Text.Json;
using Lines.EndToEnd.Tests.Support;
using Lines.Tests.Support;
using Xunit;

namespace Lines.EndToEnd.Tests.Cli;

public class SweepJourney
{
    private static readonly string[] s_bows = ["--vary", "hull.bow.entry_fullness=0.55:0.72:8", "--vary", "hull.midship.deadrise=4 deg:12 deg:5"];

    [Fact]
    public void Variants_are_those_of_the_file_with_the_value_in_its_place()
    {
        using var place = new Workplace();
        place.Write("a.toml", Designs.Runner());
        var run = Command.Run(place.Root, "sweep", "a.toml", "--vary", "hull.beam=700 mm:740 mm:3", "--speeds", "3,5", "-o", "out", "--chart", "drag_at_3_kn_n,prismatic");
        Assert.Equal((0, ""), (run.Code, run.Out));
        Assert.Contains("3 variants, 3 built, 3 fair", run.Error, StringComparison.Ordinal);
        Assert.Equal(["a.toml", "out", "out/sweep.csv", "out/sweep.jsonl", "out/trade-off.pdf", "out/trade-off.svg"], place.Entries());

        // The variant in the middle is what check and drag say of the file with that beam.
        place.Write("b.toml", new EditedDesign(Designs.Runner()).With("hull.beam", "\"720 mm\"").Text);
        using var row = JsonDocument.Parse(File.ReadAllLines(place.PathOf("out/sweep.jsonl"))[1]);
        using var check = JsonDocument.Parse(Command.Run(place.Root, "check", "b.toml", "--json").Out);
        using var drag = JsonDocument.Parse(Command.Run(place.Root, "drag", "b.toml", "--speeds", "3,5", "--json").Out);
        Assert.Equal(0.72, row.RootElement.GetProperty("hull.beam_m").GetDouble());
        var afloat = check.RootElement.GetProperty("figures").GetProperty("afloat");
        Assert.Equal(afloat.GetProperty("volume_m3").GetDouble(), row.RootElement.GetProperty("volume_m3").GetDouble(), 1e-6);
        Assert.Equal(drag.RootElement.GetProperty("figures").GetProperty("drag_02").GetProperty("total_n").GetDouble(), row.RootElement.GetProperty("drag_at_5_kn_n").GetDouble(), 1e-3);
    }

    [Fact]
    public void A_sweep_that_was_stopped_goes_on_and_ends_the_same()
    {
        using var place = new Workplace();
        place.Write("a.toml", Designs.Runner());

        // Stopped as soon as three of its forty rows are there, behind a line that says what is swept.
        var stopped = Command.Shell(
            place.Root,
            $$"""
            env --default-signal=INT $LINES sweep a.toml {{string.Join(' ', s_bows.Select(a => $"'{a}'"))}} -o out & pid=$!
            for i in $(seq 2000); do [ -e out.part.jsonl ] && [ $(wc -l < out.part.jsonl) -ge 4 ] && break; sleep 0.005; done
            kill -INT $pid; wait $pid
            """);
        Assert.Contains("are kept in out.part.jsonl: the same command goes on from there", stopped.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(place.PathOf("out")));
        var kept = File.ReadAllLines(place.PathOf("out.part.jsonl")).Length - 1;
        Assert.InRange(kept, 3, 39);

        // A line that was cut off in the middle is made again.
        File.AppendAllText(place.PathOf("out.part.jsonl"), "{\"number\":");
        var other = Command.Run(place.Root, "sweep", "a.toml", "--vary", "hull.beam=700 mm:740 mm:2", "-o", "out");
        Assert.Equal(3, other.Code);
        Assert.Contains("keeps the rows of another sweep that was stopped; --force forgets them", other.Error, StringComparison.Ordinal);

        Assert.Equal(0, Command.Run(place.Root, ["sweep", "a.toml", .. s_bows, "-o", "out"]).Code);
        Assert.Equal(0, Command.Run(place.Root, ["sweep", "a.toml", .. s_bows, "-o", "whole"]).Code);
        Assert.False(File.Exists(place.PathOf("out.part.jsonl")));
        foreach (var name in (string[])["sweep.csv", "sweep.jsonl", "trade-off.svg"])
            Assert.Equal(File.ReadAllBytes(place.PathOf("whole/" + name)), File.ReadAllBytes(place.PathOf("out/" + name)));
    }

    [Fact]
    public void The_spacing_of_outriggers_is_varied_by_their_key()
    {
        using var place = new Workplace();
        place.Write("a.toml", File.ReadAllText(Repository.PathOf("templates", "sample-courier.toml")));
        Assert.Equal(0, Command.Run(place.Root, "sweep", "a.toml", "--vary", "outrigger.spacing=1.15 m:1.45 m:2", "--speeds", "4", "-o", "out").Code);
        place.Write("b.toml", File.ReadAllText(Repository.PathOf("templates", "sample-courier.toml")).Replace("spacing = \"1.15 m\"", "spacing = \"1.45 m\"", StringComparison.Ordinal));
        using var row = JsonDocument.Parse(File.ReadAllLines(place.PathOf("out/sweep.jsonl"))[1]);
        using var drag = JsonDocument.Parse(Command.Run(place.Root, "drag", "b.toml", "--speeds", "4", "--json").Out);
        Assert.Equal(1.45, row.RootElement.GetProperty("outrigger.spacing_m").GetDouble());
        Assert.Equal(drag.RootElement.GetProperty("figures").GetProperty("drag_01").GetProperty("total_n").GetDouble(), row.RootElement.GetProperty("drag_at_4_kn_n").GetDouble(), 1e-3);
    }

    [Fact]
    public void In_a_load_case_a_variant_has_the_figures_of_float_and_drag()
    {
        using var place = new Workplace();
        var courier = File.ReadAllText(Repository.PathOf("templates", "sample-courier.toml"));
        place.Write("a.toml", courier);
        Assert.Equal(0, Command.Run(place.Root, "sweep", "a.toml", "--vary", "outrigger.spacing=1.15 m:1.45 m:2", "--speeds", "4", "--load", "solo", "--chart", "case_drag_at_4_kn_n,case_range_rad", "-o", "out").Code);
        place.Write("b.toml", courier.Replace("spacing = \"1.15 m\"", "spacing = \"1.45 m\"", StringComparison.Ordinal));
        using var row = JsonDocument.Parse(File.ReadAllLines(place.PathOf("out/sweep.jsonl"))[1]);
        using var afloat = JsonDocument.Parse(Command.Run(place.Root, "float", "b.toml", "--json").Out);
        using var drag = JsonDocument.Parse(Command.Run(place.Root, "drag", "b.toml", "--speeds", "4", "--load", "solo", "--json").Out);
        var solo = afloat.RootElement.GetProperty("figures").GetProperty("case_solo");
        foreach (var key in (string[])["mass_kg", "trim_m", "draft_fore_m", "draft_aft_m", "freeboard_least_m", "further_mass_kg", "metacentric_height_free_trim_m"])
            Assert.Equal(solo.GetProperty(key).GetDouble(), row.RootElement.GetProperty("case_" + key).GetDouble(), 1e-6);
        Assert.Equal("floats", row.RootElement.GetProperty("case").GetString());
        Assert.Equal(afloat.RootElement.GetProperty("figures").GetProperty("case_solo_to_starboard").GetProperty("range_rad").GetDouble(), row.RootElement.GetProperty("case_range_rad").GetDouble(), 1e-6);
        Assert.Equal(drag.RootElement.GetProperty("figures").GetProperty("drag_01").GetProperty("total_n").GetDouble(), row.RootElement.GetProperty("case_drag_at_4_kn_n").GetDouble(), 1e-3);
    }

    [Fact]
    public void A_variant_that_sinks_in_the_load_case_says_so_in_its_row()
    {
        using var place = new Workplace();
        place.Write("a.toml", Designs.Loaded("anvils", "4000 kg", "0 mm"));
        Assert.Equal(0, Command.Run(place.Root, "sweep", "a.toml", "--vary", "hull.beam=700 mm:740 mm:2", "--load", "loaded", "-o", "out").Code);
        Assert.All(File.ReadAllLines(place.PathOf("out/sweep.jsonl")), line =>
        {
            using var row = JsonDocument.Parse(line);
            Assert.StartsWith("SINKS: 4030.0 kg", row.RootElement.GetProperty("case").GetString(), StringComparison.Ordinal);
            Assert.Equal(JsonValueKind.Null, row.RootElement.GetProperty("case_drag_at_3_kn_n").ValueKind);
            Assert.Equal(JsonValueKind.Number, row.RootElement.GetProperty("drag_at_3_kn_n").ValueKind);
        });
    }

    [Theory]
    [InlineData("--chart", "drag_at_3_kn_n,prismattic", "drag_at_6_kn_n")]
    [InlineData("--chart", "prismatic", "there are hull.beam_m")]
    [InlineData("--load", "solo", "--load wants to know what the empty boat weighs")]
    public void What_there_is_not_is_refused_before_anything_is_made(string option, string value, string told)
    {
        using var place = new Workplace();
        place.Write("a.toml", Designs.Runner());
        var run = Command.Run(place.Root, "sweep", "a.toml", "--vary", "hull.beam=700 mm:740 mm:4000", option, value);
        Assert.Equal(2, run.Code);
        Assert.Contains(told, run.Error, StringComparison.Ordinal);
        Assert.Equal(["a.toml"], place.Entries());
    }

    [Fact]
    public void A_variant_that_is_no_hull_is_a_row_with_its_reason()
    {
        using var place = new Workplace();
        place.Write("a.toml", Designs.Runner());
        Assert.Equal(0, Command.Run(place.Root, "sweep", "a.toml", "--vary", "hull.midship.fullness=0.74:0.95:2", "-o", "out").Code);
        using var row = JsonDocument.Parse(File.ReadAllLines(place.PathOf("out/sweep.jsonl"))[1]);
        Assert.Equal("refused", row.RootElement.GetProperty("state").GetString());
        Assert.Contains("widest section", row.RootElement.GetProperty("reason").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("hull.bow.entry_fulness=0.55:0.75:3", "did you mean hull.bow.entry_fullness?")]
    [InlineData("hull.bow.entry_fullness=0.2:0.75:3", "out of its range")]
    [InlineData("hull.beam=0.7:0.8:3", "is no such value")]
    [InlineData("hull.beam=700 mm:800 mm:1", "2 to 10000 can")]
    [InlineData("hull.beam", "key=first:last:count")]
    [InlineData("title=a:b:3", "no number that could be varied")]
    [InlineData("outrigger.spacing=1 m:1.2 m:3", "the file has no outrigger")]
    [InlineData("outrigger.spacin=1 m:1.2 m:3", "did you mean outrigger.spacing?")]
    public void A_range_that_is_none_is_refused_with_what_would_do(string range, string told)
    {
        using var place = new Workplace();
        place.Write("a.toml", Designs.Runner());
        var run = Command.Run(place.Root, "sweep", "a.toml", "--vary", range);
        Assert.Equal(2, run.Code);
        Assert.Contains(told, run.Error, StringComparison.Ordinal);
        Assert.Equal(["a.toml"], place.Entries());
    }
}
