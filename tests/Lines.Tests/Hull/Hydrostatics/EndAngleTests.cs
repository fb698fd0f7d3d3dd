using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Hydrostatics;

/// <summary>The angle at which the design waterline comes to its ends, where the keel reaches the water.</summary>
public class EndAngleTests
{
    [Fact]
    public void A_keel_that_ends_just_at_the_water_leaves_an_angle_between_its_neighbors()
    {
        // The waterline then ends on a point at which the skin has no direction. A little lower it ends on the stem, at the angle of its batten; a little
        // higher on the keel, blunter: there it spreads as fast as the keel falls over the rise of the section.
        double[] entries = [.. ((double[])[0.99, 1, 1.01]).Select(share => Angles(share).Entry)], runs = [.. ((double[])[0.99, 1, 1.01]).Select(share => Angles(share).Run)];
        foreach (var angles in (double[][])[entries, runs])
        {
            Assert.All(angles, a => Assert.InRange(a, 5 * FormDials.Degree, 45 * FormDials.Degree));
            Assert.InRange(angles[1], Math.Min(angles[0], angles[2]) - FormDials.Degree, Math.Max(angles[0], angles[2]) + FormDials.Degree);
        }
    }

    private static (double Entry, double Run) Angles(double share)
    {
        var d = FormDials.DoubleEnder;
        var stern = (PointedStern)d.Stern;
        var hull = HullAttempt.AtOnce(d with { Bow = d.Bow with { Rocker = share * d.Draft }, Stern = stern with { Rocker = share * d.Draft } }).Surface!;
        var form = FormCoefficients.Of(hull);
        return (form.EntryAngle, form.RunAngle);
    }
}
