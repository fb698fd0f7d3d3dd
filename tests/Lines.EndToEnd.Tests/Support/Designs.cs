using Lines.Tests.Support;

namespace Lines.EndToEnd.Tests.Support;

/// <summary>Designs for the journeys.</summary>
public static class Designs
{
    /// <summary>A hull that builds and is not fair: much rocker under a bow that is hardly higher than the middle turns the stem's foot inward.</summary>
    public static string Unfair() => new EditedDesign(Runner()).With([("hull.bow.rocker", "\"45 mm\""), ("hull.bow.sheer", "\"200 mm\"")]).Text;

    /// <summary>The text of the first template.</summary>
    public static string Runner() => File.ReadAllText(Repository.PathOf("templates", "gauge-runner.toml"));
}
