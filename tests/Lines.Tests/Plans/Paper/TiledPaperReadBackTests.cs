using Lines.Drawing.Pdf;
using Lines.Kernel.Geometry;
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

    // Page boxes: RFC-interest archive (Letter, 612 x 792 pt) and ISO 216 (A4, 595.2756 x 841.8898 pt).
    [Theory]
    [InlineData("Letter", 612, 792)]
    [InlineData("A4", 595.2756, 841.8898)]
    public void The_file_put_together_gives_the_outline_within_a_fiftieth_of_a_millimeter(string paper, double width, double height)
    {
        var sheets = TiledPaper.Of([TiledPaperTests.Part], paper is "A4" ? PaperSize.A4 : PaperSize.Letter, PrinterCorrection.None);
        using var file = PdfDocument.Open(PdfFile.Write(sheets));
        Assert.Equal(sheets.Count, file.NumberOfPages);
        var outlines = new List<List<ArcPath>>();
        var crosses = new List<IReadOnlyDictionary<string, Point2>>();
        for (var i = 0; i < sheets.Count; i++)
        {
            var page = file.GetPage(i + 1);
            Assert.Equal((width, height), (Math.Round(page.Width, 4), Math.Round(page.Height, 4)));
            var allowed = new Box2(6.4, 6.4, (width * MillimetersPerPoint) - 6.4, (height * MillimetersPerPoint) - 6.4).Grown(1e-3);
            foreach (var path in page.Paths)
                Assert.All(Flat(path), p => Assert.True(allowed.Holds(Box2.Around(p.Vertices.Select(v => v.Point)).Grown(path.LineWidth / 2))));
            if (!sheets[i].Title.StartsWith(TiledPaperTests.Part.Title, StringComparison.Ordinal))
                continue;
            outlines.Add([.. page.Paths.Where(p => Math.Abs(p.LineWidth - 0.35) < 1e-6).SelectMany(Flat)]);
            var read = CrossPlaces(page.Paths);
            crosses.Add(AssembledPages.CrossesOf(sheets[i]).ToDictionary(c => c.Key, c => read.Single(p => p.DistanceTo(c.Value) < 0.02), StringComparer.Ordinal));
        }

        var (shifts, worstCross) = AssembledPages.Of(crosses);
        Assert.True(worstCross < 0.001, Invariant($"crosses of one name are {worstCross} mm apart"));
        var whole = outlines.SelectMany((o, i) => o.Select(p => p.Mapped(q => q + shifts[i]))).ToList();
        Compare(whole);
    }

    private static void Compare(List<ArcPath> whole)
    {
        var wanted = TiledPaperTests.Part.Marks.OfType<Lines.Drawing.Model.PathMark>().Where(m => m.Layer.Name is "cut").Select(m => m.Path).ToList();
        var found = whole.Aggregate(Box2.Nothing, (b, p) => b.With(p.Bounds()));
        var asked = wanted.Aggregate(Box2.Nothing, (b, p) => b.With(p.Bounds()));
        Assert.True(found.Width > found.Height);
        wanted = [.. wanted.Select(p => p.Mapped(q => q + (found.Center - asked.Center)))];

        // Paper length of the house: 0.02 mm.
        var there = whole.SelectMany(p => PathDistance.Samples(p, 3)).Max(p => PathDistance.To(wanted, p));
        var back = wanted.SelectMany(p => PathDistance.Samples(p, 3)).Max(p => PathDistance.To(whole, p));
        Assert.True(there < 0.02 && back < 0.02, Invariant($"printed lines are {there} mm off the part, the part {back} mm off them"));
    }

    // Two strokes of 8 mm, level and upright, with one middle.
    private static List<Point2> CrossPlaces(IEnumerable<PdfPath> paths)
    {
        var arms = paths.SelectMany(Flat).Where(p => p.Vertices.Count == 2).Select(p => p.Segments()[0]).Where(s => Math.Abs(s.Length - 8) < 0.001).ToList();
        return [.. arms.Where(a => Math.Abs(a.From.Y - a.To.Y) < 0.001).Select(a => a.PointAt(0.5))
            .Where(p => arms.Any(b => Math.Abs(b.From.X - b.To.X) < 0.001 && b.PointAt(0.5).DistanceTo(p) < 0.001))];
    }

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
