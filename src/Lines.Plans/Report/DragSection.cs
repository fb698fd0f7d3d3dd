using System.Text;
using Lines.Drawing.Svg;
using Lines.Plans.Resistance;

namespace Lines.Plans.Report;

/// <summary>The report's section on drag and the crew's power.</summary>
internal static class DragSection
{
    public static void Write(StringBuilder page, ReportDrag drag)
    {
        page.Append("<section aria-labelledby=\"drag\">\n<h2 id=\"drag\">Watts and drag</h2>\n");
        ReportPage.Drawing(page, SvgFile.Write(drag.Chart), "Watts and drag against speed", "Go up from a speed to the heavy curve, then right to who keeps that up. Below, what the drag is made of.");
        ReportPage.Table(page, drag.Book.Crew.Table);
        page.Append("<details>\n<summary>Drag in figures</summary>\n");
        ReportPage.Table(page, drag.Book.Table);
        page.Append("</details>\n<ul class=\"note\">\n");
        foreach (var line in drag.Book.Worth().Concat(CrewBook.Worth))
            page.Append("<li>").Append(ReportPage.Escaped(line)).Append("</li>\n");
        page.Append("</ul>\n</section>\n");
    }
}
