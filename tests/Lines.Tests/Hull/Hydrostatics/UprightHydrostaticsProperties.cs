using CsCheck;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Hydrostatics;

public class UprightHydrostaticsProperties
{
    [Fact]
    public void Scaling_a_hull_by_s_scales_each_figure_by_its_power_of_s()
    {
        Gen.Select(Gen.Double[0.1, 20], Gen.Double[0.3, 1.2], Gen.Bool).Sample(
            (s, depth, transom) =>
            {
                var hull = transom ? SampleHulls.TransomBoat() : SampleHulls.DoubleEnder();
                var z = hull.Draft * depth;
                var one = UprightHydrostatics.Below(hull, z, 1e-8);
                var other = UprightHydrostatics.Below(Mapped(hull, p => new Point3(s * p.X, s * p.Y, s * p.Z)), s * z, 1e-8);
                Near(s * s * s * one.Volume, other.Volume);
                Near(s * s * one.WettedSurface, other.WettedSurface);
                Near(s * one.Center!.Value.X, other.Center!.Value.X);
                Near(s * one.TransverseMetacentricRadius!.Value, other.TransverseMetacentricRadius!.Value);
                Near(s * s * one.Greatest!.Value.Area, other.Greatest!.Value.Area);
                Near(one.Prismatic!.Value, other.Prismatic!.Value);
            },
            iter: 8);
    }

    [Fact]
    public void Volume_moments_and_areas_agree_with_a_fine_grid_of_flat_facets()
    {
        // Naive oracle, whose own error is told by its change from a grid half as fine.
        foreach (var (hull, z) in Samples())
        {
            var water = UprightHydrostatics.Below(hull, z, 1e-9);
            var coarse = FacetHydrostatics.Below(hull.Side, z, 120, 50);
            var fine = FacetHydrostatics.Below(hull.Side, z, 240, 100);
            Within(coarse.Volume, fine.Volume, water.Volume);
            Within(coarse.Center.X, fine.Center.X, water.Center!.Value.X);
            Within(coarse.Center.Z, fine.Center.Z, water.Center!.Value.Z);
            Within(coarse.Skin, fine.Skin, water.Skin);
        }

        static void Within(double coarse, double fine, double actual)
        {
            var error = Math.Abs(fine - coarse);
            Assert.InRange(error, 0, 2e-3 * Math.Abs(fine));
            Assert.Equal(fine, actual, error + (1e-8 * Math.Abs(fine)));
        }
    }

    [Fact]
    public void Fluxes_of_x_and_z_through_skin_transom_and_waterplane_give_the_same_volume()
    {
        // Volume once more by the divergence theorem, from fields that do feel the lids: (0, 0, z - T) needs no waterplane but
        // the transom; (x - x0, 0, 0) needs the transom's area at its own place. A transom left open would show at once.
        foreach (var (hull, z) in Samples())
        {
            var water = UprightHydrostatics.Below(hull, z, 1e-9);
            var (vertical, lengthwise) = FacetHydrostatics.OpenFluxes(hull.Side, z, 400, 125);
            if (hull.Transom is { } plane)
            {
                // On the transom n = (cos r, 0, -sin r): flux of x is cos r times the area's moment, found from its centroid.
                var (area, center) = FacetHydrostatics.Transom(hull.Side, z, 4000);
                Assert.Equal(area, water.TransomArea, 1e-6);
                lengthwise += area * plane.Normal.X * center.X;
                vertical += area * plane.Normal.Z * (center.Z - z);
            }

            Assert.Equal(water.Volume, lengthwise, 16e-4 * water.Volume);
            Assert.Equal(water.Volume, vertical, 16e-4 * water.Volume);
        }
    }

    [Fact]
    public void Section_areas_integrate_to_the_volume()
    {
        foreach (var (hull, z) in Samples())
        {
            var water = UprightHydrostatics.Below(hull, z, 1e-9);
            var areas = new SectionAreas(hull, z, 1e-8);
            var steps = 500;
            // The transom or a raked sternpost may be immersed beyond the waterline's ends: integrate over the whole hull.
            var h = (hull.Dials.Length + 0.2) / steps;
            var sum = Enumerable.Range(0, steps).Sum(i => areas.At(-0.1 + ((i + 0.5) * h)).Area) * h;
            Assert.Equal(water.Volume, sum, 3e-4 * water.Volume);
        }
    }

    [Fact]
    public void A_keel_that_rises_out_of_the_water_ends_the_waterline_on_the_keel()
    {
        // A prism of parabolic plan y = 2 u (1 - u) on a keel z = 0.3 (2u - 1)², L = 4; with water at z = 0.12 the immersed
        // ξ = 2u - 1 runs to e = √0.4, and V = 2 ∫ y (0.12 - 0.3 ξ²) dx = 2 ∫ ½ (1 - ξ²)(0.12 - 0.3 ξ²) 2 dξ in closed form.
        var hull = Prism();
        var water = UprightHydrostatics.Below(hull, 0.12, 1e-10);
        var e = Math.Sqrt(0.4);
        var volume = 4 * ((0.12 * e) - (0.42 * e * e * e / 3) + (0.3 * Math.Pow(e, 5) / 5));
        Assert.Equal(volume, water.Volume, 1e-9 * volume);
        Assert.Equal(2 - (2 * e), water.Waterplane!.Fore, 1e-9);
        Assert.Equal(2 + (2 * e), water.Waterplane!.Aft, 1e-9);
        Assert.Equal(4 * (e - (e * e * e / 3)), water.Waterplane!.Area, 1e-9);
        Assert.Equal(0.12, water.Draft, 1e-12);
    }

    [Fact]
    public void Water_below_the_keel_displaces_nothing_and_names_no_center()
    {
        var water = UprightHydrostatics.Below(SampleHulls.DoubleEnder(), -0.01, 1e-6);
        Assert.Equal(0, water.Volume);
        Assert.Null(water.Center);
        Assert.Null(water.Prismatic);
        Assert.Equal(0, water.WettedSurface);
    }

    [Fact]
    public void Water_above_the_sheer_is_refused_with_the_station()
    {
        var refusal = Assert.Throws<DownfloodingException>(() => UprightHydrostatics.Below(SampleHulls.DoubleEnder(), 0.37, 1e-6));
        Assert.InRange(refusal.X, 1, 4.2);
        Assert.Contains("z = 0.37 m", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_error_stays_below_the_tolerance_that_was_asked()
    {
        foreach (var (hull, z) in Samples())
        {
            var fine = UprightHydrostatics.Below(hull, z, 1e-11);
            foreach (var tolerance in new[] { 1e-3, 1e-5, 1e-7 })
            {
                var water = UprightHydrostatics.Below(hull, z, tolerance);
                Assert.Equal(fine.Volume, water.Volume, tolerance * fine.Volume);
                Assert.Equal(fine.Skin, water.Skin, tolerance * fine.Skin);
                Assert.Equal(fine.Waterplane!.Area, water.Waterplane!.Area, tolerance * fine.Waterplane!.Area);
            }
        }
    }

    private static IEnumerable<(HullSurface Hull, double Height)> Samples()
    {
        yield return (SampleHulls.DoubleEnder(), 0.115);
        yield return (SampleHulls.DoubleEnder(), 0.04);
        yield return (SampleHulls.TransomBoat(), 0.14);
        yield return (SampleHulls.TransomBoat(), 0.05);
        yield return (SampleHulls.TransomBoat(), 0.30);
    }

    private static HullSurface Prism()
    {
        var u = SplineBasis.Clamped(3, [0, 1]);
        var v = SplineBasis.Clamped(1, [0, 1]);
        var net = new Point3[4, 2];
        double[] breadth = [0, 2 / 3.0, 2 / 3.0, 0], keel = [0.3, -0.1, -0.1, 0.3];
        for (var i = 0; i < 4; i++)
        {
            net[i, 0] = new Point3(4 * i / 3.0, breadth[i], keel[i]);
            net[i, 1] = new Point3(4 * i / 3.0, breadth[i], 0.5);
        }

        return new HullSurface(new BSplineSurface(u, v, net), WigleyHull.Dials(4, 1, 0.12), 0.5, 0.5);
    }

    private static HullSurface Mapped(HullSurface hull, Func<Point3, Point3> map)
    {
        var net = new Point3[hull.Side.U.Count, hull.Side.V.Count];
        for (var i = 0; i < hull.Side.U.Count; i++)
        {
            for (var j = 0; j < hull.Side.V.Count; j++)
                net[i, j] = map(hull.Side.PoleAt(i, j));
        }

        return new HullSurface(new BSplineSurface(hull.Side.U, hull.Side.V, net), hull.Dials, hull.WidestU, hull.WaterlineV);
    }

    private static void Near(double expected, double actual) => Assert.Equal(expected, actual, 1e-7 * Math.Abs(expected));
}
