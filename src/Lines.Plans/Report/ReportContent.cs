using Lines.Drawing.Model;
using Lines.Hull.Fairness;

namespace Lines.Plans.Report;

/// <summary>What the report shows.</summary>
/// <param name="Title">Title of the design.</param>
/// <param name="LinesPlan">The lines plan.</param>
/// <param name="Figures">The numbers, in groups.</param>
/// <param name="Fairness">The judgement of the lines.</param>
/// <param name="Files">The files written beside the report.</param>
public sealed record ReportContent(
    string Title, Sheet LinesPlan, IReadOnlyList<ReportGroup> Figures, FairnessReport Fairness, IReadOnlyList<ReportFile> Files);

/// <summary>Numbers that belong together.</summary>
/// <param name="Title">What they are about.</param>
/// <param name="Rows">The numbers.</param>
public sealed record ReportGroup(string Title, IReadOnlyList<ReportFigure> Rows);

/// <summary>One number as it is shown.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Value">Its value with its unit.</param>
/// <param name="Note">Source and range of an estimate, or what the number means; empty where nothing need be said.</param>
/// <param name="IsEstimate">Whether it is an estimate rather than geometry.</param>
public sealed record ReportFigure(string Name, string Value, string Note = "", bool IsEstimate = false);

/// <summary>A file written beside the report.</summary>
/// <param name="Path">Its path from the report's folder, with forward slashes.</param>
/// <param name="Purpose">What it is for, one sentence.</param>
/// <param name="OpenFirst">Whether it is the one to open first.</param>
public sealed record ReportFile(string Path, string Purpose, bool OpenFirst = false);
