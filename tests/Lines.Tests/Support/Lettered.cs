using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;

namespace Lines.Tests.Support;

/// <summary>What lettering covers on a sheet.</summary>
internal static class Lettered
{
    /// <summary>The box around a text's strokes.</summary>
    public static Box2 Box(TextMark text) => StrokeLettering.Strokes(text).Select(s => s.Bounds()).Aggregate((a, b) => a.With(b));

    /// <summary>Lines that run through the box of the one text that reads so.</summary>
    public static IEnumerable<PathMark> Under(Sheet sheet, string text)
    {
        var box = Box(sheet.Marks.OfType<TextMark>().Single(t => string.Equals(t.Text, text, StringComparison.Ordinal)));
        return sheet.Marks.OfType<PathMark>().Where(m => !m.Filled && m.Path.Segments().Any(s => Enumerable.Range(0, 401).Any(i => box.Holds(s.PointAt(i / 400.0)))));
    }

    /// <summary>Pairs of texts whose boxes overlap.</summary>
    public static IEnumerable<(string, string)> Overlaps(Sheet sheet)
    {
        var texts = sheet.Marks.OfType<TextMark>().Select(t => (t.Text, Box: Box(t))).ToList();
        for (var i = 0; i < texts.Count; i++)
        {
            for (var j = i + 1; j < texts.Count; j++)
            {
                if (texts[i].Box.Overlaps(texts[j].Box))
                    yield return (texts[i].Text, texts[j].Text);
            }
        }
    }
}
