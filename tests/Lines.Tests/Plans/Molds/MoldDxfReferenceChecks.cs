using System.Text.Json;
using Lines.Construction.Molds;
using Lines.Drawing.Dxf;
using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Molds;
using Lines.Tests.Support;
using Lines.Tests.Support.Dxf;
using Xunit;

namespace Lines.Tests.Plans.Molds;

/// <summary>Mold files as others read them: ezdxf turns the bulges into points with its own arithmetic, and each must lie on the mold.</summary>
public class MoldDxfReferenceChecks
{
    private static readonly JsonSerializerOptions s_json = new() { PropertyNameCaseInsensitive = true };

    // ezdxf makes every arc of cubics that stray up to 2.73e-4 of its radius over a quarter turn (0.0011 mm at the 4 mm notch),
    // and its chords are asked for at 0.0005 mm.
    private const double CubicArcs = 0.002;

    private sealed record Reading(string Version, int Units, string[] Errors, string[] Layers, ReadPath[] Paths);

    private sealed record ReadPath(bool Closed, double[][] Points);

    [OutsideReaderTheory("ezdxf")]
    [InlineData("double-ender")]
    [InlineData("transom boat")]
    public void Ezdxf_reads_one_closed_outline_that_lies_on_the_mold_within_two_thousandths_of_a_millimeter(string name)
    {
        var molds = MoldSheetsTests.Plan(name).Molds;
        var some = new[] { molds[0], molds[1], molds[molds.Count / 2], molds[^1] }.Select(m => (Mold: m, Sheet: MoldSheets.ForRouter("Gauge Tender", m, LengthNotation.Millimeters))).ToList();
        foreach (var ((mold, sheet), reading) in some.Zip(Read([.. some.Select(s => s.Sheet)])))
        {
            Assert.Empty(reading.Errors);
            Assert.Equal("AC1015", reading.Version);
            // $INSUNITS 4 is millimeters.
            Assert.Equal(4, reading.Units);
            Assert.True(reading.Layers.ToHashSet(StringComparer.Ordinal).IsSubsetOf(["cut", "drill", "holes", "inner-stem", "mark", "text"]));
            var path = Assert.Single(reading.Paths);
            Assert.True(path.Closed);
            var points = path.Points.Select(p => new Point2(p[0], p[1])).ToList();
            var moved = MovedOf(sheet, mold);
            foreach (var p in points)
                Assert.InRange(1000 * mold.Outline.DistanceTo(new Point2((p.X - moved.X) / 1000, (p.Y - moved.Y) / 1000)), 0, CubicArcs);
            // As long as the mold's outline, so nothing is left out or run twice.
            Assert.Equal(1000 * mold.Outline.Length(), points.Zip(points.Skip(1), (a, b) => a.DistanceTo(b)).Sum(), 0.1);
        }
    }

    [OutsideReaderFact("ezdxf")]
    public void Ezdxf_reads_every_mold_of_the_sheet_with_all()
    {
        var plan = MoldSheetsTests.Plan("double-ender");
        var reading = Assert.Single(Read(MoldSheets.All("Gauge Tender", plan, LengthNotation.Millimeters)));
        Assert.Empty(reading.Errors);
        Assert.Equal(plan.Molds.Count, reading.Paths.Length);
        Assert.All(reading.Paths, p => Assert.True(p.Closed));
    }

    public static TheoryData<string, string> Written
    {
        get
        {
            var rows = new TheoryData<string, string>();
            foreach (var template in ShapedTemplates.Names)
            {
                rows.Add("ezdxf", template);
                rows.Add("dxf-parser", template);
            }

            return rows;
        }
    }

    [OutsideReaderTheory("ezdxf", "dxf-parser")]
    [MemberData(nameof(Written))]
    public void Two_readers_find_no_fault_in_any_mold_file_of_a_template_and_its_outline_holes_and_marks_in_place(string reader, string template)
    {
        var shaped = ShapedTemplates.Of(template);
        var sheets = shaped.Molds.Parts.Select(m => MoldSheets.ForRouter(shaped.Design.Title, m, LengthNotation.Millimeters)).ToList();
        var readings = MoldFilesRead.Of(reader, template);
        Assert.Equal(shaped.Molds.Parts.Count, readings.Count);
        foreach (var ((mold, sheet), reading) in shaped.Molds.Parts.Zip(sheets).Zip(readings))
        {
            AssertSound(reading);
            var moved = MovedOf(sheet, mold);
            Assert.Single(On(reading, "cut")).AssertIs(MoldDrawingPath(mold.Outline), moved);

            // Holes about the mold's own centers: circles to drill; what a clamp's jaw goes through is too wide for a drill, two half circles to cut.
            Assert.All(On(reading, "drill"), e => Assert.Equal("CIRCLE", e.Type));
            Assert.All(On(reading, "holes"), e => Assert.True(e is { Type: "LWPOLYLINE", Closed: true, Vertices.Length: 2 }));
            List<(string Layer, Point2 At, double Diameter)> round =
            [
                .. On(reading, "drill").Select(e => ("drill", Middle(e), 2 * e.Vertices[0][2])),
                .. On(reading, "holes").Select(e => ("holes", Middle(e), Distance(e.Vertices[0], e.Vertices[1]))),
            ];
            Assert.Equal(mold.Holes.Count, round.Count);
            Assert.All(round, r => Assert.Equal(r.Diameter > 13 ? "holes" : "drill", r.Layer));
            foreach (var hole in mold.Holes)
                Assert.Contains(round, d => d.At.DistanceTo(new Point2((1000 * hole.At.X) + moved.X, (1000 * hole.At.Y) + moved.Y)) < 1e-6 && Math.Abs(d.Diameter - (1000 * hole.Diameter)) < 1e-6);

            // Marks run from end to end but for the holes; a centerline may be interrupted by the label.
            var marked = On(reading, "mark").Where(e => e.Vertices.Length == 2).Select(e => new ArcSegment(new(e.Vertices[0][0], e.Vertices[0][1]), new(e.Vertices[1][0], e.Vertices[1][1]), 0)).ToList();
            foreach (var mark in mold.Marks.Where(m => m.Kind is not (MoldMarkKind.Centerline or MoldMarkKind.Apex)))
            {
                var line = Assert.Single(MoldDrawingPath(mark.Path).Segments());
                foreach (var p in Enumerable.Range(0, 501).Select(i => line.PointAt(i / 500.0)))
                {
                    var inHole = mold.Holes.Any(h => p.DistanceTo(new Point2(1000 * h.At.X, 1000 * h.At.Y)) < 500 * h.Diameter);
                    Assert.Equal(!inHole, marked.Exists(m => m.DistanceTo(p + moved) < 1e-6));
                }
            }
        }
    }

    [OutsideReaderTheory("ezdxf", "dxf-parser")]
    [InlineData("ezdxf")]
    [InlineData("dxf-parser")]
    public void Two_readers_find_no_fault_in_the_file_with_all_molds_and_every_outline_in_it(string reader)
    {
        foreach (var template in ShapedTemplates.Names)
        {
            var shaped = ShapedTemplates.Of(template);
            var reading = Assert.Single(OutsideDxf.Read(reader, DxfFile.Write(MoldSheets.All(shaped.Design.Title, shaped.Molds, LengthNotation.Millimeters))));
            AssertSound(reading);
            var cut = On(reading, "cut").ToList();
            Assert.Equal(shaped.Molds.Parts.Count, cut.Count);
            foreach (var (mold, entity) in shaped.Molds.Parts.Zip(cut))
            {
                var outline = MoldDrawingPath(mold.Outline);
                entity.AssertIs(outline, new Point2(entity.Vertices[0][0], entity.Vertices[0][1]) - outline.Vertices[0].Point);
            }
        }
    }

    private static void AssertSound(DxfReading reading)
    {
        Assert.Empty(reading.Errors);
        Assert.Equal("AC1015", reading.Version);
        // $INSUNITS 4 is millimeters.
        Assert.Equal(4, reading.Units);
        Assert.True(reading.Entities.Select(e => e.Layer).ToHashSet(StringComparer.Ordinal).IsSubsetOf(["cut", "drill", "holes", "inner-stem", "mark", "text"]));
        // Lines, polylines of lines and arcs, and circles to drill alone: nothing a controller cannot read.
        Assert.All(reading.Entities, e => Assert.True(e.Type is "LINE" or "LWPOLYLINE" || (e.Type is "CIRCLE" && e.Layer is "drill"), e.Type));
    }

    private static IEnumerable<DxfReadEntity> On(DxfReading reading, string layer) => reading.Entities.Where(e => string.Equals(e.Layer, layer, StringComparison.Ordinal));

    private static ArcPath MoldDrawingPath(ArcPath meters) => meters.Mapped(p => new Point2(1000 * p.X, 1000 * p.Y));

    private static Point2 Middle(DxfReadEntity e) => new(e.Vertices.Average(v => v[0]), e.Vertices.Average(v => v[1]));

    private static double Distance(double[] a, double[] b) => new Point2(a[0], a[1]).DistanceTo(new Point2(b[0], b[1]));

    [Fact]
    public void The_strict_checker_finds_nothing_in_any_mold_file()
    {
        foreach (var mold in MoldSheetsTests.Plan("transom boat").Molds)
            Assert.Empty(DxfChecker.Faults(DxfFile.Write(MoldSheets.ForRouter("Gauge Tender", mold, LengthNotation.Millimeters))));
    }

    internal static Vector2 MovedOf(Sheet sheet, Mold mold)
    {
        var box = sheet.Marks.OfType<PathMark>().Single(m => string.Equals(m.Layer.Name, "cut", StringComparison.Ordinal)).Path.Bounds();
        var own = mold.Outline.Bounds();
        return new Vector2(box.Left - (1000 * own.Left), box.Bottom - (1000 * own.Bottom));
    }

    // In one run of the reader.
    private static Reading[] Read(params Sheet[] sheets)
    {
        var files = sheets.Select(_ => new ScratchFile(".dxf")).ToList();
        try
        {
            foreach (var (file, sheet) in files.Zip(sheets))
                File.WriteAllText(file.Path, DxfFile.Write(sheet));
            var run = OutsideReader.Run("ezdxf", [OutsideReader.Script("flatten_cut.py"), .. files.Select(f => f.Path)]);
            Assert.True(run.ExitCode == 0, run.Errors);
            return JsonSerializer.Deserialize<Reading[]>(run.Output, s_json) ?? throw new InvalidOperationException(run.Output);
        }
        finally
        {
            files.ForEach(f => f.Dispose());
        }
    }
}
