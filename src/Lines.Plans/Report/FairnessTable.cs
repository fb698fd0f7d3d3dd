using System.Text;
using Lines.Design.Schema;
using Lines.Hull.Fairness;
using Lines.Hull.Sections;
using Lines.Plans.Figures;

namespace Lines.Plans.Report;

/// <summary>The fairness of a hull in the report: verdict, what to mend, families at a glance, every line on request.</summary>
internal static class FairnessTable
{
    /// <summary>Writes the section's body.</summary>
    public static string Of(FairnessReport report)
    {
        var html = new StringBuilder();
        html.Append("<p class=\"verdict").Append(report.Fair ? "" : " bad").Append("\">").Append(ReportPage.Escaped(report.Verdict)).Append("</p>\n");
        html.Append("<p>A line is fair when it has no hollow that nobody asked for and lies as a batten would lie through every other of its ")
            .Append("points. Sizes are in millimeters on the full-size boat. ").Append(ReportPage.Escaped(FairnessText.Allowed(report))).Append("</p>\n");
        Faults(html, report);
        Meant(html, report);
        html.Append("<div class=\"scroll\">\n<table>\n<caption>By family</caption>\n").Append(Columns("Lines")).Append("<tbody>\n");
        foreach (var family in report.Lines.GroupBy(l => Family(l.Line.Kind), StringComparer.Ordinal))
        {
            LineFairness hollow = family.MaxBy(l => l.Hollow.Depth)!, batten = family.MaxBy(l => l.Batten.Depth)!;
            var bad = family.Count(l => !l.Fair);
            Row(html, family.Key, hollow, family.Max(l => l.Meant.Depth), batten, family.Sum(l => l.UnaskedInflections), family.Max(l => l.MonotonePieces),
                bad == 0 ? "fair" : Invariant($"{bad} of {family.Count()} not fair"), bad > 0);
        }

        html.Append("</tbody>\n</table>\n</div>\n");
        if (FairnessText.Between(report) is { } between)
            html.Append("<p>").Append(ReportPage.Escaped(between)).Append("</p>\n");
        html.Append("<details>\n<summary>Every line</summary>\n<div class=\"scroll\">\n<table>\n").Append(Columns("Line")).Append("<tbody>\n");
        foreach (var line in report.Lines)
            Row(html, line.Name, line, line.Meant.Depth, line, line.UnaskedInflections, line.MonotonePieces, line.Fair ? "fair" : "not fair", !line.Fair);
        return html.Append("</tbody>\n</table>\n</div>\n</details>\n").ToString();
    }

    private static void Faults(StringBuilder html, FairnessReport report)
    {
        if (report.Faults.Count == 0)
            return;
        html.Append("<h3>What to mend, worst first</h3>\n<ul>\n");
        foreach (var fault in report.Faults)
        {
            html.Append("<li>").Append(ReportPage.Escaped(fault.Sentence));
            if (fault.Ease is { } dial)
            {
                var (verb, end) = FairnessText.Turn(report, dial);
                html.Append("; ").Append(verb).Append(" <code>").Append(ReportPage.Escaped(DesignSchema.ByDial[dial].Path)).Append("</code>").Append(ReportPage.Escaped(end));
            }

            html.Append("</li>\n");
        }

        html.Append("</ul>\n");
    }

    private static void Meant(StringBuilder html, FairnessReport report)
    {
        if (report.MeantHollows.Count == 0)
            return;
        html.Append("<h3>Hollow where that is meant, deepest first</h3>\n<ul>\n");
        foreach (var line in report.MeantHollows)
            html.Append("<li>").Append(ReportPage.Escaped(FigureText.Capital(line.MeantSentence))).Append("</li>\n");
        html.Append("</ul>\n");
    }

    private static string Columns(string first) =>
        $"<thead><tr><th scope=\"col\">{first}</th><th scope=\"col\" class=\"n\">Deepest hollow</th><th scope=\"col\" class=\"n\">allowed</th>"
        + "<th scope=\"col\" class=\"n\">Hollow as meant</th><th scope=\"col\" class=\"n\">Off the batten</th><th scope=\"col\" class=\"n\">allowed</th>"
        + "<th scope=\"col\" class=\"n\">Inflections not asked for</th><th scope=\"col\" class=\"n\">Pieces of rising or falling curvature</th>"
        + "<th scope=\"col\">Verdict</th></tr></thead>\n";

    private static void Row(
        StringBuilder html, string name, LineFairness hollow, double meant, LineFairness batten, int inflections, int pieces, string verdict, bool bad) =>
        html.Append("<tr><th scope=\"row\">").Append(ReportPage.Escaped(name)).Append("</th>")
            .Append(Invariant($"<td class=\"n\">{Limits.Millimeters(hollow.Hollow.Depth, hollow.HollowLimit)}</td><td class=\"n\">{1000 * hollow.HollowLimit:F2}</td><td class=\"n\">{1000 * meant:F2}</td>"))
            .Append(Invariant($"<td class=\"n\">{Limits.Millimeters(batten.Batten.Depth, batten.BattenLimit)}</td><td class=\"n\">{1000 * batten.BattenLimit:F2}</td>"))
            .Append(Invariant($"<td class=\"n\">{inflections}</td><td class=\"n\">{pieces}</td>"))
            .Append("<td").Append(bad ? " class=\"bad\"" : "").Append('>').Append(verdict).Append("</td></tr>\n");

    private static string Family(LineKind kind)
    {
        var name = FairnessText.Family(kind);
        return FigureText.Capital(name);
    }
}
