using System.Collections.Concurrent;
using System.Text;
using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using SkiaSharp;

namespace Lines.Drawing.Canvas;

/// <summary>The single-stroke alphabet as fonts, one for each width of pen that texts are drawn with: text in a PDF can then be searched, and is short.</summary>
/// <remarks>
/// <para><b>Method.</b> Every stroke is outlined by a round pen; outlines of a letter overlap, and are filled where any winds round a place. A font holds
/// the letters asked for alone, for the library embeds all it has. Pens are graded by quarters of an octave: a stroke is as broad as asked within 9.1 %.</para>
/// <para><b>Accuracy.</b> Outlines within a 500th of the capitals' height.</para>
/// </remarks>
internal sealed class LetteringFonts : IDisposable
{
    /// <summary>Font units to a unit of the letters' frame.</summary>
    private const int LetterUnits = 100;

    /// <summary>Units of the letters' frame to the font's size, which is the capitals' height.</summary>
    private const int UnitsPerEm = (int)StrokeLettering.UnitsPerHeight * LetterUnits;

    /// <summary>Greatest distance of a stroke's middle from its arc [units of the letters' frame].</summary>
    private const double Tolerance = 0.005;

    /// <summary>Twice as many parabolas to a conic of at most a right angle.</summary>
    private const int ConicHalvings = 1;

    private const double StepsPerOctave = 4;

    private static readonly ConcurrentDictionary<(int Step, Rune Letter), OutlineGlyph> s_outlines = new();

    private static readonly Rune s_unknown = new(0xFFFD);

    private static readonly Rune s_blank = new(' ');

    private readonly Dictionary<int, SKTypeface> _fonts;

    /// <summary>Makes the fonts for texts.</summary>
    public LetteringFonts(IEnumerable<TextMark> texts) =>
        _fonts = texts.GroupBy(StepOf).ToDictionary(g => g.Key, g => Make(g.Key, g.SelectMany(t => t.Text.EnumerateRunes()).Append(s_blank).Where(StrokeLettering.Has).Distinct()));

    /// <summary>A text from its first letter's place, which it begins at, to the right.</summary>
    /// <param name="text">The lettering; of those the fonts were made for.</param>
    /// <param name="scale">Units of the canvas per millimeter.</param>
    /// <param name="font">What the font and its size are set in.</param>
    public SKTextBlob Along(TextMark text, double scale, SKFont font)
    {
        (font.Typeface, font.Size) = (_fonts[StepOf(text)], (float)(text.Height * scale));

        // Summed in the library's own precision, a letter stands where the one before ends and its place need not be written.
        float at = 0, unit = font.Size / UnitsPerEm;
        var places = new List<float>();
        foreach (var letter in text.Text.EnumerateRunes())
        {
            places.Add(at);
            at += unit * Advance(StrokeLettering.GlyphOf(letter));
        }

        return SKTextBlob.CreateHorizontal(text.Text, font, [.. places], 0)!;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var font in _fonts.Values)
            font.Dispose();
    }

    private static int StepOf(TextMark text) =>
        (int)Math.Round(StepsPerOctave * Math.Log2(StrokeLettering.WidestPen * text.Height / StrokeLettering.PenWidth(text)));

    private static SKTypeface Make(int step, IEnumerable<Rune> letters)
    {
        using var pen = new SKPaint
        {
            IsStroke = true,
            StrokeCap = SKStrokeCap.Round,
            StrokeJoin = SKStrokeJoin.Round,
            StrokeWidth = (float)(UnitsPerEm * StrokeLettering.WidestPen * Math.Pow(2, -step / StepsPerOctave)),
        };
        var file = TrueTypeFile.Write(Invariant($"Lettering-{step}"), UnitsPerEm, Of(s_unknown), letters.ToDictionary(c => c.Value, Of));
        using var data = SKData.CreateCopy(file);
        return SKTypeface.FromData(data) ?? throw new InvalidOperationException("the lettering could not be read as a font");

        OutlineGlyph Of(Rune letter) => s_outlines.GetOrAdd((step, letter), l => Outlined(StrokeLettering.GlyphOf(l.Letter), pen));
    }

    private static OutlineGlyph Outlined(Glyph glyph, SKPaint pen) => new(Advance(glyph), [.. glyph.Strokes.SelectMany(s => Outlined(s, pen))]);

    /// <summary>The outlines of a stroke, the outermost to the left round: where strokes cross they must wind alike, else the crossing is blank.</summary>
    private static IEnumerable<IReadOnlyList<OutlinePoint>> Outlined(ArcPath stroke, SKPaint pen)
    {
        using var builder = new SKPathBuilder();
        new PathPen(builder, sheetHeight: 0, LetterUnits, Tolerance, wholeUnits: true).Append(stroke);
        using var middle = builder.Detach();
        using var outline = pen.GetFillPath(middle);
        List<IReadOnlyList<OutlinePoint>> contours = [.. Contours(outline!)];
        return contours.Count > 0 && contours.Select(Area).MaxBy(Math.Abs) < 0 ? contours.Select(c => (IReadOnlyList<OutlinePoint>)[c[0], .. c.Skip(1).Reverse()]) : contours;
    }

    /// <summary>Twice the area within the corners of an outline, positive where it runs to the left round.</summary>
    private static double Area(IReadOnlyList<OutlinePoint> contour) =>
        contour.Select((p, k) => (P: p, Q: contour[(k + 1) % contour.Count])).Sum(e => ((double)e.P.X * e.Q.Y) - ((double)e.Q.X * e.P.Y));

    private static int Advance(Glyph glyph) => (int)Math.Round((glyph.Width + StrokeLettering.Gap) * LetterUnits);

    private static IEnumerable<IReadOnlyList<OutlinePoint>> Contours(SKPath path)
    {
        using var along = path.CreateRawIterator();
        var contour = new List<OutlinePoint>();
        var p = new SKPoint[4];
        for (var verb = along.Next(p); ; verb = along.Next(p))
        {
            if (verb is SKPathVerb.Move or SKPathVerb.Done)
            {
                if (contour is [var first, .., var last] && first == last)
                    contour.RemoveAt(contour.Count - 1);
                if (contour.Count > 2)
                    yield return contour;
                contour = [];
            }

            switch (verb)
            {
                case SKPathVerb.Done:
                    yield break;
                case SKPathVerb.Move:
                    contour.Add(On(p[0]));
                    break;
                case SKPathVerb.Line:
                    contour.Add(On(p[1]));
                    break;
                case SKPathVerb.Quad:
                    contour.AddRange([On(p[1]) with { OnCurve = false }, On(p[2])]);
                    break;
                case SKPathVerb.Conic:
                    contour.AddRange(SKPath.ConvertConicToQuads(p[0], p[1], p[2], along.ConicWeight(), ConicHalvings).Skip(1).Select((q, k) => On(q) with { OnCurve = k % 2 == 1 }));
                    break;
                case SKPathVerb.Close:
                    break;
                default:
                    throw new InvalidOperationException($"an outline of a stroke holds a {verb}");
            }
        }
    }

    /// <summary>The canvas's y runs down, a font's up.</summary>
    private static OutlinePoint On(SKPoint p) => new((short)Math.Round(p.X), (short)Math.Round(-p.Y), OnCurve: true);
}
