using System.Text.Json;
using Lines.EndToEnd.Tests.Support;
using Xunit;

namespace Lines.EndToEnd.Tests.Cli;

/// <summary>A designer asks how the boat floats with its crew, and what happens when it does not.</summary>
public sealed class FloatJourney
{
    private const string Vessel = """

        [rig]
        area = "6 m2"
        aft = "2.3 m"
        height = "2 m"
        [structure]
        mass = "34 kg"
        at = ["2.6 m", "0 m", "0.18 m"]
        [[outrigger]]
        side = "starboard"
        spacing = "1 m"
        height = "20 mm"
        aft = "1 m"
        [outrigger.hull]
        length = "3.2 m"
        beam = "200 mm"
        depth = "200 mm"
        draft = "80 mm"
        crown = "20 mm"
        [outrigger.hull.bow]
        entry_fullness = 0.62
        rocker = "20 mm"
        sheer = "240 mm"
        forefoot = "200 mm"
        [outrigger.hull.stern]
        kind = "pointed"
        run_fullness = 0.62
        rocker = "20 mm"
        sheer = "230 mm"
        heel = "200 mm"
        [outrigger.hull.midship]
        deadrise = "20 deg"
        fullness = 0.70
        flare = "4 deg"
        [[compartment]]
        name = "bow"
        from = "0 m"
        to = "1.6 m"
        sealed = true
        [[load]]
        name = "paddler"
        mass = "75 kg"
        at = ["2.6 m", "0 m", "0.3 m"]
        """;

    private static string Design(string more = "") => Designs.Runner() + Vessel + more;

    [Fact]
    public void Cases_are_told_in_words_numbers_print_and_picture()
    {
        using var place = new Workplace();
        place.Write("a.toml", Design());

        var text = Command.Run(place.Root, "float", "a.toml", "--water", "fresh");
        var json = Command.Run(place.Root, "float", "a.toml", "--json");
        var print = Command.Run(place.Root, "float", "a.toml", "-o", "a.pdf");
        var picture = Command.Run(place.Root, "float", "a.toml", "-o", "a.svg");

        Assert.Equal((0, 0, 0, 0), (text.Code, json.Code, print.Code, picture.Code));
        Assert.Contains("  loaded: floats\n", text.Out, StringComparison.Ordinal);
        Assert.Contains("Load cases, fresh water", text.Out, StringComparison.Ordinal);
        Assert.Contains("They are not a certificate", text.Out, StringComparison.Ordinal);
        var figures = JsonDocument.Parse(json.Out).RootElement.GetProperty("figures");
        Assert.Equal(109, figures.GetProperty("case_loaded").GetProperty("mass_kg").GetDouble(), 1e-6);
        Assert.True(figures.TryGetProperty("case_loaded_to_port", out _));
        Assert.StartsWith("%PDF", File.ReadAllText(place.PathOf("a.pdf")), StringComparison.Ordinal);
        Assert.Contains("righting arm, mm", File.ReadAllText(place.PathOf("a.svg")), StringComparison.Ordinal);
    }

    // A deck keeps the sea out as long as its cockpit does: what is left when she is full is asked of her sealed ends all the same.
    [Fact]
    public void A_decked_boat_with_compartments_is_swamped_too_and_her_deck_is_said_to_be_tight()
    {
        using var place = new Workplace();
        place.Write("a.toml", Design().Replace("\n[hull.bow]", "\ncrown = \"30 mm\"\n[hull.bow]", StringComparison.Ordinal));

        var text = Command.Run(place.Root, "float", "a.toml").Out;

        Assert.Contains("loaded, bow holed:", text, StringComparison.Ordinal);
        Assert.Contains("deck is taken as tight", text, StringComparison.Ordinal);
    }

    // She fills at a heel, and her range ends there at the latest. Sealed, it is as if there were none.
    [Fact]
    public void An_opening_through_the_deck_ends_the_range_unless_it_is_sealed()
    {
        using var place = new Workplace();

        // Without her float, which has no part in it and doubles the time.
        var floating = Vessel[Vessel.IndexOf("[[outrigger]]", StringComparison.Ordinal)..Vessel.IndexOf("[[compartment]]", StringComparison.Ordinal)];
        var decked = Design().Replace(floating, "", StringComparison.Ordinal).Replace("\n[hull.bow]", "\ncrown = \"30 mm\"\n[hull.bow]", StringComparison.Ordinal);
        const string Cockpit = "\n[[opening]]\nname = \"cockpit\"\nfrom = \"2.2 m\"\nto = \"2.9 m\"\nbreadth = \"400 mm\"\nthrough = \"deck\"\n";
        place.Write("tight.toml", decked);
        place.Write("open.toml", decked + Cockpit);
        place.Write("sealed.toml", decked + Cockpit + "sealed = true\n");
        JsonElement Arms(string file) => JsonDocument.Parse(Command.Run(place.Root, "float", file, "--json").Out).RootElement.GetProperty("figures").GetProperty("case_loaded_to_starboard");
        JsonElement tight = Arms("tight.toml"), open = Arms("open.toml");

        Assert.Equal(JsonValueKind.Null, tight.GetProperty("downflooding_rad").ValueKind);
        Assert.Equal(tight.GetRawText(), Arms("sealed.toml").GetRawText());
        Assert.InRange(open.GetProperty("downflooding_rad").GetDouble(), 0.3, Math.PI);
        Assert.True(open.GetProperty("range_rad").GetDouble() <= open.GetProperty("downflooding_rad").GetDouble());
        Assert.Contains("Water comes in through the main hull's deck at cockpit", Command.Run(place.Root, "float", "open.toml").Out, StringComparison.Ordinal);
        Assert.Contains("is taken as tight with cockpit", Command.Run(place.Root, "float", "sealed.toml").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_case_that_does_not_float_is_told_with_numbers_and_exit_code_1()
    {
        using var place = new Workplace();
        place.Write("a.toml", Design("\n[[load]]\nname = \"stones\"\nmass = \"2000 kg\"\nat = [\"2.6 m\", \"0 m\", \"0.2 m\"]\n"));

        var run = Command.Run(place.Root, "float", "a.toml");

        Assert.Equal(1, run.Code);
        Assert.Contains("loaded: SINKS: 2109.0 kg on hulls that displace", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_the_weight_of_the_boat_the_command_says_what_is_missing()
    {
        using var place = new Workplace();
        place.Write("a.toml", Designs.Runner());

        var text = Command.Run(place.Root, "float", "a.toml");
        var print = Command.Run(place.Root, "float", "a.toml", "-o", "a.pdf");

        Assert.Equal((0, 2), (text.Code, print.Code));
        Assert.Contains("[structure]", text.Out, StringComparison.Ordinal);
        Assert.Contains("[structure]", print.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(place.PathOf("a.pdf")));
    }

    [Fact]
    public void A_build_holds_load_cases_in_report_print_and_numbers()
    {
        using var place = new Workplace();
        place.Write("a.toml", Designs.Coarse() + Vessel.Remove(Vessel.IndexOf("[[outrigger]]", StringComparison.Ordinal)));

        var run = Command.Run(place.Root, "build", "a.toml", "-o", "out");

        Assert.True(run.Code is 0 or 1, run.Error);
        Assert.Contains("Load cases and stability", File.ReadAllText(place.PathOf("out/report.html")), StringComparison.Ordinal);
        Assert.Contains("\"case_light_ship\"", File.ReadAllText(place.PathOf("out/numbers.json")), StringComparison.Ordinal);
        Assert.True(File.Exists(place.PathOf("out/load-cases.pdf")));
        Assert.True(File.Exists(place.PathOf("out/righting-arms.svg")));

        // The weight of the boat is gone from the file, and with it what was told of it.
        place.Write("a.toml", Designs.Coarse());
        Assert.True(Command.Run(place.Root, "build", "a.toml", "-o", "out", "--force").Code is 0 or 1);
        Assert.False(File.Exists(place.PathOf("out/load-cases.pdf")));
        Assert.False(File.Exists(place.PathOf("out/righting-arms.svg")));
    }
}
