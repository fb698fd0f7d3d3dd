using Lines.Drawing.Model;

namespace Lines.Plans.Curvature;

/// <summary>The inks of a curvature plate: seven grays for size, hatching for hollow, black for the lines of the boat.</summary>
internal static class CurvatureInks
{
    /// <summary>The grays, lightest first, about even steps to the eye; the darkest still lets a black line be seen.</summary>
    public static IReadOnlyList<Layer> Bands { get; } =
        [.. new[] { 1, 0.91, 0.82, 0.73, 0.64, 0.54, 0.44 }.Select((tone, k) => new Layer(Invariant($"curvature-{k}"), new Ink(0.05, null, tone), 8))];

    /// <summary>Hatching where the skin is hollow.</summary>
    public static Layer Hatching { get; } = new("hollow-hatching", new Ink(0.1), 1);

    /// <summary>The border of what is hollow.</summary>
    public static Layer Hollow { get; } = new("hollow-border", new Ink(0.2), 1);

    /// <summary>Stations.</summary>
    public static Layer Stations { get; } = new("curvature-stations", new Ink(0.07, [1.2, 0.8]), 8);
}
