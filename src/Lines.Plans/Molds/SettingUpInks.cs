using Lines.Drawing.Model;

namespace Lines.Plans.Molds;

/// <summary>The layers of the setting-up sheet.</summary>
internal static class SettingUpInks
{
    /// <summary>Strongback and molds.</summary>
    public static Layer Heavy { get; } = new("molds", new Ink(0.35), 7);

    /// <summary>Stock of the molds, filled.</summary>
    public static Layer Stock { get; } = new("stock", new Ink(0.1, null, 0.55), 8);

    /// <summary>End patterns and strongback, filled light.</summary>
    public static Layer Pale { get; } = new("pale", new Ink(0.1, null, 0.88), 9);

    /// <summary>The hull they carry, outside of planking.</summary>
    public static Layer Hull { get; } = new("hull", new Ink(0.18), 5);

    /// <summary>The design waterline.</summary>
    public static Layer Waterline { get; } = new("waterline", new Ink(0.13, [4, 1.2, 0.8, 1.2]), 4);

    /// <summary>Take-apart planes.</summary>
    public static Layer Joints { get; } = new("joints", new Ink(0.15, [2, 1]), 3);

    /// <summary>Dimension lines and the rules of the table.</summary>
    public static Layer Fine { get; } = new("fine", new Ink(0.1), 8);

    /// <summary>Lettering.</summary>
    public static Layer Text { get; } = new("text", new Ink(0.2), 7);

    /// <summary>Headings.</summary>
    public static Layer Heading { get; } = new("heading", new Ink(0.3), 7);
}
