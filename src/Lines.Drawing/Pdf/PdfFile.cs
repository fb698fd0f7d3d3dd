using System.Globalization;
using System.IO.Compression;
using System.Text;
using Lines.Drawing.Model;
using Lines.Drawing.Text;

namespace Lines.Drawing.Pdf;

/// <summary>Writes sheets as a PDF, one page each, at 1:1.</summary>
/// <remarks>
/// <para><b>Frame.</b> The page box is the sheet, 72 points to 25.4 mm; coordinates in the page's content are millimetres.</para>
/// <para><b>Method.</b> Version 1.7 of the format (ISO 32000-1) written directly: lines, cubic curves and dashes are vectors,
/// lettering is strokes, and no font is needed. No date, name or identifier of the run is in the file: the same sheets give the same bytes.</para>
/// <para><b>Accuracy.</b> Coordinates to 0.0001 mm; arcs within 0.001 mm.</para>
/// </remarks>
public static class PdfFile
{
    /// <summary>Greatest distance of a drawn arc from the true one [mm].</summary>
    internal const double ArcTolerance = 0.001;

    private const double PointsPerMillimeter = 72 / 25.4;

    /// <summary>Largest page side the format allows without a unit of its own [points].</summary>
    private const double LargestSide = 14400;

    /// <summary>The file's bytes.</summary>
    /// <param name="sheets">The pages, at least one.</param>
    /// <returns>The file.</returns>
    /// <exception cref="ArgumentException">There is no sheet, or a sheet cannot be drawn.</exception>
    public static byte[] Write(IReadOnlyList<Sheet> sheets)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        if (sheets.Count == 0)
            throw new ArgumentException("a PDF of no sheets was asked for; it takes one", nameof(sheets));
        using var file = new MemoryStream();
        var body = new PdfBody(file);
        body.Object(1, "<< /Type /Catalog /Pages 2 0 R >>");
        var kids = string.Join(' ', sheets.Select((_, i) => Invariant($"{PageNumber(i)} 0 R")));
        body.Object(2, Invariant($"<< /Type /Pages /Count {sheets.Count} /Kids [{kids}] >>"));
        body.Object(3, $"<< /Title {TextString(sheets[0].Title)} /Producer (Lines) >>");
        var content = new StringBuilder();
        for (var i = 0; i < sheets.Count; i++)
        {
            var (box, scale) = PageBox(sheets[i]);
            body.Object(PageNumber(i), Invariant($"<< /Type /Page /Parent 2 0 R {box} /Resources << >> /Contents {PageNumber(i) + 1} 0 R >>"));
            content.Clear();
            PdfPage.Write(sheets[i], scale, content);
            body.Stream(PageNumber(i) + 1, Deflate(content));
        }

        body.End(root: 1, info: 3);
        return file.ToArray();
    }

    private static int PageNumber(int index) => 4 + (2 * index);

    private static (string Box, double Scale) PageBox(Sheet sheet)
    {
        if (!(sheet.Width > 0 && sheet.Height > 0 && double.IsFinite(sheet.Width) && double.IsFinite(sheet.Height)))
            throw new ArgumentException(Invariant($"the sheet \"{sheet.Title}\" is {sheet.Width} x {sheet.Height} mm; a page has an area"), nameof(sheet));
        var (width, height) = (sheet.Width * PointsPerMillimeter, sheet.Height * PointsPerMillimeter);
        var unit = Math.Ceiling(Math.Max(width, height) / LargestSide);
        var box = new StringBuilder("/MediaBox [0 0 ").AppendPlain(width / unit, 4).Append(' ').AppendPlain(height / unit, 4).Append(']');
        if (unit > 1)
            box.Append(" /UserUnit ").Append(unit.ToString(CultureInfo.InvariantCulture));
        return (box.ToString(), PointsPerMillimeter / unit);
    }

    private static byte[] Deflate(StringBuilder content)
    {
        using var packed = new MemoryStream();
        using (var deflate = new ZLibStream(packed, CompressionLevel.Optimal))
        {
            foreach (var chunk in content.GetChunks())
                deflate.Write(Encoding.ASCII.GetBytes(chunk.ToArray()));
        }

        return packed.ToArray();
    }

    /// <summary>Any text as a string of the format: UTF-16 in hexadecimal.</summary>
    private static string TextString(string text) => $"<FEFF{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(text))}>";
}
