using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>Parts that lie on one grid of pages, so that small ones share some.</summary>
/// <remarks><b>Frame.</b> Millimeters at 1:1, one for all its parts.</remarks>
/// <param name="Parts">The parts, moved and turned to where they lie.</param>
/// <param name="Width">Width of the group [mm].</param>
/// <param name="Height">Height of the group [mm].</param>
internal sealed record PatternGroup(IReadOnlyList<Sheet> Parts, double Width, double Height)
{
    private const string After = ": ";

    /// <summary>A part alone.</summary>
    public PatternGroup(Sheet part)
        : this([part], part.Width, part.Height)
    {
    }

    /// <summary>Names of all its parts behind the title they have in common.</summary>
    public string Title => TitleOf(Enumerable.Range(0, Parts.Count));

    /// <summary>Names of some of its parts behind the title they have in common.</summary>
    /// <param name="parts">Their indices.</param>
    public string TitleOf(IEnumerable<int> parts)
    {
        var titles = parts.Select(i => Parts[i].Title).ToList();
        if (titles.Count < 2)
            return titles.FirstOrDefault() ?? "";
        var end = titles[0].LastIndexOf(After, StringComparison.Ordinal);
        var common = end < 0 ? "" : titles[0][..(end + After.Length)];
        return titles.TrueForAll(t => t.StartsWith(common, StringComparison.Ordinal)) ? common + string.Join(" + ", titles.Select(t => t[common.Length..])) : string.Join(" + ", titles);
    }

    /// <summary>The group turned a quarter to the left, its lower left corner at the origin again.</summary>
    public PatternGroup TurnedLeft() =>
        new([.. Parts.Select(p => Turned(p, 1, new Vector2(Height, 0)))], Height, Width);

    /// <summary>Parts as they lie on a plane, made a group with its corner at the origin.</summary>
    /// <param name="parts">Each with its quarter turns to the left about the origin and how far it is moved then.</param>
    public static PatternGroup Of(IEnumerable<(Sheet Part, int Quarters, Vector2 By)> parts)
    {
        var laid = parts.Select(p => Turned(p.Part, p.Quarters, p.By)).ToList();
        var bounds = laid.SelectMany(p => p.Marks.OfType<PathMark>()).Aggregate(Box2.Nothing, (b, m) => b.With(m.Path.Bounds()));
        var corner = new Vector2(-bounds.Left, -bounds.Bottom);
        return new PatternGroup([.. laid.Select(p => Turned(p, 0, corner))], bounds.Width, bounds.Height);
    }

    private static Sheet Turned(Sheet part, int quarters, Vector2 by) => part with { Marks = [.. part.Marks.Select(m => MovedMarks.Turned(m, quarters, by))] };
}
