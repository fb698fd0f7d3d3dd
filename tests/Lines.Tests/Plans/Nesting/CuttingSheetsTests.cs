using Lines.Construction.Molds;
using Lines.Construction.Nesting;
using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Nesting;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Nesting;

public class CuttingSheetsTests
{
    public static TheoryData<string, bool> Cases
    {
        get
        {
            var cases = new TheoryData<string, bool>();
            foreach (var name in ShapedTemplates.Names)
            {
                cases.Add(name, true);
                cases.Add(name, false);
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_part_carries_its_name_inside_and_the_list_says_which_are_halves(string name, bool halves)
    {
        foreach (var hull in ShapedTemplates.Of(name).Hulls)
        {
            var plan = CuttingPlan.Of((CutSettings.Usual with { Halves = halves }).Of(hull.Molds), hull.Design.Build, effort: 0);
            foreach (var (sheet, page) in plan.Sheets.Zip(CuttingSheets.Of(hull.Design.Title, plan, LengthNotation.Millimeters)))
            {
                var outlines = page.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "molds" && m.Path.Closed).Select(m => m.Path).ToList();
                Assert.Equal(sheet.Parts.Count, outlines.Count);

                // Holes as the part has them, in its outline and thin.
                var holes = page.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "fine" && m.Path.Vertices.Any(v => v.Bulge != 0)).ToList();
                Assert.Equal(sheet.Parts.Sum(p => p.Mold.Holes.Count), holes.Count);
                Assert.All(holes, h => Assert.Contains(outlines, o => o.Contains(h.Path.Bounds().Center)));
                var texts = page.Marks.OfType<TextMark>().ToList();
                Assert.Empty(LetteringFaults.OfPicture(sheet, page));
                foreach (var part in sheet.Parts)
                    Assert.Contains(texts, t => t.Text.StartsWith(part.Mold.Name + (part.Mold.IsHalf ? ", half: " : ": "), StringComparison.Ordinal));
            }

            var csv = CuttingList.Csv(hull.Design.Title, plan, LengthNotation.Millimeters);
            Assert.Equal(halves, csv.Contains("Halves, each turned over", StringComparison.Ordinal));
        }
    }
}
