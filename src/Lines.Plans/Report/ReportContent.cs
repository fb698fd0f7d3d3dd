using Lines.Drawing.Model;
using Lines.Hull.Fairness;
using Lines.Kernel.Units;
using Lines.Plans.Figures;

namespace Lines.Plans.Report;

/// <summary>What the report shows.</summary>
/// <param name="Title">Title of the design.</param>
/// <param name="LinesPlan">The lines plan.</param>
/// <param name="Curvature">The curvature of the skin.</param>
/// <param name="Figures">The numbers, in groups.</param>
/// <param name="Notation">How lengths are written; the other units follow it.</param>
/// <param name="Fairness">The judgment of the lines.</param>
/// <param name="Files">The files written beside the report.</param>
public sealed record ReportContent(
    string Title, Sheet LinesPlan, Sheet Curvature, IReadOnlyList<FigureGroup> Figures, LengthNotation Notation, FairnessReport Fairness, IReadOnlyList<ReportFile> Files);

/// <summary>A file written beside the report.</summary>
/// <param name="Path">Its path from the report's folder, with forward slashes.</param>
/// <param name="Purpose">What it is for, one sentence.</param>
public sealed record ReportFile(string Path, string Purpose);
