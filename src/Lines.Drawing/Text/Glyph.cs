using System.Globalization;
using Lines.Kernel.Geometry;

namespace Lines.Drawing.Text;

/// <summary>One letter: its width and strokes.</summary>
/// <param name="Width">Width from the center of its leftmost stroke to that of its rightmost [twelfths of the capitals' height].</param>
/// <param name="Strokes">Its strokes, in the frame of <see cref="Alphabet"/>.</param>
internal sealed record Glyph(double Width, IReadOnlyList<ArcPath> Strokes)
{
    /// <summary>Reads strokes written as <see cref="Alphabet"/> describes.</summary>
    /// <exception cref="FormatException">The strokes break that notation.</exception>
    public static Glyph Parse(double width, string strokes) =>
        new(width, [.. strokes.Split('|', StringSplitOptions.RemoveEmptyEntries).Select(Stroke)]);

    /// <summary>This letter with another's strokes set over it.</summary>
    public Glyph With(IEnumerable<ArcPath> strokes, Vector2 shift) =>
        this with { Strokes = [.. Strokes, .. strokes.Select(s => s.Mapped(p => p + shift))] };

    private static ArcPath Stroke(string text)
    {
        var vertices = new List<ArcVertex>();
        var closed = false;
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (word[0] == '@')
                vertices[^1] = vertices[^1] with { Bulge = Math.Tan(Number(word[1..]) * Math.PI / 720) };
            else if (word is "z")
                closed = true;
            else
                vertices.Add(new ArcVertex(PointOf(word), 0));
        }

        return new ArcPath(vertices, closed);
    }

    private static Point2 PointOf(string word)
    {
        var comma = word.IndexOf(',', StringComparison.Ordinal);
        return comma > 0
            ? new Point2(Number(word[..comma]), Number(word[(comma + 1)..]))
            : throw new FormatException($"\"{word}\" is not a point x,y of a letter");
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
