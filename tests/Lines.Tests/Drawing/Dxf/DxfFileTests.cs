using CsCheck;
using Lines.Drawing.Dxf;
using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;
using Lines.Tests.Support.Dxf;
using Xunit;

namespace Lines.Tests.Drawing.Dxf;

public class DxfFileTests
{
    [OutsideReaderFact("ezdxf")]
    public void Ezdxf_reads_the_same_geometry_with_no_audit_error()
    {
        var reading = OutsideDxf.Read("ezdxf", DxfFile.Write(SampleSheets.Everything))[0];
        Assert.Empty(reading.Errors);
        Assert.Equal("AC1015", reading.Version);
        Assert.Equal(4, reading.Units);
        AssertSameGeometry(reading, 1);
        var hidden = Assert.Single(reading.Layers, l => l.Name == "hidden");
        Assert.Equal((3, "hidden-dashes", 25), (hidden.Color, hidden.Linetype, hidden.Lineweight));
        Assert.Equal((8, "Continuous", 13), reading.Layers.Where(l => l.Name == "thin-1").Select(l => (l.Color, l.Linetype, l.Lineweight)).Single());
    }

    [OutsideReaderFact("dxf-parser")]
    public void Npms_dxf_parser_reads_the_same_geometry()
    {
        var reading = OutsideDxf.Read("dxf-parser", DxfFile.Write(SampleSheets.Everything))[0];
        Assert.Equal("AC1015", reading.Version);
        Assert.Equal(4, reading.Units);
        AssertSameGeometry(reading, 1);
        Assert.Equal(1, Assert.Single(reading.Layers, l => l.Name == "outline").Color);
    }

    [OutsideReaderFact("ezdxf")]
    public void A_file_in_inches_states_inches_and_is_as_large()
    {
        var reading = OutsideDxf.Read("ezdxf", DxfFile.Write(SampleSheets.Everything, new DxfSettings { Unit = DxfUnit.Inch }))[0];
        Assert.Empty(reading.Errors);
        Assert.Equal(1, reading.Units);
        AssertSameGeometry(reading, 25.4);
    }

    [Fact]
    public void The_strict_checker_finds_nothing_in_either_unit()
    {
        Assert.Empty(DxfChecker.Faults(DxfFile.Write(SampleSheets.Everything)));
        Assert.Empty(DxfChecker.Faults(DxfFile.Write(SampleSheets.Everything, new DxfSettings { Unit = DxfUnit.Inch })));
        Assert.Empty(DxfChecker.Faults(DxfFile.Write(new Sheet("nothing", 100, 100, []))));
    }

    [Fact]
    public void Two_runs_write_the_same_text() =>
        Assert.Equal(DxfFile.Write(SampleSheets.Everything), DxfFile.Write(SampleSheets.Everything));

    [Fact]
    public void A_closed_path_that_repeats_its_first_vertex_loses_the_repetition()
    {
        var square = ArcPath.Through([new(0, 0), new(10, 0), new(10, 0), new(10, 10), new(0, 0)], closed: true);
        var dxf = DxfFile.Write(new Sheet("square", 20, 20, [new PathMark(SampleSheets.Outline, square)]));
        Assert.Empty(DxfChecker.Faults(dxf));
        Assert.Equal("3", DxfGroups.Read(dxf).Section("ENTITIES")[1].Text(90));
    }

    [Fact]
    public void Coordinates_come_back_within_half_a_unit_of_the_eighth_decimal()
    {
        var coordinate = Gen.OneOf(Gen.Double[-1e5, 1e5], Gen.Double[-1e-6, 1e-6], Gen.Const(-0.0), Gen.Const(99999.999999999), Gen.Const(0.1));
        Gen.Select(coordinate, coordinate, coordinate).Sample((x, y, z) =>
        {
            var path = ArcPath.Through([new(x, y), new(z, 1234.5), new(-7, z)]);
            var dxf = DxfFile.Write(new Sheet("any", 20, 20, [new PathMark(SampleSheets.Outline, path)]));
            var read = DxfGroups.Read(dxf).Section("ENTITIES")[1];
            var (xs, ys) = (read.Groups.Where(g => g.Code == 10).ToList(), read.Groups.Where(g => g.Code == 20).ToList());
            Assert.All(xs, g => Assert.DoesNotMatch("^-0$|[eE,]", g.Value));
            for (var i = 0; i < 3; i++)
            {
                // Half a unit, and what a double of this size cannot hold.
                Assert.InRange(Math.Abs(xs[i].Real - path.Vertices[i].Point.X), 0, 0.51e-8 + 2e-11);
                Assert.InRange(Math.Abs(ys[i].Real - path.Vertices[i].Point.Y), 0, 0.51e-8 + 2e-11);
            }
        });
    }

    [Fact]
    public void A_layer_with_two_inks_is_refused()
    {
        var other = SampleSheets.Outline with { Color = 2 };
        var sheet = new Sheet("two", 10, 10, [new PathMark(SampleSheets.Outline, ArcPath.Line(new(0, 0), new(1, 1))), new PathMark(other, ArcPath.Line(new(0, 0), new(1, 2)))]);
        Assert.Contains("two inks", Assert.Throws<ArgumentException>(() => DxfFile.Write(sheet)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("two words")]
    [InlineData("Größe")]
    public void A_layer_name_that_programs_stumble_over_is_refused(string name) =>
        Assert.Throws<ArgumentException>(() => DxfFile.Write(new Sheet("bad", 10, 10, [new PathMark(new Layer(name, new Ink(0.2)), ArcPath.Line(new(0, 0), new(1, 1)))])));

    [Fact]
    public void A_path_that_cannot_be_drawn_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Write(ArcPath.Through([new(1, 1)])));
        Assert.Throws<ArgumentException>(() => Write(ArcPath.Line(new(1, 1), new(1, 1))));
        Assert.Throws<ArgumentException>(() => Write(ArcPath.Line(new(1, 1), new(double.NaN, 1))));

        static string Write(ArcPath path) => DxfFile.Write(new Sheet("bad", 10, 10, [new PathMark(SampleSheets.Outline, path)]));
    }

    private static void AssertSameGeometry(DxfReading reading, double unit)
    {
        var drawn = SheetPaths.Of(SampleSheets.Everything);
        Assert.Equal(drawn.Count, reading.Entities.Length);
        foreach (var ((mark, path), entity) in drawn.Zip(reading.Entities))
        {
            Assert.Equal(mark.Layer.Name, entity.Layer);
            entity.AssertIs(path, default, unit);
        }
    }
}
