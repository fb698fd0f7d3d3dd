using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Form;

/// <summary>A dial raised raises what it names, everywhere in its range and not only on the average.</summary>
public class DialProperties
{
    /// <summary>Designs with their widest point given.</summary>
    public static TheoryData<string> Boats => ["double-ender", "transom"];

    [Theory]
    [MemberData(nameof(Boats))]
    public void A_fuller_entry_gives_more_volume_forward_and_a_blunter_end_and_its_own_waterplane(string boat) =>
        Rises(boat, 0.58, 0.74, (d, f) => d with { Bow = d.Bow with { EntryFullness = f } }, h => Volume(h, fore: true), h => FormCoefficients.Of(h).EntryAngle, h => FormCoefficients.Of(h).Entry);

    [Fact]
    public void A_fuller_run_gives_more_volume_aft_and_a_blunter_end_and_its_own_waterplane() =>
        Rises("double-ender", 0.58, 0.74, (d, f) => d with { Stern = d.Stern with { RunFullness = f } }, h => Volume(h, fore: false), h => FormCoefficients.Of(h).RunAngle, h => FormCoefficients.Of(h).Run);

    [Theory]
    [MemberData(nameof(Boats))]
    public void A_fuller_entry_broadens_the_waterline_at_every_station_forward(string boat) =>
        Rises(boat, 0.58, 0.74, (d, f) => d with { Bow = d.Bow with { EntryFullness = f } }, [.. Enumerable.Range(1, 9).Select(k => BreadthAt(k / 10.0, end: 0))]);

    [Fact]
    public void A_fuller_run_broadens_the_waterline_at_every_station_aft() =>
        Rises("double-ender", 0.58, 0.74, (d, f) => d with { Stern = d.Stern with { RunFullness = f } }, [.. Enumerable.Range(1, 9).Select(k => BreadthAt(k / 10.0, end: 1))]);

    [Theory]
    [MemberData(nameof(Boats))]
    public void A_fuller_midship_section_gives_more_volume(string boat) =>
        Rises(boat, 0.68, 0.80, (d, f) => d with { Midship = d.Midship with { Fullness = f } }, h => Volume(h, fore: true), h => Volume(h, fore: false));

    [Theory]
    [MemberData(nameof(Boats))]
    public void More_rocker_forward_takes_volume_forward(string boat) =>
        Rises(boat, 0.0, 0.8, (d, f) => d with { Bow = d.Bow with { Rocker = f * d.Draft } }, h => -Volume(h, fore: true));

    [Theory]
    [InlineData("double-ender", 0.59, 0.71)]
    [InlineData("double-ender, widest left out", 0.59, 0.71)]
    [InlineData("transom", 0.59, 0.71)]
    [InlineData("transom, widest left out", 0.59, 0.71)]
    public void The_entry_is_not_felt_in_the_after_body(string boat, double from, double to) =>
        Stays(boat, from, to, (d, f) => d with { Bow = d.Bow with { EntryFullness = f } }, fore: false, h => FormCoefficients.Of(h).RunAngle, h => FormCoefficients.Of(h).Run);

    [Theory]
    [InlineData("double-ender", 0.59, 0.71)]
    [InlineData("double-ender, widest left out", 0.59, 0.71)]
    [InlineData("transom", 0.69, 0.81)]
    public void The_run_is_not_felt_in_the_fore_body(string boat, double from, double to) =>
        Stays(boat, from, to, (d, f) => d with { Stern = d.Stern with { RunFullness = f } }, fore: true, h => FormCoefficients.Of(h).EntryAngle, h => FormCoefficients.Of(h).Entry);

    // A hundredth of the dial moves angle and waterplane of the other end by less than a thousandth, and its volume on the average:
    // where a hollow comes to be watched or is watched no more the volume takes a step, of two thousandths at most here.
    private static void Stays(string boat, double from, double to, Func<HullDials, double, HullDials> turned, bool fore, params Func<HullSurface, double>[] figures)
    {
        const int steps = 12;
        var d = Boat(boat);
        HullSurface[] hulls = [.. Enumerable.Range(0, steps + 1).Select(k => HullAttempt.Make(turned(d, from + ((to - from) * k / steps))).Surface!)];
        var hundredths = (to - from) / steps / 0.01;
        foreach (var figure in figures)
        {
            for (var k = 1; k <= steps; k++)
                Assert.InRange(Math.Abs((figure(hulls[k]) / figure(hulls[k - 1])) - 1), 0, 0.001 * hundredths);
        }

        double[] volumes = [.. hulls.Select(h => Volume(h, fore))];
        Assert.InRange(Math.Abs((volumes[^1] / volumes[0]) - 1), 0, 0.001 * hundredths * steps);
        for (var k = 1; k <= steps; k++)
            Assert.InRange(Math.Abs((volumes[k] / volumes[k - 1]) - 1), 0, 0.0025 * hundredths);
    }

    private static HullDials Boat(string name) => name switch
    {
        "double-ender" => FormDials.DoubleEnder,
        "double-ender, widest left out" => FormDials.DoubleEnder with { Widest = null },
        "transom" => FormDials.TransomBoat with { Widest = 0.52 },
        "transom, widest left out" => FormDials.TransomBoat with { Widest = null },
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "no such boat"),
    };

    private static void Rises(string boat, double from, double to, Func<HullDials, double, HullDials> turned, params Func<HullSurface, double>[] figures)
    {
        var d = Boat(boat);
        double[]? before = null;
        for (var k = 0; k <= 8; k++)
        {
            var dial = from + ((to - from) * k / 8);
            var hull = HullAttempt.Make(turned(d, dial)).Surface;
            Assert.True(hull is not null, Invariant($"no hull at {dial:F3}"));
            double[] now = [.. figures.Select(f => f(hull))];
            for (var i = 0; before is not null && i < now.Length; i++)
                Assert.True(now[i] > before[i], Invariant($"figure {i} goes from {before[i]} to {now[i]} at {dial:F3}"));
            before = now;
        }
    }

    // Half-breadth of the design waterline at a part of the way from its end to the widest station; its abscissa runs evenly with u.
    private static Func<HullSurface, double> BreadthAt(double part, int end) => h => h.Side.PointAt(end + (part * (h.WidestU - end)), h.WaterlineV).Y;

    private static double Volume(HullSurface hull, bool fore)
    {
        var widest = hull.Side.PointAt(hull.WidestU, hull.WaterlineV).X;
        var (from, to) = fore ? (hull.WaterlineFore, widest) : (widest, hull.WaterlineAft);
        var areas = new SectionAreas(hull, hull.Draft, 1e-9);
        const int strips = 200;
        return Enumerable.Range(0, strips).Sum(i => areas.At(from + ((to - from) * (i + 0.5) / strips)).Area) * (to - from) / strips;
    }
}
