using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using SkiaSharp;

namespace Lines.Drawing.Canvas;

/// <summary>Draws a sheet's marks on a canvas of SkiaSharp: what PDF and PNG share.</summary>
/// <remarks>
/// <para><b>Method.</b> A round pen throughout. Lettering is strokes, since a canvas without fonts drops text unsaid. Dashes
/// are strokes of their own, since the library would turn them into filled shapes in a PDF.</para>
/// </remarks>
/// <param name="Scale">Units of the canvas per millimeter of the sheet.</param>
/// <param name="Tolerance">Greatest distance of a drawn curve from its arc [mm].</param>
/// <param name="ThinnestLine">Width below which no line is drawn [units of the canvas]; 0 for none.</param>
/// <param name="WholeUnits">Whether coordinates are rounded to whole units of the canvas.</param>
internal sealed record SheetCanvas(double Scale, double Tolerance, double ThinnestLine, bool WholeUnits = false)
{
    /// <summary>Draws all marks, first below last.</summary>
    /// <exception cref="ArgumentException">A mark cannot be drawn.</exception>
    public void Draw(Sheet sheet, SKCanvas canvas)
    {
        using var builder = new SKPathBuilder();
        using var paint = new SKPaint { IsAntialias = true, StrokeCap = SKStrokeCap.Round, StrokeJoin = SKStrokeJoin.Round };
        var path = new PathPen(builder, sheet.Height, Scale, Tolerance, WholeUnits);
        foreach (var mark in sheet.Marks)
        {
            var ink = mark.Layer.Ink;
            var gray = (byte)Math.Round(255 * Math.Clamp(ink.Tone, 0, 1));
            paint.Color = new SKColor(gray, gray, gray);
            paint.IsStroke = mark is not PathMark { Filled: true };
            switch (mark)
            {
                case PathMark line:
                    paint.StrokeWidth = (float)Math.Max(ink.Width * Scale, ThinnestLine);
                    if (paint.IsStroke && ink.Dash is { Count: > 0 } dash)
                        Dashes.Draw(line.Path.Flattened(Tolerance), dash, path.Append);
                    else
                        path.Append(line.Path);
                    break;
                case TextMark text:
                    // Small lettering keeps a thin pen even under the thinnest line, else it clogs.
                    paint.StrokeWidth = (float)Math.Max(StrokeLettering.PenWidth(text) * Scale, Math.Min(ThinnestLine, text.Height * Scale / 8));
                    foreach (var stroke in StrokeLettering.Strokes(text))
                        path.Append(stroke);
                    break;
                default:
                    throw new ArgumentException($"a {mark.GetType().Name} cannot be drawn", nameof(sheet));
            }

            using var drawn = builder.Detach();
            canvas.DrawPath(drawn, paint);
        }
    }
}
