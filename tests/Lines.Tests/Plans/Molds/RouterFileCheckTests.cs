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

/// <summary>Router files looked through: faults seeded into sound files are found, and what ezdxf writes reads as ezdxf reads it.</summary>
public class RouterFileCheckTests
{
    private static readonly Mold Stem = MoldSheetsTests.Plan("double-ender").Molds[0];

    public static TheoryData<DxfVersion, DxfUnit, bool> Ways
    {
        get
        {
            var rows = new TheoryData<DxfVersion, DxfUnit, bool>();
            foreach (var version in Enum.GetValues<DxfVersion>())
            {
                foreach (var straight in (bool[])[false, true])
                {
                    rows.Add(version, DxfUnit.Millimeter, straight);
                    rows.Add(version, DxfUnit.Inch, straight);
                }
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public void Every_mold_file_is_sound_and_reads_back_as_it_was_drawn(DxfVersion version, DxfUnit unit, bool straight)
    {
        var settings = new DxfSettings { Version = version, Unit = unit, Chords = straight ? 0.01 : null };
        foreach (var mold in MoldSheetsTests.Plan("double-ender").Molds)
        {
            var sheet = MoldSheets.ForRouter("Gauge Tender", mold, LengthNotation.Millimeters);
            var text = DxfFile.Write(sheet, settings);
            Assert.Empty(RouterFileCheck.Faults("a.dxf", text));
            Assert.Empty(RouterFileCheck.Faults("a.dxf", text.Replace("\n", "\r\n", StringComparison.Ordinal)));
            var read = DxfDrawing.Read(text);
            Assert.Equal(unit, read.Unit);
            if (straight)
                continue;
            foreach (var (mark, path) in sheet.Marks.OfType<PathMark>().Zip(read.Paths.Where(p => p.Layer is not "text")))
            {
                Assert.Equal((mark.Layer.Name, mark.Path.Closed), (path.Layer, path.Path.Closed));
                foreach (var (a, b) in mark.Path.Vertices.Zip(path.Path.Vertices))
                    Assert.Equal(0, a.Point.DistanceTo(new Point2(b.Point.X * (unit == DxfUnit.Inch ? 25.4 : 1), b.Point.Y * (unit == DxfUnit.Inch ? 25.4 : 1))), 1e-6);
            }
        }
    }

    [Theory]
    [InlineData("$INSUNITS\n 70\n4", "$INSUNITS\n 70\n0", "unit", "does not state")]
    [InlineData("$INSUNITS\n 70\n4", "$INSUNITS\n 70\n1", "mark", "2540 mm wide in place of 100 mm: mm and inches are mixed up")]
    [InlineData("  8\ncut\n100\nAcDbPolyline\n", "  8\nmark\n100\nAcDbPolyline\n", "cut", "nothing is drawn on this layer")]
    [InlineData("  8\ncut\n100\nAcDbPolyline\n", "  8\nCNC\n100\nAcDbPolyline\n", "CNC", "used and not defined")]
    [InlineData("LWPOLYLINE", "SPLINE", "SPLINE", "many controllers do not follow")]
    [InlineData("  0\nEOF\n", "", "file", "breaks off")]
    [InlineData("  0\nSECTION\n", "zero\nSECTION\n", "file", "\"zero\" stands where the number of a group should")]
    [InlineData(" 10\n", " 10\nx", "file", "is no number")]
    public void A_seeded_fault_is_found_at_its_place(string sound, string faulty, string key, string problem)
    {
        var text = Written(Stem);
        var at = text.IndexOf(sound, sound is " 10\n" ? text.IndexOf("LWPOLYLINE", StringComparison.Ordinal) : 0, StringComparison.Ordinal);
        var faults = RouterFileCheck.Faults("a.dxf", string.Concat(text.AsSpan(0, at), faulty, text.AsSpan(at + sound.Length)));
        var fault = Assert.Single(faults, f => f.Key == key);
        Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
        Assert.Matches(@"^a\.dxf:\d+:1: ", fault.Headline);
    }

    [Fact]
    public void An_open_outline_is_told_with_its_gap_and_one_run_the_wrong_way_or_drawn_twice_with_its_place()
    {
        var sheet = MoldSheets.ForRouter("Gauge Tender", Stem, LengthNotation.Millimeters);
        var cut = sheet.Marks.OfType<PathMark>().Single(m => m.Layer.Name is "cut");
        Assert.Matches(@"^an outline is open: its ends, \(.+\) and \(.+\), are [\d.]+ mm apart$", Only(cut with { Path = cut.Path with { Closed = false } }, replaces: true).Problem);
        var closing = new ArcPath([.. cut.Path.Vertices, cut.Path.Vertices[0]], false);
        Assert.Contains("ends where it begins but is not closed", Only(cut with { Path = closing }, replaces: true).Problem, StringComparison.Ordinal);
        var box = cut.Path.Bounds();
        var mirrored = cut.Path.Mapped(p => p with { X = box.Left + box.Right - p.X }, mirrors: true);
        Assert.EndsWith("runs clockwise", Only(cut with { Path = mirrored }, replaces: true).Problem, StringComparison.Ordinal);
        Assert.Matches(@"is drawn twice, first on line \d+ of the file$", Only(cut, replaces: false).Problem);

        // The same outline begun elsewhere, and on another layer, is the same cut.
        var turned = new ArcPath([.. cut.Path.Vertices.Skip(3), .. cut.Path.Vertices.Take(3)], true);
        Assert.Contains("drawn twice", Only(cut with { Path = turned, Layer = MoldInks.Mark }, replaces: false).Problem, StringComparison.Ordinal);

        Lines.Design.Diagnostics.Diagnostic Only(PathMark mark, bool replaces) => Assert.Single(RouterFileCheck.Faults(
            "a.dxf", DxfFile.Write(sheet with { Marks = [.. sheet.Marks.Where(m => !replaces || m.Layer.Name is not "cut"), mark] })));
    }

    [OutsideReaderTheory("ezdxf")]
    [InlineData(DxfVersion.R2000)]
    [InlineData(DxfVersion.R12)]
    public void It_reads_the_same_paths_as_ezdxf(DxfVersion version)
    {
        var text = DxfFile.Write(MoldSheets.All("Gauge Tender", MoldSheetsTests.Plan("transom boat"), LengthNotation.Millimeters), new DxfSettings { Version = version });
        var read = DxfDrawing.Read(text);
        var theirs = Assert.Single(OutsideDxf.Read("ezdxf", text)).Entities;
        Assert.Equal(theirs.Length, read.Paths.Count);
        foreach (var (ours, other) in read.Paths.Zip(theirs))
        {
            Assert.Equal((other.Type, other.Layer), (ours.Type, ours.Layer));
            if (ours.Type is not "CIRCLE")
                other.AssertIs(ours.Path, default);
        }
    }

    private static string Written(Mold mold) => DxfFile.Write(MoldSheets.ForRouter("Gauge Tender", mold, LengthNotation.Millimeters));
}
