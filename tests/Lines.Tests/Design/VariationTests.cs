using Lines.Design;
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
        var varied = Variation.In(text, [(VariedKey.Parse("hull.bow.entry_fullness"), 0.6375), (VariedKey.Parse("hull.midship.deadrise"), Math.PI / 20)]);
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
        var design = DesignFile.Read(Variation.In(text, [(VariedKey.Parse("hull.bow.vee"), 0.2), (VariedKey.Parse("hull.widest"), 0.52)]), "a.toml").Design!;
        Assert.Equal(0.2, design.Vessel.MainHull.Bow.Vee!.Value, 1e-12);
        Assert.Equal(0.52, design.Vessel.MainHull.Widest);
    }

    [Fact]
    public void A_key_of_an_outrigger_is_put_in_the_table_of_that_outrigger()
    {
        var text = File.ReadAllText(Repository.PathOf("templates", "sample-courier.toml"));
        var one = DesignFile.Read(Variation.In(text, [(VariedKey.Parse("outrigger.spacing"), 1.3), (VariedKey.Parse("outrigger.hull.bow.vee"), 0.6), (VariedKey.Parse("outrigger.hull.widest"), 0.51)]), "a.toml").Design!;
        Assert.Equal((1.3, 0.6, 0.51), (one.Vessel.Outriggers[0].Spacing, Math.Round(one.Vessel.Outriggers[0].Hull.Bow.Vee!.Value, 9), one.Vessel.Outriggers[0].Hull.Widest));
        Assert.Null(one.Vessel.MainHull.Bow.Vee);

        // Two floats unlike each other, one to each side.
        var (start, end) = (text.IndexOf("[[outrigger]]", StringComparison.Ordinal), text.IndexOf("[[load]]", StringComparison.Ordinal));
        var pair = text[..start] + text[start..end].Replace("\"both\"", "\"port\"", StringComparison.Ordinal) + text[start..end].Replace("\"both\"", "\"starboard\"", StringComparison.Ordinal) + text[end..];
        var two = DesignFile.Read(Variation.In(pair, [(VariedKey.Parse("outrigger-2.aft"), 0.7), (VariedKey.Parse("outrigger-1.hull.keel_low"), 0.49)]), "a.toml").Design!;
        Assert.Equal([1.0, 0.7], two.Vessel.Outriggers.Select(o => o.Aft));
        Assert.Equal([0.49, null], two.Vessel.Outriggers.Select(o => o.Hull.KeelLow));
        Assert.Contains("has 2 outriggers; outrigger-1.aft is the first one's", VariedKey.Parse("outrigger.aft").Missing(2), StringComparison.Ordinal);
        Assert.Contains("has one outrigger", VariedKey.Parse("outrigger-2.aft").Missing(1), StringComparison.Ordinal);
        Assert.Contains("has no outrigger", VariedKey.Parse("outrigger.aft").Missing(0), StringComparison.Ordinal);
        Assert.Contains("did you mean outrigger-2.spacing?", Assert.Throws<FormatException>(() => VariedKey.Parse("outrigger-2.spacin")).Message, StringComparison.Ordinal);
    }
}
