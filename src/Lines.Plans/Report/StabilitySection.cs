using System.Text;
using Lines.Drawing.Svg;
using Lines.Hull.Hydrostatics;
using Lines.Plans.Figures;

namespace Lines.Plans.Report;

/// <summary>The report's section on load cases and stability.</summary>
internal static class StabilitySection
{
    public static void Write(StringBuilder page, ReportStability stability)
    {
        var book = stability.Book;
        page.Append("<section aria-labelledby=\"cases\">\n<h2 id=\"cases\">Load cases and stability</h2>\n<ul>\n");
        foreach (var study in book.Studies)
        {
            var told = ReportPage.Escaped($"{study.Name}: {LoadCaseFigures.StateOf(study.Afloat)}");
            page.Append(study.Afloat.State == FloatState.Floats ? "<li>" : "<li class=\"bad\">").Append(told).Append("</li>\n");
        }

        page.Append("</ul>\n");
        ReportPage.Drawing(page, SvgFile.Write(stability.Arms), "Righting arms", "Above the line she comes back, below it she goes on over. Dashed arms do not count: she has filled, or her arm has ended.");
        if (stability.Bending is { } bending)
            ReportPage.Drawing(page, SvgFile.Write(bending), "Along the hull", "Of the case that bends the hull most: preliminary.");
        foreach (var (table, note) in book.Tables)
        {
            ReportPage.Table(page, table);
            if (note.Length > 0)
                page.Append("<p class=\"note\">").Append(ReportPage.Escaped(note)).Append("</p>\n");
        }

        page.Append("<table>\n<caption>").Append(ReportPage.Escaped(book.Guides.Title)).Append("</caption>\n<tbody>\n");
        foreach (var guide in book.Guides.Figures)
        {
            page.Append("<tr><th scope=\"row\">").Append(ReportPage.Escaped(guide.Name)).Append("<span class=\"note\"> ").Append(ReportPage.Escaped(guide.Note))
                .Append("</span></th><td class=\"n\">").Append(ReportPage.Escaped(FigureText.Show(guide, book.Notation))).Append("</td></tr>\n");
        }

        page.Append("</tbody>\n</table>\n<p class=\"note\">").Append(ReportPage.Escaped(RuleGuides.Scope)).Append("</p>\n");
        page.Append("<p>").Append(ReportPage.Escaped(Cautions.Trials)).Append(' ').Append(ReportPage.Escaped(Cautions.Rules)).Append("</p>\n</section>\n");
    }
}
