using System.Globalization;
using Lines.Construction.Molds;
using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Molds;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Molds;

public class SettingUpSheetTests
{
    public static TheoryData<string, LengthNotation> Cases
    {
        get
        {
            var cases = new TheoryData<string, LengthNotation>();
            foreach (var (_, notation) in LengthNotations.ByName)
            {
                cases.Add("double-ender", notation);
                cases.Add("transom boat", notation);
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Everything_stands_on_letter_paper_and_no_lettering_covers_other_lettering(string name, LengthNotation notation)
    {
        foreach (var page in Pages(name, notation))
        {
            // Letter paper is 8 1/2 by 11 inches; held sideways it is 279.4 mm wide.
            Assert.Equal(279.4, page.Width, 1e-9);
            Assert.Equal(215.9, page.Height, 1e-9);
            Assert.Empty(Lettered.Overlaps(page));
            var inside = new Box2(6.4, 6.4, page.Width - 6.4, page.Height - 6.4);
            foreach (var mark in page.Marks)
                Assert.True(inside.Holds(mark is TextMark t ? Lettered.Box(t) : ((PathMark)mark).Path.Bounds()), mark is TextMark m ? m.Text : mark.Layer.Name);
        }
    }

    [Theory]
    [InlineData("double-ender", 17)]
    [InlineData("transom boat", 13)]
    public void One_page_tables_every_mold_with_its_distance_from_the_one_end_and_its_heights_from_the_strongback(string name, int molds)
    {
        var page = Assert.Single(Pages(name, LengthNotation.Millimeters));
        var texts = page.Marks.OfType<TextMark>().ToList();
        var plan = MoldSheetsTests.Plan(name);
        Assert.Equal(molds, plan.Molds.Count(m => m.Kind == MoldKind.Station));
        foreach (var mold in plan.Molds.Where(m => m.Kind == MoldKind.Station))
        {
            // In the table the name stands left; what stands on its line belongs to it.
            var row = texts.Where(t => string.Equals(t.Text, mold.Name, StringComparison.Ordinal)).MinBy(t => t.At.X)!.At.Y;
            var line = texts.Where(t => Math.Abs(t.At.Y - row) < 0.01).OrderBy(t => t.At.X).Select(t => t.Text).ToList();
            string Figure(double meters) => (meters * 1000).ToString("F1", CultureInfo.InvariantCulture);
            Assert.Equal(
                [
                    mold.Name, mold.Face == MoldFace.Bow ? "bow" : "stern", mold.Face == MoldFace.Bow ? "aft of the line" : "forward of the line",
                    Figure(mold.X + 0.1), Figure(mold.Heights.Sheer), mold.Heights.Waterline is { } level ? Figure(level) : "-",
                    (mold.LapFloor is null ? "" : "level top ") + Figure(mold.Heights.Keel),
                    Figure(mold.Heights.HalfBreadth), line[^1],
                ],
                line);
        }
    }

    [Theory]
    [InlineData(LengthNotation.Inches)]
    [InlineData(LengthNotation.FeetInches)]
    [InlineData(LengthNotation.FeetInchesEighths)]
    public void A_builder_in_inches_finds_no_millimeters_but_those_of_the_test_square_and_of_the_router_files(LengthNotation notation)
    {
        foreach (var page in Pages("double-ender", notation).Concat(Pages("transom boat", notation)))
        {
            var metric = page.Marks.OfType<TextMark>().Select(t => t.Text).Where(t => t.Contains("mm", StringComparison.Ordinal));
            Assert.All(metric, t => Assert.True(t.Contains("100 mm (3 15/16 in)", StringComparison.Ordinal) || t.Contains("check units (mm)", StringComparison.Ordinal), t));
        }
    }

    [Fact]
    public void The_stock_in_the_side_view_stands_on_the_midship_side_of_the_station_face()
    {
        var page = Pages("double-ender", LengthNotation.Millimeters)[0];
        var stocks = page.Marks.OfType<PathMark>().Where(m => IsOn(m, "stock")).Select(m => m.Path.Bounds()).OrderBy(b => b.Left).ToList();
        var faces = page.Marks.OfType<PathMark>().Where(m => IsOn(m, "molds") && !m.Path.Closed && m.Path.Bounds().Width == 0)
            .Select(m => m.Path.Bounds().Left).Order().ToList();
        Assert.Equal(17, stocks.Count);
        Assert.Equal(17, faces.Count);
        Assert.Equal(stocks[0].Left, faces[0], 1e-9);
        Assert.Equal(stocks[^1].Right, faces[^1], 1e-9);
    }

    [Fact]
    public void A_station_left_out_is_named_with_its_reason()
    {
        var hull = MoldSheetsTests.Hull("transom boat");
        var plan = MoldSheetsTests.Plan("transom boat");
        Assert.NotEmpty(plan.LeftOut);
        var texts = SettingUpSheet.Of("Gauge Tender", hull, plan, LengthNotation.Millimeters)[0].Marks.OfType<TextMark>().ToList();
        Assert.All(plan.LeftOut, l => Assert.Contains(texts, t => t.Text.Contains(l.Reason(LengthNotation.Millimeters), StringComparison.Ordinal)));
    }

    private static IReadOnlyList<Sheet> Pages(string name, LengthNotation notation) =>
        SettingUpSheet.Of("Gauge Tender", MoldSheetsTests.Hull(name), MoldSheetsTests.Plan(name), notation);

    private static bool IsOn(Mark mark, string layer) => string.Equals(mark.Layer.Name, layer, StringComparison.Ordinal);
}
