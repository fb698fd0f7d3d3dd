using Lines.Construction.Nesting;
using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Molds;
using Lines.Plans.Paper;
using Lines.Plans.Report;

namespace Lines.Plans.Nesting;

/// <summary>The cutting list on paper: a page for each sheet with its picture and its parts, on letter paper held sideways.</summary>
public static class CuttingSheets
{
    private const double Margin = 12.7; // half an inch: inside what any printer reaches
    private const double Letters = 2.3;
    private const double Line = 3.9;
    private const double Head = 11;

    /// <summary>Names keep from the edge of their part, to either side [mm].</summary>
    private const double FromEdge = 0.6;

    private const double Row = 3.6;
    private const int Columns = 3;

    /// <summary>The pages.</summary>
    /// <param name="title">Title of the design.</param>
    /// <param name="plan">The cutting plan.</param>
    /// <param name="notation">How lengths are written.</param>
    /// <param name="isFair">Whether the hull is fair; one that is not is marked so.</param>
    public static IReadOnlyList<Sheet> Of(string title, CuttingPlan plan, LengthNotation notation, bool isFair = true)
    {
        ArgumentNullException.ThrowIfNull(title);
        ArgumentNullException.ThrowIfNull(plan);
        double width = PaperSize.Letter.Height, height = PaperSize.Letter.Width;
        var page = new Box2(0, 0, width, height).Grown(-Margin);
        return plan.Sheets.Count == 0
            ? [new Sheet($"{title}: cutting list", width, height, Page(title, plan, null, notation, isFair, page))]
            : [.. plan.Sheets.Select(s => new Sheet($"{title}: cutting list", width, height, Page(title, plan, s, notation, isFair, page)))];
    }

    private static IReadOnlyList<Mark> Page(string title, CuttingPlan plan, CutSheet? sheet, LengthNotation notation, bool isFair, Box2 page)
    {
        var marks = new PageMarks();
        var heading = sheet is null ? "Cutting list" : Invariant($"Cutting list, sheet {sheet.Number} of {plan.Sheets.Count}");
        marks.Text(SettingUpInks.Heading, Cautions.Marked(heading, isFair), new Point2(page.Left, page.Top - 5), 5, (page.Width / 2) - 4);
        marks.Text(SettingUpInks.Text, title, new Point2(page.Right, page.Top - 4), 4, page.Width / 2, Anchor.Right);
        var y = page.Top - Head;
        IEnumerable<string> lines = sheet is null || sheet.Number == 1 ? CuttingList.Summary(plan, notation) : [];
        foreach (var line in lines.Append(About(sheet, notation)).Where(l => l.Length > 0))
        {
            marks.Text(SettingUpInks.Text, line, new Point2(page.Left, y), Letters, page.Width);
            y -= Line;
        }

        marks.Text(SettingUpInks.Text, Cautions.Router, new Point2(page.Left, page.Bottom), Letters, page.Width);
        if (sheet is not null)
            Draw(marks, title, plan, sheet, notation, page with { Top = y, Bottom = page.Bottom + Line });
        return marks.All;
    }

    private static string About(CutSheet? sheet, LengthNotation notation) => sheet is null ? "" :
        $"{NestedSheets.FileName(sheet)}.dxf: {new Length(sheet.Thickness).ToSize(notation)} stock, {new Length(sheet.UsedLength).ToText(notation)} of its length used. Labeled faces up; sizes in {SettingUpSheet.Unit(notation)}.";

    private static void Draw(PageMarks marks, string title, CuttingPlan plan, CutSheet sheet, LengthNotation notation, Box2 room)
    {
        var rows = (sheet.Parts.Count + Columns - 1) / Columns;
        var below = room.Bottom + ((rows + 1) * Row) + 3;
        var scale = Math.Min(room.Width / (1000 * plan.Stock.Length), (room.Top - below) / (1000 * plan.Stock.Width));
        var corner = new Vector2(room.Center.X - (500 * scale * plan.Stock.Length), room.Top - (1000 * scale * plan.Stock.Width));
        marks.Box(SettingUpInks.Fine, new Box2(0, 0, 1000 * scale * plan.Stock.Length, 1000 * scale * plan.Stock.Width).Moved(corner));
        List<PartOutline> outlines = [.. sheet.Parts.Select(p => new PartOutline(Reduced(p), FromEdge))];
        var names = new SheetNames(outlines, room with { Bottom = below });
        foreach (var (part, outline) in sheet.Parts.Zip(outlines))
        {
            marks.Add([new PathMark(SettingUpInks.Heavy, outline.Path)]);
            var drawn = NestedSheets.MarksOf(title, part, notation).Select(m => MovedMarks.Of(m, corner, scale)).ToList();
            marks.Add(drawn.OfType<PathMark>().Where(m => m.Layer == MoldInks.Holes || m.Layer == MoldInks.Drill).Select(m => new PathMark(SettingUpInks.Fine, m.Path)));
            var name = drawn.OfType<TextMark>().First(t => string.Equals(t.Text, part.Mold.Name, StringComparison.Ordinal));
            marks.Add(names.Of(outline, name));
        }

        for (var i = 0; i < sheet.Parts.Count; i++)
        {
            var (along, across) = CuttingList.SizeOf(sheet.Parts[i].Mold.Outline);
            var at = new Point2(room.Left + (i / rows * room.Width / Columns), below - 3 - Row - (i % rows * Row));
            marks.Text(
                SettingUpInks.Text, $"{sheet.Parts[i].Mold.Name}{(sheet.Parts[i].Mold.IsHalf ? ", half" : "")}: {new Length(along).ToText(notation)} broad, {new Length(across).ToText(notation)} high",
                at, Letters, (room.Width / Columns) - 4);
        }

        ArcPath Reduced(CutPart part) => MoldDrawing.Millimeters(part.Outline).Mapped(p => new Point2((scale * p.X) + corner.X, (scale * p.Y) + corner.Y));
    }
}
