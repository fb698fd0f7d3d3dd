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
        foreach (var mold in new[] { molds[0], molds[1], molds[molds.Count / 2], molds[^1] })
        {
            var sheet = MoldSheets.ForRouter("Gauge Tender", mold, LengthNotation.Millimeters);
            var reading = Read(sheet);
            Assert.Empty(reading.Errors);
            Assert.Equal("AC1015", reading.Version);
            // $INSUNITS 4 is millimeters.
            Assert.Equal(4, reading.Units);
            Assert.True(reading.Layers.ToHashSet(StringComparer.Ordinal).IsSubsetOf(["cut", "drill", "mark", "text"]));
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
        var reading = Read(MoldSheets.All("Gauge Tender", plan, LengthNotation.Millimeters));
        Assert.Empty(reading.Errors);
        Assert.Equal(plan.Molds.Count, reading.Paths.Length);
        Assert.All(reading.Paths, p => Assert.True(p.Closed));
    }

    [Fact]
    public void The_strict_checker_finds_nothing_in_any_mold_file()
    {
        foreach (var mold in MoldSheetsTests.Plan("transom boat").Molds)
            Assert.Empty(DxfChecker.Faults(DxfFile.Write(MoldSheets.ForRouter("Gauge Tender", mold, LengthNotation.Millimeters))));
    }

    private static Vector2 MovedOf(Sheet sheet, Mold mold)
    {
        var box = sheet.Marks.OfType<PathMark>().Single(m => string.Equals(m.Layer.Name, "cut", StringComparison.Ordinal)).Path.Bounds();
        var own = mold.Outline.Bounds();
        return new Vector2(box.Left - (1000 * own.Left), box.Bottom - (1000 * own.Bottom));
    }

    private static Reading Read(Sheet sheet)
    {
        using var file = new ScratchFile(".dxf");
        File.WriteAllText(file.Path, DxfFile.Write(sheet));
        var run = OutsideReader.Run("ezdxf", OutsideReader.Script("flatten_cut.py"), file.Path);
        Assert.True(run.ExitCode == 0, run.Errors);
        return JsonSerializer.Deserialize<Reading>(run.Output, s_json) ?? throw new InvalidOperationException(run.Output);
    }
}
