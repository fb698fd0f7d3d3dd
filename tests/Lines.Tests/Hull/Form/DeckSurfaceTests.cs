using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Form;

public class DeckSurfaceTests
{
    private const double Crown = 0.04;

    [Fact]
    public void A_deck_is_a_parabola_athwartships_over_the_sheer_as_high_as_its_breadth()
    {
        // The definition itself, point by point: the spline must be that surface and not one near it.
        var hull = CrownedHulls.With(SampleHulls.DoubleEnder(), Crown);
        var greatest = Enumerable.Range(0, 4001).Max(k => hull.Side.PointAt(k / 4000.0, 1).Y);
        for (var i = 0; i <= 40; i++)
        {
            var sheer = hull.Side.PointAt(i / 40.0, 1);
            for (var j = 0; j <= 10; j++)
            {
                var (v, deck) = (j / 10.0, hull.Deck!.PointAt(i / 40.0, j / 10.0));
                Assert.Equal(sheer.X, deck.X, 1e-12);
                Assert.Equal(sheer.Y * (1 - v), deck.Y, 1e-12);
                Assert.Equal(sheer.Z + (Crown * sheer.Y / greatest * (1 - ((1 - v) * (1 - v)))), deck.Z, 1e-7 * Crown);
            }
        }
    }

    [Fact]
    public void Skin_and_deck_share_the_sheer_to_the_last_bit_of_its_poles()
    {
        foreach (var open in new[] { SampleHulls.DoubleEnder(), SampleHulls.TransomBoat() })
        {
            var hull = CrownedHulls.With(open, Crown);
            Assert.Equal([hull.Side, hull.Deck!], hull.Patches);
            Assert.Same(hull.Side.U, hull.Deck!.U);
            for (var i = 0; i < hull.Side.U.Count; i++)
                Assert.Equal(hull.Side.PoleAt(i, hull.Side.V.Count - 1), hull.Deck.PoleAt(i, 0));
        }
    }

    [Fact]
    public void The_end_of_the_deck_lies_in_the_plane_of_a_raked_transom()
    {
        var hull = CrownedHulls.With(SampleHulls.TransomBoat(), Crown);
        for (var j = 0; j <= 20; j++)
            Assert.Equal(0, hull.Transom!.Value.DistanceTo(hull.Deck!.PointAt(1, j / 20.0)), 1e-12);
        Assert.True(hull.Deck!.PointAt(1, 1).X > hull.Side.PointAt(1, 1).X);
    }

    [Fact]
    public void Normals_of_the_deck_point_up_and_out()
    {
        var deck = CrownedHulls.With(SampleHulls.DoubleEnder(), Crown).Deck!;
        var jet = deck.JetAt(0.4, 0.3);
        var normal = jet.V.Cross(jet.U).Unit();
        Assert.True(normal.Z > 0.9);
        Assert.True(normal.Y > 0);
    }

    [Fact]
    public void An_open_hull_has_no_deck()
    {
        var hull = SampleHulls.DoubleEnder();
        Assert.Null(hull.Deck);
        Assert.Equal([hull.Side], hull.Patches);
    }
}
