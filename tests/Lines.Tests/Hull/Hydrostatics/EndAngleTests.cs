using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Sections;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Hydrostatics;

/// <summary>The angle at which the design waterline comes to its ends, where the keel reaches the water.</summary>
public class EndAngleTests
{
    /// <summary>How near to the end a chord is taken, as a part of the line: a nearer one would feel the nanometer within which lines lie on the skin.</summary>
    private const double Near = 5e-6;

    [Fact]
    public void A_keel_that_ends_just_at_the_water_leaves_an_angle_between_its_neighbors()
    {
        // The waterline then ends on a point at which the skin has no direction. A little lower it ends on the stem, at the angle of its batten; a little
        // higher on the keel, blunter: there it spreads as fast as the keel falls over the rise of the section.
        double[] entries = [.. ((double[])[0.99, 1, 1.01]).Select(share => Angles(share).Entry)], runs = [.. ((double[])[0.99, 1, 1.01]).Select(share => Angles(share).Run)];
        foreach (var angles in (double[][])[entries, runs])
        {
            Assert.All(angles[..2], a => Assert.InRange(a, 5 * FormDials.Degree, 45 * FormDials.Degree));
            Assert.InRange(angles[2], 5 * FormDials.Degree, 60 * FormDials.Degree); // at its very end; 1e-4 inside it was less than 45
            Assert.InRange(angles[1], Math.Min(angles[0], angles[2]) - FormDials.Degree, Math.Max(angles[0], angles[2]) + FormDials.Degree);
        }
    }

    // Against chords of the cut waterline, five millionths of its length from the end: a hair further inside the run's angle was 0.4 degrees less.
    [Theory]
    [InlineData(1.05)]
    [InlineData(1.1)]
    public void A_waterline_that_ends_on_the_keel_has_the_angle_of_its_last_chord(double share)
    {
        var hull = Raised(share);
        var line = Cut.Waterline(hull, hull.Draft).Single();
        var form = FormCoefficients.Of(hull);
        Assert.InRange(Chord(0, Near) / form.EntryAngle, 1 - 1e-3, 1 + 1e-3);
        Assert.InRange(-Chord(1 - Near, 1) / form.RunAngle, 1 - 1e-3, 1 + 1e-3);

        double Chord(double from, double to)
        {
            var way = line.At(to).Point - line.At(from).Point;
            return Math.Atan2(way.Y, way.X);
        }
    }

    private static HullSurface Raised(double share)
    {
        var d = FormDials.DoubleEnder;
        return HullAttempt.AtOnce(d with { Bow = d.Bow with { Rocker = share * d.Draft }, Stern = (PointedStern)d.Stern with { Rocker = share * d.Draft } }).Surface!;
    }

    private static (double Entry, double Run) Angles(double share)
    {
        var form = FormCoefficients.Of(Raised(share));
        return (form.EntryAngle, form.RunAngle);
    }
}
