using Lines.Construction.Molds;
using Lines.Construction.Nesting;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;
using NetTopologySuite.Geometries;
using Xunit;

namespace Lines.Tests.Construction.Nesting;

/// <summary>The templates' molds on sheets: measured by NetTopologySuite, and held against the best shelf packing of their bounding boxes.</summary>
public class CuttingPlanReferenceChecks
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Every_mold_lies_once_on_its_own_stock_clear_of_edges_and_neighbors_and_shelves_of_boxes_take_a_ninth_more(bool grain)
    {
        foreach (var name in ShapedTemplates.Names)
        {
            var shaped = ShapedTemplates.Of(name);
            var build = shaped.Design.Build with { Grain = grain };
            var plan = CuttingPlan.Of(shaped.Molds, build);
            Assert.Empty(plan.TooLarge);
            Assert.Equal(shaped.Molds.Parts.Select(m => m.Name).Order(StringComparer.Ordinal), plan.Sheets.SelectMany(s => s.Parts).Select(p => p.Mold.Name).Order(StringComparer.Ordinal));
            Assert.Equal(Enumerable.Range(1, plan.Sheets.Count), plan.Sheets.Select(s => s.Number));
            foreach (var sheet in plan.Sheets)
            {
                Assert.All(sheet.Parts, p => Assert.Equal(sheet.Thickness, p.Mold.Stock));
                AssertApart(sheet, plan);
            }

            // Whole sheets and the used fraction of the last, thickness by thickness: at least a tenth under the shelves.
            var taken = plan.Sheets.GroupBy(s => s.Thickness).Sum(g => g.Count() - 1 + (g.Last().UsedLength / build.SheetLength));
            var shelves = shaped.Molds.Parts.GroupBy(m => (m.Stock, m.Kind == MoldKind.Bulkhead)).Sum(g => ShelfPacking.Best([.. g.Select(m => m.Outline.Flattened(5e-5))], plan.Stock, randomOrders: 200));
            Assert.True(taken <= 0.9 * shelves, Invariant($"{name}, grain {grain}: {taken:F3} sheets, shelves {shelves:F3}"));
            Assert.InRange(plan.Utilization, 0.5, 0.9);
        }
    }

    [Fact]
    public void Twice_the_same_molds_lie_the_same_way()
    {
        var shaped = ShapedTemplates.Of("gauge-runner");
        var (a, b) = (CuttingPlan.Of(shaped.Molds, shaped.Design.Build), CuttingPlan.Of(shaped.Molds, shaped.Design.Build));
        Assert.Equal(a.Sheets.SelectMany(s => s.Parts).Select(p => p.Place), b.Sheets.SelectMany(s => s.Parts).Select(p => p.Place));
    }

    [Fact]
    public void Molds_larger_than_the_sheets_are_named_and_the_others_laid()
    {
        var shaped = ShapedTemplates.Of("gauge-runner");
        var build = shaped.Design.Build with { SheetLength = 1.2, SheetWidth = 0.6 };
        var plan = CuttingPlan.Of(shaped.Molds, build, effort: 0);
        Assert.NotEmpty(plan.TooLarge);
        Assert.All(plan.TooLarge, m => Assert.True(Math.Min(m.Outline.Bounds().Width, m.Outline.Bounds().Height) > 0.6 - (2 * build.SheetMargin)));
        Assert.Equal(shaped.Molds.Parts.Count, plan.TooLarge.Count + plan.Sheets.Sum(s => s.Parts.Count));
    }

    // Arcs drawn with chords within a micrometer, which may lie that much inside them.
    private static void AssertApart(CutSheet sheet, CuttingPlan plan)
    {
        const double chord = 1e-6;
        var lying = sheet.Parts.Select(p => new Polygon(new LinearRing([.. p.Outline.Flattened(chord).Select(c => new Coordinate(c.X, c.Y))]))).ToList();
        for (var i = 0; i < lying.Count; i++)
        {
            var box = lying[i].EnvelopeInternal;
            Assert.True(lying[i].IsValid);
            Assert.True(Math.Min(box.MinX, box.MinY) >= plan.Stock.Margin - chord && box.MaxX <= plan.Stock.Length - plan.Stock.Margin + chord && box.MaxY <= plan.Stock.Width - plan.Stock.Margin + chord);
            Assert.True(box.MaxX <= sheet.UsedLength - plan.Stock.Margin + 1e-4);
            for (var k = 0; k < i; k++)
                Assert.True(lying[i].Distance(lying[k]) >= plan.Stock.Spacing - (2 * chord), Invariant($"{sheet.Parts[i].Mold.Name} and {sheet.Parts[k].Mold.Name}"));
        }
    }
}
