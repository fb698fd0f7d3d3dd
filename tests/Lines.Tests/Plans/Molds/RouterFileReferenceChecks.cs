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

/// <summary>Mold files as a router's controller wants them, through two readers of others, for every template.</summary>
public class RouterFileReferenceChecks
{
    private const double Tool = 0.00635;

    public static TheoryData<string, string, bool> Asked
    {
        get
        {
            var rows = new TheoryData<string, string, bool>();
            foreach (var template in ShapedTemplates.Names)
            {
                rows.Add("ezdxf", template, false);
                rows.Add("dxf-parser", template, true);
            }

            return rows;
        }
    }

    [OutsideReaderTheory("ezdxf", "dxf-parser")]
    [MemberData(nameof(Asked))]
    public void Release_12_in_inches_with_a_tool_and_as_halves_reads_back_as_the_molds_cut(string reader, string template, bool halves)
    {
        var shaped = ShapedTemplates.Of(template);
        var plan = new CutSettings(Tool, halves).Of(shaped.Molds);
        var files = plan.Parts.Select(m => DxfFile.Write(MoldSheets.ForRouter(shaped.Design.Title, m, LengthNotation.Inches), new DxfSettings { Version = DxfVersion.R12, Unit = DxfUnit.Inch })).ToList();
        foreach (var (mold, reading) in plan.Parts.Zip(OutsideDxf.Read(reader, files)))
        {
            Assert.Empty(reading.Errors);
            Assert.Equal("AC1009", reading.Version);
            var cut = Assert.Single(reading.Entities, e => e.Layer is "cut");
            Assert.Equal("POLYLINE", cut.Type);
            var drawn = mold.Outline.Mapped(p => new Point2(1000 * p.X, 1000 * p.Y));
            cut.AssertIs(drawn, new Point2(25.4 * cut.Vertices[0][0], 25.4 * cut.Vertices[0][1]) - drawn.Vertices[0].Point, 25.4);
        }
    }

    [OutsideReaderFact("ezdxf")]
    public void Outlines_are_closed_once_run_counter_clockwise_and_their_holes_clockwise_tangent_at_smooth_joints_and_without_crumbs()
    {
        foreach (var template in ShapedTemplates.Names)
        {
            var shaped = ShapedTemplates.Of(template);
            foreach (var (mold, reading) in shaped.Molds.Parts.Zip(MoldFilesRead.Of("ezdxf", template)))
            {
                var outline = PathOf(Assert.Single(reading.Entities, e => e.Layer is "cut"));
                Assert.True(outline.Closed && outline.SignedArea() > 0);
                Assert.All(reading.Entities.Where(e => e.Layer is "holes"), e => Assert.True(e.Closed && PathOf(e).SignedArea() < 0));
                var segments = outline.Segments();
                // A fine bow turns on a radius of 1 mm at the keel: there the shape demands shorter ones.
                Assert.All(segments, s => Assert.True(s.Length >= 0.5 || Math.Abs(s.Turn) > 0.05, Invariant($"{template}: a segment of {s.Length} mm that turns by {s.Turn} rad")));
                var corners = 0;
                for (var i = 0; i < segments.Count; i++)
                {
                    // Two arcs meet smoothly but at the keel, on the centerline, where both sides of a bottom with deadrise come together.
                    var (a, b) = (segments[i], segments[(i + 1) % segments.Count]);
                    var turn = Math.Abs(Math.Atan2(a.EndDirection.Cross(b.StartDirection), a.EndDirection.Dot(b.StartDirection))) * 180 / Math.PI;
                    if (!a.IsLine && !b.IsLine && turn is > 0.2 and < 20 && !IsMirrored(a, b))
                        corners++;
                }

                // The edge of a profile mold has a true corner where the turn of the stem into the keel is tighter than the planking is thick.
                Assert.InRange(corners, 0, HalfMold.Exists(mold) ? 0 : 1);

                // No line is cut twice: every closed loop has a place and length of its own.
                var loops = reading.Entities.Where(e => e.Closed).Select(e => (e.Layer, PathOf(e).Bounds().Center)).ToList();
                Assert.Equal(loops.Count, loops.Distinct().Count());
            }
        }
    }

    [Theory]
    [MemberData(nameof(ShapedTemplates.All), MemberType = typeof(ShapedTemplates))]
    public void A_quarter_inch_tool_reaches_into_every_slot_and_a_half_inch_tool_is_told_not_to_fit(string template)
    {
        var molds = ShapedTemplates.Of(template).Molds.Parts;
        foreach (var mold in molds)
        {
            var cut = new CutSettings(Tool, false).Of(mold, out var tight);
            Assert.Empty(tight);
            var arcs = cut.Outline.Segments().Except(mold.Outline.Segments()).Where(s => !s.IsLine).ToList();
            Assert.Equal(InsideCorners(mold.Outline), arcs.Count);
            Assert.All(arcs, a => Assert.Equal(Tool / 2, a.Radius, 1e-9));
            // The wood taken away is never more than the circles.
            Assert.InRange(mold.Outline.SignedArea() - cut.Outline.SignedArea(), -1e-12, arcs.Count * Math.PI * Tool * Tool / 4);
        }

        // The slots for 12 mm stock are 13 mm wide: two reliefs of 0.707 times the tool's diameter go beside each other up to 9.2 mm.
        var slotted = molds.First(m => m.Kind is MoldKind.Stem);
        new CutSettings(0.0127, false).Of(slotted, out var left);
        Assert.Equal(InsideCorners(slotted.Outline) > 0, left.Count > 0);
    }

    [Theory]
    [MemberData(nameof(ShapedTemplates.All), MemberType = typeof(ShapedTemplates))]
    public void Two_halves_make_the_mold_and_the_centerline_is_their_edge(string template)
    {
        foreach (var mold in ShapedTemplates.Of(template).Molds.Parts)
        {
            if (!HalfMold.Exists(mold))
            {
                Assert.True(mold.Kind is MoldKind.Stem or MoldKind.Stern or MoldKind.Bulkhead);
                continue;
            }

            var half = HalfMold.Of(mold);
            Assert.True(half.Outline.Closed && half.IsHalf);
            Assert.Equal(mold.Outline.SignedArea() / 2, half.Outline.SignedArea(), 1e-12);
            Assert.Equal(0, half.Outline.Bounds().Left, 1e-12);
            Assert.Equal(mold.Outline.Bounds().Right, half.Outline.Bounds().Right, 1e-12);
            Assert.Equal(mold.Holes.Count, 2 * half.Holes.Count);
            Assert.All(half.Marks, m => Assert.True(m.Path.Bounds().Left >= 0));
            Assert.False(HalfMold.Exists(half));
            Assert.All(half.Outline.Vertices.Where(v => v.Point.X < 1e-6), v => Assert.Equal(0, v.Point.X));

            // Whole molds name every line at both edges, halves at the one they have.
            List<string> Names(Mold of) => [.. MoldSheets.ForPaper("Gauge Tender", of, LengthNotation.Millimeters).Marks.OfType<TextMark>().Select(t => t.Text).Where(t => mold.Marks.Any(m => m.Name == t && m.Kind != MoldMarkKind.Centerline)).Distinct().Order(StringComparer.Ordinal)];
            Assert.Equal(Names(mold), Names(half));
        }
    }

    private static int InsideCorners(ArcPath outline)
    {
        var segments = outline.Segments();
        return Enumerable.Range(0, segments.Count).Count(i =>
        {
            var (a, b) = (segments[i], segments[(i + 1) % segments.Count]);
            return a.IsLine && b.IsLine && Math.Abs(Math.Atan2(a.EndDirection.Cross(b.StartDirection), a.EndDirection.Dot(b.StartDirection)) + (Math.PI / 2)) < Math.PI / 3;
        });
    }

    private static bool IsMirrored(ArcSegment a, ArcSegment b) =>
        Math.Abs(a.EndDirection.X - b.StartDirection.X) < 1e-6 && Math.Abs(a.EndDirection.Y + b.StartDirection.Y) < 1e-6;

    private static ArcPath PathOf(DxfReadEntity e) => new([.. e.Vertices.Select(v => new ArcVertex(new Point2(v[0], v[1]), v[2]))], e.Closed);
}
