using System.Collections.Concurrent;
using Lines.Construction;
using Lines.Construction.Molds;
using Lines.Construction.Nesting;
using Lines.Design;
using Lines.Drawing.Model;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Molds;
using Lines.Plans.Nesting;
using Lines.Plans.Paper;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Molds;

/// <summary>Where the letters of the molds of every template and of its floats stand, whole and halved, for the router and on paper.</summary>
public class MoldLetteringTests
{
    private static readonly ConcurrentDictionary<(string Name, bool Halves, LengthNotation Notation), IReadOnlyList<(string Part, Sheet Sheet)>> s_onPaper = new();

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
                faults.AddRange(LetteringFaults.OfPart(MoldSheets.ForRouter(hull.Design.Title, mold, notation)).Select(f => $"{hull.Design.Title} {mold.Name} router: {f}"));
        }

        foreach (var (part, sheet) in OnPaper(name, halves, notation))
            faults.AddRange(LetteringFaults.OfPart(sheet).Select(f => $"{part} paper: {f}"));

        Assert.True(faults.Count == 0, $"{faults.Count} faults\n{string.Join('\n', faults)}");
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_figure_to_check_by_is_nearest_to_its_own_line_and_with_a_name_it_stands_by_none(string name, bool halves, LengthNotation notation)
    {
        var faults = OnPaper(name, halves, notation).SelectMany(p => LetteringFaults.OfFigures(p.Sheet), (p, f) => $"{p.Part} paper: {f}").ToList();
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
                // Her sister with the blunt bow stands for her whole molds.
                if (name is not "gauge-runner-fine")
                    cases.Add(name, false, "Letter", true);
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Prints))]
    public void On_no_page_a_letter_stands_on_what_is_cut_or_folded_or_is_cut_by_a_seam(string name, bool halves, string paper, bool guard)
    {
        var faults = new List<string>();
        var settings = new PrintSettings(string.Equals(paper, "A4", StringComparison.Ordinal) ? PaperSize.A4 : PaperSize.Letter) { Halves = halves, Guard = guard ? 3 : null };
        foreach (var hull in ShapedTemplates.Of(name).Hulls)
        {
            var pages = TiledPaper.Of([.. hull.Molds.Parts.Select(m => MoldSheets.ForPaper(hull.Design.Title, m, LengthNotation.Millimeters, settings))], settings);
            faults.AddRange(LetteringFaults.OfPages(pages).Select(f => $"{hull.Design.Title} {f}"));
        }

        Assert.True(faults.Count == 0, $"{faults.Count} faults\n{string.Join('\n', faults)}");
    }

    // With the widest station at half the waterline two figures of her halves were cut by a seam, and a half was too narrow for its name on the picture of its sheet.
    [Fact]
    public void A_template_with_one_dial_turned_is_lettered_as_well()
    {
        const string file = "templates/gauge-runner-blunt.toml";
        var text = new EditedDesign(File.ReadAllText(Repository.PathOf(file))).With("hull.widest", "0.50").Text;
        var design = DesignFile.Read(text, file).Design!;
        var faults = Faults(design.Title, design.Vessel.MainHull, design.Build, out _);
        Assert.True(faults.Count == 0, $"{faults.Count} faults\n{string.Join('\n', faults)}");
    }

    // Of a float this narrow waterlines stand so close that their names covered each other, labels covered PORT and STARBOARD, seams cut what a strip of paper has no room for, and no name went into the transom.
    [Fact]
    public void A_narrow_decked_float_drawn_by_chance_is_lettered_on_its_parts_or_beside_them_with_leaders()
    {
        var dials = RandomFloat.Of(seed: 58, scale: 0.506, crown: 0.054);
        var faults = Faults("The Long Estuary Sampling Courier of the Hydrographic Survey", dials, RandomFloat.Build(dials), out var pages);
        Assert.True(faults.Count == 0, $"{faults.Count} faults\n{string.Join('\n', faults)}");
        Assert.Contains(pages.SelectMany(p => p.Marks), m => m.Layer.Name is "page-leader");
    }

    // The clamp holes of this one's stern mold follow its edge into the room of the label.
    [Fact]
    public void A_profile_molds_label_stands_clear_of_its_clamp_holes()
    {
        var dials = RandomFloat.Of(seed: 14, scale: 0.439, crown: 0.0413);
        Assert.DoesNotContain(Faults("Trial", dials, RandomFloat.Build(dials), out _), f => f.StartsWith("STERN", StringComparison.Ordinal));
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

    // For the router, on paper, on the pages of its halves and on the pictures of its sheets; every letter written is printed.
    private static List<string> Faults(string title, HullDials dials, BuildDials build, out IReadOnlyList<Sheet> pages)
    {
        var settings = new PrintSettings(PaperSize.A4) { Halves = true };
        var molds = MoldPlan.Of(HullShape.Solve(dials).Surface!, build);
        List<(string Part, Sheet Sheet)> written = [.. molds.Parts.Select(m => (m.Name, MoldSheets.ForPaper(title, m, LengthNotation.Millimeters, settings)))];
        List<string> faults =
        [
            .. molds.Parts.SelectMany(m => LetteringFaults.OfPart(MoldSheets.ForRouter(title, m, LengthNotation.Millimeters)), (m, f) => $"{m.Name} router: {f}"),
            .. written.SelectMany(w => LetteringFaults.OfPart(w.Sheet).Concat(LetteringFaults.OfFigures(w.Sheet)), (w, f) => $"{w.Part} paper: {f}"),
        ];
        pages = [.. TiledPaper.Of([.. written.Select(w => w.Sheet)], settings)];
        faults.AddRange(LetteringFaults.OfPages(pages));
        var (of, printed) = (written.Sum(w => w.Sheet.Marks.OfType<TextMark>().Count()), pages.SelectMany(p => p.Marks.OfType<TextMark>()).Count(t => t.Layer.Name is "text"));
        if (printed != of)
            faults.Add(Invariant($"{printed} of {of} lines of lettering are printed"));
        var cutting = CuttingPlan.Of((CutSettings.Usual with { Halves = true }).Of(molds), build, effort: 0);
        faults.AddRange(cutting.Sheets.Zip(CuttingSheets.Of(title, cutting, LengthNotation.Millimeters)).SelectMany(s => LetteringFaults.OfPicture(s.First, s.Second)));
        return faults;
    }

    // Drawn once for the two that look at it.
    private static IReadOnlyList<(string Part, Sheet Sheet)> OnPaper(string name, bool halves, LengthNotation notation) => s_onPaper.GetOrAdd(
        (name, halves, notation),
        _ => [.. ShapedTemplates.Of(name).Hulls.SelectMany(h => h.Molds.Parts, (h, m) =>
            ($"{h.Design.Title} {m.Name}", MoldSheets.ForPaper(h.Design.Title, m, notation, new PrintSettings(PaperSize.A4) { Halves = halves, Guard = 3 })))]);
}
