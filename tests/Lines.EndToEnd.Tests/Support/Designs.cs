using Lines.Tests.Support;

namespace Lines.EndToEnd.Tests.Support;

/// <summary>Designs for the journeys.</summary>
public static class Designs
{
    /// <summary>A hull that builds and is not fair: a bow that rises high and far over a lean entry leaves a buttock that no batten would take.</summary>
    public static string Unfair() => new EditedDesign(Runner()).With("hull.widest", "0.54")
        .With([("hull.bow.rocker", "\"80 mm\""), ("hull.bow.sheer", "\"1.2 m\""), ("hull.bow.forefoot", "\"1.2 m\""), ("hull.bow.entry_fullness", "0.55")]).Text;

    /// <summary>The text of the first template.</summary>
    public static string Runner() => File.ReadAllText(Repository.PathOf("templates", "gauge-runner.toml"));

    /// <summary>The first template with its molds four times as far apart, for what hangs on none of them: they are most of the work of a run.</summary>
    public static string Coarse() => new EditedDesign(Runner()).With("build.mold_spacing", "\"1.2 m\"").Text;

    /// <summary>The first template with an empty boat of 30 kg and one load, which the case "loaded" has aboard.</summary>
    /// <param name="name">What is loaded.</param>
    /// <param name="mass">Its mass, as a design file tells it.</param>
    /// <param name="aside">How far to starboard it is, likewise.</param>
    public static string Loaded(string name, string mass, string aside) => Runner() + $"""

        [structure]
        mass = "30 kg"
        at = ["2.6 m", "0 mm", "150 mm"]

        [[load]]
        name = "{name}"
        mass = "{mass}"
        at = ["2.6 m", "{aside}", "150 mm"]
        """;
}
