using Lines.Drawing.Model;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Plans.Figures;
using Lines.Plans.Paper;

namespace Lines.Plans.LinesPlan;

/// <summary>The lines plan of a hull: one drawing that every renderer writes.</summary>
/// <remarks>
/// <para><b>Frame.</b> The sheet, millimeters, y up; the bow to the right. Profile on top, half-breadths above the centerline below
/// it, diagonals below that centerline, body plan with the fore body at its right.</para>
/// <para><b>Accuracy.</b> Lines are drawn as polylines whose chords stay within 0.01 mm on paper of the cut lines.</para>
/// </remarks>
public static class LinesPlanSheet
{
    /// <summary>Draws the lines plan.</summary>
    /// <param name="lines">The lines, cut once from the hull.</param>
    /// <param name="figures">The hull's figures, as <see cref="HullFigures"/> gives them.</param>
    /// <param name="settings">Title, paper, notation of lengths.</param>
    /// <returns>The sheet, the paper laid on its longer side.</returns>
    /// <exception cref="ArgumentException">The paper is too small for the hull.</exception>
    public static Sheet Of(HullLines lines, IReadOnlyList<FigureGroup> figures, LinesPlanSettings settings)
    {
        ArgumentNullException.ThrowIfNull(lines);
        ArgumentNullException.ThrowIfNull(figures);
        ArgumentNullException.ThrowIfNull(settings);
        var shown = new PlanFigures(figures, settings.Notation);
        var layout = PlanLayout.Of(lines, settings.Paper, LengthwiseViews.WidestLabel(lines, shown));
        var marks = new PageMarks();
        marks.Box(PlanInks.Border, layout.Border);
        var views = new LengthwiseViews(marks, layout, lines, shown, settings.Joints);
        views.Draw();
        new BodyPlanView(marks, layout, lines, shown).Draw();
        TitleBlock.DrawTable(marks, layout, lines, shown, settings.Notation, views.Combs);
        TitleBlock.Draw(marks, layout, settings);
        return new Sheet($"{settings.Title}, lines plan", settings.Paper.Height, settings.Paper.Width, [.. marks.All.Select(m => MovedMarks.Of(m, new Vector2(0, 0), layout.Reduction))]);
    }
}
