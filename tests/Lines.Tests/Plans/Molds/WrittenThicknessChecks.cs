using Lines.Construction;
using Lines.Construction.Molds;
using Lines.Drawing.Dxf;
using Lines.Hull.Form;
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
        var shaped = ShapedTemplates.Of(template);
        AssertThickness(shaped.Hull, shaped.Molds, shaped.Design.Build.StemSiding);
    }

    [OutsideReaderTheory("ezdxf")]
    [InlineData("short and broad, its transom far raked")]
    [InlineData("long and narrow")]
    [InlineData("a closed float with tumblehome")]
    public void So_they_do_on_hulls_unlike_the_templates_with_a_joint_and_a_bulkhead(string kind)
    {
        var (dials, build) = kind switch
        {
            "long and narrow" => (
                FormDials.DoubleEnder with { Length = 11, Beam = 0.62, Bow = FormDials.DoubleEnder.Bow with { Forefoot = 0.3 } },
                new BuildDials { Planking = 0.005, MoldSpacing = 1.1, Joints = [3.6, 7.4], Bulkheads = [new("mast beam", 4.7, null)] }),
            "short and broad, its transom far raked" => (
                FormDials.TransomBoat with { Length = 2.2, Beam = 0.86, Depth = 0.42, Draft = 0.13, Stern = new TransomStern(0.76, 0.11, 0.45, 22 * FormDials.Degree, 0.6) },
                new BuildDials { Planking = 0.009, MoldSpacing = 0.35, Joints = [1.2], Bulkheads = [new("seat", 0.62, 0.1)] }),
            _ => (
                FormDials.DoubleEnder with { Length = 3.8, Beam = 0.34, Depth = 0.30, Draft = 0.13, Crown = 0.035, Midship = new MidshipDials(8 * FormDials.Degree, 0.76, -4 * FormDials.Degree) },
                new BuildDials { Planking = 0.004, MoldSpacing = 0.5, StemSiding = 0.015, Joints = [1.9], Bulkheads = [new("beam", 1.2, null)] }),
        };
        var hull = HullShape.Solve(dials).Surface!;
        var plan = MoldPlan.Of(hull, build);
        Assert.Equal((2 * build.Joints.Count) + 1, plan.Bulkheads.Count);
        Assert.DoesNotContain(plan.LeftOut, l => l.IsLoss);
        AssertThickness(hull, plan, build.StemSiding);
    }

    // Definition; the shop tolerance is 0.02 mm.
    private static void AssertThickness(HullSurface hull, MoldPlan plan, double siding)
    {
        var sheets = plan.Parts.Select(m => MoldSheets.ForRouter("Gauge Tender", m, LengthNotation.Millimeters)).ToList();
        var readings = OutsideDxf.Read("ezdxf", [.. sheets.Select(s => DxfFile.Write(s))]);
        foreach (var ((mold, sheet), reading) in plan.Parts.Zip(sheets).Zip(readings))
        {
            var cut = Assert.Single(reading.Entities, e => e.Layer is "cut");
            var moved = MoldDxfReferenceChecks.MovedOf(sheet, mold);
            var read = new ArcPath([.. cut.Vertices.Select(v => new ArcVertex(new Point2((v[0] - moved.X) / 1000, (v[1] - moved.Y) / 1000), v[2]))], true);
            foreach (var p in mold.Kind == MoldKind.Bulkhead ? Spread([.. read.Flattened(1e-6).Where(p => hull.Deck is not null || p.Y > 5e-4)]) : MoldPlanTests.EdgePoints(mold with { Outline = read }, Places))
            {
                var space = mold.Frame.ToHull(p);
                var starboard = mold.Kind is MoldKind.Stem or MoldKind.Stern ? space with { Y = siding / 2 } : space with { Y = Math.Abs(space.Y) };
                var distance = NearestOnSkin.Distance(hull.Side.PointAt, starboard, (-0.05, 1.05), (0, 1.3));
                // A bulkhead under a deck ends as far from that.
                if (mold.Kind == MoldKind.Bulkhead && hull.Deck is { } deck)
                    distance = Math.Min(distance, NearestOnSkin.Distance(deck.PointAt, starboard, (0, 1), (-0.05, 1)));
                Assert.True(Math.Abs(distance - (mold.Planking + mold.Sheathing)) <= 0.00002, Invariant($"{mold.Name}: {1000 * distance:F4} mm at {space}"));
            }
        }
    }

    private static IEnumerable<Point2> Spread(List<Point2> edge) => Enumerable.Range(0, Places + 1).Select(k => edge[k * (edge.Count - 1) / Places]);
}
