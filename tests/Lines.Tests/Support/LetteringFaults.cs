using System.Text.RegularExpressions;
using Lines.Construction.Nesting;
using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;

namespace Lines.Tests.Support;

/// <summary>What is wrong with the lettering of patterns, a line for each fault; none where all is well.</summary>
internal static partial class LetteringFaults
{
    /// <summary>Lettering keeps as far from what is cut and folded [mm].</summary>
    private const double Clear = 0.3;

    /// <summary>Smaller lettering [mm] is not read at a bench.</summary>
    private const double LeastHeight = 2.2;

    /// <summary>On the picture of a cutting sheet a name keeps as far from the outline around it [mm].</summary>
    private const double ClearOnPicture = 0.4;

    [GeneratedRegex("^((?<name>SHEER|TOP|DWL|WL [0-9]+): )?(.*, )?(?<up>.+) UP$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Figure();

    /// <summary>Letters of a part off it, on a line to cut or fold, too small, or on each other.</summary>
    public static IEnumerable<string> OfPart(Sheet sheet)
    {
        var paths = sheet.Marks.OfType<PathMark>().ToList();
        var cut = paths.Single(m => m.Layer.Name is "cut").Path;
        var part = new ArcPath(cut.Vertices, Closed: true);
        var lines = paths.Where(m => m.Layer.Name is "cut" or "fold" or "holes" or "drill").Select(m => m.Path).ToList();
        var square = paths.Find(m => m.Layer.Name is "mark" && m.Path.Closed)?.Path.Bounds() ?? Box2.Nothing;
        foreach (var text in sheet.Marks.OfType<TextMark>().Where(t => !square.Holds(Lettered.Box(t))))
        {
            var points = StrokeLettering.Strokes(text).SelectMany(s => s.Flattened(0.05)).ToList();
            if (!points.TrueForAll(part.Contains))
                yield return $"\"{text.Text}\" runs off the part";
            else if (points.Min(p => lines.Min(l => l.DistanceTo(p))) is var near && near < Clear)
                yield return Invariant($"\"{text.Text}\" stands {near:F2} mm from a line");
            if (text.Height < LeastHeight - 1e-9)
                yield return Invariant($"\"{text.Text}\" is {text.Height:F2} mm high");
        }

        foreach (var (a, b) in Lettered.Overlaps(sheet))
            yield return $"\"{a}\" and \"{b}\" cover each other";
    }

    /// <summary>Figures to check by that may be taken for another line's: one without a name says of the line nearest to it how high it is, one with a name stands away from all others.</summary>
    public static IEnumerable<string> OfFigures(Sheet sheet)
    {
        var foot = sheet.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "cut").Min(m => m.Path.Bounds().Bottom);
        var levels = sheet.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "mark" && m.Name.Length > 0 && m.Path.Bounds().Height < 1e-6).Select(m => (m.Name, Box: m.Path.Bounds())).ToList();
        foreach (var text in sheet.Marks.OfType<TextMark>())
        {
            var (box, told) = (Lettered.Box(text), Figure().Match(text.Text));
            var beside = levels.Where(l => l.Box.Left <= box.Right && l.Box.Right >= box.Left).Select(l => (l.Name, l.Box.Bottom, Away: Math.Max(l.Box.Bottom - box.Top, box.Bottom - l.Box.Bottom))).ToList();
            if (!told.Success || beside.Count == 0)
                continue;
            var near = beside.MinBy(l => l.Away);
            var of = told.Groups["name"].Value;
            if (of.Length == 0 && Math.Abs(near.Bottom - foot - Length.Parse(told.Groups["up"].Value).Millimeters) > 2)
                yield return $"\"{text.Text}\" is nearest to {near.Name}";
            else if (of.Length > 0 && near.Away < 4 && !string.Equals(of, near.Name, StringComparison.Ordinal))
                yield return Invariant($"\"{text.Text}\" stands {near.Away:F1} mm from {near.Name}");
        }
    }

    /// <summary>Letters of tiled pages that a seam cuts or that stand on a line to cut or fold.</summary>
    public static IEnumerable<string> OfPages(IReadOnlyList<Sheet> pages)
    {
        for (var i = 2; i < pages.Count; i++)
        {
            var paths = pages[i].Marks.OfType<PathMark>().ToList();
            if (paths.Exists(m => m.Layer.Name is "text" or "text-lettering"))
                yield return Invariant($"page {i + 1}, {pages[i].Title}: a letter is cut by a seam");
            var lines = paths.Where(m => m.Layer.Name is "cut" or "fold" or "guard" or "holes" or "drill").Select(m => (m.Layer.Name, m.Path, Bounds: m.Path.Bounds().Grown(1))).ToList();
            foreach (var text in pages[i].Marks.OfType<TextMark>().Where(t => !string.IsNullOrWhiteSpace(t.Text)))
            {
                var box = Lettered.Box(text);
                var points = StrokeLettering.Strokes(text).SelectMany(s => s.Flattened(0.05)).ToList();
                foreach (var line in lines.Where(l => l.Bounds.Touches(box)))
                {
                    if (points.Min(line.Path.DistanceTo) is var near && near < Clear)
                        yield return Invariant($"page {i + 1}: \"{text.Text}\" stands {near:F2} mm from {line.Name}");
                }
            }
        }
    }

    /// <summary>Names on the picture of a cutting sheet that are not there once, inside one part or beside all with a leader into one, clear of all outlines.</summary>
    public static IEnumerable<string> OfPicture(CutSheet sheet, Sheet picture)
    {
        var outlines = picture.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "molds" && m.Path.Closed).Select(m => m.Path).ToList();
        var leaders = picture.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "fine" && m.Path.Vertices.Count == 2).Select(m => m.Path).ToList();
        foreach (var name in sheet.Parts.Select(p => p.Mold.Name))
        {
            var letters = picture.Marks.OfType<TextMark>().Where(t => string.Equals(t.Text, name, StringComparison.Ordinal)).ToList();
            if (letters.Count != 1)
            {
                yield return Invariant($"{name} is named {letters.Count} times");
                continue;
            }

            var points = StrokeLettering.Strokes(letters[0]).SelectMany(s => s.Flattened(0.05)).ToList();
            var around = outlines.Where(o => points.TrueForAll(o.Contains)).ToList();
            if (around.Count != 1 && !(points.TrueForAll(p => !outlines.Exists(o => o.Contains(p))) && leaders.Exists(l => LeadsFrom(l, Lettered.Box(letters[0])))))
                yield return $"{name} is not named inside a part";
            if (outlines.Min(o => points.Min(o.DistanceTo)) is var near && near <= ClearOnPicture)
                yield return Invariant($"{name} is named {near:F2} mm from an outline");
        }

        bool LeadsFrom(ArcPath leader, Box2 name) => name.Grown(1).Holds(leader.Vertices[0].Point) && outlines.Exists(o => o.Contains(leader.Vertices[1].Point));
    }
}
