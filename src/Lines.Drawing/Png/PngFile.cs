using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;

namespace Lines.Drawing.Png;

/// <summary>Draws a sheet as a PNG: greys on white.</summary>
/// <remarks>
/// <para><b>Method.</b> A line is what a round pen covers, a pixel's shade the part of it covered (<see cref="Raster"/>).
/// Plain arithmetic, no graphics library: the same sheet gives the same pixels on every system.</para>
/// <para><b>Accuracy.</b> Arcs within a twentieth of a pixel. No line is drawn thinner than <see cref="ThinnestLine"/>, so
/// that a large sheet stays legible on a screen; line widths above it are true. The file states its resolution.</para>
/// </remarks>
public static class PngFile
{
    /// <summary>Width of the thinnest line [pixels].</summary>
    public const double ThinnestLine = 1;

    private const int LargestSide = 20_000;

    /// <summary>Greatest distance of a chord from its arc [pixels].</summary>
    private const double ArcTolerance = 0.05;

    /// <summary>The file's bytes.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="widthPx">Width of the picture [pixels], 1 to 20,000; its height follows from the sheet's.</param>
    /// <returns>The file.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The picture has no pixels, or more than 20,000 either way.</exception>
    /// <exception cref="ArgumentException">A mark cannot be drawn.</exception>
    public static byte[] Write(Sheet sheet, int widthPx)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var scale = widthPx / sheet.Width;
        var heightPx = Math.Max(1, Math.Round(sheet.Height * scale));
        if (!(widthPx is >= 1 and <= LargestSide && heightPx <= LargestSide))
            throw new ArgumentOutOfRangeException(nameof(widthPx), widthPx, Invariant($"a picture of {widthPx} x {heightPx} pixels; 1 to {LargestSide} either way can be drawn"));
        var raster = new Raster(widthPx, (int)heightPx);
        foreach (var mark in sheet.Marks)
            Draw(raster, mark, sheet.Height, scale);
        return PngEncoder.Encode(raster, pixelsPerMeter: scale * 1000);
    }

    private static void Draw(Raster raster, Mark mark, double sheetHeight, double scale)
    {
        var ink = mark.Layer.Ink;
        switch (mark)
        {
            case PathMark { Filled: true } area:
                raster.Fill(Pixels(area.Path, sheetHeight, scale));
                break;
            case PathMark line:
                var points = Pixels(line.Path, sheetHeight, scale);
                var width = Math.Max(ink.Width * scale, ThinnestLine);
                if (ink.Dash is { Count: > 0 } dash)
                    Dashes.Draw(points, [.. dash.Select(d => d * scale)], stroke => raster.Stroke(stroke, width));
                else
                    raster.Stroke(points, width);
                break;
            case TextMark text:
                // Small lettering keeps thin pens, else it clogs: under a pixel the pen is a paler one.
                var pen = Math.Max(StrokeLettering.PenWidth(text) * scale, Math.Min(ThinnestLine, text.Height * scale / 8));
                foreach (var stroke in StrokeLettering.Strokes(text))
                    raster.Stroke(Pixels(stroke, sheetHeight, scale), pen);
                break;
            default:
                throw new ArgumentException($"a {mark.GetType().Name} cannot be drawn in a PNG", nameof(mark));
        }

        raster.Ink((byte)Math.Round(255 * Math.Clamp(ink.Tone, 0, 1)));
    }

    /// <summary>The path as points in pixels, y down.</summary>
    private static Point2[] Pixels(ArcPath path, double sheetHeight, double scale)
    {
        PathGuard.Require(path);
        return [.. path.Flattened(ArcTolerance / scale).Select(p => new Point2(p.X * scale, (sheetHeight - p.Y) * scale))];
    }
}
