using System.Collections.Concurrent;
using System.Text.RegularExpressions;
using Lines.Construction.Molds;
using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Molds;
using Lines.Plans.Paper;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Molds;

/// <summary>Where the letters of the molds of every template and of its floats stand, whole and halved, for the router and on paper.</summary>
public partial class MoldLetteringTests
{
    private const double Clear = 0.3;

    private static readonly ConcurrentDictionary<(string Name, bool Halves, LengthNotation Notation), IReadOnlyList<(string Part, Sheet Sheet)>> s_onPaper = new();

    [GeneratedRegex("^((?<name>SHEER|TOP|DWL|WL [0-9]+) )?(.*, )?(?<up>.+) UP$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Figure();

    public static TheoryData<string, bool, LengthNotation> Cases
    {
        get
        {
            var cases = new TheoryData<string, bool, LengthNotation>();
            foreach (var name in ShapedTemplates.Names)
            {
                foreach (var halves in new[] { true, false })
                {
                    cases.Add(name, halves, LengthNotation.Millimeters);
                    cases.Add(name, halves, LengthNotation.FeetInchesEighths);
                }
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_letter_lies_inside_its_part_clear_of_what_is_cut_and_folded_and_of_other_letters(string name, bool halves, LengthNotation notation)
    {
        var faults = new List<string>();
        foreach (var hull in ShapedTemplates.Of(name).Hulls)
        {
            foreach (var mold in hull.Molds.Parts.Select(m => halves && HalfMold.Exists(m) ? HalfMold.Of(m) : m))
                faults.AddRange(Faults(MoldSheets.ForRouter(hull.Design.Title, mold, notation)).Select(f => $"{hull.Design.Title} {mold.Name} router: {f}"));
        }

        foreach (var (part, sheet) in OnPaper(name, halves, notation))
            faults.AddRange(Faults(sheet).Select(f => $"{part} paper: {f}"));

        Assert.True(faults.Count == 0, $"{faults.Count} faults\n{string.Join('\n', faults)}");
    }

    // A figure without a name says of the line nearest to it how high it is; one that is named stands away from all lines.
    [Theory]
    [MemberData(nameof(Cases))]
    public void A_figure_to_check_by_is_nearest_to_its_own_line_and_with_a_name_it_stands_by_none(string name, bool halves, LengthNotation notation)
    {
        var faults = new List<string>();
        foreach (var (part, sheet) in OnPaper(name, halves, notation))
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
                    faults.Add($"{part} paper: \"{text.Text}\" is nearest to {near.Name}");
                else if (of.Length > 0 && near.Away < 4 && !string.Equals(of, near.Name, StringComparison.Ordinal))
                    faults.Add(Invariant($"{part} paper: \"{text.Text}\" stands {near.Away:F1} mm from {near.Name}"));
            }
        }

        Assert.True(faults.Count == 0, $"{faults.Count} faults\n{string.Join('\n', faults)}");
    }

    public static TheoryData<string, bool, string, bool> Prints
    {
        get
        {
            var cases = new TheoryData<string, bool, string, bool>();
            foreach (var name in ShapedTemplates.Names)
            {
                cases.Add(name, true, "A4", false);
                cases.Add(name, true, "Letter", true);
                cases.Add(name, false, "Letter", true);
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Prints))]
    public void On_no_page_a_letter_stands_on_what_is_cut_or_folded_and_on_those_of_halves_none_is_cut_by_a_seam(string name, bool halves, string paper, bool guard)
    {
        List<string> faults = [], cut = [];
        var settings = new PrintSettings(string.Equals(paper, "A4", StringComparison.Ordinal) ? PaperSize.A4 : PaperSize.Letter) { Halves = halves, Guard = guard ? 3 : null };
        foreach (var hull in ShapedTemplates.Of(name).Hulls)
        {
            var pages = TiledPaper.Of([.. hull.Molds.Parts.Select(m => MoldSheets.ForPaper(hull.Design.Title, m, LengthNotation.Millimeters, settings))], settings);
            for (var i = 2; i < pages.Count; i++)
            {
                var paths = pages[i].Marks.OfType<PathMark>().ToList();
                if (paths.Exists(m => m.Layer.Name is "text" or "text-lettering"))
                    cut.Add(Invariant($"{hull.Design.Title} page {i + 1}"));
                var lines = paths.Where(m => m.Layer.Name is "cut" or "fold" or "guard" or "holes" or "drill").Select(m => (m.Layer.Name, m.Path, Bounds: m.Path.Bounds().Grown(1))).ToList();
                foreach (var text in pages[i].Marks.OfType<TextMark>().Where(t => !string.IsNullOrWhiteSpace(t.Text)))
                {
                    var box = Lettered.Box(text);
                    var points = StrokeLettering.Strokes(text).SelectMany(s => s.Flattened(0.05)).ToList();
                    foreach (var line in lines.Where(l => l.Bounds.Touches(box)))
                    {
                        if (points.Min(line.Path.DistanceTo) is var near && near < Clear)
                            faults.Add(Invariant($"{hull.Design.Title} page {i + 1}: \"{text.Text}\" stands {near:F2} mm from {line.Name}"));
                    }
                }
            }
        }

        // The figures of a float's narrow whole mold, whose label fills one page, reach over the seam.
        Assert.True(cut.Count <= (halves ? 0 : 2), string.Join(", ", cut));
        Assert.True(faults.Count == 0, $"{faults.Count} faults\n{string.Join('\n', faults)}");
    }

    [Theory]
    [MemberData(nameof(ShapedTemplates.All), MemberType = typeof(ShapedTemplates))]
    public void Names_of_lines_and_holes_are_read_as_their_part_is_when_it_lies_upside_down(string name)
    {
        var settings = new PrintSettings(PaperSize.Letter) { Halves = true };
        var molds = ShapedTemplates.Of(name).Molds.Molds.Where(m => m.Kind == MoldKind.Station).ToList();
        var upright = MoldSheets.ForPaper("Trial", molds[molds.Count / 2], LengthNotation.Millimeters, settings);
        var turned = upright with { Marks = [.. upright.Marks.Select(UpsideDown)] };
        foreach (var sheet in new[] { upright, turned })
        {
            var texts = TiledPaper.Of([sheet], settings).SelectMany(p => p.Marks.OfType<TextMark>()).ToList();
            var turn = Assert.Single(texts.Where(t => t.Layer.Name is "text").Select(t => t.Angle).Distinct());
            var names = texts.Where(t => t.Layer.Name is "page-name").ToList();
            Assert.NotEmpty(names);
            Assert.All(names, n => Assert.True(Math.Cos(n.Angle - turn) > 1 - 1e-6 || Math.Sin(n.Angle - turn) > 1 - 1e-6, n.Text));
        }

        Mark UpsideDown(Mark mark) => mark switch
        {
            PathMark path => path with { Path = path.Path.Mapped(Turned) },
            TextMark text => text with { At = Turned(text.At), Angle = text.Angle + Math.PI },
            _ => throw new ArgumentException(mark.GetType().Name, nameof(mark)),
        };

        Point2 Turned(Point2 p) => new(upright.Width - p.X, upright.Height - p.Y);
    }

    // Drawn once for the two that look at it.
    private static IReadOnlyList<(string Part, Sheet Sheet)> OnPaper(string name, bool halves, LengthNotation notation) => s_onPaper.GetOrAdd(
        (name, halves, notation),
        _ => [.. ShapedTemplates.Of(name).Hulls.SelectMany(h => h.Molds.Parts, (h, m) =>
            ($"{h.Design.Title} {m.Name}", MoldSheets.ForPaper(h.Design.Title, m, notation, new PrintSettings(PaperSize.A4) { Halves = halves, Guard = 3 })))]);

    private static IEnumerable<string> Faults(Sheet sheet)
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
            if (text.Height < 2.2 - 1e-9)
                yield return Invariant($"\"{text.Text}\" is {text.Height:F2} mm high");
        }

        foreach (var (a, b) in Lettered.Overlaps(sheet))
            yield return $"\"{a}\" and \"{b}\" cover each other";
    }
}
