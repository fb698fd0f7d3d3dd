using Lines.Construction;
using Lines.Construction.Materials;
using Lines.Construction.Molds;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Construction.Materials;

public class HullWeightTests
{
    private static readonly BuildDials Build = new() { Planking = 0.006, Gunwale = 0.019, Material = new() { BottomCloth = 0.2 } };

    [Theory]
    [InlineData("double-ender")]
    [InlineData("transom boat")]
    public void Pieces_weigh_together_what_the_whole_does_about_the_same_center(string name)
    {
        var hull = Hull(name);
        var whole = HullWeight.Of(hull, Build);
        HullWeight[] pieces = [HullWeight.Of(hull, Build, aft: 1.7), HullWeight.Of(hull, Build, 1.7, 3.3), HullWeight.Of(hull, Build, 3.3)];
        Assert.Equal(1, pieces.Sum(p => p.Mass) / whole.Mass, 1e-3);
        Assert.Equal(whole.Center.X, pieces.Sum(p => p.Mass * p.Center.X) / pieces.Sum(p => p.Mass), 0.003);
        Assert.Equal(whole.Center.Z, pieces.Sum(p => p.Mass * p.Center.Z) / pieces.Sum(p => p.Mass), 0.001);
    }

    [Fact]
    public void A_hull_weighs_its_areas_times_what_lies_on_them()
    {
        var hull = Hull("double-ender");
        var weight = HullWeight.Of(hull, Build with { Gunwale = 0 });
        double Of(string key) => weight.Parts.Where(p => p.Key == key).Sum(p => p.Mass);
        // Strips of western redcedar, 358.4 kg/m3, one layer of 200 g/m2 each side and one below the waterline, resin as heavy as cloth, 170 g/m2 of fill coats each side.
        Assert.Equal(358.4 * weight.Layer.Volume, Of("planking"), 1e-9);
        Assert.Equal(0.2 * weight.Layer.Outside, Of("outside_cloth"), 1e-9);
        Assert.Equal(0.2 * weight.Layer.Inside, Of("inside_cloth"), 1e-9);
        Assert.Equal(0.2 * weight.Bottom, Of("bottom_cloth"), 1e-9);
        Assert.Equal(weight.Cloth + (0.17 * (weight.Layer.Outside + weight.Layer.Inside)), Of("resin"), 1e-9);
        Assert.Equal(weight.Mass, weight.Parts.Sum(p => p.Mass), 1e-12);
        // Thin planking: between 97 % and 100 % of area times thickness on a hull that bulges.
        Assert.InRange(weight.Layer.Volume / (weight.Layer.Outside * 0.006), 0.97, 1);
    }

    [Fact]
    public void Bulkheads_weigh_their_area_without_holes_times_their_stock_about_the_middle_of_it()
    {
        // Closed form: a rectangle 0.6 by 0.4 m of 9 mm plywood, 600 kg/m3, with a round hole 0.1 m above its middle, which lowers the center.
        var frame = new MoldFrame(new Point3(2, 0, 0.5), new Vector3(0, 1, 0), new Vector3(0, 0, -1));
        var board = new Mold
        {
            Kind = MoldKind.Bulkhead,
            Number = 1,
            X = 2,
            Face = MoldFace.Bow,
            Frame = frame,
            Foot = (0, 0),
            Marks = [],
            Heights = new MoldHeights(0, null, 0.4, 0.3),
            Stock = 0.009,
            Planking = 0.006,
            Outline = ArcPath.Through([new(0.3, 0), new(0.3, 0.4), new(-0.3, 0.4), new(-0.3, 0)], closed: true),
            Holes = [new MoldHole(new Point2(0, 0.1), 0.2, MoldHoleKind.Opening)],
        };
        double hole = Math.PI / 100, area = 0.24 - hole;
        var skin = HullWeight.Of(Hull("double-ender"), Build);
        var whole = skin.With([board, board with { X = 3, Face = MoldFace.Stern, Frame = frame with { Origin = new Point3(3, 0, 0.5) } }], Build.Material with { Plywood = 600 });
        var part = whole.Parts[^1];
        Assert.Equal("bulkheads", part.Key);
        Assert.Equal(2 * area * 0.009 * 600, part.Mass, 1e-9);
        Assert.Equal(2.5, part.Center.X, 1e-12);
        Assert.Equal(0, part.Center.Y, 1e-12);
        Assert.Equal(0.5 - (((0.24 * 0.2) - (hole * 0.1)) / area), part.Center.Z, 1e-9);
        Assert.Equal(skin.Mass + part.Mass, whole.Mass, 1e-12);
        Assert.Same(skin, skin.With([], Build.Material));
    }

    [Fact]
    public void The_area_below_the_waterline_is_the_wetted_skin()
    {
        var hull = Hull("transom boat");
        var afloat = Lines.Hull.Hydrostatics.UprightHydrostatics.Below(hull, hull.Draft, 1e-9);
        Assert.Equal(1, HullWeight.Of(hull, Build).Bottom / afloat.Skin, 2e-4);
    }

    [Fact]
    public void A_bare_hull_weighs_its_wood()
    {
        var bare = Build with { Gunwale = 0, Material = new() { OutsideCloth = 0, InsideCloth = 0, BottomCloth = 0 } };
        var weight = HullWeight.Of(Hull("double-ender"), bare);
        Assert.Equal(["planking", "stems"], weight.Parts.Select(p => p.Key));
        Assert.Equal(0, weight.Cloth);
    }

    private static Lines.Hull.Form.HullSurface Hull(string name) => name == "double-ender" ? SampleHulls.DoubleEnder() : SampleHulls.TransomBoat();
}
