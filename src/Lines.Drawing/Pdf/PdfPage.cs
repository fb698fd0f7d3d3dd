using System.Text;
using Lines.Drawing.Model;
using Lines.Drawing.Text;

namespace Lines.Drawing.Pdf;

/// <summary>The drawing operators of one page.</summary>
internal static class PdfPage
{
    private const int Decimals = 4;

    /// <summary>Writes a sheet's marks.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="scale">Units of the page per millimetre.</param>
    /// <param name="content">What is appended to.</param>
    public static void Write(Sheet sheet, double scale, StringBuilder content)
    {
        // Round caps and joins throughout: a pen's line.
        content.AppendPlain(scale, 9).Append(" 0 0 ").AppendPlain(scale, 9).Append(" 0 0 cm 1 J 1 j\n");
        var state = new InkState(content);
        foreach (var mark in sheet.Marks)
        {
            switch (mark)
            {
                case PathMark { Filled: true } area:
                    state.Fill(area.Layer.Ink);
                    PdfPath.Append(content, area.Path, PdfFile.ArcTolerance);
                    content.Append("f\n");
                    break;
                case PathMark line:
                    state.Stroke(line.Layer.Ink.Width, line.Layer.Ink.Tone, line.Layer.Ink.Dash);
                    PdfPath.Append(content, line.Path, PdfFile.ArcTolerance);
                    content.Append("S\n");
                    break;
                case TextMark text:
                    Letter(text, state, content);
                    break;
                default:
                    throw new ArgumentException($"a {mark.GetType().Name} cannot be drawn in a PDF", nameof(sheet));
            }
        }
    }

    private static void Letter(TextMark text, InkState state, StringBuilder content)
    {
        var strokes = StrokeLettering.Strokes(text);
        if (strokes.Count == 0)
            return;
        state.Stroke(StrokeLettering.PenWidth(text), text.Layer.Ink.Tone, null);
        foreach (var stroke in strokes)
            PdfPath.Append(content, stroke, PdfFile.ArcTolerance);
        content.Append("S\n");
    }

    /// <summary>The ink in force; operators are written only when it changes.</summary>
    private sealed class InkState(StringBuilder content)
    {
        private double _width = double.NaN;
        private double _tone = double.NaN;
        private double _fillTone = double.NaN;
        private IReadOnlyList<double>? _dash;

        public void Stroke(double width, double tone, IReadOnlyList<double>? dash)
        {
            if (!width.Equals(_width))
                content.AppendPlain(_width = width, Decimals).Append(" w ");
            if (!tone.Equals(_tone))
                content.AppendPlain(_tone = tone, Decimals).Append(" G ");
            if (ReferenceEquals(dash, _dash))
                return;
            _dash = dash;
            content.Append('[');
            foreach (var length in dash ?? [])
                content.AppendPlain(length, Decimals).Append(' ');
            content.Append("] 0 d ");
        }

        public void Fill(Ink ink)
        {
            if (!ink.Tone.Equals(_fillTone))
                content.AppendPlain(_fillTone = ink.Tone, Decimals).Append(" g ");
        }
    }
}
