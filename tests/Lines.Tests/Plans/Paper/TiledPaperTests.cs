using System.Collections.Concurrent;
using Lines.Construction.Molds;
using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Molds;
using Lines.Plans.Paper;
using Lines.Plans.Report;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Paper;

public class TiledPaperTests
{
    private const double Border = 6.4;

    private static readonly Layer Cut = new("cut", new Ink(0.35), 1);
    private static readonly ConcurrentDictionary<(string Name, string Paper, bool Halves), Lazy<IReadOnlyList<Sheet>>> s_templates = new();

    private static readonly Layer MarkLine = new("mark", new Ink(0.18, [6, 2]), 3);

    /// <summary>A mold-like outline of lines and arcs, 700 by 430 mm, with centerline, waterlines and lettering.</summary>
    public static Sheet Part { get; } = new("Mold M3", 740, 470,
    [
        new PathMark(Cut, new ArcPath(
        [
            new(new(20, 450), 0), new(new(30, 330), 0.12), new(new(120, 120), 0.22), new(new(370, 20), 0.22),
            new(new(620, 120), 0.12), new(new(710, 330), 0), new(new(720, 450), 0), new(new(640, 450), -0.05), new(new(100, 450), 0),
        ], true)),
        new PathMark(Cut, ArcPath.Circle(new(370, 240), 40)),
        new PathMark(MarkLine, ArcPath.Line(new(370, 0), new(370, 470))),
        new PathMark(MarkLine, ArcPath.Line(new(10, 200), new(730, 200))),
        new TextMark(MarkLine, "THIS FACE TO BOW", new(370, 330), 12, Anchor.Middle),
    ]);

    public static TheoryData<string, double, double, double> Cases => new()
    {
        { "Letter", 1, 1, 0 },
        { "A4", 1, 1, 0 },
        { "Letter", 0.985, 1.012, 0.004 },
        { "A4", 1.02, 0.99, -0.006 },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_page_has_the_papers_size_and_nothing_outside_the_border(string paper, double x, double y, double skew)
    {
        var (size, pages) = Pages(paper, x, y, skew);
        foreach (var page in pages)
        {
            Assert.Equal((size.Width, size.Height), (page.Width, page.Height));
            var allowed = new Box2(Border, Border, size.Width - Border, size.Height - Border);
            foreach (var mark in page.Marks)
            {
                var ink = Strokes(mark).Aggregate(Box2.Nothing, (b, s) => b.With(s.Bounds())).Grown(mark.Layer.Ink.Width / 2);
                Assert.True(allowed.Grown(1e-9).Holds(ink), $"{page.Title}: {mark.Layer.Name} {(mark as TextMark)?.Text} {ink}");
            }
        }
    }

    [Theory]
    [InlineData(0, 215.9, 279.4)]
    [InlineData(12, 215.9, 279.4)]
    [InlineData(15, 200, 500)]
    [InlineData(15, 2000, 5000)]
    [InlineData(6.4, 609.6, 914.4)]
    public void Any_border_and_any_size_of_sheet_is_kept(double border, double width, double height)
    {
        var pages = TiledPaper.Of([Part], new(new PaperSize("sheet", width, height)) { Border = border });
        foreach (var page in pages)
        {
            Assert.Equal((width, height), (page.Width, page.Height));
            foreach (var mark in page.Marks)
            {
                var ink = Strokes(mark).Aggregate(Box2.Nothing, (b, s) => b.With(s.Bounds())).Grown(mark.Layer.Ink.Width / 2);
                Assert.True(new Box2(border, border, width - border, height - border).Grown(1e-9).Holds(ink), $"{page.Title}: {mark.Layer.Name} {(mark as TextMark)?.Text} {ink}");
            }

            Assert.Empty(Lettered.Overlaps(page));
        }
    }

    // 36 in are 914.4 mm, 24 in 609.6.
    [Theory]
    [InlineData("line-layer", 914.4, 0.98)]
    [InlineData("silt-sampler", 609.6, 1)]
    public void On_a_roll_every_mold_that_fits_is_whole_on_one_length_and_a_broader_one_has_seams(string name, double width, double scale)
    {
        var roll = new PaperSize("roll", width, PaperSize.LongestOfRoll) { IsRoll = true };
        var settings = new PrintSettings(roll) { Correction = new(1, scale, 0) };
        var parts = ShapedTemplates.Of(name).Molds.Parts.Select(m => MoldSheets.ForPaper("Set", m, LengthNotation.Millimeters)).ToList();
        var pages = TiledPaper.Of(parts, settings);
        foreach (var page in pages)
        {
            Assert.Equal(width, page.Width);
            Assert.InRange(page.Height, 1, PaperSize.LongestOfRoll);
            var allowed = new Box2(Border, Border, page.Width - Border, page.Height - Border).Grown(1e-9);
            Assert.All(page.Marks, m => Assert.True(allowed.Holds(Strokes(m).Aggregate(Box2.Nothing, (b, s) => b.With(s.Bounds())).Grown(m.Layer.Ink.Width / 2))));
        }

        // A pattern fits whose shorter side goes between the borders.
        var broad = parts.Count(p => Math.Min(p.Width, p.Height) > width - (2 * Border));
        Assert.Equal(name is "silt-sampler", broad > 0);
        Assert.Equal(broad > 0, pages.Any(p => p.Marks.Any(m => m.Layer.Name is "page-cut")));
        var whole = pages.SelectMany(p => p.Marks.OfType<PathMark>()).Count(m => m.Layer.Name is "cut" && m.Path.Closed);
        Assert.Equal(parts.Count - broad, whole);
    }

    [Fact]
    public void The_index_tells_a_guard_line_where_there_is_one()
    {
        Assert.Contains(TiledPaper.Of([Part], new(PaperSize.Letter) { Guard = 3 })[1].Marks.OfType<TextMark>(), t => t.Text.StartsWith("Dotted line: 3 mm outside", StringComparison.Ordinal));
        Assert.DoesNotContain(TiledPaper.Of([Part], new(PaperSize.Letter))[1].Marks.OfType<TextMark>(), t => t.Text.StartsWith("Dotted", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Pages_put_together_by_their_crosses_give_the_part_back(string paper, double x, double y, double skew)
    {
        var (_, pages) = Pages(paper, x, y, skew);
        var printer = new PrinterCorrection(x, y, skew);
        var tiles = pages.Where(p => p.Title.StartsWith("Mold M3", StringComparison.Ordinal)).Select(p => Printed(p, printer)).ToList();
        var (shifts, worstCross) = AssembledPages.Of([.. tiles.Select(AssembledPages.CrossesOf)]);
        Assert.Equal(tiles.Count, shifts.Count);
        Assert.True(worstCross < 1e-9, Invariant($"crosses of one name are {worstCross} mm apart"));

        var whole = tiles.SelectMany((t, i) => t.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "cut").Select(m => Moved(m.Path, shifts[i]))).ToList();
        var wanted = Part.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "cut").Select(m => m.Path).ToList();
        // Shop and paper length, 0.02 mm; what the code promises is 0.002.
        Assert.InRange(AssembledPages.Misfit(whole, wanted, 2), 0, 2 * PrinterCorrection.ArcTolerance);
    }

    [Fact]
    public void Arcs_stay_arcs_of_their_own_radius_without_a_correction()
    {
        var (_, pages) = Pages("Letter", 1, 1, 0);
        var radii = Part.Marks.OfType<PathMark>().SelectMany(m => m.Path.Segments()).Where(s => !s.IsLine).Select(s => s.Radius).ToList();
        var arcs = pages.Where(p => p.Title.StartsWith("Mold", StringComparison.Ordinal))
            .SelectMany(p => p.Marks.OfType<PathMark>()).Where(m => m.Layer.Name is "cut").SelectMany(m => m.Path.Segments()).Where(s => !s.IsLine).ToList();
        Assert.NotEmpty(arcs);
        Assert.All(arcs, a => Assert.Contains(radii, r => Math.Abs(r - a.Radius) < 1e-6));
    }

    [Fact]
    public void Two_pages_are_enough_for_a_part_that_fits_two_and_it_is_turned_if_that_saves_pages()
    {
        // Cells on Letter are about 194 by 242 mm, sideways 258 by 178: 230 by 380 takes four upright, two turned.
        var part = new Sheet("Panel", 230, 380, [new PathMark(Cut, new Box2(0, 0, 230, 380).Outline)]);
        var pages = TiledPaper.Of([part], new(PaperSize.Letter));
        Assert.Equal(2 + 2, pages.Count);
    }

    [Fact]
    public void Pages_are_read_sideways_where_that_saves_some_and_still_go_to_the_printer_upright()
    {
        // 254 by 520 is three cells of 258 by 178 mm above each other; upright it takes six, and turned six too: 254 is over 242 + 8.
        var part = new Sheet("Panel", 254, 520, [new PathMark(Cut, new Box2(0, 0, 254, 520).Outline)]);
        var pages = TiledPaper.Of([part], new(PaperSize.Letter));
        Assert.Equal(2 + 3, pages.Count);
        Assert.All(pages, p => Assert.True(p.Height > p.Width));
        var foot = pages[2].Marks.OfType<TextMark>().Single(t => t.Text.StartsWith("row A", StringComparison.Ordinal));
        Assert.Equal(Math.PI / 2, foot.Angle, 1e-12);
    }

    [Fact]
    public void A_part_may_stand_over_its_outer_pages_by_the_strip_they_print_beyond_the_cell()
    {
        // Letter: 215.9 x 279.4 mm less 6.4 + 0.3 all round; 16 for the foot, 8 for the strip: cells of 194.5 x 242, windows 8 larger.
        Assert.Equal(2 + 4, Count(391.9, 491.9));
        Assert.Equal(2 + 6, Count(397.1, 491.9));

        static int Count(double width, double height) =>
            TiledPaper.Of([new Sheet("Panel", width, height, [new PathMark(Cut, new Box2(0, 0, width, height).Outline)])], new(PaperSize.Letter)).Count;
    }

    [Theory]
    [InlineData("Letter")]
    [InlineData("A4")]
    public void No_letter_of_a_mold_is_cut_by_a_seam_and_each_is_printed_once(string paper)
    {
        foreach (var name in ShapedTemplates.Names)
        {
            var (molds, pages) = Templates(name, paper);
            Assert.Empty(pages.Where(p => p.Marks.OfType<PathMark>().Any(m => m.Layer.Name is "text")).Select(p => p.Title));
            var written = molds.Parts.SelectMany(m => MoldSheets.ForPaper(name, m, LengthNotation.Millimeters).Marks.OfType<TextMark>()).Count();
            Assert.Equal(written, pages.SelectMany(p => p.Marks.OfType<TextMark>()).Count(t => t.Layer.Name is "text"));
        }
    }

    [Fact]
    public void The_index_of_the_patterns_of_a_hull_that_is_not_fair_says_so()
    {
        var index = TiledPaper.Of([Part], new(PaperSize.Letter), isFair: false)[1];
        Assert.Single(index.Marks.OfType<TextMark>(), t => t.Text.EndsWith("NOT FAIR: see report", StringComparison.Ordinal));
        Assert.Empty(Lettered.Overlaps(index with { Marks = [.. index.Marks.Where(m => m.Layer.Name is not "page-patch")] }));
        Assert.DoesNotContain(TiledPaper.Of([Part], new(PaperSize.Letter))[1].Marks.OfType<TextMark>(), t => t.Text.Contains("NOT FAIR", StringComparison.Ordinal));
    }

    [Fact]
    public void A_tile_with_nothing_on_it_is_left_out()
    {
        // A frame with an empty middle: 3 by 3 cells, eight with something on them.
        var part = new Sheet("Frame", 570, 710, [new PathMark(Cut, new Box2(0, 0, 570, 710).Outline)]);
        Assert.Equal(2 + 8, TiledPaper.Of([part], new(PaperSize.Letter)).Count);
    }

    [Fact]
    public void Pages_of_separate_bits_keep_the_empty_tile_that_joins_them()
    {
        var part = new Sheet("Bits", 560, 50, [new PathMark(Cut, ArcPath.Circle(new(20, 20), 15)), new PathMark(Cut, ArcPath.Circle(new(540, 20), 15))]);
        var pages = TiledPaper.Of([part], new(PaperSize.Letter));
        var tiles = pages.Skip(2).ToList();
        Assert.Equal(tiles.Count, AssembledPages.Of([.. tiles.Select(AssembledPages.CrossesOf)]).Shifts.Count);
    }

    [Fact]
    public void A_window_carries_centerline_and_waterline_across_every_seam_they_cross()
    {
        var (_, pages) = Pages("Letter", 1, 1, 0);
        var lines = pages.Skip(2).Select(p => p.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "mark").SelectMany(m => m.Path.Segments()).Where(s => s.IsLine).ToList()).ToList();
        Assert.True(lines.Count(p => p.Any(s => s.From.Y == s.To.Y)) >= 2);
        Assert.True(lines.Count(p => p.Any(s => s.From.X == s.To.X)) >= 2);
    }

    [Theory]
    [InlineData("Letter")]
    [InlineData("A4")]
    public void Crosses_letters_and_notes_keep_clear_of_every_line_and_letter_of_a_mold(string paper)
    {
        foreach (var name in ShapedTemplates.Names)
        {
            var (molds, pages) = Templates(name, paper);
            var crowded = new List<string>();
            foreach (var page in pages.Skip(1 + pages.Skip(1).TakeWhile(p => p.Title.StartsWith("Index", StringComparison.Ordinal)).Count()))
            {
                var ofMold = page.Marks.Where(m => !m.Layer.Name.StartsWith("page-", StringComparison.Ordinal)).SelectMany(Strokes).Select(s => (Path: s, Box: s.Bounds())).ToList();
                foreach (var text in page.Marks.OfType<TextMark>().Where(m => m.Layer.Name is "page-note" or "page-register" or "page-name"))
                {
                    var box = Lettered.Box(text);
                    if (ofMold.Any(m => m.Box.Touches(box) && m.Path.Inside(box).Any()))
                        crowded.Add($"{page.Title}: {text.Text}");
                }
            }

            Assert.Empty(crowded);
        }
    }

    [Theory]
    [InlineData("Letter")]
    [InlineData("A4")]
    public void All_but_a_few_seams_in_a_hundred_say_what_to_do_with_them(string paper)
    {
        foreach (var name in ShapedTemplates.Names)
        {
            var marks = Templates(name, paper).Pages.SelectMany(p => p.Marks).ToList();
            var seams = marks.OfType<PathMark>().Count(m => m.Layer.Name is "page-cut" or "page-lap");
            Assert.InRange(marks.OfType<TextMark>().Count(m => m.Layer.Name is "page-note"), 0.97 * seams, seams);
        }
    }

    [Theory]
    [InlineData("Letter")]
    [InlineData("A4")]
    public void Every_long_line_is_named_on_each_page_whose_own_ground_it_crosses(string paper)
    {
        var size = paper is "A4" ? PaperSize.A4 : PaperSize.Letter;
        foreach (var page in ShapedTemplates.Names.SelectMany(n => Templates(n, paper).Pages))
        {
            var texts = page.Marks.OfType<TextMark>().Select(t => t.Text).ToHashSet(StringComparer.Ordinal);
            var own = OwnGround(page, size);
            foreach (var line in page.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "mark" && m.Name.Length > 0 && m.Path.Inside(own).Sum(p => p.Length()) > 40))
                Assert.True(texts.Contains(line.Name), $"{page.Title}: {line.Name} has no name");
        }
    }

    [Theory]
    [InlineData("Letter")]
    [InlineData("A4")]
    public void Every_page_that_shows_a_hole_says_what_it_is_and_no_page_names_a_hole_it_does_not_show(string paper)
    {
        var size = paper is "A4" ? PaperSize.A4 : PaperSize.Letter;
        foreach (var page in ShapedTemplates.Names.SelectMany(n => Templates(n, paper).Pages))
        {
            var own = OwnGround(page, size).Grown(-4.5);
            var holes = page.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "drill" or "holes").ToList();
            var names = page.Marks.OfType<TextMark>().Where(t => t.Text is "CLAMP HOLE" or "OPENING" || t.Text.StartsWith("CLAMP HOLE ", StringComparison.Ordinal) || t.Text.StartsWith("SCREW ", StringComparison.Ordinal) || t.Text.StartsWith("SIGHT ", StringComparison.Ordinal)
                || (t.Text.StartsWith("BOLT ", StringComparison.Ordinal) && !t.Text.StartsWith("BOLT HOLES", StringComparison.Ordinal)) || t.Text.StartsWith("OPENING ", StringComparison.Ordinal)).ToList();
            foreach (var hole in holes.Where(h => h.Path.Inside(own).Any()))
                Assert.True(names.Exists(n => Lettered.Box(n).Touches(hole.Path.Bounds().Grown(15))), $"{page.Title}: a hole without a name");
            foreach (var name in names)
            {
                Assert.True(holes.Exists(h => Lettered.Box(name).Touches(h.Path.Bounds().Grown(40))), $"{page.Title}: {name.Text} without a hole");
                // In the middle of a hole or outside, never on its line.
                Assert.All(holes, h => Assert.Empty(h.Path.Inside(Lettered.Box(name).Grown(0.5))));
            }
        }
    }

    [Theory]
    [InlineData("Letter")]
    [InlineData("A4")]
    public void Of_a_mold_at_most_one_page_carries_nothing_of_its_own(string paper)
    {
        var size = paper is "A4" ? PaperSize.A4 : PaperSize.Letter;
        string[] layers = ["cut", "drill", "holes", "inner-stem", "mark", "text"];
        var blank = ShapedTemplates.Names.SelectMany(n => Templates(n, paper).Pages.Skip(1).Where(p => !p.Title.StartsWith("Index", StringComparison.Ordinal)))
            .Where(p => !p.Marks.Any(m => layers.Contains(m.Layer.Name, StringComparer.Ordinal) && Strokes(m).Any(s => s.Inside(OwnGround(p, size)).Any())))
            .GroupBy(p => p.Title[..p.Title.IndexOf(", row", StringComparison.Ordinal)], StringComparer.Ordinal).ToList();
        Assert.All(blank, g => Assert.Single(g));
    }

    /// <summary>A reader took a centerline 1 mm beside a seam for the seam. More than these need no page; found by search, no source.</summary>
    [Theory]
    [InlineData("Letter", 16)]
    [InlineData("A4", 15)]
    public void Few_lines_run_within_5_mm_of_a_seam(string paper, int most)
    {
        var near = new List<string>();
        foreach (var page in ShapedTemplates.Names.SelectMany(n => Templates(n, paper).Pages))
        {
            var seams = SeamsOf(page);
            foreach (var line in page.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "mark" && m.Name.Length > 0 && m.Path.Length() > 50))
            {
                var segment = line.Path.Segments()[0];
                if (seams.Where(s => Math.Abs(s.StartDirection.Dot(segment.StartDirection)) > 0.5).Select(s => s.DistanceTo(segment.PointAt(0.5))).DefaultIfEmpty(9).Min() is < 5 and var distance)
                    near.Add(Invariant($"{page.Title}: {line.Name} {distance:F1}"));
            }
        }

        var lines = near.Select(n => n[..n.IndexOf(", row", StringComparison.Ordinal)] + n[n.LastIndexOf(':')..]).Distinct(StringComparer.Ordinal).ToList();
        Assert.True(lines.Count <= most, Invariant($"{lines.Count}: {string.Join("; ", lines)}"));
    }

    private static List<ArcSegment> SeamsOf(Sheet page) => [.. page.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "page-cut" or "page-lap")
        .Select(m => new ArcSegment(m.Path.Vertices[0].Point, m.Path.Vertices[^1].Point, 0))];

    // The page within its seams.
    private static Box2 OwnGround(Sheet page, PaperSize size)
    {
        var middle = new Point2(size.Width / 2, size.Height / 2);
        var own = new Box2(0, 0, size.Width, size.Height);
        foreach (var at in SeamsOf(page).Select(s => s.PointAt(0.5)))
        {
            own = Math.Abs(at.X - middle.X) / size.Width > Math.Abs(at.Y - middle.Y) / size.Height
                ? at.X < middle.X ? own with { Left = at.X } : own with { Right = at.X }
                : at.Y < middle.Y ? own with { Bottom = at.Y } : own with { Top = at.Y };
        }

        return own;
    }

    [Fact]
    public void Seams_to_cut_look_like_no_line_of_a_mold_and_the_outline_is_the_heaviest()
    {
        var marks = Templates("gauge-runner", "Letter").Pages.SelectMany(p => p.Marks).OfType<PathMark>().Where(m => !m.Filled).ToList();
        foreach (var cut in marks.Where(m => m.Layer.Name is "page-cut"))
            Assert.True(cut.Path.Vertices.Count > 3 * 30, "ticks every few millimeters");
        Assert.Equal("cut", marks.MaxBy(m => m.Layer.Ink.Width)!.Layer.Name);
    }

    [Fact]
    public void Index_numbers_stand_on_white_and_a_dash_marks_every_page_left_out()
    {
        var pages = Templates("silt-sampler", "Letter").Pages;
        var index = pages.Where(p => p.Title.StartsWith("Index", StringComparison.Ordinal)).ToList();
        var numbers = new HashSet<string>(StringComparer.Ordinal);
        var dashes = 0;
        foreach (var page in index)
        {
            for (var i = 1; i < page.Marks.Count; i++)
            {
                if (page.Marks[i] is not TextMark { Anchor: Anchor.Middle } number)
                    continue;
                var patch = Assert.IsType<PathMark>(page.Marks[i - 1]);
                Assert.True(patch.Filled && patch.Layer.Ink.Tone == 1 && patch.Path.Bounds().Holds(Strokes(number).Aggregate(Box2.Nothing, (b, s) => b.With(s.Bounds()))));
                dashes += number.Text is "-" ? 1 : 0;
                numbers.Add(number.Text);
            }
        }

        Assert.True(dashes > 0);
        Assert.Equal(Enumerable.Range(2 + index.Count, pages.Count - 1 - index.Count).Select(n => Invariant($"{n}")).Append("-").Order(StringComparer.Ordinal), numbers.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_index_says_which_parts_are_not_made_and_why_and_nothing_else_stands_there()
    {
        const string told = "The stern mold is not made: its edge cannot be drawn in lines and arcs near x = 5082 mm, 31.4 mm above the base line.";
        var parts = ShapedTemplates.Of("gauge-runner").Molds.Molds.Select(m => MoldSheets.ForPaper("Trial", m, LengthNotation.Millimeters)).ToList();
        Sheet[] Index(params string[] notMade) =>
            [.. TiledPaper.Of(parts, new(PaperSize.Letter), notMade: notMade).Where(p => p.Title.StartsWith("Index", StringComparison.Ordinal))];
        foreach (var page in Index(told, told))
        {
            Assert.Equal(2, page.Marks.OfType<TextMark>().Count(t => t.Text == told && t.Height > 2));
            Assert.Empty(Lettered.Overlaps(page));
            Assert.True(page.Marks.OfType<PathMark>().All(m => m.Path.Bounds().Bottom > Border));
        }

        Assert.DoesNotContain(Index().SelectMany(p => p.Marks).OfType<TextMark>(), t => t.Text.Contains("not made", StringComparison.Ordinal));
    }

    /// <summary>As many as the search found when molds began to share pages, and as halves; each mold alone, they took 147, 180, 148 and 192. No source.</summary>
    [Theory]
    [InlineData("Letter", "gauge-runner", false, 128)]
    [InlineData("Letter", "line-layer", false, 153)]
    [InlineData("Letter", "sample-courier", false, 132)]
    [InlineData("Letter", "silt-sampler", false, 185)]
    [InlineData("A4", "gauge-runner", false, 131)]
    [InlineData("Letter", "gauge-runner", true, 74)]
    [InlineData("Letter", "line-layer", true, 96)]
    [InlineData("Letter", "silt-sampler", true, 93)]
    public void The_patterns_of_a_boat_take_no_more_pages_than_they_did(string paper, string name, bool halves, int pages) =>
        Assert.InRange(Templates(name, paper, halves).Pages.Count, 1, pages);

    [Fact]
    public void Small_parts_share_pages_where_that_saves_some_each_named_on_the_pages_that_show_it()
    {
        // Letter: cells of 194.5 x 242 mm. A part of 300 x 200 takes two pages alone; the free end of the second holds one of 60 x 150.
        Sheet Bar(string name, double width, double height) => new($"Trial: {name}", width, height, [new PathMark(Cut, new Box2(0, 0, width, height).Outline)]);
        var pages = TiledPaper.Of([Bar("M1", 300, 200), Bar("M2", 60, 150)], new(PaperSize.Letter));
        Assert.Equal(2 + 2, pages.Count);
        Assert.All(pages.Skip(2), p => Assert.StartsWith("Trial: M1 + M2, row", p.Title, StringComparison.Ordinal));
        foreach (var page in pages.Skip(2))
        {
            var shown = page.Marks.OfType<PathMark>().Where(m => m.Layer == Cut).ToList();
            var small = shown.Exists(m => m.Path.Bounds() is var b && Math.Abs(Math.Min(b.Width, b.Height) - 60) < 1);
            Assert.Contains(page.Marks.OfType<TextMark>(), t => t.Text == (small ? "Trial: M1 + M2" : "Trial: M1"));
        }
    }

    [Fact]
    public void The_calibration_page_carries_the_test_square_of_the_router_files()
    {
        var page = TiledPaper.Of([Part], new(PaperSize.Letter))[0];
        var square = Assert.Single(page.Marks.OfType<PathMark>(), m => m.Path.Closed && Math.Abs(m.Path.Bounds().Width - m.Path.Bounds().Height) < 1e-9);
        Assert.Equal((100, 100), (square.Path.Bounds().Width, square.Path.Bounds().Height));
        Assert.Contains(page.Marks.OfType<TextMark>(), t => t.Text is "100 mm (3 15/16 in)");
        var mold = ShapedTemplates.Of("gauge-runner").Molds.Molds[1];
        var router = MoldSheets.ForRouter("Gauge Runner", mold, LengthNotation.Millimeters);
        Assert.Contains(router.Marks.OfType<TextMark>(), t => t.Text is "100 mm (3 15/16 in)");
        Assert.Single(router.Marks.OfType<PathMark>(), m => m.Layer.Name is "mark" && m.Path.Closed && Math.Abs(m.Path.Length() - 400) < 1e-9);
        // 3 15/16 in of 25.4 mm: off by 0.0125 mm, less than a rule shows.
        Assert.Equal(100, 63 / 16.0 * 25.4, 0.02);
        Assert.Contains("100 mm (3 15/16 in)", Cautions.Print, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Letter")]
    [InlineData("A4")]
    public void Texts_of_the_calibration_page_touch_neither_each_other_nor_its_lines(string paper)
    {
        var size = paper is "A4" ? PaperSize.A4 : PaperSize.Letter;
        foreach (var correction in new[] { PrinterCorrection.None, new PrinterCorrection(1.01, 0.99, 0.003) })
        {
            var page = TiledPaper.Of([Part], new(size) { Correction = correction })[0];
            Assert.Empty(Lettered.Overlaps(page));
            foreach (var text in page.Marks.OfType<TextMark>())
            {
                // Texts along the diagonals are checked stroke by stroke, the others by their box.
                var strokes = StrokeLettering.Strokes(text).SelectMany(s => PathDistance.Samples(s, 0.2)).ToList();
                foreach (var line in page.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "page-rule" or "page-label"))
                    Assert.True(strokes.Min(p => PathDistance.To([line.Path], p)) > 0.5, text.Text);
            }
        }
    }

    [Fact]
    public void The_calibration_page_prints_the_exact_lengths_of_its_lines()
    {
        var page = TiledPaper.Of([Part], new(PaperSize.Letter))[0];
        var texts = page.Marks.OfType<TextMark>().Select(t => t.Text).ToList();
        var lines = page.Marks.OfType<PathMark>().SelectMany(m => m.Path.Segments()).Select(s => s.Length).ToList();
        foreach (var (name, length) in new[] { ("L", 202.0), ("U", 266.0), ("R", Math.Sqrt((202 * 202) + (266 * 266))) })
        {
            Assert.Contains(texts, t => t.StartsWith(Invariant($"{name}  {length:0.00} mm  {length / 25.4:0.000} in"), StringComparison.Ordinal));
            Assert.Contains(lines, l => Math.Abs(l - length) < 1e-9);
        }
    }

    [Fact]
    public void The_scale_bar_on_every_tile_is_100_mm_and_4_in()
    {
        foreach (var page in Pages("A4", 1, 1, 0).Pages.Skip(2))
        {
            var ticks = page.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "page-rule").SelectMany(m => m.Path.Segments()).ToList();
            var bar = Assert.Single(ticks, s => Math.Abs(s.Length - 101.6) < 1e-9);
            // Both scales start at the same end; one's ticks point to the left of the bar, the other's to the right.
            var along = bar.StartDirection;
            Assert.Contains(ticks, t => Math.Abs((t.From - bar.From).Dot(along) - 100) < 1e-9 && (t.To - t.From).Dot(along.TurnedLeft) > 0);
            Assert.Contains(ticks, t => Math.Abs((t.From - bar.From).Dot(along) - 101.6) < 1e-9 && (t.To - t.From).Dot(along.TurnedLeft) < 0);
        }
    }

    // Laid out once for all tests that look at them.
    private static (MoldPlan Molds, IReadOnlyList<Sheet> Pages) Templates(string name, string paper, bool halves = false)
    {
        var shaped = ShapedTemplates.Of(name);
        return (shaped.Molds, s_templates.GetOrAdd((name, paper, halves), _ => new(() =>
        {
            var settings = new PrintSettings(paper is "A4" ? PaperSize.A4 : PaperSize.Letter) { Halves = halves };
            return TiledPaper.Of([.. shaped.Molds.Parts.Select(m => MoldSheets.ForPaper(shaped.Design.Title, m, LengthNotation.Millimeters, settings))], settings);
        })).Value);
    }

    private static (PaperSize Size, IReadOnlyList<Sheet> Pages) Pages(string paper, double x, double y, double skew)
    {
        var size = paper is "A4" ? PaperSize.A4 : PaperSize.Letter;
        return (size, TiledPaper.Of([Part], new(size) { Correction = new(x, y, skew) }));
    }

    // The simulated printer moves the ends and middles of what it is sent; arcs are cut fine before, so that they may be shifted piecewise.
    private static Sheet Printed(Sheet sheet, PrinterCorrection printer)
    {
        var middle = new Point2(sheet.Width / 2, sheet.Height / 2);
        return sheet with
        {
            Marks = [.. sheet.Marks.Select(m => m switch
            {
                PathMark p => (Mark)(p with
                {
                    Path = ArcPath.Through(p.Path.Flattened(1e-3).Select(q => printer.Printed(q, middle))),
                }),
                TextMark t => t with { At = printer.Printed(t.At, middle) },
                _ => m,
            })],
        };
    }

    private static ArcPath Moved(ArcPath path, Vector2 by) => path.Mapped(p => p + by);

    private static IEnumerable<ArcPath> Strokes(Mark mark) => mark switch
    {
        TextMark text => StrokeLettering.Strokes(text),
        PathMark path => [path.Path],
        _ => throw new InvalidOperationException("unknown mark"),
    };
}
