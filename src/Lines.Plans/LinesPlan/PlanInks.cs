using Lines.Drawing.Model;

namespace Lines.Plans.LinesPlan;

/// <summary>The inks of a lines plan: all black or gray, families told apart by weight and dash.</summary>
internal static class PlanInks
{
    /// <summary>Sheer, keel, stem, stern: what one sees of the boat.</summary>
    public static Layer Outline { get; } = new("outline", new Ink(0.5), 7);

    /// <summary>The deck of a closed hull: its ridge and its arcs.</summary>
    public static Layer Deck { get; } = new("deck", new Ink(0.25), 7);

    /// <summary>Waterlines.</summary>
    public static Layer Waterlines { get; } = new("waterlines", new Ink(0.2), 5);

    /// <summary>The design waterline.</summary>
    public static Layer DesignWaterline { get; } = new("design-waterline", new Ink(0.35), 1);

    /// <summary>Buttocks.</summary>
    public static Layer Buttocks { get; } = new("buttocks", new Ink(0.2, [4, 1.2]), 3);

    /// <summary>Diagonals.</summary>
    public static Layer Diagonals { get; } = new("diagonals", new Ink(0.2, [7, 1.2, 1.2, 1.2]), 6);

    /// <summary>Sections at the stations.</summary>
    public static Layer Sections { get; } = new("sections", new Ink(0.25), 4);

    /// <summary>Sections halfway between stations, at the ends.</summary>
    public static Layer HalfSections { get; } = new("half-sections", new Ink(0.13, [2, 1]), 4);

    /// <summary>Base line, centerlines.</summary>
    public static Layer Datum { get; } = new("datum", new Ink(0.18, [12, 1.5, 2, 1.5]), 2);

    /// <summary>Straight lines of the grid.</summary>
    public static Layer Grid { get; } = new("grid", new Ink(0.1, null, 0.4), 8);

    /// <summary>Take-apart planes.</summary>
    public static Layer Joints { get; } = new("joints", new Ink(0.18, [2, 1]), 3);

    /// <summary>Curvature combs.</summary>
    public static Layer Combs { get; } = new("curvature-combs", new Ink(0.08, null, 0.6), 9);

    /// <summary>Dimension lines and their figures.</summary>
    public static Layer Dimensions { get; } = new("dimensions", new Ink(0.13), 2);

    /// <summary>Small lettering.</summary>
    public static Layer Lettering { get; } = new("lettering", new Ink(0.18), 7);

    /// <summary>Names of the views and of the boat.</summary>
    public static Layer Titles { get; } = new("titles", new Ink(0.3), 7);

    /// <summary>The border and the lines of the title block.</summary>
    public static Layer Border { get; } = new("border", new Ink(0.5), 7);

    /// <summary>Fine lines of tables and scale bars.</summary>
    public static Layer Fine { get; } = new("fine", new Ink(0.13), 7);
}
