using System.Globalization;
using Lines.Kernel.Geometry;

namespace Lines.Drawing.Text;

/// <summary>One letter: its width and strokes.</summary>
/// <param name="Width">Width from the center of its leftmost stroke to that of its rightmost [twelfths of the capitals' height].</param>
/// <param name="Strokes">Its strokes, in the frame of <see cref="Alphabet"/>.</param>
internal sealed record Glyph(double Width, IReadOnlyList<ArcPath> Strokes)
{
    /// <summary>The smallest box around the middles of its strokes, in its own frame.</summary>
    public Box2 Bounds { get; } = Strokes.Aggregate(Box2.Nothing, (b, s) => b.With(s.Bounds()));

    /// <summary>Reads strokes written as <see cref="Alphabet"/> describes.</summary>
    /// <exception cref="FormatException">The strokes break that notation.</exception>
    public static Glyph Parse(double width, string strokes) =>
        new(width, [.. strokes.Split('|', StringSplitOptions.RemoveEmptyEntries).Select(Stroke)]);

    /// <summary>This letter with another's strokes set over it.</summary>
    public Glyph With(IEnumerable<ArcPath> strokes, Vector2 shift) =>
        new(Width, [.. Strokes, .. strokes.Select(s => s.Mapped(p => p + shift))]);

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

/// <summary>A letter on a sheet.</summary>
/// <param name="Glyph">The letter.</param>
/// <param name="At">Where the origin of its frame stands [mm].</param>
/// <param name="Along">One of the frame's units along the base line [mm].</param>
internal readonly record struct PlacedGlyph(Glyph Glyph, Point2 At, Vector2 Along)
{
    /// <summary>The place on the sheet [mm] of a point of the letter's frame.</summary>
    public Point2 On(Point2 p) => At + (p.X * Along) + (p.Y * Along.TurnedLeft);

    /// <summary>Its strokes on the sheet [mm].</summary>
    public IEnumerable<ArcPath> Strokes => Glyph.Strokes.Select(s => s.Mapped(On));

    /// <summary>The smallest box on the sheet [mm] around the middles of its strokes.</summary>
    public Box2 Bounds
    {
        get
        {
            if (Glyph.Strokes.Count == 0)
                return Box2.Nothing;
            // Upright or level lettering keeps its box; what slants is measured.
            return Along.X == 0 || Along.Y == 0
                ? Box2.Nothing.With(On(new Point2(Glyph.Bounds.Left, Glyph.Bounds.Bottom))).With(On(new Point2(Glyph.Bounds.Right, Glyph.Bounds.Top)))
                : Strokes.Aggregate(Box2.Nothing, (b, s) => b.With(s.Bounds()));
        }
    }
}
