using Lines.Drawing.Dxf;
using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;
using Lines.Tests.Support.Dxf;
using Xunit;

namespace Lines.Tests.Drawing.Dxf;

/// <summary>Files of release 12, and files without arcs, as two readers of others read them.</summary>
public class DxfR12Tests
{
    private static readonly DxfSettings R12 = new() { Version = DxfVersion.R12 };

    [OutsideReaderTheory("ezdxf", "dxf-parser")]
    [InlineData("ezdxf", DxfUnit.Millimeter, 1)]
    [InlineData("ezdxf", DxfUnit.Inch, 25.4)]
    [InlineData("dxf-parser", DxfUnit.Millimeter, 1)]
    [InlineData("dxf-parser", DxfUnit.Inch, 25.4)]
    public void Two_readers_read_the_same_geometry_from_release_12(string reader, DxfUnit unit, double perUnit)
    {
        var reading = Assert.Single(OutsideDxf.Read(reader, DxfFile.Write(SampleSheets.Everything, R12 with { Unit = unit })));
        Assert.Empty(reading.Errors);
        Assert.Equal("AC1009", reading.Version);
        var drawn = SheetPaths.Of(SampleSheets.Everything);
        Assert.Equal(drawn.Count, reading.Entities.Length);
        foreach (var ((mark, path), entity) in drawn.Zip(reading.Entities))
        {
            Assert.Equal(mark.Layer.Name, entity.Layer);
            Assert.True(entity.Type is "LINE" or "POLYLINE", entity.Type);
            entity.AssertIs(path, default, perUnit);
        }

        Assert.Equal(3, Assert.Single(reading.Layers, l => l.Name == "hidden").Color);
    }

    // Groups and entities that release 12 does not know, from the published reference of that release (from memory): handles are
    // optional, there are no owners (330), markers (100), line weights (370), plot styles (390), nor polylines in one record.
    [Fact]
    public void Release_12_holds_nothing_that_came_later()
    {
        var text = DxfFile.Write(SampleSheets.Everything, R12);
        var dxf = DxfGroups.Read(text);
        Assert.Equal("AC1009", dxf.Variable("$ACADVER"));
        Assert.DoesNotContain(dxf.Items.SelectMany(i => i.Groups), g => g.Code is 5 or 100 or 102 or 330 or 340 or 350 or 370 or 390 or 290);
        Assert.DoesNotContain(dxf.Items, i => i.Type is "LWPOLYLINE" or "CLASS" or "DICTIONARY" or "BLOCK_RECORD");
        Assert.Equal(["HEADER", "TABLES", "BLOCKS", "ENTITIES"], dxf.Items.Where(i => i.Type is "SECTION").Select(i => i.Text(2)));
        Assert.Equal(dxf.Items.Count(i => i.Type is "POLYLINE"), dxf.Items.Count(i => i.Type is "SEQEND"));
        Assert.StartsWith("999\nlengths in millimeters\n", text, StringComparison.Ordinal);
        Assert.StartsWith("999\nlengths in inches\n", DxfFile.Write(SampleSheets.Everything, R12 with { Unit = DxfUnit.Inch }), StringComparison.Ordinal);
    }

    [OutsideReaderTheory("ezdxf", "dxf-parser")]
    [InlineData("ezdxf", DxfVersion.R12)]
    [InlineData("ezdxf", DxfVersion.R2000)]
    [InlineData("dxf-parser", DxfVersion.R12)]
    [InlineData("dxf-parser", DxfVersion.R2000)]
    public void Chords_in_place_of_arcs_stay_as_near_as_asked_and_no_bulge_is_left(string reader, DxfVersion version)
    {
        const double tolerance = 0.01;
        var reading = Assert.Single(OutsideDxf.Read(reader, DxfFile.Write(SampleSheets.Everything, new DxfSettings { Version = version, Chords = tolerance })));
        Assert.Empty(reading.Errors);
        foreach (var ((_, path), entity) in SheetPaths.Of(SampleSheets.Everything).Zip(reading.Entities))
        {
            Assert.Equal(path.Closed, entity.Closed);
            Assert.All(entity.Vertices, v => Assert.Equal(0, v[2]));
            var read = ArcPath.Through(entity.Vertices.Select(v => new Point2(v[0], v[1])), entity.Closed);
            foreach (var s in read.Segments())
            {
                for (var k = 0; k <= 8; k++)
                    Assert.InRange(path.DistanceTo(s.PointAt(k / 8.0)), 0, tolerance + 1e-7);
            }

            // A chord over the angle a is shorter than its arc by a² / 24: 0.0033 where the sagitta is 0.01 mm on a radius of 1 mm, as letters have.
            Assert.InRange(Math.Abs(read.Length() - path.Length()), 0, 4e-3 * path.Length());
        }
    }

    [Fact]
    public void Circles_to_drill_stay_circles_without_arcs_and_in_release_12()
    {
        var drill = new Layer("drill", new Ink(0.3), 3, IsDrilled: true);
        var sheet = new Sheet("hole", 20, 20, [new PathMark(drill, ArcPath.Circle(new Point2(10, 10), 2.5))]);
        var circle = DxfGroups.Read(DxfFile.Write(sheet, R12 with { Chords = 0.01 })).Section("ENTITIES")[1];
        Assert.Equal(("CIRCLE", "2.5"), (circle.Type, circle.Text(40)));
    }
}
