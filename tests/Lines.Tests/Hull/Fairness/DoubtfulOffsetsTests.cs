using Lines.Hull.Fairness;
using Lines.Kernel.Geometry;
using Xunit;

namespace Lines.Tests.Hull.Fairness;

public class DoubtfulOffsetsTests
{
    private const double Sixteenth = 0.0254 / 16;

    public static TheoryData<int> ManySeeds => [.. Enumerable.Range(0, 60)];

    // Stations 0 to 10 with halves on a random fair waterline, rounded to a step.
    private static (Point2[] Points, Random Random) Table(int seed, double step)
    {
        var random = new Random(seed);
        double length = 2 + (10 * random.NextDouble()), half = length / (8 + (22 * random.NextDouble())), lean = 0.8 * (random.NextDouble() - 0.5);
        var points = new Point2[21];
        for (var k = 0; k < points.Length; k++)
        {
            double s = k / 20.0, skewed = s + (lean * s * (1 - s));
            var y = seed % 2 == 0 ? half * 4 * skewed * (1 - skewed) : half * Math.Sin(Math.PI * skewed);
            points[k] = new Point2(length * s, step > 0 ? step * Math.Round(y / step) : y);
        }

        return (points, random);
    }

    [Theory]
    [MemberData(nameof(ManySeeds))]
    public void A_fair_table_raises_nothing_in_any_rounding(int seed)
    {
        foreach (var step in new[] { 0, 0.0001, 0.001, 0.0254 / 32, Sixteenth })
            Assert.Empty(DoubtfulOffsets.In(Table(seed, step).Points, step));
    }

    [Theory]
    [MemberData(nameof(ManySeeds))]
    public void A_sixteenth_of_an_inch_at_one_station_is_named_with_its_size_and_no_neighbor(int seed)
    {
        foreach (var step in new[] { 0, 0.0001 })
        {
            var (points, random) = Table(seed, step);
            var k = random.Next(1, points.Length - 1);
            var error = random.Next(2) == 0 ? Sixteenth : -Sixteenth;
            var right = points[k].Y;
            points[k] = points[k] with { Y = right + error };
            var doubtful = Assert.Single(DoubtfulOffsets.In(points, step));
            Assert.Equal(k, doubtful.Index);
            Assert.InRange(doubtful.Error / error, 0.75, 1.25);
            Assert.Equal(right, doubtful.Expected, 0.25 * Sixteenth);
        }
    }

    // 1/32 in is half the error: of 320 lines of another making 94 % were named, 65 % rounded to a millimeter.
    [Theory]
    [InlineData(0.0005, 290)]
    [InlineData(0.0254 / 32, 260)]
    [InlineData(0.001, 160)]
    public void In_a_table_coarsely_rounded_most_are_named_and_never_a_neighbor(double step, int least)
    {
        var named = 0;
        for (var seed = 0; seed < 300; seed++)
        {
            var (points, random) = Table(seed, step);
            var k = random.Next(2, points.Length - 2);
            points[k] = points[k] with { Y = points[k].Y + (random.Next(2) == 0 ? Sixteenth : -Sixteenth) };
            var doubtful = DoubtfulOffsets.In(points, step);
            Assert.All(doubtful, d => Assert.Equal(k, d.Index));
            named += doubtful.Count;
        }

        Assert.InRange(named, least, 300);
    }

    [Fact]
    public void Two_errors_are_both_named()
    {
        var (points, _) = Table(3, 0.0001);
        points[5] = points[5] with { Y = points[5].Y + 0.003 };
        points[14] = points[14] with { Y = points[14].Y - 0.002 };
        Assert.Equal([5, 14], DoubtfulOffsets.In(points, 0.0001).Select(d => d.Index));
    }

    [Fact]
    public void An_ellipse_round_at_both_ends_raises_nothing()
    {
        for (var stations = 9; stations <= 41; stations++)
        {
            Point2[] points = [.. Enumerable.Range(0, stations).Select(k => k / (stations - 1.0)).Select(s => new Point2(5 * s, 0.37 * Math.Sqrt(4 * s * (1 - s))))];
            Assert.Empty(DoubtfulOffsets.In(points, 0));
        }
    }

    [Fact]
    public void Points_that_do_not_go_forward_are_refused()
    {
        Assert.Throws<ArgumentException>(() => DoubtfulOffsets.In([new(0, 0), new(1, 1), new(1, 2), new(2, 0), new(3, 0)], 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => DoubtfulOffsets.In([], double.NaN));
        Assert.Empty(DoubtfulOffsets.In([new(0, 0), new(1, 1)], 0));
    }
}
