using System.Xml;
using System.Xml.Linq;
using Lines.Hull.Fairness;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Sections;
using Lines.Kernel.Units;
using Lines.Plans.Curvature;
using Lines.Plans.Figures;
using Lines.Plans.FormCurves;
using Lines.Plans.LinesPlan;
using Lines.Plans.Paper;
using Lines.Plans.Report;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Report;

public class ReportPageTests
{
    private static readonly HullLines HullOnTrial = HullLines.Of(SampleHulls.DoubleEnder());

    private static readonly ReportContent Content = new(
        "Trial <boat> & \"co\"",
        LinesPlanSheet.Of(HullOnTrial, SampleHulls.Figures(HullOnTrial.Hull), new LinesPlanSettings("Trial", PaperSize.A3, LengthNotation.Millimeters)),
        CurvatureSheet.Of(HullOnTrial, "Trial", LengthNotation.Millimeters),
        [
            new FigureGroup("dimensions", "Principal dimensions",
            [
                new("length", "Length", 5.2, Quantity.Length),
                new("beam", "Beam", 0.74, Quantity.Length) { Note = "greatest breadth" },
                new("entry_angle", "Half-angle of entrance", null, Quantity.Angle) { Why = "nothing is immersed" },
            ]),
            new FigureGroup("afloat", "In the water", [new("displacement", "Displacement", 120.5, Quantity.Mass) { Note = "fresh water", IsEstimate = true }]),
        ],
        Curves(),
        LengthNotation.Millimeters,
        FairnessReport.Of(HullOnTrial),
        [new("templates-letter.pdf", "Full-size patterns to print."), new("molds/mold-01.dxf", "Mold 1 for a router.")]);

    private static ReportCurves Curves()
    {
        var hull = HullOnTrial.Hull;
        var curves = CurvesOfForm.Of(hull, HullOnTrial.Grid.Stations, UprightHydrostatics.Below(hull, hull.Draft, 1e-6), 1e-6);
        var book = FormCurvesBook.Of("Trial", hull, curves, LengthNotation.Millimeters);
        return new ReportCurves(book, FormCurvesPages.Curves(book, PaperSize.A4), FormCurvesPages.Sections(book, curves, PaperSize.A4));
    }

    private static readonly string Page = ReportPage.Of(Content);

    [Fact]
    public void The_page_fetches_nothing_and_runs_nothing()
    {
        foreach (var fetch in new[] { "<script", "<link", "<img", "<iframe", "@import", "url(", "src=" })
            Assert.DoesNotContain(fetch, Page, StringComparison.OrdinalIgnoreCase);
        Assert.All(Parsed().Descendants("a"), a => Assert.DoesNotContain(":", a.Attribute("href")!.Value, StringComparison.Ordinal));
    }

    [Fact]
    public void The_picture_leads_to_the_pdf_of_the_lines_plan_where_there_is_one()
    {
        Assert.DoesNotContain("lines-plan.pdf", Page, StringComparison.Ordinal);
        var page = Parsed(ReportPage.Of(Content with { Files = [new("lines-plan.pdf", "Lines plan to scale, to print. One page.")] }));
        var link = Assert.Single(page.Descendants(), e => e.Name.LocalName is "a" && e.Elements().Any(i => i.Name.LocalName is "svg"));
        Assert.Equal("lines-plan.pdf", link.Attribute("href")!.Value);
    }

    [Fact]
    public void Its_elements_are_closed_and_nested() => Assert.Equal("html", Parsed().Root!.Name.LocalName);

    [Fact]
    public void It_names_its_language_has_one_heading_one_and_a_label_for_every_section()
    {
        var page = Parsed();
        Assert.Equal("en", page.Root!.Attribute("lang")!.Value);
        Assert.Single(page.Descendants("h1"));
        var ids = page.Descendants().Attributes("id").Select(a => a.Value).ToList();
        Assert.Equal(ids.Count, ids.Distinct(StringComparer.Ordinal).Count());
        Assert.All(page.Descendants("section"), s => Assert.Contains(s.Attribute("aria-labelledby")!.Value, ids));
        Assert.All(page.Descendants("th"), h => Assert.NotNull(h.Attribute("scope")));
    }

    [Fact]
    public void Every_figure_file_and_caution_is_on_it_as_text()
    {
        var text = Parsed().Root!.Value;
        foreach (var wanted in Content.Figures.SelectMany(g => g.Figures).SelectMany(f => new[] { f.Name, FigureText.Show(f, Content.Notation), f.Note, f.Why })
            .Concat(Content.Files.SelectMany(f => new[] { f.Path, f.Purpose })).Concat(Cautions.For(Content.HasOutriggers)).Append(Content.Title))
            Assert.Contains(wanted, text, StringComparison.Ordinal);
        Assert.Contains("estimate: fresh water", text, StringComparison.Ordinal);
        Assert.Contains("Full-size patterns to print.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_line_judged_has_a_row_and_every_fault_a_sentence_with_its_dial()
    {
        var page = Parsed();
        var rows = page.Descendants("section").Single(s => s.Attribute("aria-labelledby")!.Value is "fairness").Descendants("details").Descendants("tbody").Elements("tr").Select(r => r.Elements().First().Value).ToList();
        Assert.Equal(Content.Fairness.Lines.Select(l => l.Name), rows);
        var text = page.Root!.Value;
        Assert.Contains(Content.Fairness.Verdict, text, StringComparison.Ordinal);
        foreach (var fault in Content.Fairness.Faults)
            Assert.Contains($"{fault.Sentence}; change hull.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_curves_of_form_stand_in_two_drawings_and_in_figures()
    {
        var section = Parsed().Descendants("section").Single(s => s.Attribute("aria-labelledby")!.Value is "curves");
        Assert.Equal(2, section.Descendants("figure").Count());
        var rows = section.Descendants("tbody").Elements("tr").Select(r => r.Elements().Select(c => c.Value)).ToList();
        Assert.Equal(Content.Curves.Book.Hydrostatics.Rows.Concat(Content.Curves.Book.Sections.Rows), rows);
        Assert.Contains(Cautions.Figures, section.Value, StringComparison.Ordinal);
    }

    // What a browser prints of it was looked at; these are the rules that it hangs on: CSS Overflow 3 and CSS Pseudo-Elements 4 name them.
    [Fact]
    public void On_paper_no_table_is_cut_and_what_is_folded_on_the_screen_is_printed()
    {
        var print = Page[Page.IndexOf("@media print", StringComparison.Ordinal)..Page.IndexOf("</style>", StringComparison.Ordinal)];
        Assert.Matches(@"\.scroll[^{]*\{[^}]*overflow: visible", print);
        Assert.Matches(@"details::details-content \{[^}]*content-visibility: visible", print);
        Assert.Matches(@"h2, h3, caption[^{]*\{[^}]*break-after: avoid", print);
    }

    [Fact]
    public void The_same_content_gives_the_same_page() => Assert.Equal(Page, ReportPage.Of(Content));

    // The page is written as XML too, but for the doctype and two void elements; an XML reader is then an outside check of its nesting.
    private static XDocument Parsed() => Parsed(Page);

    private static XDocument Parsed(string text)
    {
        var xml = text.Replace("<!DOCTYPE html>", "", StringComparison.Ordinal)
            .Replace("<meta charset=\"utf-8\">", "", StringComparison.Ordinal)
            .Replace("initial-scale=1\">", "initial-scale=1\"/>", StringComparison.Ordinal);
        using var reader = XmlReader.Create(new StringReader(xml), new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit });
        return XDocument.Load(reader);
    }
}
