using System.Text;
using Lines.Plans.Building;
using Lines.Plans.Offsets;

namespace Lines.Plans.Report;

/// <summary>The report's section on planking, materials and the order of work.</summary>
internal static class BuildingSection
{
    public static void Write(StringBuilder page, BuildingBook book)
    {
        page.Append("<section aria-labelledby=\"building\">\n<h2 id=\"building\">Building</h2>\n");
        if (book.Bends.Count > 0)
        {
            page.Append("<h3>Where strips need help</h3>\n<ul>\n");
            foreach (var bend in book.Bends)
                page.Append("<li>").Append(ReportPage.Escaped(bend)).Append("</li>\n");
            page.Append("</ul>\n<p class=\"note\">").Append(ReportPage.Escaped(BuildingBook.Limits)).Append("</p>\n");
        }

        ReportPage.Table(page, book.Sections);
        if (book.PieceTable is { } pieces)
            ReportPage.Table(page, pieces);
        foreach (var warning in book.TooLarge)
            page.Append("<p><strong>").Append(ReportPage.Escaped(warning)).Append("</strong></p>\n");
        var lines = Bill.Of(book);
        var currency = book.Build.Material.Prices?.Currency;
        FigureColumn[] columns = [new("Item", ""), new("Pieces", ""), new("Size", ""), new("Amount", ""), .. currency is null ? (FigureColumn[])[] : [new("Price", currency)], new("Note", "") { IsWords = true }];
        IReadOnlyList<string> Row(BillLine l) => [l.Item, l.Pieces, l.Size, l.Amount, .. currency is null ? (string[])[] : [BuildingCsv.Money(l.Price)], l.Note];
        ReportPage.Table(page, new FigureTable("Bill of materials", columns, [.. lines.Select(Row)]));
        if (Bill.Sum(lines) is { } sum)
            page.Append("<p>Sum of the prices given: ").Append(BuildingCsv.Money(sum)).Append(' ').Append(ReportPage.Escaped(currency!)).Append(".</p>\n");
        if (book.AllHulls is { } all)
        {
            ReportPage.Table(page, all);
            page.Append("<p>Molds and strongback serve both hulls of a pair. Each outrigger's own bill, planking and patterns are in its folder.</p>\n");
        }

        page.Append("<h3>Order of work</h3>\n<ol>\n");
        foreach (var step in OrderOfWork.Of(book))
            page.Append("<li>").Append(ReportPage.Escaped(step.What)).Append(step.Caution.Length > 0 ? " <strong>" + ReportPage.Escaped(step.Caution) + "</strong>" : "").Append("</li>\n");
        page.Append("</ol>\n</section>\n");
    }
}
