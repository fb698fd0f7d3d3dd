using Lines.Tests.Support;

namespace Lines.EndToEnd.Tests.Support;

/// <summary>Designs for the journeys.</summary>
public static class Designs
{
    /// <summary>A hull that builds and is not fair: a bow that rises high and far over a lean entry leaves a buttock that no batten would take.</summary>
    public static string Unfair() => new EditedDesign(string.Join('\n', Runner().Split('\n').Where(l => !l.StartsWith("widest", StringComparison.Ordinal))))
        .With([("hull.bow.rocker", "\"80 mm\""), ("hull.bow.sheer", "\"1.2 m\""), ("hull.bow.forefoot", "\"1.2 m\""), ("hull.bow.entry_fullness", "0.55")]).Text;

    /// <summary>The text of the first template.</summary>
    public static string Runner() => File.ReadAllText(Repository.PathOf("templates", "gauge-runner.toml"));
}
