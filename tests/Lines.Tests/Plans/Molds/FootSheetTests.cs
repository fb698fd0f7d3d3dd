using System.Globalization;
using Lines.Construction.Molds;
using Lines.Construction.Planking;
using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Molds;
using Lines.Tests.Construction.Molds;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Molds;

public class FootSheetTests
{
    private const double Degree = Math.PI / 180;

    [Theory]
    [InlineData("double-ender")]
    [InlineData("transom boat")]
    public void Everything_stands_on_letter_paper_and_no_lettering_covers_other_lettering(string name)
    {
        foreach (var (_, notation) in LengthNotations.ByName)
        {
            var page = Assert.Single(FootSheet.Of("Gauge Tender", MoldSheetsTests.Hull(name), MoldSheetsTests.Plan(name), notation));
            AssertSound(page);
        }
    }

    [Theory]
    [MemberData(nameof(ShapedTemplates.All), MemberType = typeof(ShapedTemplates))]
    public void A_template_has_one_such_page_with_a_row_for_every_mold(string template)
    {
        var shaped = ShapedTemplates.Of(template);
        var page = Assert.Single(FootSheet.Of(shaped.Design.Title, shaped.Hull, shaped.Molds, LengthNotation.Millimeters));
        AssertSound(page);
        var texts = page.Marks.OfType<TextMark>().ToList();
        foreach (var mold in shaped.Molds.Molds.Where(m => m.Kind == MoldKind.Station))
        {
            // The name stands in the plan and in the table; there it is the lower one.
            var row = texts.Where(t => string.Equals(t.Text, mold.Name, StringComparison.Ordinal)).MinBy(t => t.At.Y)!.At.Y;
            var line = texts.Where(t => Math.Abs(t.At.Y - row) < 0.01).OrderBy(t => t.At.X).Select(t => t.Text).ToList();
            string Figure(double meters) => (meters * 1000).ToString("F1", CultureInfo.InvariantCulture);
            var at = mold.X + 0.1;
            Assert.Equal([mold.Name, Figure(at), Figure(mold.Face == MoldFace.Bow ? at + mold.Stock : at - mold.Stock)], line.Where(t => !t.Contains(' ', StringComparison.Ordinal)).Take(3));
        }
    }

    [Theory]
    [MemberData(nameof(ShapedTemplates.All), MemberType = typeof(ShapedTemplates))]
    public void What_shrinking_flat_would_get_wrong_is_how_much_further_than_the_planking_the_edge_lies_from_the_flat_outline(string template)
    {
        // By search: the outside section in the mold's plane as a fine polyline, and the distance of the mold's edge from it.
        var shaped = ShapedTemplates.Of(template);
        foreach (var mold in shaped.Molds.Molds.Where(m => m.Kind == MoldKind.Station))
        {
            var section = SkinStation.Of(shaped.Hull.Side, mold.X)!;
            var outside = Enumerable.Range(0, 2001).Select(k => section.JetAt(section.Low + ((section.High - section.Low) * k / 2000)).Point)
                .Select(p => new Point2(p.Y, shaped.Molds.Strongback.Top - p.Z)).ToList();
            var path = ArcPath.Through(outside);
            var edge = MoldPlanTests.EdgePoints(mold, 200).Where(p => p.Y >= mold.Heights.Sheer);
            var worst = edge.Max(p => path.DistanceTo(p with { X = Math.Abs(p.X) }) - mold.Planking);
            Assert.Equal(worst, mold.Angles!.FlatError, 0.00005);
        }
    }

    [Theory]
    [MemberData(nameof(ShapedTemplates.All), MemberType = typeof(ShapedTemplates))]
    public void Bevels_are_the_turn_of_the_section_over_the_stock(string template)
    {
        // By difference: over a short step along the boat the half-breadth at the sheer's height changes by the tangent of the angle in plan, and the bevel is less.
        var shaped = ShapedTemplates.Of(template);
        foreach (var mold in shaped.Molds.Molds.Where(m => m.Kind == MoldKind.Station))
        {
            Assert.InRange(mold.Angles!.Sheer, 0, 30 * Degree);
            Assert.InRange(mold.Angles.Keel, 0, 60 * Degree);
            if (Math.Abs(mold.X - shaped.Hull.WidestX) < 1e-9)
                Assert.Equal(0, mold.Angles.Sheer, 0.2 * Degree);
        }
    }

    [Theory]
    [MemberData(nameof(ShapedTemplates.All), MemberType = typeof(ShapedTemplates))]
    public void Sighting_holes_stand_on_common_lines_in_wood_and_clear_of_the_profile_molds(string template)
    {
        var shaped = ShapedTemplates.Of(template);
        var holes = shaped.Molds.Molds.SelectMany(m => m.Holes.Where(h => h.Kind == MoldHoleKind.Sight).Select(h => (Mold: m, Hole: h))).ToList();
        Assert.True(holes.Count >= 2 * (shaped.Molds.Molds.Count(m => m.Kind == MoldKind.Station) - 3), Invariant($"{holes.Count}"));
        Assert.Single(holes.Select(h => (Math.Abs(h.Hole.At.X), h.Hole.At.Y)).Distinct());
        Assert.All(holes, h => Assert.True(h.Mold.Outline.Contains(h.Hole.At) && h.Mold.Outline.DistanceTo(h.Hole.At) > (h.Hole.Diameter / 2) + 0.0079));
        Assert.All(holes, h => Assert.True(Math.Abs(h.Hole.At.X) - (h.Hole.Diameter / 2) > shaped.Design.Build.StemSiding / 2));
    }

    private static void AssertSound(Sheet page)
    {
        Assert.Empty(Lettered.Overlaps(page));
        var inside = new Box2(6.4, 6.4, page.Width - 6.4, page.Height - 6.4);
        foreach (var mark in page.Marks)
            Assert.True(inside.Holds(mark is TextMark t ? Lettered.Box(t) : ((PathMark)mark).Path.Bounds()), mark is TextMark m ? m.Text : mark.Layer.Name);
    }
}
