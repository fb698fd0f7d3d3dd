using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;

namespace Lines.Plans.Paper;

/// <summary>The page that measures a printer: the longest lines it takes both ways and on both diagonals, and the sums to do.</summary>
public static class CalibrationPage
{
    private const double Inch = 25.4;

    /// <summary>The rectangle whose sides and diagonals are to be measured: as large as the paper takes, in whole millimeters.</summary>
    /// <param name="settings">Paper, border, and the correction the page is printed with, which may need a little room.</param>
    /// <returns>The rectangle on the page [mm].</returns>
    public static Box2 FrameOf(PrintSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var content = new PageLayout(settings).Content;
        double width = Math.Floor(content.Width) / 2, height = Math.Floor(content.Height) / 2;
        var c = content.Center;
        return new Box2(c.X - width, c.Y - height, c.X + width, c.Y + height);
    }

    /// <summary>Draws the page, before the printer's correction.</summary>
    internal static Sheet Of(PrintSettings settings, int pages, LengthNotation notation)
    {
        var (paper, correction) = (settings.Paper, settings.Correction);
        var isMetric = notation == LengthNotation.Millimeters;
        var marks = new PageMarks();
        var frame = FrameOf(settings);
        DrawLines(marks, frame, isMetric);
        DrawHead(marks, frame, correction, pages);
        DrawMeasures(marks, frame);
        DrawSums(marks, frame, correction, isMetric);
        DrawSquare(marks, frame);
        return new Sheet("Calibration page", paper.Width, paper.Height, marks.All);
    }

    private static void DrawLines(PageMarks marks, Box2 f, bool isMetric)
    {
        marks.Box(PageInks.Rule, f);
        marks.Line(PageInks.Rule, new Point2(f.Left, f.Bottom), new Point2(f.Right, f.Top));
        marks.Line(PageInks.Rule, new Point2(f.Left, f.Top), new Point2(f.Right, f.Bottom));
        var rise = Math.Atan2(f.Height, f.Width);
        var diagonal = Math.Sqrt((f.Width * f.Width) + (f.Height * f.Height));
        Named($"L  {Both(f.Width, isMetric)}", new Point2(f.Center.X, f.Bottom + 2.5), 0);
        Named($"U  {Both(f.Height, isMetric)}", new Point2(f.Left + 5, f.Center.Y), Math.PI / 2);
        Named($"R  {Both(diagonal, isMetric)}", Along(0.16, rise, 2), rise);
        Named($"F  {Both(diagonal, isMetric)}", new Point2(f.Left + f.Right - Along(0.16, rise, 2).X, Along(0.16, rise, 2).Y), -rise);

        void Named(string text, Point2 at, double angle) => marks.Text(PageInks.Label, text, at, 3, anchor: Anchor.Center, angle: angle);
        Point2 Along(double fraction, double angle, double off) => new(
            f.Left + (fraction * f.Width) - (off * Math.Sin(angle)), f.Bottom + (fraction * f.Height) + (off * Math.Cos(angle)));
    }

    private static void DrawHead(PageMarks marks, Box2 f, PrinterCorrection c, int pages)
    {
        var top = f.Top - 12;
        Centered("Calibration page", 5, 0, PageInks.Label);
        Centered(Invariant($"page 1 of {pages}: print this page first, at actual size"), 2.6, 7, PageInks.Small);
        Centered(c.IsNone ? "printed without correction" : Invariant($"printed with scale-x {c.ScaleX:0.00000}, scale-y {c.ScaleY:0.00000}, skew {c.Skew:0.00000}"), 2.6, 13, PageInks.Small);
        Centered(c.IsNone ? "Measure L, U, R, F to the middles of the lines." : "The four lines should now measure what they say.", 2.6, 19, PageInks.Small);
        Centered("Measure the square before cutting.", 2.6, 25, PageInks.Small);

        void Centered(string text, double height, double down, Layer layer) =>
            marks.Text(layer, text, new Point2(f.Center.X, top - down), height, 0.9 * Between(f, top - down), Anchor.Center);
    }

    // Beside the square, where the diagonals leave room at middle height.
    private static void DrawMeasures(PageMarks marks, Box2 f)
    {
        double left = f.Left + 9, y = f.Center.Y + 25;
        marks.Text(PageInks.Small, "as measured:", new Point2(left, y), 2.6);
        foreach (var line in "LURF")
        {
            y -= 12;
            marks.Text(PageInks.Label, $"{line} =", new Point2(left, y), 3);
            marks.Line(PageInks.Rule, new Point2(left + 9, y - 1), new Point2(left + 37, y - 1));
        }
    }

    // Below the square, between the diagonals, each line as wide as they let it.
    private static void DrawSums(PageMarks marks, Box2 f, PrinterCorrection correction, bool isMetric)
    {
        var y = f.Center.Y - (TestSquare.Side / 2) - 11;
        foreach (var line in correction.IsNone ? Sums(f, isMetric) : Again(isMetric))
        {
            marks.Text(PageInks.Small, line, new Point2(f.Center.X, y), 2.4, Between(f, y + 2.4) - 6, Anchor.Center);
            y -= 5.6;
        }
    }

    // The room across between the two diagonals at a level.
    private static double Between(Box2 f, double y) => f.Width * 2 * Math.Abs(y - f.Center.Y) / f.Height;

    private static string[] Again(bool isMetric) =>
        [$"If a line is off by more than {(isMetric ? "0.5 mm" : "0.02 in (0.5 mm)")},", "print this page without correction", "and measure again."];

    private static string[] Sums(Box2 f, bool isMetric) =>
    [
        isMetric ? "in millimeters:" : "in inches (or in millimeters):",
        Invariant($"scale-x = L / {Plain(f.Width, isMetric)}"),
        Invariant($"scale-y = U / {Plain(f.Height, isMetric)}"),
        Invariant($"skew = (R² - F²) / (4 × L × {Plain(f.Height, isMetric)})"),
        "give them as --scale-x, --scale-y, --skew",
        "and print this page again.",
        "Check: R² + F² = 2 × (L² + U²)",
        $"within {(isMetric ? "500 mm²" : "0.78 in² (500 mm²)")}, else measure again.",
    ];

    private static void DrawSquare(PageMarks marks, Box2 f)
    {
        var square = TestSquare.Around(f.Center);
        marks.Box(PageInks.Label, square);
        Written("test square", square.Top - 8, 3);
        Written(TestSquare.Size, square.Top - 14, 3);
        Written("each way", square.Bottom + 6, 2.6);

        void Written(string text, double y, double height) =>
            marks.Text(PageInks.Label, text, new Point2(f.Center.X, y), height, Between(f, y > f.Center.Y ? y : y + height) - 6, Anchor.Center);
    }

    private static string Both(double mm, bool isMetric) => isMetric ? Invariant($"{mm:0.00} mm  {mm / Inch:0.000} in") : Invariant($"{mm / Inch:0.000} in  {mm:0.00} mm");

    private static string Plain(double mm, bool isMetric) => isMetric ? Invariant($"{mm:0.00}") : Invariant($"{mm / Inch:0.000} ({mm:0.00})");
}
