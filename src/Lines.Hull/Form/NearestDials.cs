namespace Lines.Hull.Form;

/// <summary>Finds, for dials that exclude each other, the nearest value of each that would do alone.</summary>
internal static class NearestDials
{
    private const int Told = 3;
    private const int AtOnce = 2;

    /// <summary>The way back is bisected until it is known to this part of the way out.</summary>
    private const double NearEnough = 0.02;

    /// <summary>Multiples of a dial's search unit at which it is tried, both ways, before the way back is bisected.</summary>
    private static readonly double[] Reaches = [3, 15, 60];

    /// <summary>The conflict behind a fault.</summary>
    /// <remarks><b>Method.</b> Each dial in turn is moved outward from what was asked, both ways in growing steps, until a hull exists, then
    /// bisected back; the answer is rounded to the workshop's step on the side that builds, and built once more. Where no dial helps alone
    /// all are moved together toward tame values, as far as it takes.</remarks>
    public static DialConflict Explain(HullDials d, FormFault fault)
    {
        var helpful = new List<DialHint>();
        foreach (var few in fault.Dials.Distinct().Chunk(AtOnce))
        {
            var nearest = new double?[few.Length];
            Parallel.For(0, few.Length, k => nearest[k] = Nearest(d, few[k]));
            helpful.AddRange(few.Zip(nearest, (dial, value) => new DialHint(dial, value)).Where(h => h.Nearest is not null));
            if (helpful.Count >= Told)
                break;
        }

        if (helpful.Count > 0)
            return new DialConflict(fault.Reason, [.. helpful.Take(Told)]);
        return new DialConflict(fault.Reason, Together(d, fault.Dials)) { Together = true };
    }

    private static double? Nearest(HullDials d, Dial dial)
    {
        if (DialAccess.ValueOf(d, dial) is not double asked)
            return null;
        if (dial == Dial.Hollow)
            return !d.Hollow && Builds(d, dial, 1) ? 1 : null;
        var unit = DialAccess.UnitOf(d, dial);
        var (least, greatest) = DialAccess.BoundsOf(d, dial);
        double down = asked, up = asked;
        foreach (var reach in Reaches)
        {
            double lower = Math.Max(least, asked - (reach * unit)), upper = Math.Min(greatest, asked + (reach * unit));
            bool below = lower < down && Builds(d, dial, lower), above = upper > up && Builds(d, dial, upper);
            if (below || above)
            {
                var fromBelow = below ? Back(d, dial, down, lower) : double.NegativeInfinity;
                var fromAbove = above ? Back(d, dial, up, upper) : double.PositiveInfinity;
                return asked - fromBelow <= fromAbove - asked ? fromBelow : fromAbove;
            }

            (down, up) = (lower, upper);
        }

        return null;
    }

    /// <summary>Bisects from a value that builds back to one that does not.</summary>
    private static double Back(HullDials d, Dial dial, double bad, double good)
    {
        var asked = DialAccess.ValueOf(d, dial)!.Value;
        var step = DialAccess.StepOf(dial);
        var rising = good > bad;
        while (Math.Abs(good - bad) > Math.Max(step / 2, NearEnough * Math.Abs(good - asked)))
        {
            var middle = (good + bad) / 2;
            if (Builds(d, dial, middle))
                good = middle;
            else
                bad = middle;
        }

        var rounded = rising ? Math.Ceiling(good / step) * step : Math.Floor(good / step) * step;
        return Builds(d, dial, rounded) ? rounded : good;
    }

    private static List<DialHint> Together(HullDials d, IReadOnlyList<Dial> dials)
    {
        var moved = dials.Distinct().Where(dial => dial != Dial.Hollow && DialAccess.ValueOf(d, dial) is not null).ToList();
        var tame = moved.ConvertAll(dial => DialAccess.TameValue(d, dial));
        HullDials At(double share)
        {
            var hull = d;
            for (var k = 0; k < moved.Count; k++)
                hull = DialAccess.With(hull, moved[k], Share(k, share));
            return hull;
        }

        double Share(int k, double share)
        {
            var asked = DialAccess.ValueOf(d, moved[k])!.Value;
            var step = DialAccess.StepOf(moved[k]);
            return Math.Round((asked + (share * (tame[k] - asked))) / step) * step;
        }

        if (HullAttempt.Make(At(1)).Fault is not null)
            return [.. moved.Select(dial => new DialHint(dial, null))];
        double bad = 0, good = 1;
        while (good - bad > 0.02)
        {
            var middle = (good + bad) / 2;
            (bad, good) = HullAttempt.Make(At(middle)).Fault is null ? (bad, middle) : (middle, good);
        }

        return [.. moved.Select((dial, k) => new DialHint(dial, Share(k, good)))];
    }

    private static bool Builds(HullDials d, Dial dial, double value) =>
        HullAttempt.Make(DialAccess.With(d, dial, value)).Fault is null;
}
