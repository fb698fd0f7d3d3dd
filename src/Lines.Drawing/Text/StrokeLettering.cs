using System.Collections.Frozen;
using System.Text;
using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Drawing.Text;

/// <summary>Lettering in one single-stroke alphabet: the same strokes engrave on a router and print on paper.</summary>
/// <remarks>
/// <para><b>Frame.</b> Strokes lie on the sheet [mm], y up. The width of a text runs from the center of its first stroke to
/// that of its last; the pen adds half its width at either end.</para>
/// <para><b>Method.</b> Letters are <see cref="Alphabet"/>'s lines and arcs; between letters stands a fixed gap. A character
/// the alphabet lacks is drawn as a crossed box, so nothing vanishes unseen.</para>
/// </remarks>
public static class StrokeLettering
{
    /// <summary>Units of a letter's frame to the capitals' height.</summary>
    internal const double UnitsPerHeight = 12;

    /// <summary>The widest pen letters are drawn with, by the capitals' height: a wider one clogs them.</summary>
    internal const double WidestPen = 1.0 / 8;

    /// <summary>Clear distance between the stroke centers of neighboring letters [twelfths of the capitals' height].</summary>
    internal const double Gap = 3;

    private static readonly FrozenDictionary<int, Glyph> Glyphs = Load();

    private static readonly Glyph Unknown = Glyph.Parse(Alphabet.Unknown.Width, Alphabet.Unknown.Strokes);

    /// <summary>Every character the alphabet has, in order.</summary>
    public static IReadOnlyList<Rune> Characters { get; } = [.. Glyphs.Keys.Order().Select(k => new Rune(k))];

    /// <summary>Whether the alphabet has a character; one it lacks is drawn as a crossed box.</summary>
    public static bool Has(Rune character) => Glyphs.ContainsKey(character.Value);

    /// <summary>Width of a text, from the center of its first stroke to that of its last.</summary>
    /// <param name="text">One line of text.</param>
    /// <param name="height">Height of the capitals, any unit.</param>
    /// <returns>The width, in the unit of <paramref name="height"/>; 0 for an empty text.</returns>
    public static double Width(string text, double height)
    {
        ArgumentNullException.ThrowIfNull(text);
        var units = -Gap;
        foreach (var rune in text.EnumerateRunes())
            units += GlyphOf(rune).Width + Gap;
        return Math.Max(units, 0) * height / UnitsPerHeight;
    }

    /// <summary>The strokes of a line of lettering, in the order a pen draws them.</summary>
    /// <param name="mark">The lettering: text, place, height, anchor, direction.</param>
    /// <returns>Open and closed paths of lines and arcs [mm on the sheet]; none for an empty text.</returns>
    /// <exception cref="ArgumentException">The height is not a positive number.</exception>
    public static IReadOnlyList<ArcPath> Strokes(TextMark mark)
    {
        ArgumentNullException.ThrowIfNull(mark);
        return [.. Letters(mark).SelectMany(l => l.Strokes)];
    }

    /// <summary>The smallest box around the middles of a text's strokes.</summary>
    /// <param name="mark">The lettering: text, place, height, anchor, direction.</param>
    /// <returns>The box [mm on the sheet]; it holds nothing where nothing is drawn.</returns>
    /// <exception cref="ArgumentException">The height is not a positive number.</exception>
    public static Box2 Bounds(TextMark mark)
    {
        ArgumentNullException.ThrowIfNull(mark);
        return Letters(mark).Aggregate(Box2.Nothing, (b, l) => b.With(l.Bounds));
    }

    /// <summary>The letters of a line of lettering and where each stands, in the order a pen draws them.</summary>
    /// <exception cref="ArgumentException">The height is not a positive number.</exception>
    internal static IEnumerable<PlacedGlyph> Letters(TextMark mark)
    {
        if (!(mark.Height > 0 && double.IsFinite(mark.Height)))
            throw new ArgumentException(Invariant($"lettering height {mark.Height} mm of \"{mark.Text}\" is not a positive number"), nameof(mark));
        var scale = mark.Height / UnitsPerHeight;

        // Rounded, for half a turn's sine is not quite 0.
        var along = new Vector2(Math.Round(Math.Cos(mark.Angle), 15), Math.Round(Math.Sin(mark.Angle), 15));
        var start = StartOf(mark);
        var pen = start.X;
        foreach (var rune in mark.Text.EnumerateRunes())
        {
            var glyph = GlyphOf(rune);
            yield return new PlacedGlyph(glyph, mark.At + (pen * along) + (start.Y * along.TurnedLeft), scale * along);
            pen += (glyph.Width + Gap) * scale;
        }
    }

    /// <summary>Width of the pen a text is drawn with: its layer's ink, but never so wide that the letters clog.</summary>
    internal static double PenWidth(TextMark mark) => Math.Min(mark.Layer.Ink.Width, WidestPen * mark.Height);

    /// <summary>Where the text's left end on the base line stands, from the anchor point, before the text is turned.</summary>
    internal static Vector2 StartOf(TextMark mark)
    {
        var left = mark.Anchor switch
        {
            Anchor.Left or Anchor.MiddleLeft => 0,
            Anchor.Center or Anchor.Middle => -Width(mark.Text, mark.Height) / 2,
            Anchor.Right or Anchor.MiddleRight => -Width(mark.Text, mark.Height),
            _ => throw new ArgumentOutOfRangeException(nameof(mark), mark.Anchor, "no such anchor"),
        };
        var middle = mark.Anchor is Anchor.MiddleLeft or Anchor.Middle or Anchor.MiddleRight;
        return new Vector2(left, middle ? -mark.Height / 2 : 0);
    }

    internal static Glyph GlyphOf(Rune rune) => Glyphs.GetValueOrDefault(rune.Value, Unknown);

    private static FrozenDictionary<int, Glyph> Load()
    {
        var glyphs = Alphabet.Letters.ToDictionary(l => l.Rune, l => Glyph.Parse(l.Width, l.Strokes));
        foreach (var (letter, basis, mark) in Accents.Letters)
        {
            var body = glyphs[basis];
            var over = Glyph.Parse(0, Accents.Strokes(mark)).Strokes;
            glyphs.Add(letter, body.With(over, Accents.PlaceOn(body, Alphabet.TopOf(basis), mark)));
        }

        return glyphs.ToFrozenDictionary();
    }
}
