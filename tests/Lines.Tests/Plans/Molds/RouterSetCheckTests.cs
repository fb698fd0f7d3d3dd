using Lines.Construction;
using Lines.Construction.Molds;
using Lines.Construction.Nesting;
using Lines.Drawing.Dxf;
using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Molds;
using Lines.Plans.Nesting;
using Xunit;

namespace Lines.Tests.Plans.Molds;

/// <summary>The router files of one folder against each other: faults seeded into a sound set are found.</summary>
public class RouterSetCheckTests
{
    private static readonly MoldPlan Plan = MoldSheetsTests.Plan("double-ender");

    [Theory]
    [InlineData(DxfUnit.Millimeter)]
    [InlineData(DxfUnit.Inch)]
    public void A_set_as_written_has_no_fault(DxfUnit unit) => Assert.Empty(RouterSetCheck.Faults(Written(unit)));

    [Fact]
    public void A_file_that_is_gone_is_missed_by_its_number_and_one_without_a_number_by_its_outline()
    {
        var files = Written();
        var gap = Assert.Single(RouterSetCheck.Faults([.. files.Where(f => f.File is not "out/mold-05.dxf")]));
        Assert.Equal(("out/mold-05.dxf", "is missing, for mold-06.dxf is there"), (gap.File, gap.Problem));
        Assert.Contains(RouterSetCheck.Faults([.. files.Where(f => f.File is not "out/sheet-01.dxf")]), d => d.File is "out/sheet-01.dxf");
        var stem = RouterSetCheck.Faults([.. files.Where(f => f.File is not "out/stem.dxf")]);
        Assert.Contains(stem, d => d.File is "out/all-molds.dxf" && d.Problem.EndsWith("is in no file of its own", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("out/mold-04.dxf", "all-molds.dxf", "sheet-")]
    [InlineData("out/all-molds.dxf", "mold-04.dxf", "another file")]
    public void An_outline_stretched_by_half_a_percent_is_told_once_where_it_is_with_both_sizes(string file, string one, string other)
    {
        var mold = Plan.Molds.First(m => m.Number == 4);
        Sheet sheet = file is "out/all-molds.dxf" ? MoldSheets.All("Gauge Tender", Plan, LengthNotation.Millimeters) : MoldSheets.ForRouter("Gauge Tender", mold, LengthNotation.Millimeters);
        var box = mold.Outline.Bounds();
        var wide = Mapped(sheet, p => p.Bounds() is var b && Math.Abs(b.Width - (1000 * box.Width)) + Math.Abs(b.Height - (1000 * box.Height)) < 0.01 ? p.Mapped(q => q with { X = 1.005 * q.X }) : p);
        var fault = Assert.Single(RouterSetCheck.Faults([.. Written().Select(f => f.File == file ? (f.File, DxfFile.Write(wide)) : f)]));
        Assert.Equal(file, fault.File);
        Assert.StartsWith(Invariant($"the outline is {1005 * box.Width:0.00} by {1000 * box.Height:0.00} mm, in {one} (line "), fault.Problem, StringComparison.Ordinal);
        Assert.Contains($" and {other}", fault.Problem, StringComparison.Ordinal);
        Assert.EndsWith(Invariant($" {1000 * box.Width:0.00} by {1000 * box.Height:0.00} mm: this one was changed"), fault.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_there_are_but_two_files_either_may_have_been_changed()
    {
        var mold = Plan.Molds.First(m => m.Number == 4);
        var wide = Mapped(MoldSheets.ForRouter("Gauge Tender", mold, LengthNotation.Millimeters), p => p.Mapped(q => q with { X = 1.005 * q.X }));
        var fault = Assert.Single(RouterSetCheck.Faults([.. Written().Where(f => !f.File.Contains("sheet-", StringComparison.Ordinal)).Select(f => f.File is "out/mold-04.dxf" ? (f.File, DxfFile.Write(wide)) : f)]));
        Assert.EndsWith(": one of the two was changed", fault.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void An_outline_that_crosses_itself_is_told()
    {
        var sheet = MoldSheets.ForRouter("Gauge Tender", Plan.Molds[3], LengthNotation.Millimeters);
        var cut = sheet.Marks.OfType<PathMark>().Single(m => m.Layer == MoldInks.Cut);
        var vertices = cut.Path.Vertices.ToList();
        (vertices[4], vertices[9]) = (vertices[9], vertices[4]);
        var faults = RouterFileCheck.Faults("a.dxf", DxfFile.Write(sheet with { Marks = [.. sheet.Marks.Where(m => m != cut), cut with { Path = new ArcPath(vertices, true) }] }));
        Assert.Contains(faults, f => f.Key == "cut" && f.Problem.StartsWith("an outline crosses itself at (", StringComparison.Ordinal));
    }

    private static Sheet Mapped(Sheet sheet, Func<ArcPath, ArcPath> to) => sheet with { Marks = [.. sheet.Marks.Select(m => m is PathMark p && p.Layer == MoldInks.Cut ? p with { Path = to(p.Path) } : m)] };

    private static List<(string File, string Text)> Written(DxfUnit unit = DxfUnit.Millimeter)
    {
        var settings = new DxfSettings { Unit = unit };
        var cutting = CuttingPlan.Of(Plan, new BuildDials { Planking = 0.006 }, effort: 0);
        return
        [
            .. Plan.Parts.Select(m => ($"out/{MoldSheets.FileName(m)}.dxf", DxfFile.Write(MoldSheets.ForRouter("Gauge Tender", m, LengthNotation.Millimeters), settings))),
            ("out/all-molds.dxf", DxfFile.Write(MoldSheets.All("Gauge Tender", Plan, LengthNotation.Millimeters), settings)),
            .. cutting.Sheets.Select(s => ($"out/{NestedSheets.FileName(s)}.dxf", DxfFile.Write(NestedSheets.ForRouter("Gauge Tender", cutting, s, LengthNotation.Millimeters), settings))),
        ];
    }
}
