using Lines.Drawing.Model;

namespace Lines.Plans.Molds;

/// <summary>The layers of mold sheets: one for each operation, so that a controller's tool list and a saw read the same file.</summary>
public static class MoldInks
{
    /// <summary>Outlines to cut: the line to saw or rout to, on paper heavier than the rest.</summary>
    public static Layer Cut { get; } = new("cut", new Ink(0.5), 1);

    /// <summary>The centerline of a half pattern on paper, to fold at.</summary>
    public static Layer Fold { get; } = new("fold", new Ink(0.35, [9, 2, 2, 2]), 4);

    /// <summary>A line outside the outline on paper, which is left when the saw has taken the outline.</summary>
    public static Layer Guard { get; } = new("guard", new Ink(0.13, [1, 1.5], 0.2), 8);

    /// <summary>Lines to mark on the face.</summary>
    public static Layer Mark { get; } = new("mark", new Ink(0.2), 5);

    /// <summary>Holes too wide to drill: to cut inside the line, before the outline.</summary>
    public static Layer Holes { get; } = new("holes", new Ink(0.3), 2);

    /// <summary>Outside a profile mold: where the insides of the planking meet, the edge of an inner stem.</summary>
    public static Layer InnerStem { get; } = new("inner-stem", new Ink(0.25, [4, 2]), 6);

    /// <summary>The edges of a sheet of stock: not to cut.</summary>
    public static Layer Stock { get; } = new("stock", new Ink(0.25), 8);

    /// <summary>Holes to drill.</summary>
    public static Layer Drill { get; } = new("drill", new Ink(0.3), 3, IsDrilled: true);

    /// <summary>Lettering to engrave or write.</summary>
    public static Layer Text { get; } = new("text", new Ink(0.25), 7);
}
