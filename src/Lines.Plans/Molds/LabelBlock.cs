using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Molds;

/// <summary>Lines of lettering one below the other in a band of a part.</summary>
internal static class LabelBlock
{
    private const double Leading = 1.65;
    private const double Largest = 1.5;
    private const double LeastHeight = 2.2;

    /// <summary>How much of the room across a line takes at most: what reaches from edge to edge reads badly and looks crowded.</summary>
    private const double Filled = 0.86;

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
    /// <returns>The lettering, and the levels between which it stands.</returns>
    public static (IReadOnlyList<TextMark> Marks, double Low, double High) Of(
        PartOutline outline, IReadOnlyList<(string Text, double Height)> lines, double center, double low, double high, double widest)
    {
        var total = Total(lines);
        var scale = Math.Min(Math.Min(Largest, (high - low) / total), widest / lines.Max(l => StrokeLettering.Width(l.Text, l.Height)));
        var top = ((low + high) / 2) + (scale * total / 2);
        var marks = new List<TextMark>();
        var y = top;
        foreach (var (text, wanted) in lines)
        {
            var height = scale * wanted;
            y -= height;
            var room = outline.Room(y, y + height, center);
            var fit = Filled * 2 * Math.Min(center - room.Left, room.Right - center) / StrokeLettering.Width(text, 1);
            height = Math.Max(LeastHeight, Math.Min(height, fit));
            marks.Add(new TextMark(MoldInks.Text, text, new Point2(center, y), height, Anchor.Center));
            y -= scale * wanted * (Leading - 1);
        }

        return (marks, marks[^1].At.Y, top);
    }
}
