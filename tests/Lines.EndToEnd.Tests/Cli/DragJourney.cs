using System.Text.Json;
using Lines.EndToEnd.Tests.Support;
using Xunit;

namespace Lines.EndToEnd.Tests.Cli;

public class DragJourney
{
    [Fact]
    public void The_parts_add_up_in_text_numbers_and_table()
    {
        using var place = new Workplace();
        place.Write("runner.toml", Designs.Runner());

        var text = Command.Run(place.Root, "drag", "runner.toml", "--speeds", "3,4.5,6");
        Assert.Equal((0, ""), (text.Code, text.Error));
        Assert.Contains("estimates", text.Out, StringComparison.Ordinal);
        Assert.Contains("Not counted: leeway", text.Out, StringComparison.Ordinal);
        Assert.Contains("each of the crew that drives her (1)", text.Out, StringComparison.Ordinal);
        Assert.Contains("nobody else whatever the load case", text.Out, StringComparison.Ordinal);
        Assert.Contains("volume 6 to 9.5", text.Out, StringComparison.Ordinal);
        Assert.Contains("Froude numbers of 0.2 to 1 without planing", text.Out, StringComparison.Ordinal);

        using var json = JsonDocument.Parse(Command.Run(place.Root, "drag", "runner.toml", "--speeds", "3,4.5,6", "--json").Out);
        var speeds = json.RootElement.GetProperty("figures").EnumerateObject().Where(g => g.Name.StartsWith("drag_", StringComparison.Ordinal)).Select(g => g.Value).ToList();
        Assert.Equal(3, speeds.Count);
        double Of(JsonElement group, string key) => group.GetProperty(key).GetDouble();
        foreach (var s in speeds)
        {
            Assert.Equal(Of(s, "total_n"), Of(s, "friction_n") + Of(s, "form_n") + Of(s, "wave_n") + Of(s, "interference_n") + Of(s, "transom_n") + Of(s, "appendages_n") + Of(s, "air_n"), 1e-3);
            Assert.Equal(Of(s, "towing_power_w"), Of(s, "total_n") * Of(s, "speed_m_per_s"), 1e-2);
        }

        var csv = Command.Run(place.Root, "drag", "runner.toml", "--speeds", "3,4.5,6", "-o", "drag.csv");
        Assert.Equal((0, ""), (csv.Code, csv.Out));
        var rows = File.ReadAllLines(place.PathOf("drag.csv"));
        Assert.Equal(4, rows.Length);
        Assert.StartsWith("speed_m_per_s,froude,friction_n,form_n,wave_n,interference_n,transom_n,appendages_n,air_n,total_n,towing_power_w", rows[0], StringComparison.Ordinal);
    }

    // Crew far out on one side: she lies heeled, and upright at that level she would carry another weight than hers.
    [Fact]
    public void A_case_that_heels_her_is_dragged_under_its_own_weight()
    {
        using var place = new Workplace();
        place.Write("heeled.toml", Designs.Loaded("reader", "100 kg", "80 mm"));
        using var json = JsonDocument.Parse(Command.Run(place.Root, "float", "heeled.toml", "--json").Out);
        Assert.InRange(json.RootElement.GetProperty("figures").EnumerateObject().Last(g => g.Value.TryGetProperty("heel_rad", out _) && g.Value.TryGetProperty("mass_kg", out _)).Value.GetProperty("heel_rad").GetDouble(), 0.1, 1);
        var told = Command.Run(place.Root, "drag", "heeled.toml", "--load", "loaded", "--speeds", "4");
        Assert.Contains("130 kg all told", told.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_power_asked_for_reaches_the_speed_that_takes_it()
    {
        using var place = new Workplace();
        place.Write("runner.toml", Designs.Runner());
        using var reached = JsonDocument.Parse(Command.Run(place.Root, "drag", "runner.toml", "--crew", "2", "--drive", "wing", "--power", "90", "--hours", "2", "--json").Out);
        var figures = reached.RootElement.GetProperty("figures");
        var asked = figures.GetProperty("reached_adult_as_asked");
        Assert.Equal(90, asked.GetProperty("crew_power_w").GetDouble());
        Assert.Equal(7200, figures.GetProperty("reached_athlete_120_min").GetProperty("kept_up_s").GetDouble());

        var knots = (asked.GetProperty("speed_m_per_s").GetDouble() / 1852 * 3600).ToString("F9", System.Globalization.CultureInfo.InvariantCulture);
        using var back = JsonDocument.Parse(Command.Run(place.Root, "drag", "runner.toml", "--crew", "2", "--drive", "wing", "--speeds", knots, "--json").Out);
        var there = back.RootElement.GetProperty("figures").GetProperty("drag_01");
        Assert.Equal(90, there.GetProperty("crew_power_w").GetDouble(), 1e-3);
        Assert.Equal(0.89 * 2 * 90, there.GetProperty("towing_power_w").GetDouble(), 1e-2);
    }

    [Fact]
    public void A_head_wind_is_told_and_costs_what_the_air_takes()
    {
        using var place = new Workplace();
        place.Write("runner.toml", Designs.Runner());
        Assert.Contains("head wind of 10 kn", Command.Run(place.Root, "drag", "runner.toml", "--speeds", "5", "--wind", "10").Out, StringComparison.Ordinal);
        (double Air, double Total) Of(params string[] more)
        {
            using var json = JsonDocument.Parse(Command.Run(place.Root, ["drag", "runner.toml", "--speeds", "5", "--json", .. more]).Out);
            var drag = json.RootElement.GetProperty("figures").GetProperty("drag_01");
            return (drag.GetProperty("air_n").GetDouble(), drag.GetProperty("total_n").GetDouble());
        }

        // Three times the speed through the air, nine times the drag; a wind of five knots from astern leaves none.
        var calm = Of();
        Assert.Equal(9 * calm.Air, Of("--wind", "10").Air, 1e-5);
        Assert.Equal(calm.Total - calm.Air, Of("--wind=-5").Total, 1e-5);
    }

    [Fact]
    public void A_heavier_case_drags_more_and_a_case_there_is_not_is_told_with_those_there_are()
    {
        using var place = new Workplace();
        Command.Run(place.Root, "new", "mine.toml", "--from", "sample-courier");
        double TotalOf(params string[] more)
        {
            using var json = JsonDocument.Parse(Command.Run(place.Root, ["drag", "mine.toml", "--speeds", "4", "--json", .. more]).Out);
            return json.RootElement.GetProperty("figures").GetProperty("drag_01").GetProperty("total_n").GetDouble();
        }

        // Hulls slimmer or fuller than the form was measured over are told by name.
        Assert.Contains("for outrigger 1 port and outrigger 1 starboard, outside", Command.Run(place.Root, "drag", "mine.toml", "--speeds", "4").Out, StringComparison.Ordinal);
        Command.Run(place.Root, "drag", "mine.toml", "-o", "mine.svg");
        Assert.Contains("Valid for waterline length over cube root of volume 6 to 9.5 (form) and Froude numbers of 0.2 to 1", File.ReadAllText(place.PathOf("mine.svg")), StringComparison.Ordinal);
        var solo = TotalOf("--load", "solo");
        Assert.True(TotalOf("--load", "light ship") < solo);
        Assert.True(solo < TotalOf("--load", "two up"));
        var none = Command.Run(place.Root, "drag", "mine.toml", "--load", "ten up");
        Assert.Equal(2, none.Code);
        Assert.Contains("it has light ship, solo, two up", none.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--power", "0", "--power takes a number from 1 to 2000")]
    [InlineData("--power", "much", "--power takes a number from 1 to 2000")]
    [InlineData("--wind", "90", "--wind takes a number from -40 to 60")]
    [InlineData("--hours", "12", "--hours takes a number from 0.17 to 8")]
    [InlineData("--crew", "3", "--crew does not know \"3\"; it takes 1, 2")]
    [InlineData("--drive", "oars", "--drive does not know \"oars\"; it takes flat, pedals, wing")]
    public void What_no_crew_is_is_refused_with_what_would_do(string option, string value, string told)
    {
        using var place = new Workplace();
        place.Write("runner.toml", Designs.Runner());
        var run = Command.Run(place.Root, "drag", "runner.toml", option, value);
        Assert.Equal(2, run.Code);
        Assert.Contains(told, run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("3;4")]
    [InlineData("0")]
    [InlineData("3,fast")]
    public void Speeds_that_are_none_are_refused_with_what_would_do(string speeds)
    {
        using var place = new Workplace();
        place.Write("runner.toml", Designs.Runner());
        var run = Command.Run(place.Root, "drag", "runner.toml", "--speeds", speeds);
        Assert.Equal(2, run.Code);
        Assert.Contains("--speeds takes up to 200 speeds from 0.5 to 40 knots", run.Error, StringComparison.Ordinal);
    }
}
