using CsCheck;
using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Plans.Paper;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Paper;

public class PrinterCorrectionTests
{
    private static readonly Layer Pencil = new("pencil", new Ink(0.2));

    private static readonly Gen<PrinterCorrection> Printers =
        Gen.Select(Gen.Double[0.97, 1.03], Gen.Double[0.97, 1.03], Gen.Double[-0.01, 0.01], (x, y, k) => new PrinterCorrection(x, y, k));

    [Fact]
    public void What_is_corrected_is_printed_true() =>
        Gen.Select(Printers, Gen.Double[0, 216], Gen.Double[0, 280]).Sample((printer, x, y) =>
        {
            var middle = new Point2(108, 140);
            Assert.True(printer.Printed(printer.Corrected(new Point2(x, y), middle), middle).DistanceTo(new(x, y)) < 1e-10);
        });

    [Fact]
    public void Four_lines_measured_on_a_simulated_printer_give_its_errors_back() => Printers.Sample(printer =>
    {
        var frame = CalibrationPage.FrameOf(new(PaperSize.Letter));
        var c = frame.Corners.Select(p => printer.Printed(p, frame.Center)).ToList();
        double level = c[0].DistanceTo(c[1]), upright = c[0].DistanceTo(c[3]), rising = c[0].DistanceTo(c[2]), falling = c[3].DistanceTo(c[1]);
        var found = PrinterCorrection.FromMeasured(frame, level, upright, rising, falling);
        Assert.Equal(printer.ScaleX, found.ScaleX, 1e-12);
        Assert.Equal(printer.ScaleY, found.ScaleY, 1e-12);
        Assert.Equal(printer.Skew, found.Skew, 1e-12);
        Assert.Equal(0, PrinterCorrection.Misfit(level, upright, rising, falling), 9);
        Assert.Equal(0.8, PrinterCorrection.Misfit(level, upright, rising, falling + 0.8), 9);
    });

    [Fact]
    public void Arcs_come_out_of_a_simulated_printer_within_their_tolerance() => Printers.Sample(
        printer =>
        {
            ArcPath[] drawn =
            [
                ArcPath.Circle(new(100, 120), 60),
                new([new(new(20, 30), 0.3), new(new(180, 60), -0.8), new(new(150, 250), 0)], false),
            ];
            var sheet = new Sheet("arcs", 215.9, 279.4, [.. drawn.Select(p => new PathMark(Pencil, p))]);
            var middle = new Point2(sheet.Width / 2, sheet.Height / 2);
            var sent = printer.Corrected(sheet).Marks.Cast<PathMark>().ToList();
            for (var i = 0; i < drawn.Length; i++)
            {
                Assert.Equal(drawn[i].Closed, sent[i].Path.Closed);
                foreach (var p in PathDistance.Samples(sent[i].Path, 1))
                    Assert.True(PathDistance.To([drawn[i]], printer.Printed(p, middle)) < 1.1 * PrinterCorrection.ArcTolerance);
            }
        },
        iter: 20);

    [Fact]
    public void A_true_printer_changes_nothing()
    {
        var sheet = new Sheet("plain", 10, 10, [new PathMark(Pencil, ArcPath.Circle(new(5, 5), 2))]);
        Assert.Same(sheet, PrinterCorrection.None.Corrected(sheet));
    }

    [Theory]
    [InlineData(0.89, 1, 0)]
    [InlineData(1, 1.11, 0)]
    [InlineData(1, 1, 0.06)]
    [InlineData(double.NaN, 1, 0)]
    [InlineData(1, 1, double.NaN)]
    public void A_misread_ruler_is_refused(double x, double y, double skew) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new PrinterCorrection(x, y, skew));
}
