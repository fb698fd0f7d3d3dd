using Lines.Hull.Hydrostatics;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Hydrostatics;

/// <summary>What must hold for the equilibrium and the righting arms of any boat.</summary>
public class RightingArmProperties
{
    private const double Density = 1000;

    private static readonly Craft s_outrigged = SampleBodies.OutriggedCraft();

    public static TheoryData<double, double, double, double> Weights
    {
        get
        {
            var random = new Random(5);
            var weights = new TheoryData<double, double, double, double>();
            for (var k = 0; k < 10; k++)
                weights.Add(60 + (200 * random.NextDouble()), 2.4 + (0.5 * random.NextDouble()), 0.3 * (random.NextDouble() - 0.5), 0.1 + (0.4 * random.NextDouble()));
            return weights;
        }
    }

    [Theory]
    [MemberData(nameof(Weights))]
    public void Buoyancy_carries_the_weight_and_stands_under_it(double mass, double x, double y, double z)
    {
        var found = CaseAfloat.Of(s_outrigged, new Weight(mass, new Point3(x, y, z)), Density);
        Assert.True(found.Rests);
        var at = found.Afloat!;
        Assert.True(Math.Abs((Density * at.Immersed.Volume / mass) - 1) < 1e-9);
        var lever = at.Immersed.Center!.Value - new Point3(x, y, z);
        Assert.True(Math.Abs(lever.Dot(at.Water.Aft)) < 1e-7 && Math.Abs(lever.Dot(at.Water.Across)) < 1e-7);
        Assert.Equal(mass, found.Hulls.Sum(h => h.Displacement), 1e-6 * mass);
        Assert.Equal(1, found.Hulls.Sum(h => h.Share), 1e-8);
    }

    [Fact]
    public void An_arm_is_the_same_to_the_last_digit_whoever_asks_for_it_first()
    {
        var weight = new Weight(140, new Point3(2.6, 0, 0.3));
        double[] heels = [.. Enumerable.Range(0, 60).Select(k => 0.013 + (0.03 * k))];
        RightingArms one = new(s_outrigged, weight, Density, toPort: false), other = new(s_outrigged, weight, Density, toPort: false);
        var asked = Array.ConvertAll(heels, h => one.At(h)?.Arm);
        var together = new double?[heels.Length];
        Parallel.For(0, heels.Length, new ParallelOptions { MaxDegreeOfParallelism = 4 }, k => together[heels.Length - 1 - k] = other.At(heels[heels.Length - 1 - k])?.Arm);
        Assert.Equal(asked, together);
    }

    [Theory]
    [MemberData(nameof(Weights))]
    public void A_weight_to_port_is_the_mirror_image_of_one_to_starboard(double mass, double x, double y, double z)
    {
        Afloat a = CaseAfloat.Of(s_outrigged, new Weight(mass, new Point3(x, y, z)), Density).Afloat!, b = CaseAfloat.Of(s_outrigged, new Weight(mass, new Point3(x, -y, z)), Density).Afloat!;
        Assert.Equal(a.Water.Heel, -b.Water.Heel, 1e-7);
        Assert.Equal(a.Water.Trim, b.Water.Trim, 1e-7);
        Assert.Equal(a.Stiffness, b.Stiffness, 1e-5);
    }

    [Fact]
    public void The_slope_of_an_arm_is_that_of_its_neighbors()
    {
        var arms = new RightingArms(s_outrigged, new Weight(150, new Point3(2.65, 0, 0.3)), Density, toPort: false);
        Assert.Equal(RightingArms.Angles, arms.Curve.Count);
        foreach (var heel in (double[])[0.05, 0.4, 1.1, 2])
        {
            const double Step = 1e-4;
            Assert.Equal(arms.At(heel)!.Slope, (arms.At(heel + Step)!.Arm - arms.At(heel - Step)!.Arm) / (2 * Step), 1e-4);
        }
    }

    [Fact]
    public void Arms_grow_with_the_boat()
    {
        const double Scale = 1.7;
        var weight = new Weight(150, new Point3(2.65, 0, 0.15));
        var small = new RightingArms(SampleBodies.DoubleEnderCraft(), weight, Density, toPort: false);
        var side = SampleHulls.DoubleEnder().Side;
        var poles = new Point3[side.U.Count, side.V.Count];
        for (var i = 0; i < side.U.Count; i++)
        {
            for (var j = 0; j < side.V.Count; j++)
                poles[i, j] = default(Point3) + (Scale * (side.PoleAt(i, j) - default(Point3)));
        }

        var body = new FloatingBody("hull", [new BSplineSurface(side.U, side.V, poles)], open: true, default);
        var large = new RightingArms(new Craft([body]), new Weight(weight.Mass * Math.Pow(Scale, 3), new Point3(Scale * 2.65, 0, Scale * 0.15)), Density, toPort: false);
        Assert.Equal(small.Downflooding!.Value, large.Downflooding!.Value, 1e-5);
        Assert.Equal(small.Vanishing!.Value, large.Vanishing!.Value, 1e-5);
        Assert.All(small.Curve.Zip(large.Curve), p => Assert.Equal(Scale * p.First.Arm, p.Second.Arm, 1e-6));
    }

    [Fact]
    public void What_counts_ends_at_downflooding()
    {
        var arms = new RightingArms(SampleBodies.DoubleEnderCraft(), new Weight(150, new Point3(2.65, 0, 0.15)), Density, toPort: false);
        Assert.True(arms.Downflooding < arms.Vanishing);
        Assert.Equal(arms.Downflooding!.Value, arms.End);
        Assert.Equal(0, arms.At(arms.End)!.Entry!.Value, 1e-5);
        Assert.True(arms.Greatest!.Heel <= arms.End);
        Assert.Equal(arms.Area, arms.AreaBetween(0, arms.End / 2) + arms.AreaBetween(arms.End / 2, arms.End), 1e-6);
    }

    /// <summary>Oracle: flat facets on a fine grid, closed by the level deck, cut at the plane of the equilibrium.</summary>
    [Fact]
    public void The_level_at_a_heel_is_that_of_fine_facets()
    {
        var hull = SampleHulls.DoubleEnder();
        var water = Equilibrium.AtHeel(SampleBodies.DoubleEnderCraft(), new Weight(150, new Point3(2.65, 0, 0.15)), Density, new WaterPlane(0, 0, 0.5))!.Water;
        const int N = 700;
        double sum = 0;
        for (var i = 0; i < N; i++)
        {
            for (var j = 0; j < N; j++)
            {
                double u = (i + 0.5) / N, v = (j + 0.5) / N;
                var jet = hull.Side.JetAt(u, v);
                Add(jet.Point, jet.V.Cross(jet.U));
                var sheer = hull.Side.JetAt(u, 1);
                Add(sheer.Point with { Y = sheer.Point.Y * (1 - v) }, new Vector3(0, -sheer.Point.Y, 0).Cross(sheer.U with { Y = sheer.U.Y * (1 - v) }));
            }
        }

        Assert.Equal(0.15, sum / (N * N), 1e-5);

        void Add(Point3 p, Vector3 normal)
        {
            sum += water.Up.Dot(normal) * Math.Min(0, water.HeightOf(p));
            sum += water.Up.Dot(normal with { Y = -normal.Y }) * Math.Min(0, water.HeightOf(p with { Y = -p.Y }));
        }
    }
}
