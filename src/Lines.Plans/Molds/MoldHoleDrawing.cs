using Lines.Construction.Molds;
using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;

namespace Lines.Plans.Molds;

/// <summary>A hole of a mold at full size [mm], with what it is for and how wide.</summary>
internal static class MoldHoleDrawing
{
    private const double Inside = 2.6;
    private const double Capital = 3;
    private const double Gap = 2;
    private const double FromCenterline = 1;
    private const double Leading = 5;

    /// <summary>A hole at full size [mm].</summary>
    public static (Point2 At, double Radius) Circle(MoldHole hole) => (new Point2(1000 * hole.At.X, 1000 * hole.At.Y), 500 * hole.Diameter);

    /// <summary>How wide a hole is.</summary>
    public static string Size(MoldHole hole, LengthNotation notation) => new Length(hole.Diameter).ToSize(notation);

    /// <summary>The circles and their lettering: in what is cut, beside a screw's; bolts are told on the label.</summary>
    /// <param name="outline">The part.</param>
    /// <param name="holes">Its holes [m].</param>
    /// <param name="center">Abscissa toward which a screw's lettering runs where there is room [mm].</param>
    /// <param name="isAcross">Whether the part stands across the boat: its centerline is drawn, which lettering does not cross unless it finds no other room.</param>
    /// <param name="notation">How lengths are written.</param>
    public static IEnumerable<Mark> Of(PartOutline outline, IReadOnlyList<MoldHole> holes, double center, bool isAcross, LengthNotation notation)
    {
        // Across, what no lettering of a screw may touch: the screws, and the lettering of those before.
        var taken = holes.Where(h => h.Kind == MoldHoleKind.Screw).Select(Circle).Select(c => (Left: c.At.X - c.Radius, Right: c.At.X + c.Radius)).ToList();
        foreach (var hole in holes)
        {
            var (at, radius) = Circle(hole);
            var isCut = hole.Kind is MoldHoleKind.Clamp or MoldHoleKind.Opening;
            var size = Size(hole, notation);
            var word = Word(hole.Kind);
            var name = $"{word} {size}";
            // Outlines run counter-clockwise and holes the other way, so that a tool kept to one side of its path cuts both on the waste.
            yield return new PathMark(isCut ? MoldInks.Holes : MoldInks.Drill, ArcPath.Circle(at, radius, clockwise: isCut), Name: name);
            if (isCut)
            {
                foreach (var line in Inscribed(at, word, size))
                    yield return line;
            }
            else if (hole.Kind == MoldHoleKind.Sight && Outward(outline, name, at, radius) is { } told)
            {
                yield return told;
            }
            else if (hole.Kind == MoldHoleKind.Screw)
            {
                foreach (var text in Beside(outline, [word, size], at, radius, at.X <= center ? 1 : -1, taken, isAcross))
                {
                    var width = StrokeLettering.Width(text.Text, text.Height);
                    taken.Add(text.Anchor == Anchor.Left ? (text.At.X, text.At.X + width) : (text.At.X - width, text.At.X));
                    yield return text;
                }
            }
        }
    }

    // Away from the centerline, beyond which stands the other of the pair.
    private static TextMark? Outward(PartOutline outline, string name, Point2 at, double radius)
    {
        var s = Math.Sign(at.X);
        return outline.Fitted(
            new TextMark(MoldInks.Text, name, at + new Vector2(s * (radius + Gap), -Capital / 2), Capital, s > 0 ? Anchor.Left : Anchor.Right), (double.NegativeInfinity, double.PositiveInfinity));
    }

    private static string Word(MoldHoleKind kind) => kind switch
    {
        MoldHoleKind.Screw => "SCREW",
        MoldHoleKind.Clamp => "CLAMP HOLE",
        MoldHoleKind.Bolt => "BOLT",
        MoldHoleKind.Sight => "SIGHT",
        _ => "OPENING",
    };

    // What does not go on one line inside stands on two.
    private static IEnumerable<TextMark> Inscribed(Point2 at, string word, string size)
    {
        string[] lines = [word, .. size.Replace(" (", "\n(", StringComparison.Ordinal).Split('\n')];
        return lines.Select((line, i) => new TextMark(MoldInks.Text, line, at + new Vector2(0, (lines.Length - 1.5 - (2 * i)) * Inside), Inside, Anchor.Center));
    }

    // In one line on the side asked for, or else on the other; in two where the centerline leaves no room for one; across that only where there is no other room.
    private static List<TextMark> Beside(PartOutline outline, string[] words, Point2 at, double radius, int side, List<(double Left, double Right)> taken, bool isAcross)
    {
        var left = taken.Where(t => t.Right < at.X).Select(t => t.Right + Gap).DefaultIfEmpty(double.NegativeInfinity).Max();
        var right = taken.Where(t => t.Left > at.X).Select(t => t.Left - Gap).DefaultIfEmpty(double.PositiveInfinity).Min();
        var (halfLeft, halfRight) = !isAcross ? (left, right) : at.X > 0 ? (Math.Max(left, FromCenterline), right) : (left, Math.Min(right, -FromCenterline));
        string[] one = [string.Join(' ', words)];
        return new[] { (one, side, halfLeft, halfRight), (one, -side, halfLeft, halfRight), (words, side, halfLeft, halfRight), (words, -side, halfLeft, halfRight), (one, side, left, right), (one, -side, left, right) }
            .Select(w => Fitted(w.Item1, w.Item2, (w.Item3, w.Item4))).FirstOrDefault(t => t is not null) ?? [];

        List<TextMark>? Fitted(string[] lines, int s, (double Left, double Right) within)
        {
            List<TextMark?> fitted =
            [
                .. lines.Select((line, i) => outline.Fitted(
                    new TextMark(MoldInks.Text, line, at + new Vector2(s * (radius + Gap), ((((lines.Length - 1) / 2.0) - i) * Leading) - (Capital / 2)), Capital, s > 0 ? Anchor.Left : Anchor.Right), within)),
            ];
            return fitted.Contains(null) ? null : [.. fitted.Select(t => t! with { Height = fitted.Min(f => f!.Height) })];
        }
    }
}
