using System.Globalization;
using Lines.Construction;
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
                    Figure(mold.X + 0.1), "-", Figure(mold.Heights.Sheer), mold.Heights.Waterline is { } level ? Figure(level) : "-",
                    mold.LapFloor is null ? Figure(mold.Heights.Keel) : "-", mold.LapFloor is null ? "-" : Figure(mold.Heights.Keel),
                    Figure(mold.Heights.HalfBreadth), line[^2], line[^1],
                ],
                line);
        }
    }

    [Theory]
    [InlineData(LengthNotation.Inches)]
    [InlineData(LengthNotation.FeetInches)]
    [InlineData(LengthNotation.FeetInchesEighths)]
    public void A_builder_in_inches_finds_no_millimeters_but_those_of_the_test_square_of_drills_and_of_the_router_files(LengthNotation notation)
    {
        foreach (var page in Pages("double-ender", notation).Concat(Pages("transom boat", notation)))
        {
            var metric = page.Marks.OfType<TextMark>().Select(t => t.Text).Where(t => t.Contains("mm", StringComparison.Ordinal));
            Assert.All(metric, t => Assert.True(t.Contains("100 mm (3 15/16 in)", StringComparison.Ordinal) || t.Contains("check units (mm)", StringComparison.Ordinal)
                || t.Contains("0.197 in (5 mm) for screws", StringComparison.Ordinal), t));
        }
    }

    [Theory]
    [InlineData("gauge-runner")]
    [InlineData("line-layer")]
    [InlineData("silt-sampler")]
    public void The_table_of_a_template_stands_on_one_page_its_columns_well_apart(string template)
    {
        var shaped = ShapedTemplates.Of(template);
        foreach (var (_, notation) in LengthNotations.ByName)
        {
            var page = Assert.Single(SettingUpSheet.Of(shaped.Design.Title, shaped.Hull, shaped.Molds, notation));
            Assert.Empty(Lettered.Overlaps(page));
            // A cell's line of lettering is upright and stands in a mold's row; neighbors keep two letters' width, 3 mm, apart, so that a dash is no minus.
            foreach (var row in page.Marks.OfType<TextMark>().Where(t => t.Angle == 0).GroupBy(t => Math.Round(t.At.Y, 6)).Where(g => g.Count() == 12))
            {
                var boxes = row.Where(t => t.Text.Length > 0).Select(Lettered.Box).OrderBy(b => b.Left).ToList();
                Assert.All(boxes.Zip(boxes.Skip(1)), p => Assert.True(p.Second.Left - p.First.Right > 2.4, Invariant($"{p.Second.Left - p.First.Right} mm apart")));
            }
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

    [Fact]
    public void A_profile_mold_without_the_edge_of_an_inner_stem_is_named_with_the_reason()
    {
        var plan = MoldSheetsTests.Plan("double-ender");
        plan = plan with { Molds = [plan.Molds[0] with { WhyNoApex = $"the tide was out" }, .. plan.Molds.Skip(1)] };
        var texts = SettingUpSheet.Of("Gauge Tender", MoldSheetsTests.Hull("double-ender"), plan, LengthNotation.Millimeters)[0].Marks.OfType<TextMark>().Select(t => t.Text);
        Assert.Contains("STEM: no APEX is drawn (where the insides of the planking meet on the centerline), for it could not be found: the tide was out; take the inner stem's edge from the molds with a batten.", texts);
    }

    [Fact]
    public void Joints_are_drawn_and_named_and_the_sheet_tells_their_bulkheads()
    {
        var hull = MoldSheetsTests.Hull("double-ender");
        var plan = MoldPlan.Of(hull, new BuildDials { Planking = 0.006, Joints = [1.3, 3.9] });
        var molds = plan.Molds.Where(m => m.Kind == MoldKind.Station).ToList();
        var page = SettingUpSheet.Of("Gauge Tender", hull, plan, LengthNotation.Millimeters)[0];
        var texts = page.Marks.OfType<TextMark>().Select(t => t.Text).ToList();
        string Shown(double meters) => new Length(meters).ToText(LengthNotation.Millimeters);
        string FromForeEnd(int joint) => Shown(plan.Strongback.DistanceTo(plan.Joints[joint]));
        Assert.Contains($"Joints, from the strongback's fore end: 1 at {FromForeEnd(0)}; 2 at {FromForeEnd(1)}. Bulkheads B1 FORE to B2 AFT go in when the inside is sheathed, over a {new Length(0.004).ToSize(LengthNotation.Millimeters)} spacer.", texts);
        Assert.Empty(Lettered.Overlaps(page));
        for (var k = 0; k < 2; k++)
            Assert.Empty(Lettered.Under(page, Invariant($"joint {k + 1}, {FromForeEnd(k)}")));

        // To the scale of the stations.
        var lines = page.Marks.OfType<PathMark>().Where(m => IsOn(m, "joints")).Select(m => m.Path.Bounds().Left).ToList();
        var faces = page.Marks.OfType<PathMark>().Where(m => IsOn(m, "molds") && !m.Path.Closed && m.Path.Bounds().Width == 0).Select(m => m.Path.Bounds().Left).Order().ToList();
        Assert.Equal((plan.Joints[0] - molds[0].X) / (molds[^1].X - molds[0].X), (lines[0] - faces[0]) / (faces[^1] - faces[0]), 1e-9);
        Assert.Equal(2, lines.Count);
    }

    [Fact]
    public void A_hull_that_is_not_fair_is_marked_so_on_every_page_and_in_the_csv()
    {
        const string mark = "NOT FAIR: see report";
        Sheet[] Sheets(bool isFair) => [.. SettingUpSheet.Of("Gauge Tender", MoldSheetsTests.Hull("double-ender"), MoldSheetsTests.Plan("double-ender"), LengthNotation.Millimeters, isFair)];
        Assert.All(Sheets(false), p => Assert.Single(p.Marks.OfType<TextMark>(), t => t.Text.EndsWith(mark, StringComparison.Ordinal)));
        Assert.All(Sheets(false), p => Assert.Empty(Lettered.Overlaps(p)));
        Assert.All(Sheets(true), p => Assert.DoesNotContain(p.Marks.OfType<TextMark>(), t => t.Text.Contains("NOT FAIR", StringComparison.Ordinal)));
        Assert.Contains("\r\n" + mark + ",", SettingUpCsv.Write("Gauge Tender", MoldSheetsTests.Plan("double-ender"), LengthNotation.Millimeters, isFair: false), StringComparison.Ordinal);
        Assert.DoesNotContain(mark, SettingUpCsv.Write("Gauge Tender", MoldSheetsTests.Plan("double-ender"), LengthNotation.Millimeters), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_csv_holds_the_rows_of_the_sheet(string name, LengthNotation notation)
    {
        var plan = MoldSheetsTests.Plan(name);
        var text = SettingUpCsv.Write("Gauge Tender", plan, notation);
        Assert.StartsWith("\uFEFFSetting up the molds: Gauge Tender,", text, StringComparison.Ordinal);
        var records = text.TrimStart('\uFEFF').Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Select(Fields).ToList();
        Assert.All(records, r => Assert.Equal(12, r.Count));
        var (table, ends) = (3 + plan.Molds.Count, plan.Molds.Where(m => m.Kind != MoldKind.Station).Sum(m => m.Bevels!.Places.Count));
        Assert.Equal(table + plan.LeftOut.Count + 3 + plan.Molds.Count(m => m.Kind == MoldKind.Station) + ends, records.Count);
        Assert.Equal(plan.LeftOut.Select(l => l.Sentence(notation)), records.Skip(table).Take(plan.LeftOut.Count).Select(r => r[0]), StringComparer.Ordinal);
        foreach (var (record, (end, bevel)) in records.TakeLast(ends).Zip(plan.Molds.Where(m => m.Kind != MoldKind.Station).SelectMany(m => m.Bevels!.Places.Select(b => (m, b)))))
        {
            var told = (end.Kind == MoldKind.Transom ? bevel.Angle : (Math.PI / 2) - bevel.Angle) * 180 / Math.PI;
            Assert.Equal((end.Name, bevel.Name, told.ToString("F1", CultureInfo.InvariantCulture)), (record[0], record[1], record[4]));
        }

        var words = Pages(name, notation).SelectMany(p => p.Marks).OfType<TextMark>().Select(t => t.Text).ToHashSet(StringComparer.Ordinal);
        foreach (var (record, mold) in records.Skip(3).Zip(plan.Molds))
        {
            Assert.Equal(mold.Name, record[0]);
            foreach (var cell in record.Where(c => c.Length > 0))
            {
                // A whole number before a lone fraction and hyphens that do not break keep a spreadsheet from making dates of figures.
                var printed = cell.Replace('\u2011', '-');
                Assert.True(words.Contains(printed) || words.Contains(printed.StartsWith("0 ", StringComparison.Ordinal) ? printed[2..] : printed), cell);
                Assert.DoesNotMatch("^[0-9]+[-/][0-9]", cell);
            }

            if (notation != LengthNotation.Millimeters)
                continue;
            // Words have columns of their own: the others are numbers or empty.
            foreach (var k in (int[])[3, 4, 5, 6, 7, 9, 11])
                Assert.True(record[k].Length == 0 || double.TryParse(record[k], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out _), record[k]);
            Assert.Equal(1000 * mold.Foot.Fore, double.Parse(record[3], CultureInfo.InvariantCulture), 0.051);
            Assert.Equal(mold.Kind == MoldKind.Station, record[4].Length == 0);
            Assert.Equal(1000 * mold.Heights.Sheer, double.Parse(record[5], CultureInfo.InvariantCulture), 0.051);
            // A mold that ends level has no keel to set it up by.
            Assert.Equal((mold.LapFloor is null, mold.LapFloor is not null), (record[7].Length > 0, record[8].Length > 0));
        }
    }

    // RFC 4180, section 2: fields in quotes double the quotes inside.
    private static List<string> Fields(string record)
    {
        List<string> fields = [""];
        var isQuoted = false;
        foreach (var c in record)
        {
            if (c == '"')
            {
                isQuoted = !isQuoted;
                if (isQuoted && fields[^1].Length > 0)
                    fields[^1] += c;
            }
            else if (c == ',' && !isQuoted)
            {
                fields.Add("");
            }
            else
            {
                fields[^1] += c;
            }
        }

        return fields;
    }

    private static IReadOnlyList<Sheet> Pages(string name, LengthNotation notation) =>
        SettingUpSheet.Of("Gauge Tender", MoldSheetsTests.Hull(name), MoldSheetsTests.Plan(name), notation);

    private static bool IsOn(Mark mark, string layer) => string.Equals(mark.Layer.Name, layer, StringComparison.Ordinal);
}
