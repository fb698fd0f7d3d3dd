using Lines.Drawing.Model;

namespace Lines.Plans.Comparison;

/// <summary>The line of each design that is compared: told apart by dash and weight, so that a gray print still tells them.</summary>
internal static class DesignInks
{
    private static readonly Layer[] s_inks =
    [
        new("design-a", new Ink(0.35), 7),
        new("design-b", new Ink(0.35, [3, 1.2]), 1),
        new("design-c", new Ink(0.3, [6, 1, 0.8, 1]), 5),
        new("design-d", new Ink(0.4, [0.5, 1.1]), 3),
        new("design-e", new Ink(0.2), 6),
        new("design-f", new Ink(0.2, [1.6, 0.8]), 4),
    ];

    /// <summary>The line of a design.</summary>
    /// <param name="index">Its place in the comparison, from 0.</param>
    public static Layer Of(int index) => s_inks[index];
}
