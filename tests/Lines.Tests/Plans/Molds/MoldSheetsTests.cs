using System.Collections.Concurrent;
using Lines.Construction;
using Lines.Construction.Molds;
using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Molds;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Molds;

public class MoldSheetsTests
{
    private const string Title = "Gauge Tender";
    private static readonly ConcurrentDictionary<string, MoldPlan> s_plans = new(StringComparer.Ordinal);

    public static TheoryData<string> Hulls => ["double-ender", "transom boat"];

    [Theory]
    [MemberData(nameof(Hulls))]
    public void Every_sheet_cuts_one_closed_path_that_is_the_molds_own_outline_in_millimeters(string name)
    {
        foreach (var mold in Plan(name).Molds)
        {
            var sheet = MoldSheets.ForRouter(Title, mold, LengthNotation.Millimeters);
            var cut = Assert.Single(sheet.Marks.OfType<PathMark>(), m => IsOn(m, "cut")).Path;
            Assert.True(cut.Closed);
            Assert.Equal(mold.Outline.Vertices.Count, cut.Vertices.Count);
            Vector2 moved = cut.Vertices[0].Point - Millimeters(mold.Outline.Vertices[0].Point);
            foreach (var (drawn, meant) in cut.Vertices.Zip(mold.Outline.Vertices))
            {
                Assert.True(drawn.Point.DistanceTo(Millimeters(meant.Point) + moved) < 1e-9);
                Assert.Equal(meant.Bulge, drawn.Bulge);
            }

            var layers = sheet.Marks.Select(m => m.Layer.Name).ToHashSet(StringComparer.Ordinal);
            Assert.True(layers.IsSubsetOf(["cut", "drill", "holes", "inner-stem", "mark", "text"]) && layers.IsSupersetOf(["cut", "mark", "text"]));
        }
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void Lettering_stays_inside_the_part_and_no_line_of_it_covers_another(string name)
    {
        foreach (var mold in Plan(name).Molds)
        {
            var sheet = MoldSheets.ForPaper(Title, mold, LengthNotation.FeetInchesEighths);
            var cut = sheet.Marks.OfType<PathMark>().Single(m => IsOn(m, "cut")).Path;
            Assert.Empty(Lettered.Overlaps(sheet));
            foreach (var text in sheet.Marks.OfType<TextMark>())
            {
                foreach (var p in StrokeLettering.Strokes(text).SelectMany(s => s.Vertices))
                    Assert.True(cut.Contains(p.Point), text.Text);
            }
        }
    }

    [Theory]
    [InlineData("WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW")]
    [InlineData("The Mud Warden's Great Wide Working Workboat of Winter Waters")]
    public void A_long_title_of_wide_letters_covers_no_other_lettering_and_stays_on_the_part(string title)
    {
        foreach (var mold in Plan("double-ender").Molds.Concat(ShapedTemplates.Of("gauge-runner").Molds.Molds))
        {
            foreach (var sheet in (Sheet[])[MoldSheets.ForPaper(title, mold, LengthNotation.Millimeters), MoldSheets.ForRouter(title, mold, LengthNotation.Millimeters)])
            {
                var cut = sheet.Marks.OfType<PathMark>().Single(m => IsOn(m, "cut")).Path;
                Assert.Empty(Lettered.Overlaps(sheet));
                var halves = sheet.Marks.OfType<TextMark>().Where(t => title.Contains(t.Text, StringComparison.Ordinal) && t.Text.Length > 20).ToList();
                Assert.Equal(title.Replace(" ", "", StringComparison.Ordinal), string.Concat(halves.Select(t => t.Text)).Replace(" ", "", StringComparison.Ordinal));
                Assert.All(halves.SelectMany(StrokeLettering.Strokes).SelectMany(s => s.Vertices), v => Assert.True(cut.Contains(v.Point)));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void Every_mark_and_hole_lies_on_the_part(string name)
    {
        foreach (var mold in Plan(name).Molds)
        {
            var sheet = MoldSheets.ForPaper(Title, mold, LengthNotation.Millimeters);
            var cut = sheet.Marks.OfType<PathMark>().Single(m => IsOn(m, "cut")).Path;
            foreach (var p in sheet.Marks.OfType<PathMark>().Where(m => !IsOn(m, "cut") && !IsOn(m, "inner-stem")).SelectMany(m => m.Path.Vertices))
                Assert.True(cut.Contains(p.Point) || cut.DistanceTo(p.Point) < 0.02);
        }
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void The_label_says_which_mold_which_face_where_it_stands_and_what_was_deducted(string name)
    {
        foreach (var mold in Plan(name).Molds)
        {
            var texts = MoldSheets.ForRouter(Title, mold, LengthNotation.Millimeters).Marks.OfType<TextMark>().ToList();
            Assert.Contains(texts, t => Says(t, mold.Name));
            Assert.Contains(texts, t => Says(t, Title));
            Assert.Contains(texts, t => Says(t, "INSIDE OF 6 mm PLANKING"));
            Assert.Contains(texts, t => Says(t, "SHEER"));
            if (mold.Face == MoldFace.Starboard)
            {
                Assert.Contains(texts, t => Says(t, "THIS FACE TO STARBOARD"));
                continue;
            }

            Assert.Contains(texts, t => Says(t, mold.Face == MoldFace.Bow ? "THIS FACE TO BOW" : "THIS FACE TO STERN"));
            // Upside down, starboard is at the right hand of who looks at a face that looks to the bow, at the left of the other.
            double starboard = texts.Single(t => Says(t, "STARBOARD")).At.X, port = texts.Single(t => Says(t, "PORT")).At.X;
            Assert.Equal(mold.Face == MoldFace.Bow, starboard > port);
        }
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void In_inches_planking_and_holes_are_told_as_they_are_not_to_the_nearest_fraction(string name)
    {
        foreach (var mold in Plan(name).Molds)
        {
            var texts = MoldSheets.ForPaper(Title, mold, LengthNotation.Inches).Marks.OfType<TextMark>().ToList();
            Assert.Contains(texts, t => Says(t, "INSIDE OF 0.236 in (6 mm) PLANKING"));
            foreach (var hole in mold.Holes)
            {
                if (hole.Kind != MoldHoleKind.Sight || mold.Heights.HalfBreadth > 0.1)
                    Assert.Contains(texts, t => Says(t, hole.Kind switch { MoldHoleKind.Screw => "SCREW 0.197 in (5 mm)", MoldHoleKind.Sight => "SIGHT 0.394 in (10 mm)", _ => "1.260 in" }));
            }
        }
    }

    [Fact]
    public void On_narrow_feet_the_lettering_of_screws_keeps_clear_of_the_centerline()
    {
        foreach (var mold in MoldPlan.Of(Hull("double-ender"), new BuildDials { Planking = 0.006, StrongbackWidth = 3.5 * Length.Inch }).Molds.Where(m => m.Kind == MoldKind.Station))
        {
            var sheet = MoldSheets.ForPaper(Title, mold, LengthNotation.Inches);
            Assert.Empty(Lettered.Overlaps(sheet));
            var lines = sheet.Marks.OfType<PathMark>().Where(m => m.Name is "CL").ToList();
            var told = sheet.Marks.OfType<TextMark>().Where(t => t.Text.StartsWith("SCREW", StringComparison.Ordinal) || Says(t, "0.197 in (5 mm)")).ToList();
            Assert.NotEmpty(lines);
            Assert.True(told.Count >= 2, mold.Name);
            Assert.All(told, t => Assert.True(Lettered.Box(t) is var box && (box.Right < lines[0].Path.Bounds().Left || box.Left > lines[0].Path.Bounds().Right), $"{mold.Name}: {t.Text}"));
        }
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void The_scale_square_is_a_hundred_millimeters_both_ways_and_clear_of_the_part(string name)
    {
        foreach (var mold in Plan(name).Molds)
        {
            var sheet = MoldSheets.ForRouter(Title, mold, LengthNotation.Millimeters);
            var cut = sheet.Marks.OfType<PathMark>().Single(m => IsOn(m, "cut")).Path;
            var square = Assert.Single(sheet.Marks.OfType<PathMark>(), m => IsOn(m, "mark") && m.Path.Closed).Path;
            var box = square.Bounds();
            Assert.Equal(100, box.Width, 1e-9);
            Assert.Equal(100, box.Height, 1e-9);
            foreach (var p in square.Flattened(0.1))
                Assert.False(cut.Contains(p));
            Assert.True(square.Vertices.All(v => cut.DistanceTo(v.Point) > 5));
            foreach (var line in sheet.Marks.OfType<PathMark>().Where(m => IsOn(m, "inner-stem")))
                Assert.DoesNotContain(line.Path.Flattened(0.1), p => box.Grown(5).Holds(p));
            Assert.True(cut.Vertices.All(v => !box.Holds(v.Point)));
        }
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void All_molds_lie_on_one_sheet_with_room_for_a_cutter_between_them(string name)
    {
        var plan = Plan(name);
        var sheet = MoldSheets.All(Title, plan, LengthNotation.Millimeters);
        var parts = sheet.Marks.OfType<PathMark>().Where(m => IsOn(m, "cut")).Select(m => m.Path.Bounds()).ToList();
        Assert.Equal(plan.Molds.Count, parts.Count);
        for (var i = 0; i < parts.Count; i++)
        {
            Assert.True(new Box2(0, 0, sheet.Width, sheet.Height).Holds(parts[i]));
            for (var j = i + 1; j < parts.Count; j++)
                Assert.False(parts[i].Grown(7.4).Overlaps(parts[j].Grown(7.4)));
        }

        Assert.Empty(Lettered.Overlaps(sheet));
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void Every_hole_is_lettered_with_what_it_is_for_and_how_wide_and_clamp_holes_have_their_own_layer(string name)
    {
        foreach (var mold in Plan(name).Molds.Concat(ShapedTemplates.Names.SelectMany(t => ShapedTemplates.Of(t).Molds.Molds)))
        {
            var sheet = MoldSheets.ForRouter(Title, mold, LengthNotation.Millimeters);
            Assert.Empty(Lettered.Overlaps(MoldSheets.ForRouter(Title, mold, LengthNotation.Inches)));
            var circles = sheet.Marks.OfType<PathMark>().Where(m => IsOn(m, "drill") || IsOn(m, "holes")).ToList();
            Assert.Equal(mold.Holes.Count, circles.Count);
            var texts = sheet.Marks.OfType<TextMark>().ToList();
            foreach (var circle in circles)
            {
                var box = circle.Path.Bounds();
                if (IsOn(circle, "drill"))
                {
                    if (box.Width > 7)
                    {
                        // Sighting holes of the narrowest molds leave no room for a name outside them.
                        Assert.Equal(10, box.Width, 1e-9);
                        Assert.True(mold.Heights.HalfBreadth < 0.075 || texts.Exists(t => Says(t, "SIGHT 10 mm") && Lettered.Box(t).Touches(box.Grown(3))), mold.Name);
                        continue;
                    }

                    Assert.Equal(5, box.Width, 1e-9);
                    Assert.Contains(texts, t => Says(t, "SCREW 5 mm") && Lettered.Box(t).Touches(box.Grown(3)));
                    continue;
                }

                Assert.Equal(32, box.Width, 1e-9);
                foreach (var mark in sheet.Marks.OfType<PathMark>().Where(m => IsOn(m, "mark")))
                    Assert.DoesNotContain(Enumerable.Range(0, 201).Select(i => mark.Path.Segments()[0].PointAt(i / 200.0)), p => box.Center.DistanceTo(p) < 15.99);
                foreach (var words in new[] { "CLAMP HOLE", "32 mm" })
                    Assert.Contains(texts, t => Says(t, words) && StrokeLettering.Strokes(t).SelectMany(s => s.Vertices).All(v => circle.Path.Contains(v.Point)));
            }

            Assert.Empty(Lettered.Overlaps(sheet));
        }
    }

    [Fact]
    public void On_a_transom_sheer_and_every_waterline_are_named_at_both_sides()
    {
        foreach (var transom in ShapedTemplates.Names.SelectMany(t => ShapedTemplates.Of(t).Molds.Molds).Where(m => m.Kind == MoldKind.Transom).Append(Plan("transom boat").Molds[^1]))
        {
            var texts = MoldSheets.ForPaper(Title, transom, LengthNotation.Millimeters).Marks.OfType<TextMark>().ToList();
            foreach (var mark in transom.Marks.Where(m => m.Kind != MoldMarkKind.Centerline).Select(m => m.Name).Distinct())
                Assert.Equal(2, texts.Count(t => Says(t, mark)));
        }
    }

    [Fact]
    public void Files_are_named_from_the_bow()
    {
        Assert.Equal(
            "stem mold-01 mold-02 mold-03 mold-04 mold-05 mold-06 mold-07 mold-08 mold-09 mold-10 mold-11 mold-12 mold-13 mold-14 mold-15 mold-16 mold-17 stern",
            string.Join(' ', Plan("double-ender").Molds.Select(MoldSheets.FileName)));
        Assert.Equal("transom", MoldSheets.FileName(Plan("transom boat").Molds[^1]));
    }

    internal static MoldPlan Plan(string name) => s_plans.GetOrAdd(name, n => MoldPlan.Of(Hull(n), new BuildDials { Planking = 0.006 }));

    internal static HullSurface Hull(string name) =>
        string.Equals(name, "double-ender", StringComparison.Ordinal) ? SampleHulls.DoubleEnder() : SampleHulls.TransomBoat();

    private static bool Says(TextMark text, string words) => string.Equals(text.Text, words, StringComparison.Ordinal);

    private static bool IsOn(Mark mark, string layer) => string.Equals(mark.Layer.Name, layer, StringComparison.Ordinal);

    private static Point2 Millimeters(Point2 p) => new(1000 * p.X, 1000 * p.Y);
}
