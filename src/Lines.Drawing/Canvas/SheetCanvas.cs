using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using SkiaSharp;

namespace Lines.Drawing.Canvas;

/// <summary>Draws a sheet's marks on a canvas of SkiaSharp: what PDF and PNG share.</summary>
/// <remarks>
/// <para><b>Method.</b> A round pen throughout. Lettering is strokes, or text in a font made of those strokes
/// (<see cref="LetteringFonts"/>), never in a font of the machine's. Dashes are strokes of their own, since the library would turn them into filled shapes in a PDF.</para>
/// </remarks>
/// <param name="scale">Units of the canvas per millimeter of the sheet.</param>
/// <param name="tolerance">Greatest distance of a drawn curve from its arc [mm].</param>
/// <param name="thinnestLine">Width below which no line is drawn [units of the canvas]; 0 for none.</param>
/// <param name="wholeUnits">Whether coordinates are rounded to whole units of the canvas.</param>
/// <param name="fonts">Fonts for lettering that is to be text; null draws its strokes.</param>
internal sealed class SheetCanvas(double scale, double tolerance, double thinnestLine, bool wholeUnits = false, LetteringFonts? fonts = null)
{
    /// <summary>Draws all marks, first below last, on a canvas in its own units.</summary>
    /// <exception cref="ArgumentException">A mark cannot be drawn.</exception>
    public void Draw(Sheet sheet, SKCanvas canvas)
    {
        using var builder = new SKPathBuilder();
        using var font = new SKFont { Subpixel = true, LinearMetrics = true, Hinting = SKFontHinting.None };
        using var paint = new SKPaint { IsAntialias = true, StrokeCap = SKStrokeCap.Round, StrokeJoin = SKStrokeJoin.Round };
        var path = new PathPen(builder, sheet.Height, scale, tolerance, wholeUnits);
        foreach (var mark in sheet.Marks)
        {
            var ink = mark.Layer.Ink;
            var gray = (byte)Math.Round(255 * Math.Clamp(ink.Tone, 0, 1));
            paint.Color = new SKColor(gray, gray, gray);
            paint.IsStroke = mark is PathMark { Filled: false } || (mark is TextMark && fonts is null);
            switch (mark)
            {
                case PathMark line:
                    paint.StrokeWidth = (float)Math.Max(ink.Width * scale, thinnestLine);
                    if (paint.IsStroke && ink.Dash is { Count: > 0 } dash)
                        Dashes.Draw(line.Path.Flattened(tolerance), dash, path.Append);
                    else
                        path.Append(line.Path);
                    using (var drawn = builder.Detach())
                        canvas.DrawPath(drawn, paint);
                    break;
                case TextMark text when fonts is not null:
                    foreach (var letter in StrokeLettering.Letters(text).Take(1))
                    {
                        using var line = fonts.Along(text, scale, font);
                        var (place, along) = (path.On(letter.At), 1 / letter.Along.Length * letter.Along);
                        canvas.SetMatrix(new SKMatrix((float)along.X, (float)along.Y, place.X, -(float)along.Y, (float)along.X, place.Y, 0, 0, 1));
                        canvas.DrawText(line, 0, 0, paint);
                    }

                    canvas.ResetMatrix();
                    break;
                case TextMark text:
                    // Small lettering keeps a thin pen even under the thinnest line, else it clogs.
                    paint.StrokeWidth = (float)Math.Max(StrokeLettering.PenWidth(text) * scale, Math.Min(thinnestLine, StrokeLettering.WidestPen * text.Height * scale));
                    foreach (var stroke in StrokeLettering.Strokes(text))
                        path.Append(stroke);
                    using (var drawn = builder.Detach())
                        canvas.DrawPath(drawn, paint);
                    break;
                default:
                    throw new ArgumentException($"a {mark.GetType().Name} cannot be drawn", nameof(sheet));
            }
        }
    }
}
