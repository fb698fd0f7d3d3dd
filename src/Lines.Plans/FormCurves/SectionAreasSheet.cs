using Lines.Drawing.Model;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Figures;
using Lines.Plans.LinesPlan;
using Lines.Plans.Paper;

namespace Lines.Plans.FormCurves;

/// <summary>The immersed areas of the sections along the boat, a curve for every draft, the design draft heavy.</summary>
/// <remarks><b>Frame.</b> The sheet, millimeters, y up; the bow to the right as on the lines plan.</remarks>
internal static class SectionAreasSheet
{
    /// <summary>Height of the drawing [mm].</summary>
    public const double Height = 66;

    private const double Margin = 12.7;
    private const double Left = 18;
    private const double Foot = 10;
    private const double Head = 14;

    /// <summary>Stations nearer than this to an end of the curve are that end [m].</summary>
    private const double Apart = 1e-6;

    private static readonly Layer s_other = new("areas", new Ink(0.18));
    private static readonly Layer s_design = new("areas-design", new Ink(0.5));

    /// <summary>The drawing as a sheet of its own.</summary>
    public static Sheet Of(FormCurvesBook book, CurvesOfForm curves, double width)
    {
        var marks = new PageMarks();
        Draw(marks, book, curves, new Box2(0, 0, width, Height));
        return new Sheet($"{book.Title}, sectional areas", width, Height, marks.All);
    }

    /// <summary>Draws it into a part of a page.</summary>
    public static void Draw(PageMarks marks, FormCurvesBook book, CurvesOfForm curves, Box2 room)
    {
        var drafts = curves.Drafts.Where(d => d.Afloat.Waterplane is not null).ToList();
        var box = new Box2(room.Left + Margin + Left, room.Bottom + Foot, room.Right - Margin, room.Top - Head);
        double fore = drafts.Min(d => d.Afloat.Waterplane!.Fore), aft = drafts.Max(d => d.Transom?.Ends ?? d.Afloat.Waterplane!.Aft), k = (box.Width - 6) / (aft - fore);
        var unit = FigureText.UnitOf(Quantity.SectionArea, book.Notation);
        var most = drafts.Max(d => d.Afloat.Greatest!.Value.Area) / unit.Size;
        var step = RoundNumber.AtLeast(most / 6);
        var perUnit = box.Height / (step * Math.Ceiling(most / step));
        Point2 At(double x, double area) => new(box.Right - 3 - ((x - fore) * k), box.Bottom + (area / unit.Size * perUnit));

        marks.Text(PlanInks.Titles, $"Sectional areas, {unit.Name}", new Point2(room.Left + Margin, room.Top - 8), 2.8);
        marks.Text(
            PlanInks.Lettering, "Immersed area of the sections at every draft of the table, one above the other; heavy the design draft. Stations 0 to 10 divide the design waterline, the bow to the right.",
            new Point2(room.Left + Margin + 50, room.Top - 8), 2, room.Width - (2 * Margin) - 50);
        for (var area = 0.0; area * perUnit <= box.Height * (1 + 1e-9); area += step)
        {
            var y = box.Bottom + (area * perUnit);
            marks.Line(area == 0 ? PlanInks.Datum : PlanInks.Grid, new Point2(box.Left, y), new Point2(box.Right, y));
            marks.Text(PlanInks.Lettering, Invariant($"{area:0.###}"), new Point2(box.Left - 2, y), 2, anchor: Anchor.MiddleRight);
        }

        foreach (var s in drafts[0].Sections.Select(s => s.Station).Where(s => !s.Number.Contains('/', StringComparison.Ordinal)))
        {
            var foot = At(s.X, 0);
            marks.Line(PlanInks.Grid, foot, foot with { Y = box.Top });
            marks.Text(PlanInks.Lettering, s.Number, foot + new Vector2(0, -4.5), 2, anchor: Anchor.Center);
        }

        foreach (var draft in drafts)
            marks.Path(draft == curves.Drafts[book.Design] ? s_design : s_other, Curve(draft, At));
        Label(marks, book, drafts, At);
    }

    // A draft is written on its curve just forward of amidships, where the curve above leaves room.
    private static void Label(PageMarks marks, FormCurvesBook book, IReadOnlyList<AtDraft> drafts, Func<double, double, Point2> at)
    {
        const double Capital = 1.7, Room = 2.8;
        Point2? above = null;
        foreach (var draft in drafts.Reverse())
        {
            var (station, area) = draft.Sections[(draft.Sections.Count / 2) - 1];
            var place = at(station.X, area);
            if (above is null || above.Value.Y - place.Y >= Room)
                marks.Text(PlanInks.Lettering, new Length(draft.Afloat.Height).ToText(book.Notation), place + new Vector2(0, 0.8), Capital, anchor: Anchor.Center);
            above = place;
        }
    }

    // From end to end of the waterline through the stations between, in two pieces where a transom cuts them off.
    private static List<Point2> Curve(AtDraft draft, Func<double, double, Point2> at)
    {
        var plane = draft.Afloat.Waterplane!;
        var knee = draft.Transom?.Begins ?? new SectionArea(plane.Aft, 0);
        var curve = SmoothLine.Through([at(plane.Fore, 0), .. Between(plane.Fore, knee.X), at(knee.X, knee.Area)]);
        if (draft.Transom is { } transom)
            curve.AddRange(SmoothLine.Through([at(knee.X, knee.Area), .. Between(knee.X, transom.Ends), at(transom.Ends, 0)]));
        return curve;

        IEnumerable<Point2> Between(double from, double to) =>
            draft.Sections.Where(s => s.Area > 0 && s.Station.X > from + Apart && s.Station.X < to - Apart).Select(s => at(s.Station.X, s.Area));
    }
}
