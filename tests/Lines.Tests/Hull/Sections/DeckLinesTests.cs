using Lines.Hull.Sections;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Sections;

public class DeckLinesTests
{
    [Fact]
    public void An_arc_is_the_parabola_over_its_station()
    {
        // y = Y (1 − v), z = H + c Y / b (1 − (1 − v)²): z = H + c Y / b − c y² / (b Y).
        const double Half = 0.2, Height = 0.3, Crown = 0.05;
        var deck = DeckLines.Of(CrownedHulls.WallSided(3.6, Half, Height, Crown))!;
        foreach (var x in new[] { 0.4, 1.8, 3.0 })
        {
            var breadth = 4 * Half * (x / 3.6) * (1 - (x / 3.6));
            Assert.Equal(Crown * breadth / Half, deck.CrownAt(x)!.Value, 1e-9);
            var arc = deck.ArcAt(x);
            Assert.All(arc, p => Assert.Equal(Height + (Crown * breadth / Half) - (Crown * p.Y * p.Y / (Half * breadth)), p.Z, 1e-9));
            Assert.All(arc, p => Assert.Equal(x, p.X, 1e-9));
            Assert.Equal(breadth, arc[0].Y, 1e-9);
            Assert.Equal(0, arc[^1].Y, 1e-12);
        }
    }

    [Fact]
    public void A_station_off_the_deck_has_no_arc_and_an_open_hull_no_deck()
    {
        Assert.Empty(DeckLines.Of(CrownedHulls.WallSided(3.6, 0.2, 0.3, 0.05))!.ArcAt(3.7));
        Assert.Null(DeckLines.Of(CrownedHulls.WallSided(3.6, 0.2, 0.3, 0.05))!.CrownAt(-0.1));
        Assert.Null(DeckLines.Of(SampleHulls.DoubleEnder()));
    }

    [Fact]
    public void The_ridge_runs_from_stem_to_the_top_of_a_raked_transom()
    {
        var hull = CrownedHulls.With(SampleHulls.TransomBoat(), 0.04);
        var ridge = DeckLines.Of(hull)!.Ridge;
        Assert.Equal(hull.Side.PointAt(0, 1), ridge[0]);
        Assert.All(ridge, p => Assert.Equal(0, p.Y, 1e-12));
        Assert.Equal(0, hull.Transom!.Value.DistanceTo(ridge[^1]), 1e-12);
        Assert.Equal(ridge[^1], DeckLines.EndOf(hull.Deck!)[^1]);
    }
}
