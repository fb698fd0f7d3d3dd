using Lines.Drawing.Model;

namespace Lines.Plans.Paper;

/// <summary>The layers a printed page adds to the drawing it carries.</summary>
internal static class PageInks
{
    /// <summary>Seams to cut along, ticked on the side that falls off: no line of a part looks like that.</summary>
    public static Layer Cut { get; } = new("page-cut", new Ink(0.13), 1);

    /// <summary>Seams that a neighbor's edge comes to.</summary>
    public static Layer Lap { get; } = new("page-lap", new Ink(0.18, [3, 2], 0.35), 8);

    /// <summary>Register crosses and their letters.</summary>
    public static Layer Register { get; } = new("page-register", new Ink(0.18), 5);

    /// <summary>Notes in the strips beside the seams, small and gray: they end up cut off or covered.</summary>
    public static Layer Note { get; } = new("page-note", new Ink(0.13, null, 0.45), 8);

    /// <summary>Names of a part's lines, repeated on every page they cross.</summary>
    public static Layer Name { get; } = new("page-name", new Ink(0.18), 7);

    /// <summary>From lettering beside a part to where it belongs.</summary>
    public static Layer Leader { get; } = new("page-leader", new Ink(0.13), 7);

    /// <summary>Lettering of the foot, the index and the calibration page.</summary>
    public static Layer Label { get; } = new("page-label", new Ink(0.25), 7);

    /// <summary>Small lettering of the same.</summary>
    public static Layer Small { get; } = new("page-small", new Ink(0.18), 7);

    /// <summary>Scale bars, measuring lines and squares.</summary>
    public static Layer Rule { get; } = new("page-rule", new Ink(0.13), 7);

    /// <summary>The parts on the index page, reduced.</summary>
    public static Layer Thumbnail { get; } = new("page-thumbnail", new Ink(0.13, null, 0.25), 7);

    /// <summary>White ground under a number that stands on a drawing.</summary>
    public static Layer Patch { get; } = new("page-patch", new Ink(0.13, null, 1), 7);

    /// <summary>The tiles over the parts on the index page, and the maps.</summary>
    public static Layer Grid { get; } = new("page-grid", new Ink(0.1, null, 0.4), 8);
}
