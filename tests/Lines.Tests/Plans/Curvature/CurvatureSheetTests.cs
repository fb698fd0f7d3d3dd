using System.Text;
using Lines.Drawing.Model;
using Lines.Drawing.Svg;
using Lines.Hull.Fairness;
using Lines.Hull.Form;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;
using Lines.Kernel.Units;
using Lines.Plans.Curvature;
using Lines.Tests.Drawing;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Curvature;

public class CurvatureSheetTests
{
    public static TheoryData<string> Templates => ShapedTemplates.All;

    [Theory]
    [MemberData(nameof(Templates))]
    public void Its_file_is_small_and_everything_lies_on_the_sheet(string template)
    {
        var sheet = CurvatureSheet.Of(ShapedTemplates.Of(template).Lines, "Trial", LengthNotation.Millimeters);
        Assert.InRange(Encoding.UTF8.GetByteCount(SvgFile.Write(sheet)), 1, 300_000);
        Assert.All(SheetPaths.Of(sheet).SelectMany(p => p.Path.Vertices).Select(v => v.Point), p => Assert.True(p.X >= 0 && p.X <= sheet.Width && p.Y >= 0 && p.Y <= sheet.Height, $"{p}"));
    }

    [Fact]
    public void Grays_lie_in_steps_of_lightness_that_grow_darker_with_the_curvature()
    {
        // Seven grays: more than a printer's screen keeps apart would be of no use (common practice, no source).
        var tones = Sheet("gauge-runner").Marks.OfType<PathMark>().Where(m => m.Filled && m.Layer.Name.StartsWith("curvature-", StringComparison.Ordinal))
            .Select(m => m.Layer).DistinctBy(l => l.Name).OrderBy(l => l.Name, StringComparer.Ordinal).Select(l => l.Ink.Tone).ToList();
        Assert.Equal(7, tones.Count);
        Assert.All(tones.Zip(tones.Skip(1)), t => Assert.InRange(t.First - t.Second, 0.07, 0.12));
    }

    [Theory]
    [MemberData(nameof(Templates))]
    public void A_place_of_the_skin_has_the_gray_of_its_curvature(string template) => GraysAreTrue(ShapedTemplates.Of(template).Lines);

    [Fact]
    public void Wigleys_hull_has_the_gray_of_its_formula()
    {
        // Amidships at the water the curvature around is B/T² = 8.2 1/m, and along the boat 4 B/L² = 0.109 1/m.
        var hull = WigleyHull.Bicubic(5.2, 0.74, 0.3, 4);
        var plate = new Plate(HullLines.Of(hull));
        Assert.Equal("curvature-5", plate.GrayAt(0, new Point3(2.6, 0, 0.2995)));
        Assert.Equal("curvature-4", plate.GrayAt(2, new Point3(2.6, 0, 0.2995)));
        GraysAreTrue(plate.Lines);
    }

    [Fact]
    public void Topsides_that_lean_inward_do_not_cover_the_bottom_from_below() => GraysAreTrue(HullLines.Of(Tumblehome()));

    [Fact]
    public void Hatching_covers_the_saddles_and_nothing_else()
    {
        var plate = new Plate(ShapedTemplates.Of("gauge-runner-fine").Lines);
        var hollow = plate.Sheet.Marks.OfType<PathMark>().Where(m => string.Equals(m.Layer.Name, "hollow-border", StringComparison.Ordinal)).Select(m => m.Path).ToList();
        var seen = 0;
        foreach (var (point, around) in plate.Places(below: false))
        {
            // Hollow by more than 0.1 mm in 300 mm: 8 × 0.0001 / 0.3².
            var signs = around.Select(k => k.Lesser < -0.0088889).Distinct().ToList();
            if (signs.Count > 1)
                continue;
            var p = plate.OnPaper(2, point);
            Assert.Equal(signs[0], hollow.Count(b => Holds(b, p)) % 2 == 1);
            seen += signs[0] ? 1 : 0;
        }

        Assert.InRange(seen, 50, 1000);
    }

    [Fact]
    public void The_same_hull_gives_the_same_plate() =>
        Assert.Equal(SvgFile.Write(Sheet("silt-sampler")), SvgFile.Write(Sheet("silt-sampler")));

    [Fact]
    public void Radii_are_written_in_the_notation_asked_for()
    {
        var words = CurvatureSheet.Of(ShapedTemplates.Of("gauge-runner").Lines, "Trial", LengthNotation.Inches).Marks.OfType<TextMark>().Select(t => t.Text).ToList();
        Assert.Contains("39 3/8", words); // 1 m
        Assert.DoesNotContain("radius, mm", words);
    }

    private static Sheet Sheet(string template) => CurvatureSheet.Of(ShapedTemplates.Of(template).Lines, "Trial", LengthNotation.Millimeters);

    // Every place must lie on the gray of its curvature, in all four views, but where the next places, on the picture's grid or on paper, are on another.
    private static void GraysAreTrue(HullLines lines)
    {
        var plate = new Plate(lines);
        var seen = 0;
        for (var view = 0; view < 4; view++)
        {
            double least = view < 2 ? 0.5 : 0.0125;
            foreach (var (point, around) in plate.Places(below: view % 2 == 1))
            {
                var bands = around.Select(k => Math.Clamp((int)Math.Floor(Math.Log2(Math.Abs(view < 2 ? k.Greater : k.Lesser) / least) + 1), 0, 6)).Distinct().ToList();
                if (bands.Count > 1)
                    continue;
                seen++;
                Assert.True(string.Equals(Invariant($"curvature-{bands[0]}"), plate.GrayAt(view, point), StringComparison.Ordinal), Invariant($"view {view}, x {point.X:F3} y {point.Y:F3} z {point.Z:F3}: {plate.GrayAt(view, point)} where {bands[0]} was due"));
            }
        }

        Assert.InRange(seen, 500, 10_000);
    }

    // A hull whose sections are arcs that lean inward above their greatest breadth.
    private static HullSurface Tumblehome()
    {
        var u = SplineBasis.Clamped(3, [0, 0.5, 1]);
        var v = SplineBasis.Clamped(3, [0, 0.5, 1]);
        double[] length = [0, 0.9, 2, 3.1, 4], breadth = [0, 0.2, 0.35, 0.2, 0], girth = [0, 0.6, 1.1, 1.15, 0.75], rise = [0, 0.05, 0.15, 0.3, 0.4];
        var net = new Point3[5, 5];
        for (var i = 0; i < 5; i++)
        {
            for (var j = 0; j < 5; j++)
                net[i, j] = new Point3(length[i], breadth[i] * girth[j], rise[j]);
        }

        return new HullSurface(new BSplineSurface(u, v, net), WigleyHull.Dials(4, 0.7, 0.2), 0.5, 0.5);
    }

    // A plate with the places of its views: from the side and from below, greater then lesser curvature.
    private sealed class Plate(HullLines lines)
    {
        public HullLines Lines { get; } = lines;

        public Sheet Sheet { get; } = CurvatureSheet.Of(lines, "Trial", LengthNotation.Millimeters);

        public Point2 OnPaper(int view, Point3 p)
        {
            // The sheer is the first outline of each view; its ends give scale and place.
            var sheer = Sheet.Marks.OfType<PathMark>().Where(m => string.Equals(m.Layer.Name, "outline", StringComparison.Ordinal)).ElementAt(4 * view).Path.Vertices;
            Point3 bow = Lines.Sheer.Start.Point, stern = Lines.Sheer.End.Point;
            var perMeter = (sheer[0].Point.X - sheer[^1].Point.X) / (stern.X - bow.X);
            double Up(Point3 q) => view % 2 == 0 ? q.Z : q.Y;
            return sheer[0].Point + new Vector2((bow.X - p.X) * perMeter, (Up(p) - Up(bow)) * perMeter);
        }

        public string GrayAt(int view, Point3 point)
        {
            var p = OnPaper(view, point);
            return Sheet.Marks.OfType<PathMark>()
                .Last(m => m.Filled && m.Layer.Name.StartsWith("curvature-", StringComparison.Ordinal) && Holds(m.Path, p)).Layer.Name;
        }

        // Places that are seen, each with its curvature, that of places one step of the grid around it, and that of places 0.1 mm around it on paper.
        public IEnumerable<(Point3 Point, IReadOnlyList<PrincipalCurvatures> Around)> Places(bool below)
        {
            const double OnPaper = 0.1 * 30 / 1000;
            var side = Lines.Hull.Side;
            double du = 0.05 / (side.U.Breaks.Count - 1), dv = 0.05 / (side.V.Breaks.Count - 1);
            for (var u = 0.0371; u < 1; u += 0.029)
            {
                for (var v = 0.0537; v < 1; v += 0.061)
                {
                    var jet = side.JetAt(u, v);
                    var normal = jet.V.Cross(jet.U).Unit();
                    if ((below ? -normal.Z : normal.Y) < 0.3)
                        continue;
                    double Up(Vector3 d) => below ? d.Y : d.Z;
                    var det = (jet.U.X * Up(jet.V)) - (jet.V.X * Up(jet.U));
                    (double U, double V) across = (Up(jet.V) / det * OnPaper, -Up(jet.U) / det * OnPaper), up = (-jet.V.X / det * OnPaper, jet.U.X / det * OnPaper);
                    (double U, double V)[] aside = [(0, 0), (du, 0), (-du, 0), (0, dv), (0, -dv), across, (-across.U, -across.V), up, (-up.U, -up.V)];
                    yield return (jet.Point, [.. aside.Select(d => PrincipalCurvatures.Of(side.JetAt(Math.Clamp(u + d.U, 0.001, 0.999), Math.Clamp(v + d.V, 0.001, 0.999))))]);
                }
            }
        }
    }

    private static bool Holds(ArcPath path, Point2 p)
    {
        var inside = false;
        for (var k = 0; k < path.Vertices.Count; k++)
        {
            Point2 a = path.Vertices[k].Point, b = path.Vertices[(k + 1) % path.Vertices.Count].Point;
            if (a.Y > p.Y != b.Y > p.Y && p.X < a.X + ((p.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X)))
                inside = !inside;
        }

        return inside;
    }

}
