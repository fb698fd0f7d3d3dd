using Lines.Kernel.Units;
using Lines.Plans.Paper;

namespace Lines.Plans.LinesPlan;

/// <summary>What a lines plan is drawn with.</summary>
/// <param name="Title">Title of the design, printed in the title block.</param>
/// <param name="Paper">Paper, laid on its longer side.</param>
/// <param name="Notation">How lengths are written.</param>
public sealed record LinesPlanSettings(string Title, PaperSize Paper, LengthNotation Notation)
{
    /// <summary>Whether the hull is fair; one that is not is marked so.</summary>
    public bool IsFair { get; init; } = true;

    /// <summary>Take-apart planes, x from the bow [m].</summary>
    public IReadOnlyList<double> Joints { get; init; } = [];
}
