using System.Text.Json;
using Lines.EndToEnd.Tests.Support;
using Lines.Tests.Support;
using Xunit;

namespace Lines.EndToEnd.Tests.Cli;

public class CompareJourney
{
    [Fact]
    public void Sisters_are_compared_at_one_weight_and_their_differences_are_those_of_the_figures()
    {
        using var place = new Workplace();
        Command.Run(place.Root, "new", "blunt.toml", "--from", "gauge-runner-blunt");
        Command.Run(place.Root, "new", "fine.toml", "--from", "gauge-runner-fine");
        var text = Command.Run(place.Root, "compare", "blunt.toml", "fine.toml", "--mass", "120 kg");
        Assert.Equal((0, ""), (text.Code, text.Error));
        Assert.Contains("All at 120.0 kg, level", text.Out, StringComparison.Ordinal);
        Assert.Matches("A and B (change places at|do not cross|have the same drag)", text.Out);

        using var json = JsonDocument.Parse(Command.Run(place.Root, "compare", "blunt.toml", "fine.toml", "--mass", "120 kg", "--speeds", "3,6", "--json").Out);
        var figures = json.RootElement.GetProperty("figures");
        double Of(string group, string key) => figures.GetProperty(group).GetProperty(key).GetDouble();
        foreach (var design in (string[])["a", "b"])
            Assert.Equal(120, Of(design + "_afloat", "displacement_sea_kg"), 0.05);
        Assert.Equal(Of("b_form", "entry_fullness") - Of("a_form", "entry_fullness"), Of("b_less_a_form", "entry_fullness"), 1e-8);
        Assert.Equal(Of("b_drag_02", "total_n") - Of("a_drag_02", "total_n"), Of("b_less_a_drag_02", "total_n"), 1e-6);

        // Common practice, no source: a finer entry needs less at paddling speeds.
        Assert.True(Of("b_drag_01", "total_n") < Of("a_drag_01", "total_n"));
    }

    [Fact]
    public void A_design_beside_itself_differs_in_nothing()
    {
        using var place = new Workplace();
        place.Write("a.toml", Designs.Runner());
        using var json = JsonDocument.Parse(Command.Run(place.Root, "compare", "a.toml", "a.toml", "--speeds", "4", "--json").Out);
        foreach (var group in json.RootElement.GetProperty("figures").EnumerateObject().Where(g => g.Name.StartsWith("b_less_a", StringComparison.Ordinal)))
            Assert.All(group.Value.EnumerateObject().Where(f => f.Value.ValueKind == JsonValueKind.Number), f => Assert.Equal(0, f.Value.GetDouble()));
        Assert.Contains("A and B have the same drag", Command.Run(place.Root, "compare", "a.toml", "a.toml").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Drawings_and_tables_are_written()
    {
        using var place = new Workplace();
        place.Write("a.toml", Designs.Runner());
        place.Write("b.toml", new EditedDesign(Designs.Runner()).With("hull.beam", "\"760 mm\"").Text);
        Assert.Equal(0, Command.Run(place.Root, "compare", "a.toml", "b.toml", "-o", "ab.pdf").Code);
        Assert.Equal(0, Command.Run(place.Root, "compare", "a.toml", "b.toml", "-o", "ab.svg").Code);
        Assert.Equal(["a.toml", "ab.pdf", "ab.svg", "b.toml"], place.Entries());
    }

    [Theory]
    [InlineData("compare takes 2 to 6", "a.toml")]
    [InlineData("--mass and --load exclude each other", "a.toml", "a.toml", "--mass", "100 kg", "--load", "solo")]
    [InlineData("is not a force", "a.toml", "a.toml", "--thrust", "10")]
    [InlineData("wants to know what the empty boat weighs", "a.toml", "a.toml", "--load", "solo")]
    [InlineData("compare at less", "a.toml", "a.toml", "--mass", "3000 kg")]
    public void What_cannot_be_compared_is_told(string told, params string[] arguments)
    {
        using var place = new Workplace();
        place.Write("a.toml", Designs.Runner());
        var run = Command.Run(place.Root, ["compare", .. arguments]);
        Assert.Equal(2, run.Code);
        Assert.Contains(told, run.Error, StringComparison.Ordinal);
    }
}
