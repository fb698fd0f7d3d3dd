using Lines.Drawing.Model;
using Lines.Hull.Fairness;
using Lines.Kernel.Units;
using Lines.Plans.Building;
using Lines.Plans.Figures;
using Lines.Plans.FormCurves;
using Lines.Plans.Resistance;
using Lines.Plans.Stability;

namespace Lines.Plans.Report;

/// <summary>What the report shows.</summary>
/// <param name="Title">Title of the design.</param>
/// <param name="LinesPlan">The lines plan.</param>
/// <param name="Curvature">The curvature of the skin.</param>
/// <param name="Figures">The numbers, in groups.</param>
/// <param name="Curves">The curves of form.</param>
/// <param name="Notation">How lengths are written; the other units follow it.</param>
/// <param name="Fairness">The judgment of the lines.</param>
/// <param name="Files">The files written beside the report.</param>
public sealed record ReportContent(
    string Title,
    Sheet LinesPlan,
    Sheet Curvature,
    IReadOnlyList<FigureGroup> Figures,
    ReportCurves Curves,
    LengthNotation Notation,
    FairnessReport Fairness,
    IReadOnlyList<ReportFile> Files)
{
    /// <summary>Load cases and stability; null where the weight of the empty boat is not known.</summary>
    public ReportStability? Stability { get; init; }

    /// <summary>Drag and the crew's power; null where a hull is under water to its sheer.</summary>
    public ReportDrag? Drag { get; init; }

    /// <summary>Whether the boat has outriggers.</summary>
    public bool HasOutriggers { get; init; }

    /// <summary>Planking, materials and the order of work; null where they are not told.</summary>
    public BuildingBook? Building { get; init; }

    /// <summary>What could not be made as asked, one sentence each.</summary>
    public IReadOnlyList<string> Warnings { get; init; } = [];

    /// <summary>What was left out without loss, one sentence each.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];
}

/// <summary>The curves of form in the report.</summary>
/// <param name="Book">Their figures.</param>
/// <param name="Curves">The curves against draft.</param>
/// <param name="Sections">The sectional areas along the boat.</param>
public sealed record ReportCurves(FormCurvesBook Book, Sheet Curves, Sheet Sections);

/// <summary>Load cases and stability in the report.</summary>
/// <param name="Book">Their figures.</param>
/// <param name="Arms">The righting arms.</param>
/// <param name="Bending">Forces along the main hull; null where no case floats.</param>
public sealed record ReportStability(StabilityBook Book, Sheet Arms, Sheet? Bending);

/// <summary>Drag and the crew's power in the report.</summary>
/// <param name="Book">Their figures.</param>
/// <param name="Chart">Watts and drag against speed.</param>
public sealed record ReportDrag(DragBook Book, Sheet Chart);

/// <summary>A file written beside the report.</summary>
/// <param name="Path">Its path from the report's folder, with forward slashes.</param>
/// <param name="Purpose">What it is for, one sentence.</param>
public sealed record ReportFile(string Path, string Purpose);
