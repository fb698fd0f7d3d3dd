using System.Text.RegularExpressions;
using Lines.Construction;
using Lines.Construction.Molds;
using Lines.Drawing.Model;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Molds;
using Lines.Plans.Paper;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Molds;

public partial class PaperDrawingTests
{
    // What a figure away from its line begins with.
    [GeneratedRegex("^(SHEER|TOP|DWL|WL [0-9]+): ", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Named();

    public static TheoryData<string, LengthNotation, bool> Cases
    {
        get
        {
            var cases = new TheoryData<string, LengthNotation, bool>();
            foreach (var name in ShapedTemplates.Names)
            {
                cases.Add(name, LengthNotation.Millimeters, false);
                cases.Add(name, LengthNotation.Inches, false);
                cases.Add(name, LengthNotation.Millimeters, true);
            }

            return cases;
        }
    }

    // Chords of the outline cut fine, and Pythagoras; a figure is shown to a tenth of a millimeter or to 1/32 in.
    [Theory]
    [MemberData(nameof(Cases))]
    public void Figures_to_check_by_are_the_breadths_heights_and_one_diagonal_of_the_outline(string name, LengthNotation notation, bool halves)
    {
        var settings = new PrintSettings(PaperSize.Letter) { Halves = halves };
        foreach (var mold in ShapedTemplates.Of(name).Molds.Parts)
        {
            var sheet = MoldSheets.ForPaper("Trial", mold, notation, settings);
            var edge = sheet.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "cut" or "fold").Select(m => m.Path).ToList();
            var points = edge.SelectMany(p => PathDistance.Samples(p, 0.2)).ToList();
            double foot = points.Min(p => p.Y), least = notation == LengthNotation.Inches ? 25.4 / 64 : 0.05;
            var isProfile = mold.Kind is MoldKind.Stem or MoldKind.Stern;
            var told = sheet.Marks.OfType<TextMark>().Select(t => t.Text).ToList();
            foreach (var text in told.Where(t => t.EndsWith(" UP", StringComparison.Ordinal)))
            {
                var parts = Named().Replace(text, "")[..^3].Split(", ");
                var up = Length.Parse(parts[^1]).Millimeters;
                if (text.StartsWith("TOP", StringComparison.Ordinal))
                    Assert.Equal(points.Max(p => p.Y) - foot, up, least + 1e-6);
                if (parts.Length == 1)
                    continue;
                var y = foot + up;
                var across = Length.Parse(parts[0].Replace(" ACROSS", "", StringComparison.Ordinal).Replace(" FROM CL", "", StringComparison.Ordinal)).Millimeters;
                // The height is rounded, so the breadth is that of some level within half a step.
                double[] levels = [y - least, y, y + least];
                Assert.InRange(across, levels.Min(Breadth) - least - 0.02, levels.Max(Breadth) + least + 0.02);
            }

            if (mold.Kind == MoldKind.Station)
            {
                Assert.Contains(told, t => t.StartsWith("TOP: ", StringComparison.Ordinal));
                Assert.True(mold.LapFloor is not null || told.Exists(t => t.StartsWith("SHEER: ", StringComparison.Ordinal) && t.Contains(halves ? "FROM CL" : "ACROSS", StringComparison.Ordinal)), mold.Name);
            }

            if (mold.Marks.Any(m => m.Kind is MoldMarkKind.Waterline or MoldMarkKind.DesignWaterline))
            {
                var diagonal = Length.Parse(Assert.Single(told, t => t.StartsWith("D TO D ", StringComparison.Ordinal))[7..]).Millimeters;
                var corner = points.Where(p => p.Y < foot + 0.01).MinBy(p => p.X);
                var ends = sheet.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "mark" && m.Name.Length > 0 && m.Path.Vertices.Count == 2)
                    .Select(m => m.Path.Vertices.Select(v => v.Point).MaxBy(p => p.X)).Where(p => PathDistance.To(edge, p) < 0.02);
                Assert.Contains(ends, e => Math.Abs(Math.Sqrt(Math.Pow(e.X - corner.X, 2) + Math.Pow(e.Y - corner.Y, 2)) - diagonal) < least + 0.01);
                Assert.Contains("D", told);
            }

            Assert.True(isProfile || mold.LapFloor is not null || told.Count(t => t.Contains("ACROSS, ", StringComparison.Ordinal) || t.Contains("FROM CL, ", StringComparison.Ordinal)) >= 3, $"{mold.Name}: {string.Join("; ", told)}");

            double Breadth(double level)
            {
                var crossings = points.Zip(points.Skip(1)).Where(s => (s.First.Y > level) != (s.Second.Y > level) && s.First.DistanceTo(s.Second) < 1)
                    .Select(s => s.First.X + ((level - s.First.Y) / (s.Second.Y - s.First.Y) * (s.Second.X - s.First.X))).ToList();
                return crossings.Count < 2 ? 0 : crossings.Max() - crossings.Min();
            }
        }
    }

    // 109 mm over the sheer: no half of the first mold takes breadth and height in feet and inches in one line.
    [Fact]
    public void A_mold_too_narrow_for_breadth_and_height_in_one_line_tells_each_in_one_of_its_own()
    {
        var hull = HullShape.Solve(FormDials.DoubleEnder with
        {
            Length = 5.3467,
            Beam = 0.4318,
            Depth = 0.3556,
            Draft = 0.13335,
            Bow = FormDials.DoubleEnder.Bow with { EntryFullness = 0.66, Rocker = 0.0508, Sheer = 0.4572, Forefoot = 0.3048 },
            Midship = new MidshipDials(8 * FormDials.Degree, 0.76, 4 * FormDials.Degree),
        }).Surface!;
        var plan = MoldPlan.Of(hull, new BuildDials { Planking = 0.0119, MoldSpacing = 0.3048, StemSiding = 0.0286, StrongbackWidth = 0.0889 });
        var split = 0;
        foreach (var mold in plan.Molds.Where(m => m.Kind == MoldKind.Station && m.LapFloor is null))
        {
            var sheet = MoldSheets.ForPaper("Trial", mold, LengthNotation.FeetInches, new PrintSettings(PaperSize.Letter));
            Assert.Empty(Lettered.Overlaps(sheet));
            var told = sheet.Marks.OfType<TextMark>().Select(t => t.Text).ToList();
            var marks = mold.Marks.Where(m => m.Kind == MoldMarkKind.Sheer).SelectMany(m => m.Path.Vertices).ToList();
            var sheer = Assert.Single(told, t => t.StartsWith("SHEER: ", StringComparison.Ordinal) && t.Contains(" ACROSS", StringComparison.Ordinal));
            Assert.Equal(marks.Max(v => v.Point.X) - marks.Min(v => v.Point.X), Length.Parse(sheer[6..sheer.IndexOf(" ACROSS", StringComparison.Ordinal)]).Meters, 0.0254 / 64 + 1e-6);
            Assert.True(told.Count(t => t.Contains(" ACROSS", StringComparison.Ordinal)) >= 4, $"{mold.Name}: {string.Join("; ", told)}");
            split += told.Count(t => t.EndsWith(" ACROSS", StringComparison.Ordinal));
        }

        Assert.NotEqual(0, split);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Figures_stand_on_the_part_and_cover_nothing(string name, LengthNotation notation, bool halves)
    {
        foreach (var mold in ShapedTemplates.Of(name).Molds.Parts)
        {
            var sheet = MoldSheets.ForPaper("Trial", mold, notation, new PrintSettings(PaperSize.Letter) { Halves = halves, Guard = 3 });
            Assert.Empty(Lettered.Overlaps(sheet));
            foreach (var text in sheet.Marks.OfType<TextMark>().Where(t => t.Text.EndsWith(" UP", StringComparison.Ordinal) || t.Text.StartsWith("D TO D", StringComparison.Ordinal)))
            {
                var box = Lettered.Box(text);
                Assert.All(sheet.Marks.OfType<PathMark>(), m => Assert.Empty(m.Path.Inside(box)));
                Assert.InRange(text.Height, 2.2, 3.2);
            }
        }
    }

    [Fact]
    public void A_half_and_its_mirror_image_at_the_fold_line_are_the_whole_mold()
    {
        foreach (var mold in ShapedTemplates.Of("gauge-runner").Molds.Molds.Where(m => m.Kind == MoldKind.Station))
        {
            var sheet = MoldSheets.ForPaper("Trial", mold, LengthNotation.Millimeters, new PrintSettings(PaperSize.Letter) { Halves = true });
            var whole = mold.Outline.Mapped(p => new Point2(1000 * p.X, 1000 * p.Y));
            var fold = Assert.Single(sheet.Marks.OfType<PathMark>(), m => m.Layer.Name is "fold").Path;
            Assert.All(fold.Vertices, v => Assert.Equal(fold.Vertices[0].Point.X, v.Point.X, 1e-9));
            var cut = Assert.Single(sheet.Marks.OfType<PathMark>(), m => m.Layer.Name is "cut").Path;
            Assert.False(cut.Closed);
            var shift = new Vector2(-fold.Vertices[0].Point.X, whole.Bounds().Bottom - cut.Bounds().Bottom);
            List<ArcPath> both = [cut.Mapped(p => p + shift), cut.Mapped(p => new Point2(-(p + shift).X, (p + shift).Y), mirrors: true)];
            Assert.All(PathDistance.Samples(whole, 5).Select(PathDistance.ToAny(both)), off => Assert.InRange(off, 0, 0.01));
            Assert.All(both.SelectMany(b => PathDistance.Samples(b, 5)).Select(PathDistance.ToAny([whole])), off => Assert.InRange(off, 0, 0.01));
        }
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_guard_line_stands_outside_the_line_to_cut_at_its_distance_and_not_along_the_fold(bool halves)
    {
        foreach (var mold in ShapedTemplates.Of("gauge-runner").Molds.Molds)
        {
            var sheet = MoldSheets.ForPaper("Trial", mold, LengthNotation.Millimeters, new PrintSettings(PaperSize.Letter) { Halves = halves, Guard = 3 });
            var cut = sheet.Marks.OfType<PathMark>().Single(m => m.Layer.Name is "cut").Path;
            var guard = sheet.Marks.OfType<PathMark>().Where(m => m.Layer.Name is "guard").Select(m => m.Path).ToList();
            Assert.True(guard.Sum(g => g.Length()) > 0.9 * cut.Length());
            Assert.All(guard.SelectMany(g => PathDistance.Samples(g, 3)).Select(PathDistance.ToAny([cut])), off => Assert.InRange(off, 2.999, 3.001));
        }
    }
}
