using System.Text;
using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;

namespace Lines.Drawing.Svg;

/// <summary>Writes a sheet as SVG: real text, one group for each run of marks on a layer.</summary>
/// <remarks>
/// <para><b>Frame.</b> Width and height in millimeters, one user unit to the millimeter, y turned down.</para>
/// <para><b>Method.</b> Lettering is text in the reader's own sans-serif font, squeezed to the width that the stroke
/// lettering has, so that a sheet keeps its layout on every machine. Inks are attributes of the groups, so that
/// several drawings can stand in one page without touching each other.</para>
/// <para><b>Accuracy.</b> Coordinates to 0.0001 mm; arcs are arcs.</para>
/// </remarks>
public static class SvgFile
{
    private const int Decimals = 4;

    /// <summary>Height of the capitals as a part of the font size: 0.716 in the common sans-serif faces (common practice, no source).</summary>
    private const double CapitalsPerFontSize = 0.716;

    /// <summary>The file's text: one svg element.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <returns>The file.</returns>
    /// <exception cref="ArgumentException">A mark cannot be drawn, or one layer's name carries two inks.</exception>
    public static string Write(Sheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        _ = Layers.Of(sheet);
        var title = Escaped(sheet.Title);
        var svg = new StringBuilder("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" aria-label=\"").Append(title).Append("\" width=\"")
            .AppendPlain(sheet.Width, Decimals).Append("mm\" height=\"").AppendPlain(sheet.Height, Decimals).Append("mm\" viewBox=\"0 0 ")
            .AppendPlain(sheet.Width, Decimals).Append(' ').AppendPlain(sheet.Height, Decimals).Append("\">\n<title>").Append(title).Append("</title>\n")
            .Append("<g stroke-linecap=\"round\" stroke-linejoin=\"round\" fill=\"none\" font-family=\"Helvetica, Arial, 'Liberation Sans', sans-serif\">\n");
        Layer? layer = null;
        foreach (var mark in sheet.Marks)
        {
            if (layer is null || !string.Equals(mark.Layer.Name, layer.Name, StringComparison.Ordinal))
            {
                svg.Append(layer is null ? "" : "</g>\n");
                layer = mark.Layer;
                OpenGroup(svg, layer);
            }

            Put(svg, mark, sheet.Height);
        }

        return svg.Append(layer is null ? "" : "</g>\n").Append("</g>\n</svg>\n").ToString();
    }

    private static void OpenGroup(StringBuilder svg, Layer layer)
    {
        svg.Append("<g class=\"").Append(layer.Name).Append("\" stroke=\"").Append(Gray(layer.Ink)).Append("\" stroke-width=\"").AppendPlain(layer.Ink.Width, Decimals).Append('"');
        if (layer.Ink.Dash is { Count: > 0 } dash)
        {
            svg.Append(" stroke-dasharray=\"");
            for (var i = 0; i < dash.Count; i++)
                svg.Append(i == 0 ? "" : " ").AppendPlain(dash[i], Decimals);
            svg.Append('"');
        }

        svg.Append(">\n");
    }

    private static void Put(StringBuilder svg, Mark mark, double height)
    {
        switch (mark)
        {
            case PathMark path:
                svg.Append("<path ");
                if (path.Filled)
                    svg.Append("fill=\"").Append(Gray(path.Layer.Ink)).Append("\" stroke=\"none\" ");
                SvgPath.Append(svg.Append("d=\""), path.Path, height, Decimals);
                svg.Append("\"/>\n");
                break;
            case TextMark text:
                PutText(svg, text, height);
                break;
            default:
                throw new ArgumentException($"a {mark.GetType().Name} cannot be drawn in an SVG", nameof(mark));
        }
    }

    private static void PutText(StringBuilder svg, TextMark text, double height)
    {
        var start = StrokeLettering.StartOf(text);
        var (sin, cos) = Math.SinCos(text.Angle);
        // The base line's point under the anchor: ends and middle of the text are left to text-anchor.
        var at = new Point2(text.At.X - (start.Y * sin), text.At.Y + (start.Y * cos));
        svg.Append("<text x=\"").AppendPlain(at.X, Decimals).Append("\" y=\"").AppendPlain(height - at.Y, Decimals)
            .Append("\" font-size=\"").AppendPlain(text.Height / CapitalsPerFontSize, Decimals).Append('"');
        svg.Append(text.Anchor switch
        {
            Anchor.Center or Anchor.Middle => " text-anchor=\"middle\"",
            Anchor.Right or Anchor.MiddleRight => " text-anchor=\"end\"",
            _ => "",
        });
        var width = StrokeLettering.Width(text.Text, text.Height);
        if (text.Text.Length > 1 && width > 0)
            svg.Append(" textLength=\"").AppendPlain(width, Decimals).Append("\" lengthAdjust=\"spacingAndGlyphs\"");
        if (text.Text.Contains("  ", StringComparison.Ordinal))
            svg.Append(" xml:space=\"preserve\"");
        if (text.Angle != 0)
        {
            svg.Append(" transform=\"rotate(").AppendPlain(-text.Angle * 180 / Math.PI, Decimals).Append(' ')
                .AppendPlain(at.X, Decimals).Append(' ').AppendPlain(height - at.Y, Decimals).Append(")\"");
        }

        svg.Append(" fill=\"").Append(Gray(text.Layer.Ink)).Append("\" stroke=\"none\">").Append(Escaped(text.Text)).Append("</text>\n");
    }

    private static string Gray(Ink ink)
    {
        var level = (int)Math.Round(255 * Math.Clamp(ink.Tone, 0, 1));
        return Invariant($"#{level:x2}{level:x2}{level:x2}");
    }

    /// <summary>Text as XML takes it; characters XML forbids become the replacement character.</summary>
    private static string Escaped(string text)
    {
        var escaped = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            escaped.Append(rune.Value switch
            {
                '<' => "&lt;",
                '>' => "&gt;",
                '&' => "&amp;",
                '"' => "&quot;",
                < ' ' or 0xFFFE or 0xFFFF => "\uFFFD",
                _ => rune.ToString(),
            });
        }

        return escaped.ToString();
    }
}
