using System.Text;
using Lines.Design;
using Lines.Hull.Form;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Design;

public sealed class DesignFileTests
{
    private const double Degree = Math.PI / 180;

    [Fact]
    public void What_a_hull_is_built_of_and_what_that_costs_is_read()
    {
        var material = DesignFile.Read(SampleDesigns.Pointed + SampleDesigns.Materials, "a.toml").Design!.Build.Material;
        Assert.Equal(("okoume", 0.163, 0.163, 0.150), (material.Wood.Name, material.OutsideCloth, material.InsideCloth, material.FillCoats));
        Assert.Equal(4 * 0.0339057, material.BottomCloth, 1e-6); // 1 oz/yd2 is 33.9057 g/m2
        Assert.Equal(new Lines.Construction.Materials.Prices("EUR", 11.5, 9, 24, 45, 60, 110), material.Prices);
        Assert.Equal(new Lines.Construction.Materials.MaterialDials(), DesignFile.Read(SampleDesigns.Pointed, "a.toml").Design!.Build.Material);
    }

    [Fact]
    public void Every_key_of_a_pointed_hull_is_read()
    {
        var design = Sound(SampleDesigns.Pointed);

        Assert.Equal("Gauge Tender", design.Title);
        var hull = design.Vessel.MainHull;
        Assert.Equal((5.20, 0.740, 0.360, 0.115), (hull.Length, hull.Beam, hull.Depth, hull.Draft));
        Assert.Equal((0.50, 0.52, false), (hull.Widest, hull.KeelLow, hull.Hollow));
        Assert.Equal(new BowDials(0.62, 0.050, 0.520, 0.250, 0.68, 45 * Degree, 12 * Degree), hull.Bow);
        Assert.Equal(new PointedStern(0.60, 0.040, 0.480, 0.220, 0.66, 40 * Degree, 13 * Degree), hull.Stern);
        Assert.Equal(new MidshipDials(6 * Degree, 0.80, 6 * Degree), hull.Midship);
        var build = design.Build;
        Assert.Equal((0.006, 0.0004, 0.350, 0.015), (build.Planking, build.Sheathing, build.MoldSpacing, build.MoldStock));
        Assert.Equal((0.020, 0.025, 0.700), (build.StripWidth, build.StemSiding, build.StrongbackTop));
        Assert.Equal([1.30, 3.90], build.Joints);
        Assert.Equal([0.9, 1.8, 2.6, 3.5, 4.4], build.MoldAt);
    }

    [Fact]
    public void A_transom_in_feet_and_inches_is_read_and_what_is_left_out_stays_open()
    {
        var design = Sound(SampleDesigns.Transom);

        // Exact inch of 25.4 mm; 3-7-2+ is 43 5/16 in.
        var hull = design.Vessel.MainHull;
        Assert.Equal(165 * 0.0254, hull.Length, 1e-12);
        Assert.Equal(43.3125 * 0.0254, hull.Beam, 1e-12);
        Assert.Equal((null, null, false), (hull.Widest, hull.KeelLow, hull.Hollow));
        Assert.Equal((null, null, null), (hull.Bow.SheerFullness, hull.Bow.Vee, hull.Bow.EntryAngle));
        var stern = Assert.IsType<TransomStern>(hull.Stern);
        Assert.True(stern.FootIsImmersion);
        Assert.Equal(4.5 * 0.0254, stern.Foot, 1e-12);
        Assert.Equal((14 * Degree, 26 * 0.0254, null), (stern.Rake, stern.Breadth, stern.SheerFullness));
        Assert.Equal(-2 * Degree, hull.Midship.Flare, 1e-12);
        Assert.Equal((0.0004, 0.300, 0.012), (design.Build.Sheathing, design.Build.MoldSpacing, design.Build.MoldStock));
        Assert.Equal((0.019, 0.019, null, null), (design.Build.StripWidth, design.Build.StemSiding, design.Build.MoldAt, design.Build.StrongbackTop));
        Assert.Empty(design.Build.Joints);
    }

    [Fact]
    public void The_foot_of_a_transom_may_be_given_as_its_rocker()
    {
        var stern = Assert.IsType<TransomStern>(
            Sound(SampleDesigns.Replace(SampleDesigns.Transom, "hull.stern", "immersion", "rocker = \"3 in\"")).Vessel.MainHull.Stern);

        Assert.False(stern.FootIsImmersion);
        Assert.Equal(3 * 0.0254, stern.Foot, 1e-12);
    }

    [Theory]
    [InlineData("\uFEFF", "\n")]
    [InlineData("", "\r\n")]
    public void A_byte_order_mark_and_carriage_returns_change_nothing(string head, string lineEnd)
    {
        var text = head + SampleDesigns.Pointed.Replace("\n", lineEnd, StringComparison.Ordinal);

        var reading = DesignFile.Read(Encoding.UTF8.GetBytes(text), "a.toml");

        Assert.Empty(reading.Diagnostics);
        Assert.Equal(Sound(SampleDesigns.Pointed).Vessel.MainHull, reading.Design!.Vessel.MainHull);
    }

    [Fact]
    public void Points_and_braces_say_the_same_as_tables()
    {
        const string text = """
            title = "T"
            hull.length = "5.20 m"
            hull.beam = "740 mm"
            hull.depth = "360 mm"
            hull.draft = "115 mm"
            hull.bow = { entry_fullness = 0.62, rocker = "50 mm", sheer = "520 mm", "forefoot" = '250 mm' }
            hull.stern = { kind = "pointed", run_fullness = 0.60, rocker = "40 mm", sheer = "480 mm", heel = "220 mm" }
            hull.midship = { deadrise = "6 deg", fullness = 0.80, flare = "6 deg" }
            build.planking = "6 mm"
            """;

        Assert.Equal(new BowDials(0.62, 0.05, 0.52, 0.25), Sound(text).Vessel.MainHull.Bow);
    }

    private static VesselDesign Sound(string text)
    {
        var reading = DesignFile.Read(text, "sound.toml");
        Assert.Empty(reading.Diagnostics.Select(d => d.ToString()));
        return reading.Design!;
    }
}
