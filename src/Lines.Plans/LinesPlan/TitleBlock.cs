using Lines.Drawing.Model;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Paper;
using Lines.Plans.Report;

namespace Lines.Plans.LinesPlan;

/// <summary>The lower corners of the sheet: table of dimensions at the left, title block with the scale bar at the right.</summary>
internal static class TitleBlock
{
    /// <summary>Width of the names in the table of dimensions [mm].</summary>
    private const double NamesWidth = 52;

    /// <summary>Draws the title block.</summary>
    public static void Draw(PageMarks marks, PlanLayout layout, LinesPlanSettings settings)
    {
        var box = layout.TitleBlock;
        marks.Line(PlanInks.Border, new Point2(box.Left, box.Bottom), new Point2(box.Left, box.Top));
        marks.Line(PlanInks.Border, new Point2(box.Left, box.Top), new Point2(box.Right, box.Top));
        double left = box.Left + 5, width = box.Width - 10, y = box.Top - 10;
        marks.Text(PlanInks.Titles, settings.Title, new Point2(left, y), 5.5, width);
        marks.Text(PlanInks.Titles, Cautions.Marked("Lines plan", settings.IsFair), new Point2(left, y - 8), 3.2, width);
        marks.Line(PlanInks.Fine, new Point2(box.Left, y - 12), new Point2(box.Right, y - 12));
        var scale = layout.Scale == layout.BodyScale
            ? Invariant($"Scale 1:{layout.Scale} on {settings.Paper.Name} paper")
            : Invariant($"Scale 1:{layout.Scale}, body plan 1:{layout.BodyScale}, on {settings.Paper.Name} paper");
        var row = y - 17;
        string[] notes =
        [
            scale, UnitNote(settings.Notation), "Lines to the outside of planking.", "Gray combs: the longer a tooth, the sharper the curve at its foot.",
            "Work from the figures, not from the paper.", Cautions.Rules,
        ];
        var height = PageMarks.HeightFor(notes, 2, width);
        foreach (var note in notes)
        {
            marks.Text(PlanInks.Lettering, note, new Point2(left, row), height);
            row -= 3.6;
        }

        DrawScaleBar(marks, new Point2(left, row - 5.4), width - 12, layout.PerMeter);
    }

    private static string UnitNote(LengthNotation notation) => notation switch
    {
        LengthNotation.Millimeters => "Dimensions in millimeters, heights above the base line.",
        LengthNotation.Inches => "Dimensions in inches, heights above the base line.",
        LengthNotation.FeetInches => "Dimensions in feet and inches, heights above the base line.",
        LengthNotation.FeetInchesEighths => "Dimensions in feet-inches-eighths, heights above the base line.",
        _ => throw new ArgumentOutOfRangeException(nameof(notation), notation, "no such notation"),
    };

    /// <summary>Draws the table of dimensions.</summary>
    public static void DrawTable(PageMarks marks, PlanLayout layout, HullLines lines, PlanFigures figures, LengthNotation notation, IReadOnlyList<CombDrawing> combs)
    {
        var box = layout.Table;
        List<(string Name, string Value)> rows =
        [
            .. ((string[])["length", "waterline_length", "beam", "waterline_beam", "depth", "draft"]).Select(figures.Row),
            ("Sheer at bow, least, at stern", string.Join(", ", new[] { figures["sheer_bow"].Value!.Value, lines.Sheer.Nodes.Min(n => n.Point.Z), figures["sheer_stern"].Value!.Value }.Select(figures.Cell))),
            .. lines.Diagonals.DistinctBy(d => d.Label, StringComparer.Ordinal).Select(d =>
                ($"{d.Label}: height on the centerline, below level", $"{figures.Cell(d.Position)}, {new Angle(d.Tag.Angle).ToText()}")),
            .. ((string[])["entry_fullness", "run_fullness", "prismatic", "displacement_fresh"]).Select(figures.Row),
            .. combs.Select(c => ($"Comb of the {c.Name}, {ToothOf(notation).Name} tooth", Curved(c, notation, layout.Reduction))),
        ];

        var step = Math.Min(4.4, (box.Height - 8) / rows.Count);
        var y = box.Bottom + (step * rows.Count) + 1;
        marks.Text(PlanInks.Titles, "Dimensions", new Point2(box.Left, y), 2.8);
        var height = Math.Min(PageMarks.HeightFor(rows.Select(r => r.Name), 1.8, NamesWidth - 2), PageMarks.HeightFor(rows.Select(r => r.Value), 1.8, box.Width - NamesWidth - 2));
        foreach (var (name, value) in rows)
        {
            y -= step;
            marks.Text(PlanInks.Lettering, name, new Point2(box.Left, y), height);
            marks.Text(PlanInks.Lettering, value, new Point2(box.Left + NamesWidth, y), height);
        }
    }

    // The tooth whose meaning the table gives: its length on paper [mm].
    private static (string Name, double Length) ToothOf(LengthNotation notation) =>
        notation == LengthNotation.Millimeters ? ("10 mm", 10) : ("1/2 in", 12.7);

    // Curvature and radius at the foot of that tooth.
    private static string Curved(CombDrawing comb, LengthNotation notation, double reduction)
    {
        var (unit, meters) = notation == LengthNotation.Millimeters ? ("m", 1) : ("ft", Length.Foot);
        var curvature = comb.PerTooth * ToothOf(notation).Length / reduction * meters;
        return Invariant($"{curvature:G3} 1/{unit}, radius {1 / curvature:G3} {unit}");
    }

    // One bar with meters above and feet below, alternate parts filled.
    private static void DrawScaleBar(PageMarks marks, Point2 zero, double room, double perMeter)
    {
        var meters = new[] { 10.0, 5, 2, 1, 0.5, 0.2, 0.1 }.First(m => m * perMeter <= room);
        var feet = Math.Floor(room / (perMeter * Length.Foot));
        Part(meters, meters / 10, 0, 1.2, "m");
        Part(feet * Length.Foot, Length.Foot, -1.2, 0, "ft");

        void Part(double length, double step, double low, double high, string unit)
        {
            var count = (int)Math.Round(length / step);
            for (var i = 0; i < count; i++)
            {
                var part = new Box2(zero.X + (i * step * perMeter), zero.Y + low, zero.X + ((i + 1) * step * perMeter), zero.Y + high);
                marks.Box(PlanInks.Fine, part);
                if (i % 2 == 0)
                    marks.Box(PlanInks.Fine, part, filled: true);
            }

            var y = low < 0 ? zero.Y + low - 2.6 : zero.Y + high + 0.9;
            var total = low < 0 ? Invariant($"{count} {unit}") : Invariant($"{length:0.###} {unit}");
            marks.Text(PlanInks.Lettering, "0", new Point2(zero.X, y), 1.7, anchor: Anchor.Center);
            marks.Text(PlanInks.Lettering, total, new Point2(zero.X + (length * perMeter), y), 1.7, anchor: Anchor.Center);
        }
    }
}
