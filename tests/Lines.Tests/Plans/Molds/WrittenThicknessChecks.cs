using Lines.Construction.Molds;
using Lines.Drawing.Dxf;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Molds;
using Lines.Tests.Construction.Molds;
using Lines.Tests.Support;
using Lines.Tests.Support.Dxf;
using Xunit;

namespace Lines.Tests.Plans.Molds;

/// <summary>Mold files as written and read back by ezdxf, held against the outer skin by search: one thickness everywhere, at the ends too.</summary>
public class WrittenThicknessChecks
{
    private const int Places = 6;

    [OutsideReaderTheory("ezdxf")]
    [MemberData(nameof(ShapedTemplates.All), MemberType = typeof(ShapedTemplates))]
    public void Points_of_the_edges_as_written_lie_one_thickness_under_the_outer_skin_within_two_hundredths_of_a_millimeter(string template)
    {
        // Definition; the shop tolerance is 0.02 mm.
        var shaped = ShapedTemplates.Of(template);
        var parts = shaped.Molds.Parts;
        var sheets = parts.Select(m => MoldSheets.ForRouter(shaped.Design.Title, m, LengthNotation.Millimeters)).ToList();
        var readings = OutsideDxf.Read("ezdxf", [.. sheets.Select(s => DxfFile.Write(s))]);
        foreach (var ((mold, sheet), reading) in parts.Zip(sheets).Zip(readings))
        {
            var cut = Assert.Single(reading.Entities, e => e.Layer is "cut");
            var moved = MoldDxfReferenceChecks.MovedOf(sheet, mold);
            var read = new ArcPath([.. cut.Vertices.Select(v => new ArcVertex(new Point2((v[0] - moved.X) / 1000, (v[1] - moved.Y) / 1000), v[2]))], true);
            foreach (var p in mold.Kind == MoldKind.Bulkhead ? Spread([.. read.Flattened(1e-6).Where(p => p.Y > 5e-4)]) : MoldPlanTests.EdgePoints(mold with { Outline = read }, Places))
            {
                var space = mold.Frame.ToHull(p);
                var starboard = mold.Kind is MoldKind.Stem or MoldKind.Stern ? space with { Y = shaped.Design.Build.StemSiding / 2 } : space with { Y = Math.Abs(space.Y) };
                var distance = NearestOnSkin.Distance(shaped.Hull.Side.PointAt, starboard, (-0.05, 1.05), (0, 1.3));
                Assert.True(Math.Abs(distance - (mold.Planking + mold.Sheathing)) <= 0.00002, Invariant($"{mold.Name}: {1000 * distance:F4} mm at {space}"));
            }
        }
    }

    private static IEnumerable<Point2> Spread(List<Point2> edge) => Enumerable.Range(0, Places + 1).Select(k => edge[k * (edge.Count - 1) / Places]);
}
