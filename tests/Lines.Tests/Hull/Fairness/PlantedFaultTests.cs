using Lines.Hull.Fairness;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Fairness;

public class PlantedFaultTests
{
    private const double L = 5, B = 0.37;

    public static TheoryData<string> FairCurves => ["parabola", "half arch", "ellipse", "Wigley waterline"];

    private static LineTrace Fair(string name) => name switch
    {
        "parabola" => PlaneCurves.Waterline(L, PlaneCurves.Parabola(L, B)),
        "half arch" => PlaneCurves.Waterline(L, PlaneCurves.HalfArch(L, B)),
        "ellipse" => PlaneCurves.Ellipse(L, B),
        _ => PlaneCurves.Waterline(1, PlaneCurves.Parabola(1, 0.05)),
    };

    [Theory]
    [MemberData(nameof(FairCurves))]
    public void A_fair_curve_raises_nothing(string name)
    {
        var trace = Fair(name);
        Assert.Empty(Hollows.In(trace, 1e-9));
        Assert.Empty(CurvatureRuns.Inflections(trace));
        Assert.Equal(2, CurvatureRuns.MonotonePieces(trace));
        Assert.Equal(0, CurvatureRuns.WorstFlat(trace).Depth);
        Assert.InRange(BattenTest.Of(trace, BattenTest.EndZone).Departure, 0, string.Equals(name, "ellipse", StringComparison.Ordinal) ? 0.0001 : 0.00001);
        Assert.Empty(LineFaults.In(trace, BattenTest.EndZone));
    }

    [Theory]
    [InlineData(0.9, 0.6, 0.006)]
    [InlineData(2.5, 0.4, 0.003)]
    [InlineData(4.2, 0.8, 0.012)]
    public void A_hollow_is_found_with_its_place_and_depth(double at, double width, double dent)
    {
        var curve = PlaneCurves.Plus(PlaneCurves.Parabola(L, B), PlaneCurves.Bump(at, width, -dent));
        var hollow = Assert.Single(Hollows.In(PlaneCurves.Waterline(L, curve), 0.0001));
        var (depth, place) = BruteHollow(curve);
        Assert.InRange(hollow.Depth, 0.95 * depth, 1.0001 * depth);
        Assert.Equal(place, hollow.Place, 0.05);
        Assert.Equal(2, CurvatureRuns.Inflections(PlaneCurves.Waterline(L, curve)).Count);
    }

    [Fact]
    public void The_depth_of_a_dent_in_a_straight_line_is_the_dent()
    {
        var trace = PlaneCurves.Waterline(L, PlaneCurves.Bump(2, 1, -0.003), 501);
        var hollow = Assert.Single(Hollows.In(trace, 0));
        Assert.Equal((0.003, 2), (hollow.Depth, hollow.Place), new Near(1e-12));
    }

    [Theory]
    [InlineData(0.70)]
    [InlineData(1.13)]
    [InlineData(2.50)]
    [InlineData(2.58)]
    [InlineData(3.77)]
    public void A_bump_of_0_3_mm_over_150_mm_is_found_with_its_place_and_size_wherever_it_stands(double at)
    {
        foreach (var height in new[] { 0.0003, -0.0003, 0.0012 })
        {
            var curve = PlaneCurves.Plus(PlaneCurves.Parabola(L, B), PlaneCurves.Bump(at, 0.15, height));
            var gap = BattenTest.Of(PlaneCurves.Waterline(L, curve, 1001), BattenTest.EndZone);
            Assert.InRange(gap.Departure, 0.75 * Math.Abs(height), 1.25 * Math.Abs(height));
            Assert.InRange(gap.Place, at - 0.075, at + 0.075);
        }
    }

    [Theory]
    [InlineData(1.2, 2.0)]
    [InlineData(2.5, 1.0)]
    [InlineData(3.9, 3.0)]
    public void A_kink_outward_is_found_with_its_place_and_stands_a_tenth_of_angle_times_spacing_off_the_batten(double at, double degrees)
    {
        var angle = degrees * Math.PI / 180;
        var curve = PlaneCurves.Plus(PlaneCurves.Parabola(L, B), PlaneCurves.Kink(at, angle));
        var gap = BattenTest.Of(PlaneCurves.Waterline(L, curve, 1001), BattenTest.EndZone);

        // A knuckle of one radian between ducks a unit apart, on an endless batten: computed by a finite-difference beam.
        var expected = angle * (L / Math.Ceiling(L / 0.3)) * BattenOracle.KnuckleGap(at, L, (int)Math.Ceiling(L / 0.3));
        Assert.InRange(gap.Departure, 0.75 * expected, 1.25 * expected);
        Assert.InRange(gap.Place, at - 0.1, at + 0.1);
    }

    [Fact]
    public void A_flat_between_two_harder_places_is_found_with_its_place_and_depth()
    {
        // Curvature of the parabola taken away by a cos² window 0.8 m wide around 1.8 m, so that it just vanishes there.
        const double c = 1.8, w = 0.8;
        var keep = PlaneCurves.Parabola(L, B)(c).Bend;
        (double, double, double) Dip(double x)
        {
            // Second derivative -keep cos²(pi (x-c)/w) in the window; integrated twice from its fore edge.
            double t = Math.Clamp(x - c + (w / 2), 0, w), k = 2 * Math.PI / w;
            double slope = -keep / 2 * (t - (Math.Sin(k * t) / k));
            double y = -keep / 2 * ((t * t / 2) + ((Math.Cos(k * t) - 1) / (k * k)));
            return (y + (slope * Math.Max(0, x - c - (w / 2))), slope, Math.Abs(x - c) < w / 2 ? -keep * Math.Pow(Math.Cos(Math.PI * (x - c) / w), 2) : 0);
        }

        var trace = PlaneCurves.Waterline(L, PlaneCurves.Plus(PlaneCurves.Parabola(L, B), Dip), 501);
        var flat = CurvatureRuns.WorstFlat(trace);
        var planted = Math.Abs(keep) * w * w * ((1.0 / 16) + (1 / (4 * Math.PI * Math.PI))); // of -Dip held at the window's edges
        Assert.InRange(flat.Depth, 0.75 * planted, 1.25 * planted);
        Assert.Equal(c, flat.Place, 0.1);
        Assert.Equal(4, CurvatureRuns.MonotonePieces(trace));
        Assert.Empty(Hollows.In(trace, 1e-6));
    }

    // The upper hull of dense points by brute force: at each point the highest chord over it.
    private static (double Depth, double Place) BruteHollow(Func<double, (double Y, double Slope, double Bend)> curve)
    {
        var ys = Enumerable.Range(0, 501).Select(k => curve(L * k / 500).Y).ToArray();
        (double Depth, double Place) worst = default;
        for (var k = 1; k < 500; k++)
        {
            for (var a = 0; a < k; a++)
            {
                for (var b = k + 1; b <= 500; b++)
                {
                    var slope = (ys[b] - ys[a]) / (b - a);
                    var over = (ys[a] + (slope * (k - a)) - ys[k]) / Math.Sqrt(1 + Math.Pow(slope * 500 / L, 2));
                    if (over > worst.Depth)
                        worst = (over, L * k / 500);
                }
            }
        }

        return worst;
    }

    private sealed class Near(double tolerance) : IEqualityComparer<(double, double)>
    {
        public bool Equals((double, double) x, (double, double) y) =>
            Math.Abs(x.Item1 - y.Item1) <= tolerance && Math.Abs(x.Item2 - y.Item2) <= tolerance;

        public int GetHashCode((double, double) obj) => 0;
    }
}
