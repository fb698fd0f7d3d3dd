using Lines.Drawing.Canvas;
using Lines.Drawing.Model;
using SkiaSharp;

namespace Lines.Drawing.Pdf;

/// <summary>Writes sheets as a PDF, one page each, at 1:1.</summary>
/// <remarks>
/// <para><b>Frame.</b> The page box is the sheet, 72 points to 25.4 mm.</para>
/// <para><b>Method.</b> Through SkiaSharp: lines, curves and dashes are vectors, lettering is text in a font made of its own strokes, and no other is needed. No date
/// is stated: the same sheets give the same bytes.</para>
/// <para><b>Accuracy.</b> Every point of a drawn curve is within 0.002 mm of its arc, on sheets up to 2 m; of lettering,
/// within a 500th of its height.</para>
/// </remarks>
public static class PdfFile
{
    private const double PointsPerMillimeter = 72 / 25.4;

    /// <summary>Coordinates are whole micrometers: shorter to write and quicker to deflate than fractions, and exact in single precision up to 16 m.</summary>
    private const double UnitsPerMillimeter = 1000;

    /// <summary>Resolution the library is told [dots per inch]: a dot is a micrometer. It rounds page boxes to whole dots, and A4 has no whole points.</summary>
    private const float Resolution = (float)(25.4 * UnitsPerMillimeter);

    /// <summary>Half of what is promised; the other half is the rounding of coordinates.</summary>
    private const double ArcTolerance = 0.001;

    /// <summary>The file's bytes.</summary>
    /// <param name="title">Title of the document: what it is, and of which design.</param>
    /// <param name="sheets">The pages, at least one.</param>
    /// <returns>The file.</returns>
    /// <exception cref="ArgumentException">There is no sheet, or a sheet cannot be drawn.</exception>
    public static byte[] Write(string title, IReadOnlyList<Sheet> sheets)
    {
        ArgumentNullException.ThrowIfNull(title);
        ArgumentNullException.ThrowIfNull(sheets);
        if (sheets.Count == 0)
            throw new ArgumentException("a PDF of no sheets was asked for; it takes one", nameof(sheets));
        using var file = new SKDynamicMemoryWStream();
        using var fonts = new LetteringFonts(sheets.SelectMany(s => s.Marks).OfType<TextMark>());
        using (var document = SKDocument.CreatePdf(file, new SKDocumentPdfMetadata { Title = title, Creator = "Lines", RasterDpi = Resolution }))
        {
            var marks = new SheetCanvas(UnitsPerMillimeter, ArcTolerance, thinnestLine: 0, wholeUnits: true, fonts);
            foreach (var sheet in sheets)
            {
                if (!(sheet.Width > 0 && sheet.Height > 0 && double.IsFinite(sheet.Width) && double.IsFinite(sheet.Height)))
                    throw new ArgumentException(Invariant($"the sheet \"{sheet.Title}\" is {sheet.Width} x {sheet.Height} mm; a page has an area"), nameof(sheets));
                var canvas = document.BeginPage((float)(sheet.Width * PointsPerMillimeter), (float)(sheet.Height * PointsPerMillimeter));
                canvas.ResetMatrix();
                marks.Draw(sheet, canvas);
                document.EndPage();
            }

            document.Close();
        }

        using var bytes = file.DetachAsData();
        return bytes.ToArray();
    }
}
