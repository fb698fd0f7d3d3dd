using Lines.Hull.Form;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Form;

/// <summary>Battens against beams: closed forms of elementary beam theory (Timoshenko, Strength of Materials, from memory).</summary>
public class CharacterLinesTests
{
    [Fact]
    public void A_batten_held_at_three_points_is_the_simply_supported_beam()
    {
        // A beam on end supports lifted by 1 in the middle: f = x/L (3 - 4 (x/L)²) up to the middle; energy ∫ f″² = 48 / L³.
        var u = SplineBasis.Clamped(3, [0, 0.25, 0.5, 0.75, 1]);
        using var line = new Batten(u, [.. Enumerable.Range(0, u.Count).Select(i => 2 * u.GrevilleAt(i))]);
        line.Pass(0, 0);
        line.Pass(0.5, 1);
        line.Pass(1, 0);
        var rest = line.Solve();
        Assert.Equal(48, rest.Energy, 1e-9);
        Assert.Equal(0.25 * (3 - (4 * 0.0625)), rest.At(0.25), 1e-12);
    }

    [Fact]
    public void A_batten_with_its_area_given_encloses_it_and_stays_one_sided()
    {
        var u = SplineBasis.Clamped(3, [.. Enumerable.Range(0, 9).Select(k => k / 8.0)]);
        foreach (var fullness in (double[])[0.56, 0.60, 0.64, 0.70, 0.78])
        {
            using var line = new Batten(u, [.. Enumerable.Range(0, u.Count).Select(u.GrevilleAt)]);
            line.Pass(0, 0);
            line.Pass(1, 1);
            line.Slope(1, 0);
            line.Area(0, 1, fullness);
            line.OneSided(-1);
            var rest = line.Solve();
            Assert.Equal(fullness, GaussLegendre.Integrate(t => rest.At(t), 0, 1, 40), 1e-4);
            Assert.True(rest.Hollow < 2e-5, Invariant($"fullness {fullness}: hollow {rest.Hollow}"));
        }
    }

    [Fact]
    public void A_full_entry_and_a_fine_run_put_the_widest_point_forward()
    {
        var d = FormDials.DoubleEnder with
        {
            Widest = null,
            Bow = FormDials.DoubleEnder.Bow with { EntryFullness = 0.68 },
            Stern = (PointedStern)FormDials.DoubleEnder.Stern with { RunFullness = 0.58 },
        };
        Assert.InRange(CharacterLines.Shape(d, CharacterLines.UsualSpans).WidestU, 0.42, 0.49);
    }

    [Fact]
    public void A_convex_section_is_no_fuller_than_its_tangents_leave_it()
    {
        // Level floors and plumb sides: the corner is the rectangle, fullness 1. Deadrise 45 degrees, plumb sides, draft half the half-beam: the floor
        // meets the side above the water, and the fullest section turns below it, where the best of many polygons does. Plane geometry.
        var d = FormDials.DoubleEnder with { Midship = new MidshipDials(0, 0.8, 0) };
        Assert.Equal(1, MidshipSection.GreatestFullness(d, 0), 1e-12);
        var steep = d with { Beam = 0.4, Draft = 0.1, Depth = 0.5, Midship = new MidshipDials(45 * FormDials.Degree, 0.5, 0) };
        var fullest = 0.0;
        for (var k = 1; k < 1000; k++)
        {
            // From the keel up the floor to (t, t), straight on to the sheer: its corner, its end at the water, its area below.
            var t = 0.1 * k / 1000;
            var end = t + ((0.2 - t) * (0.1 - t) / (0.5 - t));
            fullest = Math.Max(fullest, ((t * t / 2) + ((0.1 - t) * (t + end) / 2)) / (end * 0.1));
        }

        Assert.Equal(fullest, MidshipSection.GreatestFullness(steep, 0), 1e-6);
    }
}
