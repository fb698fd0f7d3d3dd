using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;

namespace Lines.Tests.Support;

/// <summary>What lettering covers on a sheet.</summary>
internal static class Lettered
{
    /// <summary>The box around a text's strokes.</summary>
    public static Box2 Box(TextMark text) => StrokeLettering.Strokes(text).Select(s => s.Bounds()).Aggregate((a, b) => a.With(b));

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
