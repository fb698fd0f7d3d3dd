using Lines.Drawing.Model;
using Lines.Drawing.Pdf;
using Lines.Drawing.Png;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Drawing.Png;

public class PngFileTests
{
    [OutsideReaderFact("convert")]
    public void A_line_covers_as_many_pixels_as_its_length_and_width_say()
    {
        var pen = new Layer("pen", new Ink(0.5));
        var sheet = new Sheet("ruler", 210, 100, [new PathMark(pen, ArcPath.Line(new(5, 20), new(205, 77)))]);
        var picture = GrayPicture.OfPng(PngFile.Write(sheet, 2100));
        Assert.Equal((2100, 1000), (picture.Width, picture.Height));
        var length = 10 * Math.Sqrt((200 * 200) + (57 * 57));
        Assert.InRange((picture.Ink - (Math.PI * 6.25)) / length, 4.75, 5.25);
        Assert.True(picture.At(50, 799) > 0.95 && picture.At(2049, 230) > 0.95 && picture.At(45, 803) < 0.3);
    }

    [OutsideReaderFact("convert")]
    public void A_filled_area_covers_as_many_pixels_as_its_area_says()
    {
        var pen = new Layer("pen", new Ink(0.5));
        var disc = new Sheet("disc", 100, 100, [new PathMark(pen, ArcPath.Circle(new(50.03, 49.96), 30), Filled: true)]);
        // Chords at a twentieth of a pixel inside the arc lose 0.03 % of a disc of 300 pixels.
        Assert.InRange(GrayPicture.OfPng(PngFile.Write(disc, 1000)).Ink, 0.998 * Math.PI * 90000, 1.002 * Math.PI * 90000);
        var tone = new Layer("tone", new Ink(0.5, null, 0.4));
        var square = new Sheet("square", 100, 100, [new PathMark(tone, ArcPath.Through([new(10, 10), new(60, 10), new(60, 60), new(10, 60)], true), Filled: true)]);
        Assert.InRange(GrayPicture.OfPng(PngFile.Write(square, 1000)).Ink, 0.6 * 249_000, 0.6 * 251_000);
    }

    /// <summary>Poppler draws the same sheet's PDF: where one picture is black the other is not white, and the ink is the same to 2 %, of lettering
    /// to the 9 % by which its pens are graded. Poppler sets letters on whole pixels, so there a neighbor counts.</summary>
    [OutsideReaderTheory("pdftoppm", "convert")]
    [InlineData(false, 0, 0.02)]
    [InlineData(true, 1, 0.09)]
    public void The_picture_is_that_of_the_pdf(bool lettering, int beside, double ink)
    {
        var sheet = SampleSheets.Everything with { Marks = [.. SampleSheets.Everything.Marks.Where(m => lettering == m is TextMark)] };
        var ours = GrayPicture.OfPng(PngFile.Write(sheet, 2970));
        var theirs = GrayPicture.OfPdf(PdfFile.Write("sample", [sheet]), 1, 2970, 2100);
        Assert.Equal((theirs.Width, theirs.Height), (ours.Width, ours.Height));
        Assert.InRange(ours.Ink / theirs.Ink, 1 - ink, 1 + ink);
        for (var y = beside; y < ours.Height - beside; y++)
        {
            for (var x = beside; x < ours.Width - beside; x++)
            {
                Assert.False(ours.At(x, y) > 0.95 && IsBlank(theirs, x, y), FormattableString.Invariant($"pixel {x}, {y} is black here, white in poppler's"));
                Assert.False(theirs.At(x, y) > 0.95 && IsBlank(ours, x, y), FormattableString.Invariant($"pixel {x}, {y} is white here, black in poppler's"));
            }
        }

        bool IsBlank(GrayPicture picture, int x, int y) =>
            Enumerable.Range(-beside, (2 * beside) + 1).All(i => Enumerable.Range(-beside, (2 * beside) + 1).All(k => picture.At(x + i, y + k) < 0.05));
    }

    [Fact]
    public void Two_runs_write_the_same_bytes() =>
        Assert.Equal(PngFile.Write(SampleSheets.Everything, 800), PngFile.Write(SampleSheets.Everything, 800));

    [OutsideReaderFact("convert")]
    public void Marks_outside_the_sheet_are_cut_off()
    {
        var pen = new Layer("pen", new Ink(1));
        var sheet = new Sheet("cut", 10, 10, [new PathMark(pen, ArcPath.Line(new(-50, 5), new(50, 5))), new PathMark(pen, ArcPath.Circle(new(0, -100), 20), Filled: true), new PathMark(pen, ArcPath.Line(new(-5, 200), new(30, 200)))]);
        Assert.InRange(GrayPicture.OfPng(PngFile.Write(sheet, 100)).Ink, 999, 1001);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    [InlineData(20_001)]
    public void A_picture_without_pixels_or_beyond_20000_is_refused(int width) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PngFile.Write(SampleSheets.Everything, width));
}
