using Lines.Design;
using Lines.Design.Schema;
using Lines.Design.Studies;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Design;

public class VariationTests
{
    [Fact]
    public void A_range_gives_even_values_with_its_ends()
    {
        var range = Variation.Parse("hull.beam=28 in:30 in:5");
        Assert.Equal("hull.beam", range.Key.Path);
        Assert.Equal([28, 28.5, 29, 29.5, 30], range.Values.Select(v => Math.Round(v / 0.0254, 9)));
    }

    [Fact]
    public void A_value_is_put_in_its_place_and_nothing_else_is_touched()
    {
        var text = File.ReadAllText(Repository.PathOf("templates", "gauge-runner.toml"));
        var varied = Variation.In(text, [(DesignSchema.ByPath["hull.bow.entry_fullness"], 0.6375), (DesignSchema.ByPath["hull.midship.deadrise"], Math.PI / 20)]);
        var design = DesignFile.Read(varied, "a.toml").Design!;
        Assert.Equal(0.6375, design.Vessel.MainHull.Bow.EntryFullness);
        Assert.Equal(Math.PI / 20, design.Vessel.MainHull.Midship.Deadrise, 1e-12);
        string[] before = text.Split('\n'), after = varied.Split('\n');
        Assert.Equal(2, before.Zip(after).Count(l => !l.First.Equals(l.Second, StringComparison.Ordinal)));
    }

    [Fact]
    public void A_key_that_was_left_out_is_added_to_its_table()
    {
        var text = File.ReadAllText(Repository.PathOf("templates", "gauge-runner.toml"));
        var design = DesignFile.Read(Variation.In(text, [(DesignSchema.ByPath["hull.bow.vee"], 0.2), (DesignSchema.ByPath["hull.widest"], 0.52)]), "a.toml").Design!;
        Assert.Equal(0.2, design.Vessel.MainHull.Bow.Vee!.Value, 1e-12);
        Assert.Equal(0.52, design.Vessel.MainHull.Widest);
    }
}
