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
            Assert.Equal(worst, mold.Bevels!.Flattest.FlatError!.Value, 0.00005);
        }
    }

    [Theory]
    [MemberData(nameof(ShapedTemplates.All), MemberType = typeof(ShapedTemplates))]
    public void Bevels_are_how_fast_the_skin_comes_nearer_square_to_the_face(string template)
    {
        // By search: the distance to the outside falls along the face's normal by n · m, which is the sine of the bevel; at the sheer, the bilge, every waterline and the keel.
        const double step = 0.0002;
        var shaped = ShapedTemplates.Of(template);
        foreach (var mold in shaped.Molds.Molds)
        {
            foreach (var bevel in mold.Bevels!.Places)
            {
                var m = mold.Kind switch
                {
                    MoldKind.Station => new Vector3(1, 0, 0),
                    MoldKind.Transom => shaped.Hull.Transom!.Value.Normal,
                    _ => new Vector3(0, 1, 0),
                };
                var sine = (From(bevel.At - (step * m)) - From(bevel.At + (step * m))) / (2 * step);
                Assert.True(Math.Abs(Math.Asin(sine) - (mold.Kind == MoldKind.Station ? bevel.Angle * Math.Sign(sine) : bevel.Angle)) < 0.1 * Degree, Invariant($"{mold.Name} {bevel.Name}: {sine} {bevel.Angle / Degree}"));
            }
        }

        double From(Point3 p) => NearestOnSkin.Distance(shaped.Hull.Side.PointAt, p, (-0.05, 1.05), (0, 1.3));
    }

    [Theory]
    [MemberData(nameof(ShapedTemplates.All), MemberType = typeof(ShapedTemplates))]
    public void Every_bevel_of_the_ends_stands_on_the_sheet_and_those_at_marks_on_the_profile_molds(string template)
    {
        var shaped = ShapedTemplates.Of(template);
        var page = FootSheet.Of(shaped.Design.Title, shaped.Hull, shaped.Molds, LengthNotation.Millimeters)[0];
        var texts = page.Marks.OfType<TextMark>().ToList();
        foreach (var end in shaped.Molds.Molds.Where(m => m.Kind != MoldKind.Station))
        {
            var rows = texts.Where(t => string.Equals(t.Text, end.Name, StringComparison.Ordinal)).OrderBy(t => Math.Round(t.At.X)).ThenByDescending(t => t.At.Y).ToList();
            Assert.Equal(end.Bevels!.Places.Count, rows.Count);
            foreach (var (row, bevel) in rows.Zip(end.Bevels.Places))
            {
                var told = (end.Kind == MoldKind.Transom ? bevel.Angle : (Math.PI / 2) - bevel.Angle) / Degree;
                var line = texts.Where(t => Math.Abs(t.At.Y - row.At.Y) < 0.01 && t.At.X > row.At.X - 1 && t.At.X < row.At.X + 87).OrderBy(t => t.At.X).Select(t => t.Text).ToList();
                Assert.Equal([end.Name, bevel.Name, told.ToString("F1", CultureInfo.InvariantCulture)], [line[0], line[1], line[4]]);
            }

            if (end.Kind == MoldKind.Transom)
                continue;
            var lettered = MoldSheets.ForPaper(shaped.Design.Title, end, LengthNotation.Millimeters).Marks.OfType<TextMark>().Count(t => t.Text.EndsWith('°'));
            Assert.InRange(lettered, end.Bevels.Places.Count - 4, end.Bevels.Places.Count - 2);
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

    [Theory]
    [MemberData(nameof(ShapedTemplates.All), MemberType = typeof(ShapedTemplates))]
    public void No_line_strikes_a_letter_of_the_setting_up_sheets_in_any_notation(string template)
    {
        foreach (var hull in ShapedTemplates.Of(template).Hulls)
        {
            foreach (var (_, notation) in LengthNotations.ByName)
            {
                foreach (var page in SettingUpSheet.Of(hull.Design.Title, hull.Hull, hull.Molds, notation).Concat(FootSheet.Of(hull.Design.Title, hull.Hull, hull.Molds, notation)))
                {
                    Assert.Empty(Lettered.Overlaps(page));
                    foreach (var text in page.Marks.OfType<TextMark>())
                        Assert.True(page.Marks.OfType<PathMark>().All(m => m.Filled || !m.Path.Inside(Lettered.Box(text)).Any()), $"{hull.Design.Title}, {notation}: {text.Text}");
                }
            }
        }
    }

    [Fact]
    public void A_molds_name_stands_clear_of_a_joints_line_whole_above_and_below_it()
    {
        var hull = ShapedTemplates.Of("sample-courier");
        var page = SettingUpSheet.Of(hull.Design.Title, hull.Hull, hull.Molds, LengthNotation.Millimeters)[0];
        List<double> joints = [.. page.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "joints").Select(m => m.Path.Vertices[0].Point.X)];
        Assert.Equal(hull.Molds.Joints.Count + hull.Design.Build.Bulkheads.Count, joints.Count);
        var top = page.Marks.OfType<TextMark>().Where(t => t.Text.StartsWith("joint ", StringComparison.Ordinal)).Min(t => t.At.Y);
        var names = page.Marks.OfType<TextMark>().Where(t => t.At.Y < top && top - t.At.Y < 8).Select(Lettered.Box).ToList();
        Assert.All(names, b => Assert.DoesNotContain(joints, x => x > b.Left - 0.5 && x < b.Right + 0.5));
    }

    private static void AssertSound(Sheet page)
    {
        Assert.Empty(Lettered.Overlaps(page));
        var inside = new Box2(6.4, 6.4, page.Width - 6.4, page.Height - 6.4);
        foreach (var mark in page.Marks)
            Assert.True(inside.Holds(mark is TextMark t ? Lettered.Box(t) : ((PathMark)mark).Path.Bounds()), mark is TextMark m ? m.Text : mark.Layer.Name);
    }
}
