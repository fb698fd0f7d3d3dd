using System.Text;
using CsCheck;
using Lines.Drawing.Model;
using Lines.Drawing.Pdf;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;
using UglyToad.PdfPig;
using Xunit;

namespace Lines.Tests.Drawing.Pdf;

public class PdfFileTests
{
    private static readonly byte[] Everything = PdfFile.Write("sample", [SampleSheets.Everything, new Sheet("blank", 210, 297, [])]);

    /// <summary>ISO 32000-1: 72 points to the inch; Letter is 8.5 x 11 in, A4 210 x 297 mm (ISO 216).</summary>
    [Theory]
    [InlineData(215.9, 279.4, 612, 792)]
    [InlineData(210, 297, 595.2756, 841.8898)]
    [InlineData(1189, 841, 3370.3937, 2383.937)]
    public void The_page_box_is_the_sheet(double width, double height, double widthPt, double heightPt)
    {
        using var document = PdfDocument.Open(PdfFile.Write("sample", [new Sheet("blank", width, height, [])]));
        var box = document.GetPage(1).MediaBox.Bounds;
        Assert.Equal((0, 0), (box.Left, box.Bottom));
        Assert.InRange(Math.Abs(box.Width - widthPt), 0, 2e-4);
        Assert.InRange(Math.Abs(box.Height - heightPt), 0, 2e-4);
    }

    [Fact]
    public void PdfPig_reads_the_same_paths_within_two_thousandths_of_a_millimeter()
    {
        var solid = SampleSheets.Everything with { Marks = [.. SampleSheets.Everything.Marks.Where(m => m is PathMark { Layer.Ink.Dash: null })] };
        var drawn = SheetPaths.Of(solid);
        var read = PdfStrokes.Of(PdfFile.Write("sample", [solid]), 1);
        Assert.Equal(drawn.Count, read.Count);
        foreach (var ((mark, path), stroke) in drawn.Zip(read))
        {
            Assert.Equal(mark is PathMark { Filled: true }, stroke.Filled);
            AssertSamePath(path, stroke);
        }
    }

    [Fact]
    public void PdfPig_reads_lettering_as_the_text_it_is_each_letter_where_it_stands()
    {
        foreach (var text in SampleSheets.Everything.Marks.OfType<TextMark>().Append(new TextMark(SampleSheets.Outline, "Äskön Ø 7,5° ½ → x²", new(150, 60), 3.7, Angle: -2)))
        {
            using var document = PdfDocument.Open(PdfFile.Write("sample", [new Sheet("text", 297, 210, [text])]));
            var read = document.GetPage(1).Letters;
            var along = new Vector2(Math.Cos(text.Angle), Math.Sin(text.Angle));
            var left = text.Anchor switch { Anchor.Left => 0, Anchor.Right => -1, _ => -0.5 } * StrokeLettering.Width(text.Text, text.Height);
            var below = text.Anchor is Anchor.Middle ? -text.Height / 2 : 0;
            List<string> letters = [.. text.Text.EnumerateRunes().Select(r => r.ToString())];
            Assert.Equal(string.Concat(text.Text.EnumerateRunes().Where(StrokeLettering.Has)), string.Concat(read.Select(l => l.Value).Where(v => StrokeLettering.Has(v.EnumerateRunes().First()))));
            Assert.Equal(letters.Count, read.Count);
            for (var k = 0; k < letters.Count; k++)
            {
                var pen = left + StrokeLettering.Width(string.Concat(letters.Take(k + 1)), text.Height) - StrokeLettering.Width(letters[k], text.Height);
                var at = text.At + (pen * along) + (below * along.TurnedLeft);
                Assert.InRange(new Point2(read[k].StartBaseLine.X * 25.4 / 72, read[k].StartBaseLine.Y * 25.4 / 72).DistanceTo(at), 0, 0.002 + (text.Height / 200));
            }
        }
    }

    [OutsideReaderFact("pdftoppm", "convert")]
    public void A_letter_is_drawn_by_its_strokes_with_a_pen_within_a_tenth_of_its_layers()
    {
        // Every letter the alphabet has and one it lacks, by lines of both thin and clogging pens.
        var letters = StrokeLettering.Characters.Where(c => c.Value != ' ').Select(c => c.ToString()).Append("\u4e00").ToList();
        foreach (var width in new[] { 0.13, 0.25, 0.9 })
        {
            var pen = new Layer("pen", new Ink(width));
            TextMark[] texts = [.. letters.Chunk(16).Select((line, k) => new TextMark(pen, string.Concat(line), new(8, 12 + (14 * k)), 6))];
            var sheet = new Sheet("alphabet", 220, 30 + (14 * texts.Length), texts);
            var strokes = sheet with { Marks = [.. texts.SelectMany(t => StrokeLettering.Strokes(t)).Select(s => new PathMark(new Layer("pen", new Ink(Math.Min(width, 6.0 / 8))), s))] };
            GrayPicture text = Picture(sheet), drawn = Picture(strokes);
            Assert.InRange(text.Ink / drawn.Ink, 0.9, 1.1);
            for (var y = 0; y < text.Height; y++)
            {
                for (var x = 0; x < text.Width; x++)
                {
                    if (text.At(x, y) > 0.9)
                        Assert.True(drawn.InkIn(x - 1, y - 1, x + 2, y + 2) > 0.5, Invariant($"ink at {x}, {y} where no stroke is, pen {width}"));
                    if (drawn.At(x, y) > 0.9)
                        Assert.True(text.InkIn(x - 1, y - 1, x + 2, y + 2) > 0.5, Invariant($"no ink at {x}, {y} where a stroke is, pen {width}"));
                }
            }
        }

        static GrayPicture Picture(Sheet sheet) => GrayPicture.OfPdf(PdfFile.Write("sample", [sheet]), 1, (int)(sheet.Width * 10), (int)(sheet.Height * 10));
    }

    [Fact]
    public void Arcs_of_any_size_and_angle_stay_within_two_thousandths_of_a_millimeter()
    {
        var point = Gen.Select(Gen.Double[0, 1500], Gen.Double[0, 900], (x, y) => new Point2(x, y));
        var vertex = Gen.Select(point, Gen.OneOf(Gen.Double[-3, 3], Gen.Double[-1e-5, 1e-5], Gen.Const(0.0), Gen.Const(1e-17)), (p, b) => new ArcVertex(p, b));
        Gen.Select(vertex.Array[2, 6], Gen.Bool).Sample(
            (vertices, closed) =>
            {
                var path = new ArcPath(vertices, closed);
                var pdf = PdfFile.Write("sample", [new Sheet("any", 1500, 900, [new PathMark(SampleSheets.Outline, path)])]);
                AssertSamePath(path, Assert.Single(PdfStrokes.Of(pdf, 1)));
            },
            iter: 200);
    }

    [Fact]
    public void Dashes_are_strokes_on_the_line_as_long_as_the_ink_says()
    {
        var circle = ArcPath.Circle(new(60, 60), 35);
        var sheet = new Sheet("dashes", 120, 120, [new PathMark(SampleSheets.Dashed, circle)]);
        var read = PdfStrokes.Of(PdfFile.Write("sample", [sheet]), 1);
        // Dashes of 6 and 1 mm, gaps of 2, then the other way about: 6-2-1 6-2-1 has dashes 6, 1, 2 and gaps 2, 6, 1.
        var lengths = read.Select(s => s.Points.Zip(s.Points.Skip(1), (a, b) => a.DistanceTo(b)).Sum()).ToList();
        Assert.Equal((int)Math.Ceiling(2 * Math.PI * 35 / 18 * 3), lengths.Count);
        for (var i = 0; i < lengths.Count - 1; i++)
            Assert.Equal((i % 3) switch { 0 => 6, 1 => 1, _ => 2 }, lengths[i], 0.002);
        Assert.All(read.SelectMany(s => s.Points), p => Assert.InRange(circle.DistanceTo(p), 0, 0.002));
    }

    [OutsideReaderFact("qpdf")]
    public void Qpdf_finds_no_fault()
    {
        using var file = ScratchFile.With(".pdf", Everything);
        var run = OutsideReader.Run("qpdf", "--check", file.Path);
        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
    }

    [OutsideReaderFact("pdftoppm")]
    public void A_line_prints_where_and_as_wide_as_it_was_drawn()
    {
        var pen = new Layer("pen", new Ink(0.5));
        var sheet = new Sheet("ruler", 210, 100, [new PathMark(pen, ArcPath.Line(new(5, 50), new(205, 50)))]);
        var picture = GrayPicture.OfPdf(PdfFile.Write("sample", [sheet]), 1, 2100, 1000);
        // Ten pixels to the millimeter: 200 mm of a 0.5 mm pen with round ends.
        Assert.InRange(picture.Ink, 0.99 * 10019.6, 1.01 * 10019.6);
        Assert.InRange(picture.InkIn(49, 490, 2051, 510), 0.99 * 10000, 1.01 * 10019.6);
        Assert.True(picture.At(50, 500) > 0.9 && picture.At(2049, 500) > 0.9 && picture.At(44, 500) < 0.1 && picture.At(2056, 500) < 0.1);
    }

    [OutsideReaderFact("pdftoppm")]
    public void Dashes_print_as_long_as_the_ink_says()
    {
        var pen = new Layer("pen", new Ink(0.2, [6, 2, 1, 2]));
        var sheet = new Sheet("dashes", 120, 20, [new PathMark(pen, ArcPath.Line(new(5, 10), new(115, 10)))]);
        var picture = GrayPicture.OfPdf(PdfFile.Write("sample", [sheet]), 1, 1200, 200);
        // Ten turns of 11 mm, each with a dash of 6 and one of 1 mm, and the pen's two half ends: 0.2 wide.
        var turn = (7 * 0.2) + (2 * Math.PI * 0.01);
        Assert.InRange(picture.Ink, 0.97 * 1000 * turn, 1.03 * 1000 * turn);
        Assert.True(picture.At(50 + 30, 100) > 0.5 && picture.At(50 + 70, 100) < 0.1 && picture.At(50 + 85, 100) > 0.5 && picture.At(50 + 100, 100) < 0.1);
    }

    [Fact]
    public void Two_runs_write_the_same_bytes_and_no_date()
    {
        Assert.Equal(Everything, PdfFile.Write("sample", [SampleSheets.Everything, new Sheet("blank", 210, 297, [])]));
        Assert.DoesNotContain("Date", Encoding.Latin1.GetString(Everything), StringComparison.Ordinal);
    }

    [Fact]
    public void The_title_is_the_one_given()
    {
        using var document = PdfDocument.Open(PdfFile.Write("Rail & <bench> \"é\": plan", [SampleSheets.Everything, new Sheet("blank", 210, 297, [])]));
        Assert.Equal("Rail & <bench> \"é\": plan", document.Information.Title);
        Assert.Equal(2, document.NumberOfPages);
    }

    [Fact]
    public void No_sheet_and_a_sheet_without_area_are_refused()
    {
        Assert.Throws<ArgumentException>(() => PdfFile.Write("sample", []));
        Assert.Throws<ArgumentException>(() => PdfFile.Write("sample", [new Sheet("flat", 100, 0, [])]));
        Assert.Throws<ArgumentException>(() => PdfFile.Write("sample", [new Sheet("NaN", double.NaN, 10, [])]));
    }

    private static void AssertSamePath(ArcPath path, PdfStroke stroke, double curves = 0.002, double corners = 0.001)
    {
        Assert.Equal(path.Closed, stroke.Closed);
        Assert.All(stroke.Points, p => Assert.InRange(path.DistanceTo(p), 0, curves));
        Assert.All(path.Vertices, v => Assert.InRange(stroke.Nodes.Min(n => n.DistanceTo(v.Point)), 0, corners));
        // A piece left out or drawn twice would show in the length; chords of an arc cut in eighths of at most 90 degrees lose 0.16 %.
        var points = stroke.Closed ? stroke.Points.Append(stroke.Points[0]).ToList() : stroke.Points;
        var length = points.Zip(points.Skip(1), (a, b) => a.DistanceTo(b)).Sum();
        Assert.InRange(length, (0.998 * path.Length()) - 0.01, path.Length() + 0.01);
    }
}
