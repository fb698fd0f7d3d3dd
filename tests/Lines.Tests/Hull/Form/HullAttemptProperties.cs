using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Form;

/// <summary>Whatever is asked over the whole range of slim craft ends in a sound hull or in dials that are named.</summary>
public class HullAttemptProperties
{
    [Theory]
    [InlineData(1, 1.0, 400, 0.8)]
    [InlineData(2, 0.5, 100, 0.98)]
    public void A_craft_drawn_at_random_is_a_hull_without_a_fold_or_names_dials_in_conflict(int seed, double spread, int count, double least)
    {
        var craft = new RandomCraft(new Random(seed), spread);
        var drawn = Enumerable.Range(0, count).Select(_ => craft.Next()).ToArray();
        var built = 0;
        Parallel.ForEach(drawn, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, d =>
        {
            var attempt = HullAttempt.Make(d);
            Assert.NotEqual(attempt.Surface is null, attempt.Fault is null);
            if (attempt.Fault is { } fault)
            {
                Assert.NotEmpty(fault.Dials);
                return;
            }

            HoldsItsShape(attempt.Surface!);
            HoldsItsDials(attempt.Surface!);
            Interlocked.Increment(ref built);
        });

        Assert.InRange(built, least * count, count);
    }

    /// <summary>Entry, run and midship fullness read back, by the areas of the finished surface.</summary>
    private static void HoldsItsDials(HullSurface hull)
    {
        var (d, form) = (hull.Dials, FormCoefficients.Of(hull));
        Assert.Equal(d.Bow.EntryFullness, form.Entry, 1e-4);
        Assert.Equal(d.Stern.RunFullness, form.Run, 1e-4);
        Assert.Equal(d.Midship.Fullness, form.Midship, 1e-4);
    }

    private static void HoldsItsShape(HullSurface hull)
    {
        // By sections at constant x, not by the parameters that the shaping itself watches.
        for (var i = 1; i < 24; i++)
        {
            var x = hull.Dials.Length * i / 24;
            var below = double.NegativeInfinity;
            for (var j = 1; j < 20; j++)
            {
                double low = 0, high = 1, v = j / 20.0;
                if (hull.Side.PointAt(0, v).X > x || hull.Side.PointAt(1, v).X < x)
                    continue;
                for (var n = 0; n < 50; n++)
                    (low, high) = hull.Side.PointAt((low + high) / 2, v).X < x ? ((low + high) / 2, high) : (low, (low + high) / 2);
                var p = hull.Side.PointAt(low, v);
                Assert.True(p.Z > below, Invariant($"at x = {x:F3} m the height {p.Z:F4} m is not above {below:F4} m"));
                Assert.True(p.Y >= -1e-9, Invariant($"at x = {x:F3} m a half-breadth is {p.Y:E2} m"));
                below = p.Z;
            }
        }
    }
}
