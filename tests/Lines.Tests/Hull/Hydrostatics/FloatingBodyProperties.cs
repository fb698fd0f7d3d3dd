using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Hydrostatics;

/// <summary>What must hold for every body below every plane.</summary>
public class FloatingBodyProperties
{
    /// <summary>Planes drawn at random that cut the hulls: level, trim, heel.</summary>
    public static TheoryData<double, double, double> Planes
    {
        get
        {
            var random = new Random(20);
            var planes = new TheoryData<double, double, double>();
            for (var k = 0; k < 24; k++)
                planes.Add((random.NextDouble() * 0.3) - 0.05, (random.NextDouble() - 0.5) * 0.12, (random.NextDouble() - 0.5) * 2 * Math.PI);
            return planes;
        }
    }

    private static HullSurface[] Hulls => [SampleHulls.DoubleEnder(), SampleHulls.TransomBoat()];

    [Theory]
    [MemberData(nameof(Planes))]
    public void The_tolerance_is_kept(double level, double trim, double heel)
    {
        foreach (var body in Hulls.Select(h => FloatingBody.Of(new PlacedHull("hull", h, new Vector3(0.1, 0.2, 0.03)))))
        {
            var water = new WaterPlane(level, trim, heel);
            var exact = body.Below(water, 1e-15);
            foreach (var tolerance in (double[])[1e-6, 1e-9])
            {
                var found = body.Below(water, tolerance);
                Assert.True(Math.Abs(found.Volume - exact.Volume) <= tolerance * exact.Volume);
                Assert.True(Math.Abs(found.Area - exact.Area) <= tolerance * exact.Area);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Planes))]
    public void Above_and_below_make_the_whole(double level, double trim, double heel)
    {
        foreach (var body in Hulls.Select(h => FloatingBody.Of(new PlacedHull("hull", h, new Vector3(0.1, 0.2, 0.03)))))
        {
            var whole = body.Below(WaterPlane.LevelAt(5), 1e-12);
            Immersed below = body.Below(new WaterPlane(level, trim, heel), 1e-12), above = body.Below(new WaterPlane(-level, -trim, heel + Math.PI), 1e-12);
            Assert.Equal(1, (below.Volume + above.Volume) / whole.Volume, 1e-9);
            Assert.True((below.Moment + above.Moment - whole.Moment).Length < 1e-8 * whole.Volume);
            Assert.Equal(below.Area, above.Area, 1e-9);
        }
    }

    [Theory]
    [MemberData(nameof(Planes))]
    public void The_waterplane_is_the_rate_of_the_volume(double level, double trim, double heel)
    {
        const double step = 1e-5;
        foreach (var body in Hulls.Select(h => FloatingBody.Of(new PlacedHull("hull", h, new Vector3(0.1, 0.2, 0.03)))))
        {
            var now = body.Below(new WaterPlane(level, trim, heel), 1e-12);
            Assert.Equal(now.Area, (At(step, 0, 0).Volume - At(-step, 0, 0).Volume) / (2 * step), 1e-6);
            Assert.Equal(now.AreaAft, (At(0, step, 0).Volume - At(0, -step, 0).Volume) / (2 * step), 1e-5);
            Assert.Equal(Math.Cos(trim) * now.AreaAcross, (At(0, 0, step).Volume - At(0, 0, -step).Volume) / (2 * step), 1e-6);

            Immersed At(double up, double turn, double roll) => body.Below(new WaterPlane(level + up, trim + turn, heel + roll), 1e-12);
        }
    }

    [Fact]
    public void A_level_plane_gives_what_the_upright_integrals_give()
    {
        foreach (var hull in Hulls)
        {
            foreach (var height in (double[])[0.03, 0.115, 0.2])
            {
                var upright = UprightHydrostatics.Below(hull, height, 1e-10);
                var found = FloatingBody.Of(new PlacedHull("hull", hull, default)).Below(WaterPlane.LevelAt(height), 1e-10);
                Assert.Equal(1, found.Volume / upright.Volume, 1e-8);
                Assert.Equal(1, found.Area / upright.Waterplane!.Area, 1e-8);
                Assert.Equal(1, found.LongitudinalMoment / upright.Waterplane.LongitudinalMoment, 1e-7);
                Assert.Equal(1, found.TransverseMoment / upright.Waterplane.TransverseMoment, 1e-8);
                Assert.Equal(upright.Center!.Value.X, found.Center!.Value.X, 1e-8);
                Assert.Equal(upright.Center!.Value.Z, found.Center!.Value.Z, 1e-8);
            }
        }
    }

    [Fact]
    public void Water_that_grazes_the_sheer_cuts_the_waterplane_of_water_just_below_it()
    {
        foreach (var hull in (HullSurface[])[SampleHulls.DoubleEnder(), SampleHulls.TransomBoat(), CrownedHulls.With(SampleHulls.DoubleEnder(), 0.04)])
        {
            var body = FloatingBody.Of(new PlacedHull("hull", hull, default));
            Immersed at = body.Below(WaterPlane.LevelAt(hull.LeastSheer), 1e-10), below = body.Below(WaterPlane.LevelAt(hull.LeastSheer - 1e-10), 1e-10);
            Assert.Equal(1, at.Area / below.Area, 1e-9);
            Assert.Equal(1, at.Volume / below.Volume, 1e-9);
        }
    }

    [Fact]
    public void The_lowest_sheer_and_the_reach_are_those_of_a_fine_grid()
    {
        var hull = SampleHulls.TransomBoat();
        var body = FloatingBody.Of(new PlacedHull("hull", hull, default));
        foreach (var heel in (double[])[-0.4, 0, 0.9])
        {
            var water = new WaterPlane(0.1, 0.02, heel);
            double sheer = double.PositiveInfinity, low = double.PositiveInfinity, high = double.NegativeInfinity;
            for (var i = 0; i <= 800; i++)
            {
                for (var j = 0; j <= 100; j++)
                {
                    var p = hull.Side.PointAt(i / 800.0, j / 100.0);
                    foreach (var h in (double[])[water.HeightOf(p), water.HeightOf(p with { Y = -p.Y })])
                    {
                        (low, high) = (Math.Min(low, h), Math.Max(high, h));
                        if (j == 100)
                            sheer = Math.Min(sheer, h);
                    }
                }
            }

            Assert.Equal(sheer, body.LowestSheer(water).Height, 1e-5);
            Assert.Equal(sheer, water.HeightOf(body.LowestSheer(water).At), 1e-5);
            Assert.Equal(low, body.Reach(water, 1e-7).Lowest, 1e-4);
            Assert.Equal(high, body.Reach(water, 1e-7).Highest, 1e-4);
        }
    }
}
