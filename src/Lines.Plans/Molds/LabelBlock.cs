using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Molds;

/// <summary>Lines of lettering one below the other in a band of a part.</summary>
/// <remarks>
/// <para><b>Method.</b> A line is as large as wanted, or as the room across at its own level lets it. Where that is too small to be read well, the ways of
/// <see cref="s_ways"/> are gone through: lines broken between words, each in the middle of its own room, then smaller. The part is never left: a line
/// for which even that has no room is left out, as its figures stand on the setting-up sheet too, but never the name.</para>
/// </remarks>
internal sealed class LabelBlock
{
    private const double Leading = 1.65;
    private const double Largest = 1.5;
    private const double LeastHeight = 2.2;
    private const double LeastOfHalf = 3;
    private const double Shrink = 0.92;
    private const int MostPieces = 8;

    /// <summary>Least step by which a block that ends too low is begun higher [mm].</summary>
    private const double Rise = 1;

    /// <summary>How much of the room across a line takes at most: what reaches from edge to edge reads badly and looks crowded.</summary>
    private const double Filled = 0.86;

    // One after the other, until one takes all lines. The sides of a half lean, so its lines soon want middles of their own.
    private static readonly Way[] s_ways =
    [
        new(LeastHeight, Filled, OwnMiddles: false, Pieces: 1),
        new(LeastHeight, Filled, OwnMiddles: false, Pieces: 2),
        new(LeastHeight, 1, OwnMiddles: true, Pieces: 2),
        new(LeastHeight, 1, OwnMiddles: true, Pieces: MostPieces),
    ];

    private static readonly Way[] s_waysOfHalf =
    [
        new(LeastOfHalf, Filled, OwnMiddles: false, Pieces: 1, Close: true),
        new(LeastOfHalf, Filled, OwnMiddles: true, Pieces: 1, Close: true),
        new(LeastOfHalf, Filled, OwnMiddles: true, Pieces: 2, Close: true),
        .. s_ways.Where(w => w.Pieces > 1).Select(w => w with { OwnMiddles = true, Close = true }),
    ];

    private readonly PartOutline _outline;
    private readonly double _center;
    private readonly double _low;
    private readonly double _high;

    private LabelBlock(PartOutline outline, double center, double low, double high) => (_outline, _center, _low, _high) = (outline, center, low, high);

    /// <summary>Height of lines that are as small as can be read [mm].</summary>
    public static double LeastOf(IReadOnlyList<(string Text, double Height)> lines) => Total(lines) * LeastHeight / lines.Min(l => l.Height);

    private static double Total(IReadOnlyList<(string Text, double Height)> lines) => lines.Sum(l => l.Height * Leading) - (lines[^1].Height * (Leading - 1));

    /// <summary>Sets the lines in the middle of a band, each as large as the room across lets it.</summary>
    /// <param name="outline">The part.</param>
    /// <param name="lines">The lines with the heights wanted [mm], the uppermost first.</param>
    /// <param name="center">Abscissa to center on [mm].</param>
    /// <param name="low">Lower end of the band [mm].</param>
    /// <param name="high">Upper end of the band [mm].</param>
    /// <param name="widest">Greatest width of a line [mm].</param>
    /// <param name="isHalf">Whether the part is half a mold.</param>
    /// <returns>The lettering, and the levels between which it stands.</returns>
    public static (IReadOnlyList<TextMark> Marks, double Low, double High) Of(
        PartOutline outline, IReadOnlyList<(string Text, double Height)> lines, double center, double low, double high, double widest, bool isHalf)
    {
        var block = new LabelBlock(outline, center, low, high);
        var ways = isHalf ? s_waysOfHalf : s_ways;
        for (var told = lines; ; told = [.. told.SkipLast(1)])
        {
            var largest = Math.Min(Math.Min(Largest, (high - low) / Total(told)), widest / told.Max(l => StrokeLettering.Width(l.Text, l.Height)));
            foreach (var way in ways)
            {
                for (var scale = largest; ; scale *= Shrink)
                {
                    if (block.Set(told, scale, way) is { } set)
                        return set;
                    if (way.Pieces == 1 || scale * told.Max(l => l.Height) < way.Least)
                        break;
                }
            }

            if (told.Count == 1)
                return ([new TextMark(MoldInks.Text, told[0].Text, new Point2(center, low), LeastHeight, Anchor.Center)], low, low + LeastHeight);
        }
    }

    // Begun higher in the band where broken lines take it beyond its lower end.
    private (IReadOnlyList<TextMark> Marks, double Low, double High)? Set(IReadOnlyList<(string Text, double Height)> lines, double scale, Way way)
    {
        var top = Math.Min(_high, ((_low + _high) / 2) + (scale * Total(lines) / 2));
        if (way.Close && Rows(lines, scale, top, way) is { } wide)
            top = Math.Min(_high, (_low + _high + top - wide[^1].At.Y) / 2);
        while (true)
        {
            if (Rows(lines, scale, top, way) is not { } rows)
                return null;
            var under = _low - rows[^1].At.Y;
            if (way.Pieces == 1 || under <= 0)
                return (rows, rows[^1].At.Y, top);
            if (top >= _high)
                return null;
            top = Math.Min(_high, top + Math.Max(Rise, under));
        }
    }

    // Null where a line has no room, nor, broken, the words of it.
    private List<TextMark>? Rows(IReadOnlyList<(string Text, double Height)> lines, double scale, double top, Way way)
    {
        var rows = new List<TextMark>();
        foreach (var (text, wanted) in lines)
        {
            var slot = scale * wanted;
            if (way.Close && Row(text, top - slot, slot, way) is { } first)
                slot = first.Height;
            if (Row(text, top - slot, slot, way) is { } whole)
            {
                rows.Add(whole);
                top -= Math.Max(slot, whole.Height) * Leading;
                continue;
            }

            if (Broken(text, top, way, way.Pieces) is not { } pieces)
                return null;
            rows.AddRange(pieces);
            top = pieces[^1].At.Y - (way.Least * (Leading - 1));
        }

        return rows;
    }

    // Pieces of a text under a level, as small as may be, few before many, as long as each other before others; null where there is no room for them.
    private List<TextMark>? Broken(string text, double top, Way way, int most)
    {
        if (Row(text, top - way.Least, way.Least, way) is { } whole)
            return [whole];
        for (var pieces = 2; pieces <= most; pieces++)
        {
            foreach (var end in Breaks(text).OrderBy(i => Math.Abs((i * pieces) - text.Length)))
            {
                if (Row(text[..end], top - way.Least, way.Least, way) is { } first && Broken(text[(end + 1)..], top - (Leading * way.Least), way, pieces - 1) is { } rest)
                    return [first, .. rest];
            }
        }

        return null;
    }

    // Lettering on a base line, no larger than its room; null where that is too small.
    private TextMark? Row(string text, double y, double height, Way way)
    {
        var (left, right) = _outline.Room(y, y + Math.Max(height, way.Least), _center);
        var middle = way.OwnMiddles ? (left + right) / 2 : _center;
        var fit = way.Filled * 2 * Math.Min(middle - left, right - middle) / StrokeLettering.Width(text, 1);
        return fit < way.Least ? null : new TextMark(MoldInks.Text, text, new Point2(middle, y), Math.Max(way.Least, Math.Min(height, fit)), Anchor.Center);
    }

    // A figure keeps its unit, and an equation stays whole.
    private static IEnumerable<int> Breaks(string text) =>
        Enumerable.Range(1, Math.Max(0, text.Length - 2)).Where(i => text[i] == ' ' && !char.IsDigit(text[i - 1]) && text[i - 1] != '=' && text[i + 1] != '=');

    /// <summary>A way to set lines.</summary>
    /// <param name="Least">Least height of a line [mm].</param>
    /// <param name="Filled">How much of the room across a line takes at most.</param>
    /// <param name="OwnMiddles">Whether each line stands in the middle of its own room, not all on one.</param>
    /// <param name="Pieces">Into how many pieces a line is broken at most, between words.</param>
    /// <param name="Close">Whether a line that its room makes smaller takes no more height than it has.</param>
    private readonly record struct Way(double Least, double Filled, bool OwnMiddles, int Pieces, bool Close = false);
}
