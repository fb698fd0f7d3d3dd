using System.Collections.Concurrent;
using Lines.Construction.Nesting;
using Lines.Drawing.Dxf;
using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Nesting;
using Lines.Tests.Support;
using Lines.Tests.Support.Dxf;
using Xunit;

namespace Lines.Tests.Plans.Nesting;

/// <summary>Sheets as a router's controller reads them, and the cutting list beside them.</summary>
public class NestedSheetsReferenceChecks
{
    private static readonly ConcurrentDictionary<string, Lazy<CuttingPlan>> s_plans = new(StringComparer.Ordinal);

    [OutsideReaderTheory("ezdxf", "dxf-parser")]
    [InlineData("ezdxf", DxfVersion.R2000)]
    [InlineData("dxf-parser", DxfVersion.R12)]
    public void Two_readers_find_every_mold_once_on_the_sheets_where_the_plan_lays_it(string reader, DxfVersion version)
    {
        foreach (var name in ShapedTemplates.Names)
        {
            var shaped = ShapedTemplates.Of(name);
            var plan = PlanOf(name);
            var files = plan.Sheets.Select(s => DxfFile.Write(NestedSheets.ForRouter(shaped.Design.Title, plan, s, LengthNotation.Millimeters), new DxfSettings { Version = version })).ToList();
            foreach (var (sheet, reading) in plan.Sheets.Zip(OutsideDxf.Read(reader, files)))
            {
                Assert.Empty(reading.Errors);
                var cut = reading.Entities.Where(e => e.Layer is "cut").ToList();
                Assert.Equal(sheet.Parts.Count, cut.Count);
                foreach (var (part, entity) in sheet.Parts.Zip(cut))
                    entity.AssertIs(part.Outline.Mapped(p => new Point2(1000 * p.X, 1000 * p.Y)), default);
                Assert.Single(reading.Entities, e => e.Layer is "stock").AssertIs(new Box2(0, 0, 1000 * plan.Stock.Length, 1000 * plan.Stock.Width).Outline, default);
                Assert.Empty(Stray(sheet, reading));
            }
        }
    }

    [Fact]
    public void Every_sheet_has_a_test_square_in_its_waste_and_its_lettering_inside_its_parts()
    {
        var shaped = ShapedTemplates.Of("line-layer");
        var plan = PlanOf("line-layer");
        foreach (var sheet in plan.Sheets)
        {
            var marks = NestedSheets.ForRouter(shaped.Design.Title, plan, sheet, LengthNotation.Millimeters).Marks;
            var outlines = marks.OfType<PathMark>().Where(m => m.Layer.Name is "cut").Select(m => m.Path).ToList();
            var square = Assert.Single(marks.OfType<PathMark>(), m => m.Layer.Name is "mark" && m.Path is { Closed: true, Vertices.Count: 4 }).Path;
            Assert.Equal((100, 100), (square.Bounds().Width, square.Bounds().Height));
            Assert.All(outlines, o => Assert.False(o.Contains(square.Bounds().Center) || square.Vertices.Any(v => o.Contains(v.Point))));
            Assert.All(square.Segments(), s => Assert.All(outlines, o => Assert.True(o.DistanceTo(s.PointAt(0.5)) > 5)));
        }
    }

    [Fact]
    public void The_cutting_list_has_a_row_for_every_part_and_a_page_for_every_sheet()
    {
        var shaped = ShapedTemplates.Of("gauge-runner");
        var plan = PlanOf("gauge-runner");
        var rows = CuttingList.Csv(shaped.Design.Title, plan, LengthNotation.Millimeters).Split("\r\n").Where(r => r.Length > 0 && char.IsAsciiDigit(r[0])).ToList();
        Assert.Equal(shaped.Molds.Parts.Count, rows.Count);
        foreach (var mold in shaped.Molds.Parts)
        {
            var row = Assert.Single(rows, r => r.Split(',')[2] == mold.Name).Split(',');
            var (a, b) = (Invariant($"{1000 * mold.Outline.Bounds().Width:F1}"), Invariant($"{1000 * mold.Outline.Bounds().Height:F1}"));
            Assert.True((row[3], row[4]) == (a, b) || (row[3], row[4]) == (b, a));
        }

        var pages = CuttingSheets.Of(shaped.Design.Title, plan, LengthNotation.Inches);
        Assert.Equal(plan.Sheets.Count, pages.Count);
        foreach (var (sheet, page) in plan.Sheets.Zip(pages))
        {
            Assert.All(sheet.Parts, p => Assert.Contains(page.Marks.OfType<TextMark>(), t => t.Text == p.Mold.Name));
            Assert.Empty(Lettered.Overlaps(page));
            Assert.All(page.Marks.OfType<PathMark>(), m => Assert.True(new Box2(6.4, 6.4, page.Width - 6.4, page.Height - 6.4).Holds(m.Path.Bounds())));
        }
    }

    // One for all tests here.
    private static CuttingPlan PlanOf(string template) => s_plans.GetOrAdd(
        template, n => new(() => CuttingPlan.Of(ShapedTemplates.Of(n).Molds, ShapedTemplates.Of(n).Design.Build, effort: 5))).Value;

    // Marks, holes and lettering that lie in no part: none but those of the test square.
    private static IEnumerable<DxfReadEntity> Stray(CutSheet sheet, DxfReading reading)
    {
        var outlines = sheet.Parts.Select(p => p.Outline.Mapped(c => new Point2(1000 * c.X, 1000 * c.Y))).ToList();
        var squares = reading.Entities.Where(e => e is { Layer: "mark", Closed: true, Vertices.Length: 4 }).Select(e => Box2.Around(e.Vertices.Select(v => new Point2(v[0], v[1])))).ToList();
        return reading.Entities.Where(e => e.Layer is "mark" or "text" or "drill" or "holes").Where(e =>
        {
            var middle = new Point2(e.Vertices.Average(v => v[0]), e.Vertices.Average(v => v[1]));
            return !outlines.Exists(o => o.Contains(middle)) && !squares.Exists(s => s.Holds(middle));
        });
    }
}
