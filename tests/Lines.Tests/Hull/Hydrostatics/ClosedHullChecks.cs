using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Hydrostatics;

public class ClosedHullChecks
{
    private const double Length = 3.6, Half = 0.2, Height = 0.3, Crown = 0.05;

    private static HullSurface Float => CrownedHulls.WallSided(Length, Half, Height, Crown);

    [Fact]
    public void A_float_under_water_displaces_its_closed_form()
    {
        // Half-breadth Y = 4 b t (1 − t). Below the sheer: 2 H ∫ Y dx = 4/3 b L H. The deck adds per station the parabola's two thirds of its
        // rectangle, 2 · 2/3 · Y · (c Y / b), and ∫ Y² dx = 8/15 b² L: 32/45 b c L. Both are symmetric about amidships.
        var whole = UprightHydrostatics.Enclosed(Float, 1e-10)!;
        const double Walls = 4.0 / 3 * Half * Length * Height, Deck = 32.0 / 45 * Half * Crown * Length;
        Assert.Equal(Walls + Deck, whole.Volume, 1e-9 * (Walls + Deck));
        Assert.Equal(Length / 2, whole.Center!.Value.X, 1e-9);
        Assert.Null(whole.Waterplane);
        Assert.Null(whole.TransverseMetacentricRadius);

        // The parabola's centroid stands 2/5 of its rise above its chord, and ∫ Y³ dx = 16/35 b³ L.
        var moment = (Walls * Height / 2) + (Deck * Height) + (4.0 / 3 * 2 / 5 * Crown * Crown / (Half * Half) * 16.0 / 35 * Half * Half * Half * Length);
        Assert.Equal(moment / whole.Volume, whole.Center!.Value.Z, 1e-9);

        // Section amidships: walls 2 b H and the parabola over them.
        Assert.Equal((2 * Half * Height) + (4.0 / 3 * Half * Crown), whole.Greatest!.Value.Area, 1e-9);
        Assert.Equal(Length / 2, whole.Greatest!.Value.X, 1e-4);
    }

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.03)]
    [InlineData(0.049)]
    public void Water_over_the_sheer_counts_the_deck_as_far_as_it_is_wet(double above)
    {
        // At a station whose ridge c Y / b stands out of the water by the height h, the water leaves the deck at Y w, w² = 1 − h b / (c Y), and the
        // area above the sheer is 2 · 2/3 c Y² / b (1 − w³); where it does not, w = 0. Integrated by a rule of our own on a substitution that makes w
        // smooth at the ends of the waterline.
        var water = UprightHydrostatics.Below(Float, Height + above, 1e-10);
        double dry = above / Crown, reach = Math.Sqrt(1 - dry); // Y / b > dry for |2t − 1| < reach
        double Y(double s) => Half * (1 - (s * s));
        double W(double s) => Math.Sqrt(Math.Max(0, 1 - (dry * Half / Y(s))));
        double volume = 0, area = 0, inertia = 0;
        for (var i = 0; i < 400; i++)
        {
            var angle = Math.PI / 2 * (i + 0.5) / 400;
            double s = reach * Math.Sin(angle), weight = Length * reach * Math.Cos(angle) * (Math.PI / 2 / 400);
            volume += 4.0 / 3 * Crown / Half * Y(s) * Y(s) * -Math.Pow(W(s), 3) * weight;
            area += 2 * Y(s) * W(s) * weight;
            inertia += 2.0 / 3 * Math.Pow(Y(s) * W(s), 3) * weight;
        }

        volume += (4.0 / 3 * Half * Length * Height) + (32.0 / 45 * Half * Crown * Length);
        Assert.Equal(volume, water.Volume, 1e-6 * volume);
        Assert.Equal(area, water.Waterplane!.Area, 1e-4 * area);
        Assert.Equal(inertia, water.Waterplane!.TransverseMoment, 1e-4 * inertia);
        Assert.Equal(Length * (1 - reach) / 2, water.Waterplane!.Fore, 1e-8);
        Assert.Equal(Length * (1 + reach) / 2, water.Waterplane!.Aft, 1e-8);
        Assert.Equal(2 * Half * Math.Sqrt(1 - dry), water.Waterplane!.Breadth, 1e-8);
    }

    [Fact]
    public void Section_areas_integrate_to_the_volume_with_the_deck_half_wet()
    {
        foreach (var (hull, z) in Samples())
        {
            var water = UprightHydrostatics.Below(hull, z, 1e-9);
            var areas = new SectionAreas(hull, z, 1e-8);
            const int Steps = 500;
            var h = (hull.Dials.Length + 0.2) / Steps;
            var sum = Enumerable.Range(0, Steps).Sum(i => areas.At(-0.1 + ((i + 0.5) * h)).Area) * h;
            Assert.Equal(water.Volume, sum, 3e-4 * water.Volume);
        }
    }

    [Fact]
    public void Fluxes_that_need_every_lid_give_the_same_volume()
    {
        // Volume once more by the divergence theorem, by a grid of flat facets and from fields that feel the transom and the deck: (x, 0, 0)
        // needs the transom up to the deck at its own place, (0, 0, z − T) needs no waterplane. A deck left open would show at once.
        foreach (var (hull, z) in Samples())
        {
            var water = UprightHydrostatics.Below(hull, z, 1e-9);
            var (vertical, lengthwise) = FacetHydrostatics.OpenFluxes(hull.Side, z, 400, 125);
            var (deckVertical, deckLengthwise) = FacetHydrostatics.OpenFluxes(hull.Deck!, z, 400, 125);
            (vertical, lengthwise) = (vertical + deckVertical, lengthwise + deckLengthwise);
            if (hull.Transom is { } plane)
            {
                var area = 0.0;
                foreach (var patch in hull.Patches)
                {
                    var (part, center) = FacetHydrostatics.Transom(patch, z, 4000);
                    area += part;
                    lengthwise += part * plane.Normal.X * center.X;
                    vertical += part * plane.Normal.Z * (center.Z - z);
                }

                Assert.Equal(area, water.TransomArea, 1e-6);
            }

            Assert.Equal(water.Volume, lengthwise, 16e-4 * water.Volume);
            Assert.Equal(water.Volume, vertical, 16e-4 * water.Volume);
        }
    }

    [Fact]
    public void Volume_grows_with_the_water_by_the_area_of_the_waterplane()
    {
        // dV/dz = A at every height, through the sheer and up to the ridge: a central difference of second order.
        var hull = CrownedHulls.With(SampleHulls.DoubleEnder(), Crown);
        foreach (var z in new[] { 0.2, hull.LeastSheer - 0.01, hull.LeastSheer + 0.01, 0.39, 0.42, 0.5 })
        {
            const double Step = 1e-4;
            double above = UprightHydrostatics.Below(hull, z + Step, 1e-11).Volume, below = UprightHydrostatics.Below(hull, z - Step, 1e-11).Volume;
            var area = UprightHydrostatics.Below(hull, z, 1e-9).Waterplane!.Area;
            Assert.Equal((above - below) / (2 * Step), area, 2e-3 * area);
        }
    }

    [Fact]
    public void A_deck_changes_nothing_below_the_sheer()
    {
        foreach (var open in new[] { SampleHulls.DoubleEnder(), SampleHulls.TransomBoat() })
            Assert.Equal(UprightHydrostatics.Below(open, open.Draft, 1e-9), UprightHydrostatics.Below(CrownedHulls.With(open, Crown), open.Draft, 1e-9));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(Crown)]
    public void Water_level_with_a_level_sheer_ends_there_under_a_flat_deck_or_a_crowned_one(double crown)
    {
        // Neither is the sheer above the water nor the deck below it, but for rounding: the walls' closed forms, and no wet deck.
        var water = UprightHydrostatics.Below(CrownedHulls.With(Float, crown), Height, 1e-9);
        Assert.Equal(4.0 / 3 * Half * Length * Height, water.Volume, 1e-9);
        Assert.Equal(4.0 / 3 * Half * Length, water.Waterplane!.Area, 1e-9);
        Assert.Equal(0, water.Deck);
    }

    [Fact]
    public void A_flat_deck_encloses_the_skin_to_a_level_sheer()
    {
        var whole = UprightHydrostatics.Enclosed(CrownedHulls.With(Float, 0), 1e-10)!;
        Assert.Equal(4.0 / 3 * Half * Length * Height, whole.Volume, 1e-9 * whole.Volume);
        Assert.Equal(4.0 / 3 * Half * Length, whole.Deck, 1e-9 * whole.Deck);
    }

    private static IEnumerable<(HullSurface Hull, double Height)> Samples()
    {
        var (pointed, transom) = (CrownedHulls.With(SampleHulls.DoubleEnder(), Crown), CrownedHulls.With(SampleHulls.TransomBoat(), Crown));
        yield return (pointed, 0.38);
        yield return (pointed, 0.45);
        yield return (pointed, 0.6);
        yield return (transom, 0.44);
        yield return (transom, 0.47);
        yield return (transom, 0.6);
    }
}
