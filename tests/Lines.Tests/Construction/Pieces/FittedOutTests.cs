using System.Globalization;
using System.Text.RegularExpressions;
using Lines.Construction;
using Lines.Construction.Molds;
using Lines.Construction.Pieces;
using Lines.Design;
using Lines.Drawing.Model;
using Lines.Hull.Form;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Molds;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Construction.Pieces;

/// <summary>Bulkheads under beams, and openings of bottom and deck, given in the file.</summary>
public class FittedOutTests
{
    private static readonly BuildDials Build = new() { Planking = 0.006, Joints = [2.0] };

    [Fact]
    public void A_bulkhead_stands_with_its_face_away_from_midships_one_planking_and_cloth_under_the_outside()
    {
        var hull = SampleHulls.DoubleEnder();
        var plan = MoldPlan.Of(hull, Build with { Bulkheads = [new("fore beam", 1.5, 0.08), new("after beam", 3.6, null)] });
        Assert.Empty(plan.Clashes);
        Assert.Equal(["B1 FORE", "B1 AFT", "B2", "B3"], plan.Bulkheads.Select(b => b.Name));
        Assert.Equal(["bulkhead-02", "bulkhead-03"], plan.Bulkheads.Skip(2).Select(MoldSheets.FileName));
        Assert.Equal([MoldFace.Bow, MoldFace.Stern], plan.Bulkheads.Skip(2).Select(b => b.Face));
        Assert.Equal(0.08, Assert.Single(plan.Bulkheads[2].Holes).Diameter);
        foreach (var bulkhead in plan.Bulkheads.Skip(2))
        {
            var edge = bulkhead.Outline.Flattened(1e-6).Where(p => p.X >= 0 && p.Y > 0.0005).ToList();
            foreach (var p in Enumerable.Range(0, 12).Select(k => bulkhead.Frame.ToHull(edge[k * (edge.Count - 1) / 11])))
                Assert.Equal(0.0064, NearestOnSkin.Distance(hull.Side.PointAt, p with { Y = Math.Abs(p.Y) }, (-0.05, 1.05), (0, 1.3)), 0.00002);
        }
    }

    [Fact]
    public void An_opening_is_marked_at_half_its_breadth_on_every_mold_and_bulkhead_it_crosses_and_on_no_other()
    {
        var opening = new HullOpening("board case", 2.4, 3.1, 0.04, InDeck: false);
        var plan = MoldPlan.Of(SampleHulls.DoubleEnder(), Build with { Openings = [opening, new("mast", 1.0, 1.1, 0.06, InDeck: true)] });
        Assert.Empty(plan.Clashes);
        var marked = plan.Molds.Where(m => m.Marks.Any(k => k.Name is "BOARD CASE")).ToList();
        Assert.True(marked.Count >= 2);
        foreach (var mold in plan.Parts.Where(m => m.Kind is MoldKind.Station or MoldKind.Bulkhead))
        {
            var (from, to) = mold.Face == MoldFace.Bow ? (mold.X, mold.X + mold.Stock) : (mold.X - mold.Stock, mold.X);
            Assert.Equal(to > 2.4 && from < 3.1, marked.Contains(mold));
            foreach (var mark in mold.Marks.Where(k => k.Name is "BOARD CASE"))
            {
                Assert.All(mark.Path.Vertices, v => Assert.Equal(0.02, Math.Abs(v.Point.X), 1e-12));
                Assert.Equal(0, mold.Outline.DistanceTo(mark.Path.Vertices[0].Point), 2e-5);
                Assert.True(mold.Outline.Contains(mark.Path.Vertices[1].Point));
            }
        }
    }

    [Fact]
    public void An_opening_aside_of_the_centerplane_is_marked_on_its_own_side_of_the_boat_and_such_molds_are_cut_whole()
    {
        var (port, starboard) = (new HullOpening("leeboard", 2.2, 3.3, 0.03, InDeck: false) { Aside = -0.15 }, new HullOpening("hatch", 2.2, 3.3, 0.1, InDeck: true) { Aside = 0.1 });
        var plan = MoldPlan.Of(SampleHulls.DoubleEnder(), Build with { Openings = [port, starboard, new("far", 2.2, 3.3, 0.1, InDeck: false) { Aside = 0.4 }] });
        var marked = plan.MarkedWith(port);
        Assert.True(marked.Select(m => m.Face).Distinct().Count() == 2, "molds of both faces are crossed");
        foreach (var mold in marked)
        {
            double[] Sides(string name) => [.. mold.Marks.Where(m => m.Name == name).Select(m => mold.Frame.ToHull(m.Path.Vertices[0].Point).Y).Order()];
            Assert.Equal([-0.165, -0.135], Sides("LEEBOARD"), (a, b) => Math.Abs(a - b) < 1e-12);
            Assert.Equal([0.05, 0.15], Sides("HATCH"), (a, b) => Math.Abs(a - b) < 1e-12);
            Assert.All(mold.Marks.Where(m => m.Kind == MoldMarkKind.Opening && m.Name == "LEEBOARD"), m => Assert.Equal(0, mold.Outline.DistanceTo(m.Path.Vertices[0].Point), 2e-5));
            Assert.False(HalfMold.Exists(mold));
        }

        Assert.Contains(plan.Molds, HalfMold.Exists);
        // They pass beside each other; the third is further out than the hull is broad.
        var clash = Assert.Single(plan.Clashes);
        Assert.Equal(2, clash.Index);
        Assert.Contains("reaches 450 mm from the centerplane", clash.What.Told(LengthNotation.Millimeters), StringComparison.Ordinal);
        Assert.Contains("its middle 150 mm to port; marked on " + marked[0].Name, Notes(plan), StringComparison.Ordinal);
    }

    [Fact]
    public void An_opening_between_molds_is_told_to_be_measured_off()
    {
        var opening = new HullOpening("mast step", 1.01, 1.02, 0.06, InDeck: false);
        var plan = MoldPlan.Of(SampleHulls.DoubleEnder(), Build with { Openings = [opening] });
        Assert.Empty(plan.MarkedWith(opening));
        Assert.Contains("mast step: 1110 mm to 1120 mm from the strongback's fore end, 60 mm broad; between molds", Notes(plan), StringComparison.Ordinal);
    }

    [Fact]
    public void Lettering_on_shallow_bulkheads_of_a_closed_float_covers_no_other_and_the_sheet_tells_how_high_they_rise()
    {
        var hull = HullShape.Solve(FormDials.DoubleEnder with
        {
            Length = 3.8,
            Beam = 0.34,
            Depth = 0.30,
            Draft = 0.13,
            Crown = 0.035,
            Midship = new MidshipDials(8 * FormDials.Degree, 0.76, -4 * FormDials.Degree),
        }).Surface!;
        var plan = MoldPlan.Of(hull, new BuildDials { Planking = 0.004, Joints = [1.9], Openings = [new("hatch", 1.0, 1.4, 0.16, InDeck: true)] });
        Assert.Equal(2, plan.Bulkheads.Count);
        Assert.NotEmpty(plan.MarkedWith(plan.Openings[0]));
        foreach (var part in plan.Parts)
        {
            var sheet = MoldSheets.ForPaper("Closed Float", part, LengthNotation.Millimeters);
            Assert.Empty(Lettered.Overlaps(sheet));
            Assert.Equal(part.Marks.Any(m => m.Kind == MoldMarkKind.Opening), sheet.Marks.OfType<TextMark>().Any(t => t.Text == "HATCH"));
        }

        // A ridge nearly level: its underside is the deck's thickness, planking and inner cloth, under it.
        foreach (var bulkhead in plan.Bulkheads)
        {
            var rise = DeckLines.Of(hull)!.CrownAt(bulkhead.X)!.Value - 0.0044;
            var told = Regex.Match(Notes(plan, hull), Invariant($@"{bulkhead.Name} ([0-9.]+) mm[;.]"), RegexOptions.NonBacktracking);
            Assert.Equal(rise, double.Parse(told.Groups[1].Value, CultureInfo.InvariantCulture) / 1000, 2e-4);
        }

        Assert.Contains("Bulkheads rise to the underside of a deck 4.4 mm thick", Notes(plan, hull), StringComparison.Ordinal);
        Assert.DoesNotContain("level at the sheer", Notes(plan, hull), StringComparison.Ordinal);
    }

    private static string Notes(MoldPlan plan) => Notes(plan, SampleHulls.DoubleEnder());

    private static string Notes(MoldPlan plan, HullSurface hull) => string.Concat(
        SettingUpSheet.Of("Gauge Tender", hull, plan, LengthNotation.Millimeters).SelectMany(p => p.Marks).OfType<TextMark>().Select(t => t.Text + "\n"));

    [Fact]
    public void What_stands_in_each_other_or_is_wider_than_the_hull_is_told_at_its_place_in_the_file()
    {
        var shaped = ShapedTemplates.Of("sample-courier");
        var text = shaped.Design.Source.Text + """

            [[bulkhead]]
            name = "fore beam"
            at = "2.005 m"

            [[bulkhead]]
            name = "after beam"
            at = "3.30 m"

            [[opening]]
            name = "board case"
            from = "2.30 m"
            to = "2.70 m"
            breadth = "40 mm"

            [[opening]]
            name = "drive well"
            from = "2.65 m"
            to = "3.40 m"
            breadth = "700 mm"
            """;
        var design = DesignFile.Read(text, "courier.toml").Design!;
        var faults = design.Source.ExplainClashes(MoldPlan.Of(shaped.Hull, design.Build));
        var lines = text.Split('\n');
        Assert.Equal(4, faults.Count);
        Assert.Contains("2.005 m", lines[faults[0].Place.Line - 1], StringComparison.Ordinal);
        Assert.Contains("the joint at 2000 mm", faults[0].Problem, StringComparison.Ordinal);
        Assert.All(faults.Skip(1), f => Assert.Contains("2.65 m", lines[f.Place.Line - 1], StringComparison.Ordinal));
        foreach (var told in (string[])["bulkhead of after beam at 3300 mm goes through it", "runs into the opening for board case", "700 mm broad"])
            Assert.Contains(faults, f => f.Problem.Contains(told, StringComparison.Ordinal));
        Assert.Empty(design.Outriggers[0].Build.Openings);
    }

    [Fact]
    public void A_compartment_without_a_bulkhead_at_its_end_is_noted_there_and_one_next_to_the_hulls_end_is_not()
    {
        var shaped = ShapedTemplates.Of("sample-courier");
        Assert.Empty(shaped.Design.Source.ExplainCompartments(shaped.Molds));
        var text = shaped.Design.Source.Text.Replace("at   = \"1.20 m\"", "at   = \"1.25 m\"", StringComparison.Ordinal);
        var design = DesignFile.Read(text, "courier.toml").Design!;
        var note = Assert.Single(design.Source.ExplainCompartments(MoldPlan.Of(shaped.Hull, design.Build)));
        Assert.Contains("to     = \"1.20 m\"", text.Split('\n')[note.Place.Line - 1], StringComparison.Ordinal);
        Assert.Equal("no bulkhead is made at \"1.20 m\"", note.Problem);
    }

    [Fact]
    public void A_bulkhead_without_a_section_and_an_opening_too_wide_for_it_are_told_and_a_place_beyond_the_stern_is_refused()
    {
        var plan = MoldPlan.Of(SampleHulls.DoubleEnder(), Build with { Bulkheads = [new("peak", 0.01, null), new("beam", 1.5, 0.6)] });
        Assert.Equal([0, 1], plan.Clashes.Select(c => c.Index));
        Assert.Contains("takes one of", plan.Clashes[1].What.Told(LengthNotation.Millimeters), StringComparison.Ordinal);
        Assert.Equal(["B1 FORE", "B1 AFT", "B3"], plan.Bulkheads.Select(b => b.Name));

        var source = ShapedTemplates.Of("sample-courier").Design.Source.Text;
        var reading = DesignFile.Read(source + "\n[[bulkhead]]\nname = \"a\"\nat = \"5.9 m\"\n", "courier.toml");
        Assert.Equal("bulkhead.at", Assert.Single(reading.Diagnostics).Key);
    }
}
