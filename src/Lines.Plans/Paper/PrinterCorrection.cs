using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>What one printer does to lengths and right angles, and the counter-measure.</summary>
/// <remarks>
/// <para><b>Frame.</b> The page as it is read, x to the right, y up, about its middle.</para>
/// <para><b>Sign.</b> A scale above 1 is a printer that prints too large; a positive skew is an upright that leans to the right
/// as it goes up, by that many millimeters in a millimeter.</para>
/// <para><b>Method.</b> The printer takes (x, y) to (ScaleX x + Skew y, ScaleY y); marks are moved by the inverse before printing. Where
/// level and upright lines are stretched differently or lean, a circle prints as an ellipse; arcs are then replaced by shorter arcs.</para>
/// <para><b>Accuracy.</b> Places are exact to rounding; points of replaced arcs are within <see cref="ArcTolerance"/>.</para>
/// </remarks>
public sealed record PrinterCorrection
{
    /// <summary>Greatest distance of a replaced arc from the true ellipse [mm]: a tenth of the paper tolerance of 0.02 mm.</summary>
    public const double ArcTolerance = 0.002;

    /// <summary>Makes the correction of a printer with known errors.</summary>
    /// <param name="scaleX">Printed length over true length across the page, 0.9 to 1.1.</param>
    /// <param name="scaleY">Printed length over true length up the page, 0.9 to 1.1.</param>
    /// <param name="skew">Lean of an upright to the right, per unit of height, -0.05 to 0.05.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range: a misread ruler, not a printer.</exception>
    public PrinterCorrection(double scaleX, double scaleY, double skew)
    {
        if (!(scaleX is >= 0.9 and <= 1.1))
            throw new ArgumentOutOfRangeException(nameof(scaleX), scaleX, "a printer's scale across is 0.9 to 1.1");
        if (!(scaleY is >= 0.9 and <= 1.1))
            throw new ArgumentOutOfRangeException(nameof(scaleY), scaleY, "a printer's scale up the page is 0.9 to 1.1");
        if (!(skew is >= -0.05 and <= 0.05))
            throw new ArgumentOutOfRangeException(nameof(skew), skew, "a printer's skew is -0.05 to 0.05");
        (ScaleX, ScaleY, Skew) = (scaleX, scaleY, skew);
    }

    /// <summary>A printer that is true.</summary>
    public static PrinterCorrection None { get; } = new(1, 1, 0);

    /// <summary>Printed length over true length across the page.</summary>
    public double ScaleX { get; }

    /// <summary>Printed length over true length up the page.</summary>
    public double ScaleY { get; }

    /// <summary>Lean of an upright to the right, per unit of height.</summary>
    public double Skew { get; }

    /// <summary>Whether the printer is taken to be true.</summary>
    public bool IsNone => ScaleX == 1 && ScaleY == 1 && Skew == 0;

    /// <summary>The correction from the four lines of the calibration page, printed without any correction and measured.</summary>
    /// <remarks>
    /// <b>Method.</b> With w and h the true lengths of the level and the upright line: ScaleX = level / w;
    /// Skew = (rising² - falling²) / (4 level h), because the diagonals of the sheared rectangle differ by that much;
    /// ScaleY = √((upright / h)² - Skew²), because a leaning line is longer than it is high.
    /// </remarks>
    /// <param name="frame">The rectangle the four lines were drawn in; see <see cref="CalibrationPage.FrameOf"/>.</param>
    /// <param name="level">Measured length across [mm].</param>
    /// <param name="upright">Measured length up the page [mm].</param>
    /// <param name="rising">Measured diagonal from the lower left corner to the upper right [mm].</param>
    /// <param name="falling">Measured diagonal from the upper left corner to the lower right [mm].</param>
    /// <returns>The correction.</returns>
    public static PrinterCorrection FromMeasured(Box2 frame, double level, double upright, double rising, double falling)
    {
        var skew = ((rising * rising) - (falling * falling)) / (4 * level * frame.Height);
        var lean = upright / frame.Height;
        return new PrinterCorrection(level / frame.Width, Math.Sqrt((lean * lean) - (skew * skew)), skew);
    }

    /// <summary>How far four measured lines are from belonging to one parallelogram [mm].</summary>
    /// <remarks>
    /// <b>Method.</b> The squares of the diagonals of a parallelogram add up to twice those of its sides. The falling diagonal is
    /// compared with the one the other three lines call for; more than 0.5 mm means a line was misread.
    /// </remarks>
    /// <returns>Measured less expected length of the falling diagonal.</returns>
    public static double Misfit(double level, double upright, double rising, double falling) =>
        falling - Math.Sqrt(Math.Max(0, (2 * ((level * level) + (upright * upright))) - (rising * rising)));

    /// <summary>What the printer makes of a place.</summary>
    /// <param name="p">A place on the page [mm].</param>
    /// <param name="middle">The page's middle [mm], which stays where it is.</param>
    public Point2 Printed(Point2 p, Point2 middle)
    {
        var d = p - middle;
        return middle + new Vector2((ScaleX * d.X) + (Skew * d.Y), ScaleY * d.Y);
    }

    /// <summary>Where a mark must be sent for the printer to put it at a place: the inverse of <see cref="Printed"/>.</summary>
    public Point2 Corrected(Point2 p, Point2 middle)
    {
        var d = p - middle;
        var y = d.Y / ScaleY;
        return middle + new Vector2((d.X - (Skew * y)) / ScaleX, y);
    }

    /// <summary>The largest box about the same middle whose corrected marks stay in a box.</summary>
    internal Box2 Fitting(Box2 box)
    {
        var halfHeight = box.Height / 2 * Math.Min(1, ScaleY);
        var lean = Math.Abs(Skew / ScaleY) * halfHeight;
        var halfWidth = Math.Min(box.Width / 2, (box.Width / 2 * ScaleX) - lean);
        var c = box.Center;
        return new Box2(c.X - halfWidth, c.Y - halfHeight, c.X + halfWidth, c.Y + halfHeight);
    }

    /// <summary>A sheet with every mark moved so that this printer prints it true.</summary>
    public Sheet Corrected(Sheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var middle = new Point2(sheet.Width / 2, sheet.Height / 2);
        return IsNone ? sheet : sheet with { Marks = [.. sheet.Marks.Select(m => Corrected(m, middle))] };
    }

    private Mark Corrected(Mark mark, Point2 middle) => mark switch
    {
        PathMark path => path with { Path = ShearedArcs.Mapped(path.Path, p => Corrected(p, middle), ArcTolerance) },
        TextMark text => text with { At = Corrected(text.At, middle) },
        _ => throw new ArgumentException($"a mark of kind {mark.GetType().Name} cannot be corrected", nameof(mark)),
    };
}
