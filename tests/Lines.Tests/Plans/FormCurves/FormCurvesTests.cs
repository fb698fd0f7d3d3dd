using System.Globalization;
using Lines.Drawing.Model;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Figures;
using Lines.Plans.FormCurves;
using Lines.Plans.Paper;
using Lines.Tests.Drawing;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.FormCurves;

public class FormCurvesTests
{
    private static readonly Dictionary<string, CurvesOfForm> s_made = new(StringComparer.Ordinal);

    public static TheoryData<string, LengthNotation> Cases
    {
        get
        {
            var cases = new TheoryData<string, LengthNotation>();
            foreach (var name in ShapedTemplates.Names)
            {
                cases.Add(name, LengthNotation.Millimeters);
                cases.Add(name, LengthNotation.FeetInchesEighths);
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_value_scaled_off_the_chart_is_the_one_in_the_table(string template, LengthNotation notation)
    {
        // What a reader does: the distance of a curve from the edge of its panel in squares of 10 mm, times what its end says a square is.
        var book = Book(template, notation);
        var sheet = FormCurvesPages.Curves(book, PaperSize.Letter);
        var zero = sheet.Marks.OfType<TextMark>().First(t => t.Text is "0").At.X;
        Check("curve-displacement-fresh", "displacement_fresh", "displacement, fresh water");
        Check("curve-displacement-sea", "displacement_sea", "displacement, sea water");
        Check("curve-waterplane-area", "waterplane_area", "waterplane, immersion");
        Check("curve-wetted-surface", "wetted_surface", "wetted surface");
        var both = ScaleAt("waterplane, immersion");
        Assert.Equal(Value("immersion_fresh", 4) / Value("waterplane_area", 4), Worth(both, 1) / Worth(both, 0), 0.002 * Worth(both, 1) / Worth(both, 0));

        void Check(string layer, string key, string name)
        {
            var worth = Worth(ScaleAt(name), 0);
            var line = sheet.Marks.OfType<PathMark>().Where(m => string.Equals(m.Layer.Name, layer, StringComparison.Ordinal)).MaxBy(m => m.Path.Vertices.Count)!.Path;
            for (var k = 0; k < book.Drafts.Count; k++)
            {
                var x = zero + (Value(key, k) / worth * 10);
                Assert.Contains(line.Vertices, p => Math.Abs(p.Point.X - x) < 1e-6);
            }
        }

        double Value(string key, int draft)
        {
            var figure = book.Drafts[draft].Figures.First(f => string.Equals(f.Key, key, StringComparison.Ordinal));
            var size = (figure.Quantity, notation == LengthNotation.Millimeters) switch
            {
                (Quantity.Mass, false) => 0.45359237,
                (Quantity.Area, false) => 0.3048 * 0.3048,
                (Quantity.MassPerLength, true) => 100,
                (Quantity.MassPerLength, false) => 0.45359237 / 0.0254,
                _ => 1.0,
            };
            return figure.Value!.Value / size;
        }

        // The scale stands in the line right of a curve's name.
        string ScaleAt(string name)
        {
            var at = sheet.Marks.OfType<TextMark>().First(t => string.Equals(t.Text, name, StringComparison.Ordinal)).At;
            return sheet.Marks.OfType<TextMark>().Where(t => t.Text.StartsWith("1 square", StringComparison.Ordinal) && t.At.X > at.X).MinBy(t => t.At.X)!.Text;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Between_drafts_a_curve_keeps_to_the_hull_within_the_breadth_of_a_line(string template, LengthNotation notation)
    {
        // Displacement and waterplane halfway between drafts, computed anew: within 0.5 mm on paper, the width of the heaviest line.
        var book = Book(template, notation);
        var hull = ShapedTemplates.Of(template).Hull;
        var sheet = FormCurvesPages.Curves(book, PaperSize.Letter);
        foreach (var (layer, key) in new[] { ("curve-displacement-fresh", "displacement_fresh"), ("curve-waterplane-area", "waterplane_area") })
        {
            var line = sheet.Marks.OfType<PathMark>().Where(m => string.Equals(m.Layer.Name, layer, StringComparison.Ordinal)).MaxBy(m => m.Path.Vertices.Count)!.Path.Vertices;
            List<double> values = [.. book.Drafts.Select(d => d.Figures.First(f => string.Equals(f.Key, key, StringComparison.Ordinal)).Value!.Value)], drafts = [.. book.Drafts.Select(d => d.Figures[0].Value!.Value)];
            double across = (line[^1].Point.X - line[0].Point.X) / (values[^1] - values[0]), up = (line[^1].Point.Y - line[0].Point.Y) / (drafts[^1] - drafts[0]);
            for (var k = 1; k < drafts.Count; k++)
            {
                var water = UprightHydrostatics.Below(hull, (drafts[k - 1] + drafts[k]) / 2, 1e-6);
                var value = key.StartsWith('d') ? water.Volume * Water.Fresh.Density : water.Waterplane!.Area;
                var due = line[0].Point + new Vector2((value - values[0]) * across, (water.Height - drafts[0]) * up);
                Assert.InRange(line.Min(p => p.Point.DistanceTo(due)), 0, 1.5);
                Assert.InRange(FromPolyline(due, [.. line.Select(p => p.Point)]), 0, 0.5);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Everything_lies_on_the_page_and_no_label_on_another(string template, LengthNotation notation)
    {
        var curves = Curves(template);
        foreach (var paper in new[] { PaperSize.Letter, PaperSize.A4 })
        {
            var pages = FormCurvesPages.Of(Book(template, notation), curves, paper);
            Assert.Equal(FormCurvesPages.Count, pages.Count);
            foreach (var page in pages.Append(FormCurvesPages.Sections(Book(template, notation), curves, paper)))
            {
                Assert.All(SheetPaths.Of(page).SelectMany(p => p.Path.Vertices), v => Assert.True(v.Point.X >= 5 && v.Point.X <= page.Width - 5 && v.Point.Y >= 0 && v.Point.Y <= page.Height - 5, $"{v.Point} on {page.Title}"));
                var boxes = page.Marks.OfType<TextMark>().Select(t => (t.Text, Box: Box2.Around(SheetPaths.Of(page with { Marks = [t] }).SelectMany(p => p.Path.Vertices).Select(v => v.Point)))).Where(b => !b.Box.IsNothing).ToList();
                for (var i = 0; i < boxes.Count; i++)
                {
                    for (var j = i + 1; j < boxes.Count; j++)
                        Assert.False(boxes[i].Box.Overlaps(boxes[j].Box), $"\"{boxes[i].Text}\" on \"{boxes[j].Text}\", {page.Title}, {paper.Name}");
                }
            }
        }
    }

    [Fact]
    public void Curves_of_a_panel_are_told_apart_without_color()
    {
        var sheet = FormCurvesPages.Curves(Book("gauge-runner", LengthNotation.Millimeters), PaperSize.Letter);
        var inks = sheet.Marks.Select(m => m.Layer).Where(l => l.Name.StartsWith("curve-", StringComparison.Ordinal)).DistinctBy(l => l.Name).ToList();
        Assert.Equal(13, inks.Count);
        Assert.All(inks, l => Assert.Equal(0, l.Ink.Tone));
        foreach (var panel in new[] { inks[..4], inks[4..7], inks[7..9], inks[9..] })
            Assert.Equal(panel.Count, panel.Select(l => (l.Ink.Width, string.Join(' ', l.Ink.Dash ?? []))).Distinct().Count());
    }

    [Fact]
    public void The_comma_separated_file_has_the_keys_and_digits_of_the_numbers()
    {
        var book = Book("silt-sampler", LengthNotation.Inches);
        var rows = book.Csv().Split("\r\n");
        Assert.Equal("", rows[^1]);
        Assert.Equal(12, rows.Length);
        Assert.Equal(book.Drafts[0].Figures.Select(FigureJson.KeyOf), rows[0].Split(','));
        Assert.Contains("station_1_half_m2", rows[0], StringComparison.Ordinal);
        for (var k = 0; k < 10; k++)
            Assert.All(rows[k + 1].Split(',').Zip(book.Drafts[k].Figures), c => Assert.Equal(c.Second.Value!.Value, double.Parse(c.First, CultureInfo.InvariantCulture), 1e-8 * Math.Abs(c.Second.Value!.Value)));
    }

    [Fact]
    public void The_design_draft_shows_the_figures_of_the_report()
    {
        // The same record: no figure is computed or worded a second time.
        var hull = ShapedTemplates.Of("gauge-runner").Hull;
        var book = Book("gauge-runner", LengthNotation.Millimeters);
        var known = HullFigures.Of(hull, Curves("gauge-runner").Drafts[book.Design].Afloat).SelectMany(g => g.Figures).ToDictionary(f => f.Key, StringComparer.Ordinal);
        var shared = book.Drafts[book.Design].Figures.Where(f => known.ContainsKey(f.Key)).ToList();
        Assert.Equal(14, shared.Count);
        Assert.All(shared.Where(f => f.Key is not "draft"), f => Assert.Equal(known[f.Key], f));
        Assert.Contains("design", book.Hydrostatics.Columns[book.Design + 1].Place, StringComparison.Ordinal);
        Assert.Contains(known["center_of_buoyancy_aft"].Value!.Value, book.Drafts[book.Design].Figures.Where(f => f.Key.EndsWith("station_0", StringComparison.Ordinal)).Select(f => f.Value!.Value));
    }

    private static FormCurvesBook Book(string template, LengthNotation notation) => FormCurvesBook.Of("Trial", ShapedTemplates.Of(template).Hull, Curves(template), notation);

    private static CurvesOfForm Curves(string template)
    {
        if (!s_made.TryGetValue(template, out var curves))
        {
            var shaped = ShapedTemplates.Of(template);
            s_made.Add(template, curves = CurvesOfForm.Of(shaped.Hull, shaped.Lines.Grid.Stations, UprightHydrostatics.Below(shaped.Hull, shaped.Hull.Draft, 1e-8), 1e-8));
        }

        return curves;
    }

    private static double FromPolyline(Point2 p, IReadOnlyList<Point2> line) => Enumerable.Range(1, line.Count - 1).Min(k =>
    {
        Vector2 side = line[k] - line[k - 1], to = p - line[k - 1];
        return (to - (Math.Clamp(to.Dot(side) / side.Dot(side), 0, 1) * side)).Length;
    });

    // The first or second number after "1 square =".
    private static double Worth(string scale, int which) =>
        double.Parse(scale["1 square = ".Length..].Split(", ")[which].Split(' ')[0], CultureInfo.InvariantCulture);
}
