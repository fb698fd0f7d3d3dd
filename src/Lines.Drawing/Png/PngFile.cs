using Lines.Drawing.Canvas;
using Lines.Drawing.Model;
using SkiaSharp;

namespace Lines.Drawing.Png;

/// <summary>Draws a sheet as a PNG: grays on white.</summary>
/// <remarks>
/// <para><b>Accuracy.</b> Arcs within a twentieth of a pixel. No line is drawn thinner than <see cref="ThinnestLine"/>, so
/// that a large sheet stays legible on a screen; line widths above it are true to a quarter of a pixel.</para>
/// </remarks>
public static class PngFile
{
    /// <summary>Width of the thinnest line [pixels].</summary>
    public const double ThinnestLine = 1;

    private const int LargestSide = 20_000;

    /// <summary>Greatest distance of a curve from its arc [pixels].</summary>
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
        using var bitmap = new SKBitmap(new SKImageInfo(widthPx, (int)heightPx, SKColorType.Gray8, SKAlphaType.Opaque));
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(SKColors.White);
            var marks = new SheetCanvas(scale, ArcTolerance / scale, ThinnestLine);
            marks.Draw(sheet, canvas);
        }

        using var pixels = bitmap.PeekPixels();
        // Line drawings deflate best unfiltered.
        using var data = pixels.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.None, 3))
            ?? throw new InvalidOperationException("the picture could not be encoded");
        return data.ToArray();
    }
}
