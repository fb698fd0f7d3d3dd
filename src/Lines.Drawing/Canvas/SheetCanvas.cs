using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using SkiaSharp;

namespace Lines.Drawing.Canvas;

/// <summary>Draws a sheet's marks on a canvas of SkiaSharp: what PDF and PNG share.</summary>
/// <remarks>
/// <para><b>Method.</b> A round pen throughout. Lettering is strokes, since a canvas without fonts drops text unsaid: each
/// letter's path is made once and set where it stands, which is shorter to write and quicker to deflate than its points on
/// the sheet. Dashes are strokes of their own, since the library would turn them into filled shapes in a PDF.</para>
/// </remarks>
/// <param name="scale">Units of the canvas per millimeter of the sheet.</param>
/// <param name="tolerance">Greatest distance of a drawn curve from its arc [mm].</param>
/// <param name="thinnestLine">Width below which no line is drawn [units of the canvas]; 0 for none.</param>
/// <param name="wholeUnits">Whether coordinates are rounded to whole units of the canvas.</param>
internal sealed class SheetCanvas(double scale, double tolerance, double thinnestLine, bool wholeUnits = false) : IDisposable
{
    /// <summary>A letter's points are whole parts of its frame's unit, so many to one, which keeps it true to a 500th of the capitals' height.</summary>
    private const double LetterUnits = 50;

    /// <summary>Greatest distance of a letter's drawn curve from its arc [units of its frame].</summary>
    private const double LetterTolerance = 0.005;

    private readonly Dictionary<Glyph, SKPath> letters = [];

    /// <summary>Draws all marks, first below last, on a canvas in its own units.</summary>
    /// <exception cref="ArgumentException">A mark cannot be drawn.</exception>
    public void Draw(Sheet sheet, SKCanvas canvas)
    {
        using var builder = new SKPathBuilder();
        using var paint = new SKPaint { IsAntialias = true, StrokeCap = SKStrokeCap.Round, StrokeJoin = SKStrokeJoin.Round };
        var path = new PathPen(builder, sheet.Height, scale, tolerance, wholeUnits);
        foreach (var mark in sheet.Marks)
        {
            var ink = mark.Layer.Ink;
            var gray = (byte)Math.Round(255 * Math.Clamp(ink.Tone, 0, 1));
            paint.Color = new SKColor(gray, gray, gray);
            paint.IsStroke = mark is not PathMark { Filled: true };
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
                case TextMark text:
                    // Small lettering keeps a thin pen even under the thinnest line, else it clogs.
                    var pen = Math.Max(StrokeLettering.PenWidth(text) * scale, Math.Min(thinnestLine, text.Height * scale / 8));
                    foreach (var letter in StrokeLettering.Letters(text).Where(l => l.Glyph.Strokes.Count > 0))
                    {
                        var (place, along) = (path.On(letter.At), scale / LetterUnits * letter.Along);
                        paint.StrokeWidth = (float)(pen / along.Length);
                        canvas.SetMatrix(new SKMatrix((float)along.X, (float)along.Y, place.X, -(float)along.Y, (float)along.X, place.Y, 0, 0, 1));
                        canvas.DrawPath(PathOf(letter.Glyph), paint);
                    }

                    canvas.ResetMatrix();
                    break;
                default:
                    throw new ArgumentException($"a {mark.GetType().Name} cannot be drawn", nameof(sheet));
            }
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var path in letters.Values)
            path.Dispose();
    }

    private SKPath PathOf(Glyph glyph)
    {
        if (letters.TryGetValue(glyph, out var path))
            return path;
        using var builder = new SKPathBuilder();
        var pen = new PathPen(builder, sheetHeight: 0, LetterUnits, LetterTolerance, wholeUnits: true);
        foreach (var stroke in glyph.Strokes)
            pen.Append(stroke);
        return letters[glyph] = builder.Detach();
    }
}
