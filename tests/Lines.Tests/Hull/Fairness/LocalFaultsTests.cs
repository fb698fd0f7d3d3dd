using Lines.Hull.Fairness;
using Lines.Hull.Sections;
using Lines.Tests.Support;
using Xunit;
using Curve = System.Func<double, (double Y, double Slope, double Bend)>;

namespace Lines.Tests.Hull.Fairness;

public class LocalFaultsTests
{
    private const int Seeds = 40;

    public static TheoryData<int> ManySeeds => [.. Enumerable.Range(0, Seeds)];

    // A fair waterline of random length, breadth and shape, and the generator to go on with.
    private static (Curve Curve, double Length, Random Random) FairLine(int seed, double least = 2)
    {
        var random = new Random(seed);
        double length = least + ((12 - least) * random.NextDouble()), half = length / (8 + (22 * random.NextDouble()));
        Curve curve = (seed % 3) switch
        {
            0 => PlaneCurves.Parabola(length, half),
            1 => PlaneCurves.HalfArch(length, half),
            _ => ClampedBatten(length, half, 0.45 + (0.1 * random.NextDouble()), 0.1 * random.NextDouble()),
        };
        return (curve, length, random);
    }

    // The least-energy batten through both ends and one duck, whose ends leave at a slope: two cubics joined at the duck.
    private static Curve ClampedBatten(double length, double half, double duck, double slope) => x =>
    {
        double a = duck * length, b = length - a, s = 3 * half / length * (1 + slope), t = -s;
        // Slope m at the duck from the continuity of the second derivative of two cubic Hermite pieces.
        var m = ((3 * half / (a * a)) - (3 * half / (b * b)) - (s / a) - (t / b)) / ((2 / a) + (2 / b));
        return x <= a ? Piece(x, a, 0, half, s, m) : Piece(x - a, b, half, 0, m, t);
    };

    private static (double Y, double Slope, double Bend) Piece(double x, double h, double p, double q, double s, double t)
    {
        double c2 = ((3 * (q - p) / h) - (2 * s) - t) / h, c3 = ((2 * (p - q) / h) + s + t) / (h * h);
        return (p + (x * (s + (x * (c2 + (x * c3))))), s + (x * ((2 * c2) + (3 * x * c3))), (2 * c2) + (6 * x * c3));
    }

    private static LineTrace Trace(double length, Curve curve) => PlaneCurves.Waterline(length, curve, (int)(100 * length) + 1);

    [Theory]
    [MemberData(nameof(ManySeeds))]
    public void A_fair_line_of_any_length_raises_nothing(int seed)
    {
        var (curve, length, _) = FairLine(seed);
        Assert.Empty(LineFaults.In(Trace(length, curve), BattenTest.EndZone));
    }

    [Theory]
    [MemberData(nameof(ManySeeds))]
    public void A_bump_or_dent_of_0_3_mm_over_150_mm_is_named_alone_with_place_and_size(int seed)
    {
        var (curve, length, random) = FairLine(seed);
        var at = 0.25 + ((length - 0.5) * random.NextDouble());
        var height = (random.Next(2) == 0 ? 1 : -1) * (0.0003 + (0.0012 * random.NextDouble()));
        var fault = Assert.Single(LocalFaults.In(Trace(length, PlaneCurves.Plus(curve, PlaneCurves.Bump(at, 0.15, height))), BattenTest.EndZone));
        Assert.Equal(height > 0 ? FaultKind.Bump : FaultKind.Dent, fault.Kind);
        Assert.InRange(fault.Size, 0.75 * Math.Abs(height), 1.25 * Math.Abs(height));
        Assert.Equal(at, fault.Place, 0.05);
        Assert.InRange(fault.Length, 0.08, 0.16);
    }

    [Theory]
    [MemberData(nameof(ManySeeds))]
    public void A_kink_is_named_alone_with_place_and_angle(int seed)
    {
        var (curve, length, random) = FairLine(seed);
        var at = 0.4 + ((length - 0.8) * random.NextDouble());
        var angle = (random.Next(2) == 0 ? 1 : -1) * (0.02 + (0.05 * random.NextDouble()));
        var fault = Assert.Single(LocalFaults.In(Trace(length, PlaneCurves.Plus(curve, PlaneCurves.Kink(at, angle))), 0));
        Assert.Equal(FaultKind.Kink, fault.Kind);
        Assert.InRange(fault.Turn / angle, 0.75, 1.25);
        Assert.Equal(at, fault.Place, 0.05);
    }

    [Theory]
    [MemberData(nameof(ManySeeds))]
    public void Two_faults_are_both_named_and_nothing_between_them(int seed)
    {
        var (curve, length, random) = FairLine(seed, 3);
        double first = length * (0.2 + (0.1 * random.NextDouble())), second = first + 0.45 + (((0.75 * length) - first - 0.45) * random.NextDouble());
        var found = LocalFaults.In(
            Trace(length, PlaneCurves.Plus(curve, PlaneCurves.Plus(PlaneCurves.Bump(first, 0.15, 0.0006), PlaneCurves.Bump(second, 0.12, -0.0004)))),
            BattenTest.EndZone);
        Assert.Equal([FaultKind.Bump, FaultKind.Dent], found.Select(f => f.Kind));
        Assert.InRange(found[0].Size, 0.00045, 0.00075);
        Assert.InRange(found[1].Size, 0.0003, 0.0005);
        Assert.Equal((first, second), (found[0].Place, found[1].Place), new Near(0.05));
    }

    [Theory]
    [InlineData(0.90)]
    [InlineData(1.83)]
    [InlineData(3.30)]
    [InlineData(4.40)]
    public void A_rib_0_4_mm_proud_over_150_mm_of_a_surface_is_named_on_every_waterline_at_its_station_and_nowhere_else(double at)
    {
        // One column of poles moved: a cubic B-spline bump four spans = 150 mm wide, 2/3 of the move high where it stands over a pole.
        var pole = Math.Round(at / FineHull.Span) * FineHull.Span;
        var report = FairnessReport.Of(HullLines.Of(FineHull.Of((x, z) => Math.Abs(x - pole) < FineHull.Span / 2 && z > 0 ? 0.0006 : 0)));
        foreach (var line in report.Lines.Where(l => l.Line.Kind == LineKind.Waterline))
        {
            var fault = Assert.Single(line.Faults);
            Assert.Equal(FaultKind.Bump, fault.Fault.Kind);
            Assert.InRange(fault.At.Depth, 0.0003, 0.0005);
            Assert.Equal(pole, fault.At.Place.X, 0.05);
            Assert.Equal(Nearest(report, pole), fault.At.Station);
        }

        Assert.All(report.Lines.Where(l => l.Line.Kind is LineKind.Keel or LineKind.Stem), l => Assert.Empty(l.Faults));
    }

    [Fact]
    public void A_fair_surface_has_no_faults_on_any_line() =>
        Assert.All(FairnessReport.Of(HullLines.Of(FineHull.Of((_, _) => 0))).Lines, l => Assert.Empty(l.Faults));

    private static string Nearest(FairnessReport report, double x) =>
        report.Lines.Where(l => l.Line.Kind == LineKind.Station).MinBy(l => Math.Abs(l.Line.Position - x))!.Line.Label;

    private sealed class Near(double tolerance) : IEqualityComparer<(double, double)>
    {
        public bool Equals((double, double) x, (double, double) y) =>
            Math.Abs(x.Item1 - y.Item1) <= tolerance && Math.Abs(x.Item2 - y.Item2) <= tolerance;

        public int GetHashCode((double, double) obj) => 0;
    }
}
