using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using SkiaSharp;

namespace Lines.Drawing.Png;

/// <summary>Draws a sheet as a PNG: greys on white.</summary>
/// <remarks>
/// <para><b>Accuracy.</b> Arcs within a fiftieth of a pixel. No line is drawn thinner than <see cref="ThinnestLine"/>, so
/// that a large sheet stays legible on a screen; line widths above it are true.</para>
/// </remarks>
public static class PngFile
{
    /// <summary>Width of the thinnest line [pixels].</summary>
    public const double ThinnestLine = 1;

    private const double ArcTolerance = 0.02;

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
        if (!(widthPx is >= 1 and <= 20_000 && heightPx <= 20_000))
            throw new ArgumentOutOfRangeException(nameof(widthPx), widthPx, Invariant($"a picture of {widthPx} x {heightPx} pixels; 1 to 20,000 can be drawn"));
        using var bitmap = new SKBitmap(new SKImageInfo(widthPx, (int)heightPx, SKColorType.Gray8, SKAlphaType.Opaque));
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(SKColors.White);
            Draw(sheet, scale, canvas);
        }

        using var pixels = bitmap.PeekPixels();
        using var data = pixels.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.None, 6))
            ?? throw new InvalidOperationException("the picture could not be encoded");
        return data.ToArray();
    }

    private static void Draw(Sheet sheet, double scale, SKCanvas canvas)
    {
        using var pen = new RasterPen(sheet.Height, scale);
        using var paint = new SKPaint { IsAntialias = true, StrokeCap = SKStrokeCap.Round, StrokeJoin = SKStrokeJoin.Round };
        foreach (var mark in sheet.Marks)
        {
            var ink = mark.Layer.Ink;
            var grey = (byte)Math.Round(255 * Math.Clamp(ink.Tone, 0, 1));
            paint.Color = new SKColor(grey, grey, grey);
            paint.IsStroke = mark is not PathMark { Filled: true };
            switch (mark)
            {
                case PathMark path:
                    paint.StrokeWidth = (float)Math.Max(ink.Width * scale, ThinnestLine);
                    PathWalk.Draw(path.Path, pen, ArcTolerance / scale);
                    pen.Put(canvas, paint, ink.Dash);
                    break;
                case TextMark text:
                    paint.StrokeWidth = (float)Math.Max(StrokeLettering.PenWidth(text) * scale, Math.Min(ThinnestLine, text.Height * scale / 8));
                    foreach (var stroke in StrokeLettering.Strokes(text))
                        PathWalk.Draw(stroke, pen, ArcTolerance / scale);
                    pen.Put(canvas, paint, null);
                    break;
                default:
                    throw new ArgumentException($"a {mark.GetType().Name} cannot be drawn in a PNG", nameof(sheet));
            }
        }
    }

    /// <summary>Gathers a path in pixels, y down, and puts it on the canvas.</summary>
    private sealed class RasterPen(double sheetHeight, double scale) : IPathPen, IDisposable
    {
        private readonly SKPathBuilder _builder = new();

        public void MoveTo(Point2 to) => _builder.MoveTo(Pixel(to));

        public void LineTo(Point2 to) => _builder.LineTo(Pixel(to));

        public void CubicTo(Point2 first, Point2 second, Point2 to) => _builder.CubicTo(Pixel(first), Pixel(second), Pixel(to));

        public void Close() => _builder.Close();

        public void Put(SKCanvas canvas, SKPaint paint, IReadOnlyList<double>? dash)
        {
            using var path = _builder.Detach();
            using var effect = dash is { Count: > 0 } && paint.IsStroke ? SKPathEffect.CreateDash(InPixels(dash), 0) : null;
            paint.PathEffect = effect;
            canvas.DrawPath(path, paint);
            paint.PathEffect = null;
        }

        public void Dispose() => _builder.Dispose();

        private float[] InPixels(IReadOnlyList<double> dash) =>
            [.. (dash.Count % 2 == 0 ? dash : dash.Concat(dash)).Select(d => (float)(d * scale))];

        private SKPoint Pixel(Point2 p) => new((float)(p.X * scale), (float)((sheetHeight - p.Y) * scale));
    }
}
