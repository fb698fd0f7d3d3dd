using Lines.Drawing.Model;
using Lines.Drawing.Pdf;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Molds;
using Lines.Plans.Paper;
using Lines.Tests.Support;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Graphics;
using Xunit;

namespace Lines.Tests.Plans.Paper;

/// <summary>The printed file read by an independent PDF reader (PdfPig), its vector geometry put together again.</summary>
public class TiledPaperReadBackTests
{
    private const double MillimetersPerPoint = 25.4 / 72;

    public static TheoryData<string, string, double, double, double> Cases
    {
        get
        {
            var cases = new TheoryData<string, string, double, double, double>();
            foreach (var part in new[] { "made-up part", "gauge-runner M2", "gauge-runner M9", "gauge-runner STEM", "silt-sampler TRANSOM" })
            {
                foreach (var paper in new[] { "Letter", "A4" })
                {
                    cases.Add(part, paper, 1, 1, 0);
                    cases.Add(part, paper, 0.985, 1.012, 0.004);
                }
            }

            return cases;
        }
    }

    // Page boxes: RFC-interest archive (Letter, 612 x 792 pt) and ISO 216 (A4, 595.2756 x 841.8898 pt).
    [Theory]
    [MemberData(nameof(Cases))]
    public void The_file_put_together_gives_the_outline_within_a_fiftieth_of_a_millimeter(string name, string paper, double scaleX, double scaleY, double skew)
    {
        var printer = new PrinterCorrection(scaleX, scaleY, skew);
        var (part, outline, pen) = Part(name);
        var (width, height) = paper is "A4" ? (595.2756, 841.8898) : (612, 792);
        var sheets = TiledPaper.Of([part], new(paper is "A4" ? PaperSize.A4 : PaperSize.Letter) { Correction = printer });
        using var file = PdfDocument.Open(PdfFile.Write("sample", sheets));
        Assert.Equal(sheets.Count, file.NumberOfPages);
        var middle = new Point2(width * MillimetersPerPoint / 2, height * MillimetersPerPoint / 2);
        var outlines = new List<List<ArcPath>>();
        var crosses = new List<IReadOnlyDictionary<string, Point2>>();
        for (var i = 0; i < sheets.Count; i++)
        {
            var page = file.GetPage(i + 1);
            Assert.InRange(Math.Max(Math.Abs(page.Width - width), Math.Abs(page.Height - height)), 0, 2e-4);
            var allowed = new Box2(6.4, 6.4, (width * MillimetersPerPoint) - 6.4, (height * MillimetersPerPoint) - 6.4).Grown(1e-3);
            var drawn = page.Paths.SelectMany(p => Flat(p), (p, line) => (Pen: PenOf(p), Line: line)).ToList();
            Assert.All(drawn, d => Assert.True(allowed.Holds(Box2.Around(d.Line.Vertices.Select(v => v.Point)).Grown(d.Pen / 2))));
            if (!sheets[i].Title.StartsWith(part.Title, StringComparison.Ordinal))
                continue;
            // What this printer makes of the page.
            ArcPath Printed(ArcPath p) => ArcPath.Through([.. p.Vertices.Select(v => printer.Printed(v.Point, middle))]);
            outlines.Add([.. drawn.Where(d => Math.Abs(d.Pen - pen) < 1e-6).Select(d => Printed(d.Line))]);
            var read = CrossPlaces([.. drawn.Where(d => d.Line.Vertices.Count == 2).Select(d => Printed(d.Line))]);
            crosses.Add(AssembledPages.CrossesOf(sheets[i]).ToDictionary(
                c => c.Key, c => read.Single(p => p.DistanceTo(printer.Printed(c.Value, middle)) < 0.02), StringComparer.Ordinal));
        }

        var (shifts, worstCross) = AssembledPages.Of(crosses);
        Assert.True(worstCross < 0.001, Invariant($"crosses of one name are {worstCross} mm apart"));
        // Paper length of the house: 0.02 mm.
        Assert.InRange(AssembledPages.Misfit([.. outlines.SelectMany((o, i) => o.Select(p => p.Mapped(q => q + shifts[i])))], [outline], 3), 0, 0.02);
    }

    // All molds of a boat, several on shared pages: side by side they are over 2.4 m broad. Each is drawn with a pen of its own, by which the file tells it.
    [Theory]
    [InlineData("gauge-runner", false)]
    [InlineData("line-layer", true)]
    [InlineData("silt-sampler", false)]
    public void A_set_of_molds_put_together_gives_every_outline_and_none_lies_on_another(string name, bool halves)
    {
        var shaped = ShapedTemplates.Of(name);
        var settings = new PrintSettings(PaperSize.Letter) { Halves = halves };
        var whole = shaped.Molds.Parts.Select(m => MoldSheets.ForPaper("Set", m, LengthNotation.Millimeters, settings)).ToList();
        Assert.True(whole.Sum(p => p.Width) > 2400);
        static double Pen(int part) => 0.4 + (0.001 * part);
        var parts = whole.Select((p, i) => p with { Marks = [.. p.Marks.Select(m => m.Layer.Name is "cut" ? m with { Layer = new Layer(Invariant($"cut-{i}"), new Ink(Pen(i))) } : m)] }).ToList();
        var sheets = TiledPaper.Of(parts, settings);
        using var file = PdfDocument.Open(PdfFile.Write("set", sheets));
        var groups = Enumerable.Range(0, sheets.Count).Where(i => sheets[i].Title.Contains(", row ", StringComparison.Ordinal)).GroupBy(i => sheets[i].Title[..sheets[i].Title.IndexOf(", row ", StringComparison.Ordinal)], StringComparer.Ordinal).ToList();
        Assert.Contains(groups, g => g.Key.Contains(" + ", StringComparison.Ordinal));
        var seen = new HashSet<int>();
        foreach (var pages in groups.Select(g => g.ToList()))
        {
            var (shifts, worstCross) = AssembledPages.Of([.. pages.Select(i => AssembledPages.CrossesOf(sheets[i]))]);
            Assert.True(worstCross < 0.001, Invariant($"crosses of one name are {worstCross} mm apart"));
            var read = pages.SelectMany((i, k) => file.GetPage(i + 1).Paths.SelectMany(p => Flat(p), (p, line) => (Pen: PenOf(p), Line: line.Mapped(q => q + shifts[k])))).ToList();
            var laid = new List<List<Point2>>();
            for (var i = 0; i < parts.Count; i++)
            {
                List<ArcPath> found = [.. read.Where(r => Math.Abs(r.Pen - Pen(i)) < 1e-6).Select(r => r.Line)];
                if (found.Count == 0)
                    continue;
                Assert.True(seen.Add(i), parts[i].Title);
                var outline = whole[i].Marks.OfType<PathMark>().Single(m => m.Layer.Name is "cut").Path;
                // Paper length of the house: 0.02 mm.
                Assert.InRange(AssembledPages.Misfit(found, [outline], 5), 0, 0.02);
                laid.Add([.. found.SelectMany(f => PathDistance.Samples(f, 5))]);
            }

            // Parts keep 4 mm apart.
            for (var i = 0; i < laid.Count; i++)
            {
                var others = new PointGrid(laid.Skip(i + 1).SelectMany(l => l), 3.9);
                Assert.DoesNotContain(laid[i], others.IsNear);
            }
        }

        Assert.Equal(parts.Count, seen.Count);
    }

    // A part, the outline it must give back [mm] and the pen it is drawn with.
    private static (Sheet Part, ArcPath Outline, double Pen) Part(string name)
    {
        if (name is "made-up part")
        {
            // Its hole lies inside the outline, so that it takes no part in the bounds by which both are laid on each other.
            var outline = TiledPaperTests.Part.Marks.OfType<PathMark>().First(m => m.Layer.Name is "cut").Path;
            return (TiledPaperTests.Part with { Marks = [.. TiledPaperTests.Part.Marks.Where((_, i) => i != 1)] }, outline, 0.35);
        }

        var (template, mold) = (name.Split(' ')[0], name.Split(' ')[1]);
        var shaped = ShapedTemplates.Of(template);
        var cut = shaped.Molds.Molds.Single(m => string.Equals(m.Name, mold, StringComparison.Ordinal));
        return (MoldSheets.ForPaper(shaped.Design.Title, cut, LengthNotation.Millimeters), cut.Outline.Mapped(p => new Point2(1000 * p.X, 1000 * p.Y)), 0.5);
    }

    // Two strokes of 8 mm, level and upright, with one middle.
    private static List<Point2> CrossPlaces(IReadOnlyList<ArcPath> lines)
    {
        var arms = lines.Select(p => p.Segments()[0]).Where(s => Math.Abs(s.Length - 8) < 0.001).ToList();
        return [.. arms.Where(a => Math.Abs(a.From.Y - a.To.Y) < 0.001).Select(a => a.PointAt(0.5))
            .Where(p => arms.Any(b => Math.Abs(b.From.X - b.To.X) < 0.001 && b.PointAt(0.5).DistanceTo(p) < 0.001))];
    }

    // The reader gives widths as they stand in the file, whose unit is the micrometer.
    // Micrometers; but a letter's is in units of its own, far fewer, and a letter's pen is at most 0.3 mm here.
    private static double PenOf(PdfPath path) => path.LineWidth < 100 ? 0.3 : path.LineWidth / 1000;

    private static IEnumerable<ArcPath> Flat(PdfPath path) => path.Select(subpath =>
    {
        var points = new List<Point2>();
        foreach (var command in subpath.Commands)
        {
            switch (command)
            {
                case PdfSubpath.Move move:
                    points.Add(Millimeters(move.Location));
                    break;
                case PdfSubpath.Line line:
                    points.Add(Millimeters(line.To));
                    break;
                case PdfSubpath.CubicBezierCurve c:
                    points.AddRange(Enumerable.Range(1, 64).Select(i => At(c, i / 64.0)));
                    break;
                case PdfSubpath.Close:
                    points.Add(points[0]);
                    break;
                default:
                    throw new InvalidOperationException($"a path command of kind {command.GetType().Name}");
            }
        }

        return ArcPath.Through(points);
    });

    private static Point2 At(PdfSubpath.CubicBezierCurve c, double t)
    {
        Point2 a = Millimeters(c.StartPoint), b = Millimeters(c.FirstControlPoint), d = Millimeters(c.SecondControlPoint), e = Millimeters(c.EndPoint);
        double s = 1 - t, wa = s * s * s, wb = 3 * s * s * t, wd = 3 * s * t * t, we = t * t * t;
        return new Point2((wa * a.X) + (wb * b.X) + (wd * d.X) + (we * e.X), (wa * a.Y) + (wb * b.Y) + (wd * d.Y) + (we * e.Y));
    }

    private static Point2 Millimeters(PdfPoint p) => new(p.X * MillimetersPerPoint, p.Y * MillimetersPerPoint);
}
