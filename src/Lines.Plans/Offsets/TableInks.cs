using Lines.Drawing.Model;

namespace Lines.Plans.Offsets;

/// <summary>The inks of tables on paper.</summary>
internal static class TableInks
{
    /// <summary>Titles.</summary>
    public static Layer Title { get; } = new("offsets-title", new Ink(0.35));

    /// <summary>Heads of columns.</summary>
    public static Layer Head { get; } = new("offsets-head", new Ink(0.22));

    /// <summary>Figures.</summary>
    public static Layer Figure { get; } = new("offsets-figure", new Ink(0.18));

    /// <summary>Notes and places.</summary>
    public static Layer Note { get; } = new("offsets-note", new Ink(0.16, null, 0.25), 8);

    /// <summary>Rules above and below the figures.</summary>
    public static Layer Rule { get; } = new("offsets-rule", new Ink(0.25));

    /// <summary>Rules between rows.</summary>
    public static Layer Hair { get; } = new("offsets-hair", new Ink(0.1, null, 0.6), 8);
}
