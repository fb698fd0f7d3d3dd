using Lines.Tests.Support;

namespace Lines.EndToEnd.Tests.Support;

/// <summary>Designs for the journeys.</summary>
public static class Designs
{
    /// <summary>A hull that builds and is not fair: a keel that rises nearly to the water below a full entry leaves a diagonal that no batten would take.</summary>
    public static string Unfair() => new EditedDesign(Runner()).With([("hull.bow.rocker", "\"115 mm\""), ("hull.bow.sheer", "\"360 mm\""), ("hull.bow.entry_fullness", "0.72")]).Text;

    /// <summary>The text of the first template.</summary>
    public static string Runner() => File.ReadAllText(Repository.PathOf("templates", "gauge-runner.toml"));
}
