using System.Net;
using System.Text;
using Lines.Drawing.Svg;
using Lines.Plans.Curvature;
using Lines.Plans.Figures;
using Lines.Plans.FormCurves;
using Lines.Plans.Offsets;

namespace Lines.Plans.Report;

/// <summary>The report of a build: one page of HTML that needs nothing beside it.</summary>
/// <remarks>Drawing and style stand in the page; there is no script, no font and no picture to fetch. Links lead to the files beside it.</remarks>
public static class ReportPage
{
    private const string PlanFile = "lines-plan.pdf";

    /// <summary>Writes the page.</summary>
    /// <param name="content">What it shows.</param>
    /// <returns>The text of the file, lines ended by a line feed.</returns>
    public static string Of(ReportContent content)
    {
        ArgumentNullException.ThrowIfNull(content);
        var page = new StringBuilder();
        page.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            .Append("<title>").Append(Escaped(content.Title)).Append(": lines, numbers, patterns</title>\n<style>\n")
            .Append(ReportStyle.Css.ReplaceLineEndings("\n")).Append("\n</style>\n</head>\n<body>\n");
        Head(page, content);
        page.Append("<main>\n");
        Plan(page, content);
        Numbers(page, content);
        Curves(page, content.Curves);
        if (content.Stability is { } stability)
            StabilitySection.Write(page, stability);
        if (content.Drag is { } drag)
            DragSection.Write(page, drag);
        if (content.Building is { } building)
            BuildingSection.Write(page, building);
        page.Append("<section aria-labelledby=\"fairness\">\n<h2 id=\"fairness\">Fairness</h2>\n").Append(FairnessTable.Of(content.Fairness));
        page.Append("<h3>Curvature of the whole skin</h3>\n");
        Drawing(page, SvgFile.Write(content.Curvature), "Curvature of the skin", CurvatureSheet.WhatToLookFor);
        page.Append("</section>\n");
        Files(page, content.Files);
        CautionList(page, content.HasOutriggers);
        page.Append("</main>\n<footer>Written by Lines. Shape is to the outside of planking unless a name says inside; x runs aft from the foremost point, heights from the base line.</footer>\n</body>\n</html>\n");
        return page.ToString();
    }

    /// <summary>Text made safe to stand in a page.</summary>
    internal static string Escaped(string text) => WebUtility.HtmlEncode(text);

    private static void Head(StringBuilder page, ReportContent content)
    {
        page.Append("<header>\n<h1>").Append(Escaped(content.Title)).Append("</h1>\n<p>").Append(Escaped(content.Fairness.Verdict)).Append("</p>\n");
        foreach (var (word, text) in content.Warnings.Select(w => ("Warning", w)).Concat(content.Notes.Select(n => ("Note", n))))
            page.Append("<p><strong>").Append(word).Append(":</strong> ").Append(Escaped(text)).Append("</p>\n");
        page.Append("</header>\n");
    }

    private static void Plan(StringBuilder page, ReportContent content)
    {
        page.Append("<section aria-labelledby=\"plan\">\n<h2 id=\"plan\">Lines plan</h2>\n");
        Drawing(page, Linked(content, SvgFile.Write(content.LinesPlan)), "Lines plan", "Profile; half-breadths above the centerline, diagonals below it; body plan. The bow is to the right." + PlanLinks(content));
        page.Append("</section>\n");
    }

    /// <summary>A picture that scrolls sideways where it is too wide.</summary>
    internal static void Drawing(StringBuilder page, string picture, string name, string caption) =>
        page.Append("<figure class=\"plan\">\n<div tabindex=\"0\" role=\"region\" aria-label=\"").Append(name).Append(", scrolls sideways on a narrow screen\">\n")
            .Append(picture).Append("</div>\n<figcaption>").Append(caption).Append("</figcaption>\n</figure>\n");

    // The picture leads to the sheet that can be printed and looked at closer.
    private static string Linked(ReportContent content, string picture) =>
        content.Files.Any(f => f.Path is PlanFile) ? $"<a href=\"{PlanFile}\" aria-label=\"Lines plan as PDF\">\n{picture}</a>\n" : picture;

    private static string PlanLinks(ReportContent content)
    {
        var plans = content.Files.Where(f => f.Path.StartsWith("lines-plan.", StringComparison.Ordinal)).ToList();
        return plans.Count == 0 ? "" : " To print or to look closer: " + string.Join(", ", plans.Select(f => Link(f.Path))) + ".";
    }

    private static void Numbers(StringBuilder page, ReportContent content)
    {
        page.Append("<section aria-labelledby=\"numbers\">\n<h2 id=\"numbers\">Numbers</h2>\n<div class=\"groups\">\n");
        foreach (var group in content.Figures)
        {
            page.Append("<table>\n<caption>").Append(Escaped(group.Title)).Append("</caption>\n<tbody>\n");
            foreach (var figure in group.Figures)
            {
                page.Append("<tr><th scope=\"row\">").Append(Escaped(figure.Name));
                if (NoteOf(figure) is { Length: > 0 } note)
                    page.Append("<span class=\"note\"> ").Append(Escaped(note)).Append("</span>");
                page.Append("</th><td class=\"n\">").Append(Escaped(FigureText.Show(figure, content.Notation))).Append("</td></tr>\n");
            }

            page.Append("</tbody>\n</table>\n");
        }

        page.Append("</div>\n</section>\n");
    }

    private static void Curves(StringBuilder page, ReportCurves curves)
    {
        page.Append("<section aria-labelledby=\"curves\">\n<h2 id=\"curves\">Curves of form</h2>\n<p>").Append(FormCurvesBook.WhatItIs).Append(' ').Append(Cautions.Figures).Append("</p>\n");
        Drawing(page, SvgFile.Write(curves.Curves), "Curves of form", "Read across from a draft to a curve, then down; what a square is worth stands at the curve's end.");
        Table(page, curves.Book.Hydrostatics);
        Drawing(page, SvgFile.Write(curves.Sections), "Sectional areas", "How the displacement is spread along the boat: the area under a curve is the volume at that draft.");
        page.Append("<details>\n<summary>Sectional areas in figures</summary>\n");
        Table(page, curves.Book.Sections);
        page.Append("</details>\n</section>\n");
    }

    /// <summary>A table of figures.</summary>
    internal static void Table(StringBuilder page, FigureTable table)
    {
        page.Append("<div class=\"scroll\">\n<table>\n<caption>").Append(Escaped(table.Title)).Append("</caption>\n<thead><tr>");
        foreach (var (column, k) in table.Columns.Select((c, k) => (c, k)))
            page.Append("<th scope=\"col\"").Append(k == 0 || column.IsWords ? "" : " class=\"n\"").Append('>').Append(Escaped(column.Name)).Append(column.Place.Length > 0 ? "<br/>" + Escaped(column.Place) : "").Append("</th>");
        page.Append("</tr></thead>\n<tbody>\n");
        foreach (var row in table.Rows)
        {
            page.Append("<tr><th scope=\"row\">").Append(Escaped(row[0])).Append("</th>");
            foreach (var (column, cell) in table.Columns.Zip(row).Skip(1))
                page.Append(column.IsWords ? "<td>" : "<td class=\"n\">").Append(Escaped(cell)).Append("</td>");
            page.Append("</tr>\n");
        }

        page.Append("</tbody>\n</table>\n</div>\n");
    }

    private static string NoteOf(Figure figure) => figure switch
    {
        { Value: null } => figure.Why,
        { IsEstimate: true, Note.Length: > 0 } => "estimate: " + figure.Note,
        { IsEstimate: true } => "estimate",
        _ => figure.Note,
    };

    private static void Files(StringBuilder page, IReadOnlyList<ReportFile> files)
    {
        page.Append("<section aria-labelledby=\"files\">\n<h2 id=\"files\">Files</h2>\n<div class=\"scroll\">\n<table>\n")
            .Append("<thead><tr><th scope=\"col\">File</th><th scope=\"col\">What it is for</th></tr></thead>\n<tbody>\n");
        foreach (var file in files)
        {
            page.Append("<tr><th scope=\"row\">").Append(Link(file.Path)).Append("</th><td>");
            page.Append(Escaped(file.Purpose)).Append("</td></tr>\n");
        }

        page.Append("</tbody>\n</table>\n</div>\n</section>\n");
    }

    private static void CautionList(StringBuilder page, bool outriggers)
    {
        page.Append("<section aria-labelledby=\"cautions\">\n<h2 id=\"cautions\">Cautions</h2>\n<ul class=\"cautions\">\n");
        foreach (var caution in Cautions.For(outriggers))
            page.Append("<li>").Append(Escaped(caution)).Append("</li>\n");
        page.Append("</ul>\n</section>\n");
    }

    private static string Link(string path) =>
        $"<a href=\"{Escaped(string.Join('/', path.Split('/').Select(Uri.EscapeDataString)))}\">{Escaped(path)}</a>";
}
