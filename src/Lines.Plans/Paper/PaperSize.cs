namespace Lines.Plans.Paper;

/// <summary>A size of paper, held upright.</summary>
/// <remarks><b>Source.</b> ISO 216 for the A sizes; the North American ones are whole inches and halves of them.</remarks>
/// <param name="Name">What a shop calls it.</param>
/// <param name="Width">Shorter side [mm].</param>
/// <param name="Height">Longer side [mm].</param>
public sealed record PaperSize(string Name, double Width, double Height)
{
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
