using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Form;

/// <summary>What a stem looks like from abeam, measured on the finished surface.</summary>
public class StemProfileTests
{
    [Theory]
    [InlineData(StemProfile.Curved, 0.25)]
    [InlineData(StemProfile.Plumb, 0.15)]
    [InlineData(StemProfile.Raked, 0.60)]
    public void A_stem_runs_from_the_forefoot_to_the_foremost_point_at_the_sheer_and_turns_one_way(StemProfile profile, double forefoot)
    {
        var hull = Shaped(profile, forefoot);
        var stem = Stem(hull);

        Assert.Equal(forefoot, stem[0].X, 1e-5);
        Assert.Equal(hull.Dials.Bow.Rocker, stem[0].Y, 1e-5);
        Assert.Equal(new Point2(0, hull.Dials.Bow.Sheer), stem[^1]);
        for (var k = 2; k < stem.Length; k++)
        {
            Assert.True(stem[k].Y > stem[k - 1].Y && stem[k].X <= stem[k - 1].X + 1e-9);
            Assert.True(Cross(stem[k - 1] - stem[k - 2], stem[k] - stem[k - 1]) < 1e-9);
        }
    }

    [Theory]
    [InlineData(StemProfile.Curved, 0.25, 0)]
    [InlineData(StemProfile.Plumb, 0.15, 0)]
    [InlineData(StemProfile.Raked, 0.60, 0.6)]
    public void It_keeps_to_the_tangents_of_its_ends_and_to_the_shoulder_of_a_conic(StemProfile profile, double forefoot, double corner)
    {
        var hull = Shaped(profile, forefoot);
        var stem = Stem(hull);

        // The tangents meet in a corner; where the conic runs parallel to its chord it divides the way from the chord's middle to the corner
        // as w to 1, with the weight w of a rational quadratic, which for a quarter ellipse is the root of a half (Farin, "Curves and Surfaces
        // for CAGD", on conics; from memory). The weights are 2.2 and 1.4 times that.
        double slope = (stem[1] - stem[0]) is var leg ? -leg.Y / leg.X : 0, weight = Math.Sqrt(0.5) * (profile switch { StemProfile.Plumb => 2.2, StemProfile.Raked => 1.4, _ => 1 });
        var meeting = new Point2(corner * forefoot, stem[0].Y + (slope * forefoot * (1 - corner)));
        var lean = (stem[^1] - stem[^2]).Unit();
        Assert.Equal(0, Cross(lean, (stem[^1] - meeting).Unit()), 0.02);
        var middle = stem[0] + (0.5 * (stem[^1] - stem[0]));
        var shoulder = middle + (weight / (1 + weight) * (meeting - middle));
        Assert.True(stem.Min(p => p.DistanceTo(shoulder)) < 0.004 + (0.01 * forefoot), Invariant($"{profile}: {stem.Min(p => p.DistanceTo(shoulder)):F4} m"));
    }

    [Fact]
    public void Of_three_stems_with_one_forefoot_the_plumb_one_cuts_off_least_and_the_raked_one_most()
    {
        double[] off = [.. ((StemProfile[])[StemProfile.Plumb, StemProfile.Curved, StemProfile.Raked]).Select(p => AreaBefore(Stem(Shaped(p, 0.3))))];
        Assert.True(off[0] < 0.8 * off[1] && 1.2 * off[1] < off[2], string.Join(", ", off.Select(a => Invariant($"{a:F4}"))));
    }

    private static HullSurface Shaped(StemProfile profile, double forefoot)
    {
        var dials = FormDials.DoubleEnder;
        return HullShape.Solve(dials with { Bow = dials.Bow with { Profile = profile, Forefoot = forefoot } }).Surface!;
    }

    /// <summary>The stem from its foot up, x and z.</summary>
    private static Point2[] Stem(HullSurface hull) => [.. Enumerable.Range(0, 401).Select(k => hull.Side.PointAt(0, k / 400.0)).Select(p => new Point2(p.X, p.Z))];

    /// <summary>Between the stem and a plumb line through the foremost point.</summary>
    private static double AreaBefore(Point2[] stem) => Enumerable.Range(1, stem.Length - 1).Sum(k => (stem[k].X + stem[k - 1].X) / 2 * (stem[k].Y - stem[k - 1].Y));

    private static double Cross(Vector2 a, Vector2 b) => (a.X * b.Y) - (a.Y * b.X);
}
