namespace Lines.Plans.Paper;

/// <summary>How full-size patterns are printed.</summary>
/// <param name="Paper">The paper, held upright.</param>
public sealed record PrintSettings(PaperSize Paper)
{
    /// <summary>A quarter inch, rounded up, which desktop printers keep clear (common practice, no source) [mm].</summary>
    public const double UsualBorder = 6.4;

    /// <summary>The widest border [mm] that leaves the foot of a page its room on the narrowest paper.</summary>
    public const double WidestBorder = 15;

    /// <summary>What the printer needs.</summary>
    public PrinterCorrection Correction { get; init; } = PrinterCorrection.None;

    /// <summary>No mark comes nearer to the paper's edge [mm].</summary>
    public double Border { get; init; } = UsualBorder;

    /// <summary>How far outside the line to cut a second line stands, which is left when a saw has taken the first [mm]; null for none.</summary>
    public double? Guard { get; init; }

    /// <summary>Whether molds that are the same on both sides are printed as halves, to fold or turn over at the centerline.</summary>
    public bool Halves { get; init; }
}
