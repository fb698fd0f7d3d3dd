using Lines.Construction;
using Lines.Construction.Molds;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Molds;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Construction.Molds;

/// <summary>The transom of a closed hull, against its deck and skin by search.</summary>
public class ClosedTransomTests
{
    private const double Crown = 0.05;

    private static readonly BuildDials Build = new() { Planking = 0.006, Sheathing = 0.0004 };

    [Fact]
    public void It_rises_to_the_underside_of_the_deck()
    {
        // Definition, by search on deck and side; shop tolerance 0.02 mm.
        var hull = CrownedHulls.With(SampleHulls.TransomBoat(), Crown);
        var transom = MoldPlan.Of(hull, Build).Molds[^1];
        Assert.Equal(MoldKind.Transom, transom.Kind);
        var edge = transom.Outline.Flattened(1e-6).Where(p => p.X >= 0).ToList();
        Assert.Equal(0, edge.MinBy(p => p.Y).X, 1e-6);
        var onDeck = 0;
        foreach (var drawn in edge.Where((_, k) => k % 5 == 0))
        {
            var space = transom.Frame.ToHull(drawn);
            Assert.Equal(0, hull.Transom!.Value.DistanceTo(space), 1e-9);
            var starboard = space with { Y = Math.Abs(space.Y) };
            double toDeck = NearestOnSkin.Distance(hull.Deck!.PointAt, starboard, (0, 1.05), (-0.05, 1)), toSide = NearestOnSkin.Distance(hull.Side.PointAt, starboard, (-0.05, 1.05), (0, 1.3));
            Assert.Equal(0, Math.Min(toDeck - 0.0064, toSide - 0.006), 0.00002);
            onDeck += Math.Abs(toDeck - 0.0064) < 0.00002 ? 1 : 0;
        }

        Assert.True(onDeck > 3);
    }

    [Fact]
    public void The_setting_up_table_and_the_notes_tell_its_crown()
    {
        // Closed form: the deck rises by the crown times the breadth of the sheer there over the greatest.
        var hull = CrownedHulls.With(SampleHulls.TransomBoat(), Crown);
        var rise = Crown * hull.Side.PointAt(1, 1).Y / Enumerable.Range(0, 2001).Max(k => hull.Side.PointAt(k / 2000.0, 1).Y);
        var plan = MoldPlan.Of(hull, Build);
        var row = SettingUpCsv.Write("Closed", plan, LengthNotation.Millimeters, DeckLines.Of(hull)).Split("\r\n").Single(l => l.StartsWith("TRANSOM,", StringComparison.Ordinal) && !l.Contains("SHEER", StringComparison.Ordinal) && l.Split(',')[^1].Length > 0);
        Assert.Equal(new Length(rise).ToCell(LengthNotation.Millimeters), row.Split(',')[^1]);

        // Its underside is a thickness square to the deck lower, which is steeper in the raked plane than a station shows: within a millimeter of that.
        var notes = string.Join(" ", SettingUpSheet.Of("Closed", hull, plan, LengthNotation.Millimeters).SelectMany(s => s.Marks).OfType<Lines.Drawing.Model.TextMark>().Select(t => t.Text));
        var top = plan.Molds[^1].Frame.ToHull(new Point2(0, plan.Molds[^1].Outline.Bounds().Bottom)).Z - hull.Side.PointAt(1, 1).Z;
        Assert.InRange(top, rise - 0.0074, rise - 0.0054);
        Assert.Contains($"TRANSOM {new Length(top).ToText(LengthNotation.Millimeters)}", notes, StringComparison.Ordinal);
    }

    [Fact]
    public void It_stays_clear_of_the_strongback_however_high_its_crown()
    {
        var hull = CrownedHulls.With(SampleHulls.TransomBoat(), 0.4);
        var plan = MoldPlan.Of(hull, Build);
        Assert.True(plan.Strongback.HeightOf(hull.Deck!.PointAt(1, 1).Z) >= Strongback.LeastClearance - 1e-9);
    }
}
