namespace Lines.Plans.Paper;

/// <summary>A size of paper, held upright.</summary>
/// <remarks><b>Source.</b> ISO 216 for the A sizes; the North American ones are whole inches and halves of them.</remarks>
/// <param name="Name">What a shop calls it.</param>
/// <param name="Width">Shorter side [mm].</param>
/// <param name="Height">Longer side [mm]; of a roll the longest piece that is cut off.</param>
public sealed record PaperSize(string Name, double Width, double Height)
{
    /// <summary>Whether it comes off a roll, each page as long as it needs to be.</summary>
    public bool IsRoll { get; init; }

    /// <summary>The narrowest paper [mm] on which the foot of a page has room, with the widest border: a little less than 8 in.</summary>
    public const double Narrowest = 200;

    /// <summary>The longest page [mm]: readers take 14,400 points, 5.08 m (ISO 32000-1, annex C, from memory).</summary>
    public const double Longest = 5000;

    /// <summary>Most times a sheet is longer than broad: the calibration page's lettering has room between its diagonals.</summary>
    public const double Slimmest = 2.5;

    /// <summary>The longest piece of a roll [mm]: as long as a sheet of plywood, 8 ft, which two can hold by its ends.</summary>
    public const double LongestOfRoll = 2440;

    private const double Inch = 25.4;

    /// <summary>8 1/2 by 11 in.</summary>
    public static PaperSize Letter { get; } = new("Letter", 8.5 * Inch, 11 * Inch);

    /// <summary>11 by 17 in.</summary>
    public static PaperSize Tabloid { get; } = new("Tabloid", 11 * Inch, 17 * Inch);

    /// <summary>17 by 22 in.</summary>
    public static PaperSize AnsiC { get; } = new("ANSI C", 17 * Inch, 22 * Inch);

    /// <summary>210 by 297 mm.</summary>
    public static PaperSize A4 { get; } = new("A4", 210, 297);

    /// <summary>297 by 420 mm.</summary>
    public static PaperSize A3 { get; } = new("A3", 297, 420);

    /// <summary>420 by 594 mm.</summary>
    public static PaperSize A2 { get; } = new("A2", 420, 594);

    /// <summary>594 by 841 mm.</summary>
    public static PaperSize A1 { get; } = new("A1", 594, 841);
}
