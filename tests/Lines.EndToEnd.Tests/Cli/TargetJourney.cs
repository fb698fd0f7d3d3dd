using System.Text.Json;
using Lines.EndToEnd.Tests.Support;
using Lines.Tests.Support;
using Xunit;

namespace Lines.EndToEnd.Tests.Cli;

/// <summary>A designer says what must float in place of how deep.</summary>
public sealed class TargetJourney
{
    [Fact]
    public void Check_says_what_was_asked_reached_and_found()
    {
        using var place = new Workplace();
        place.Write("a.toml", Asking("\"265 lb\""));

        var text = Command.Run(place.Root, "check", "a.toml");
        var json = Command.Run(place.Root, "check", "a.toml", "--json");

        Assert.Equal((0, 0), (text.Code, json.Code));
        Assert.Contains("Solved for\n  Displacement, asked ", text.Out, StringComparison.Ordinal);
        Assert.Contains("  Draft, found ", text.Out, StringComparison.Ordinal);
        var solved = JsonDocument.Parse(json.Out).RootElement.GetProperty("figures").GetProperty("solved_for");
        var asked = 265 * 0.45359237; // the international pound, kg
        Assert.Equal(asked, solved.GetProperty("displacement_asked_kg").GetDouble(), 1e-6);
        Assert.Equal(asked, solved.GetProperty("displacement_reached_kg").GetDouble(), 1e-5 * asked);
        Assert.InRange(solved.GetProperty("hull_draft_found_m").GetDouble(), 0.1, 0.12);
    }

    [Fact]
    public void What_cannot_float_is_refused_with_what_can_at_the_place_of_the_target()
    {
        using var place = new Workplace();
        place.Write("a.toml", Asking("\"20 kg\""));

        var run = Command.Run(place.Root, "build", "a.toml", "-o", "out");

        Assert.Equal((2, ""), (run.Code, run.Out));
        Assert.Matches("^a.toml:7:16: hull.displacement: \"20 kg\": .*; nearest that can be reached [0-9.]+ kg", run.Error);
        Assert.False(Directory.Exists(place.PathOf("out")));
    }

    private static string Asking(string mass) => new EditedDesign(Designs.Runner()).With("hull.draft", null).With("hull.displacement", mass).Text;
}
