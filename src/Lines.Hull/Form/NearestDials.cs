namespace Lines.Hull.Form;

/// <summary>Rounds a value found for a dial to one that a user is told, SI.</summary>
/// <param name="dial">The dial.</param>
/// <param name="value">What was found, SI.</param>
/// <param name="upward">Whether to round up; otherwise down.</param>
/// <returns>The very number that the told text would be read as.</returns>
public delegate double ToldValue(Dial dial, double value, bool upward);

/// <summary>Finds, for dials that exclude each other, the nearest value of each that would do alone.</summary>
/// <param name="d">The dials.</param>
/// <param name="told">How values are told: only what builds as told is told.</param>
internal sealed class NearestDials(HullDials d, ToldValue told)
{
    private const int Told = 3;
    private const int AtOnce = 2;

    /// <summary>The way back is bisected until it is known to this part of the way out.</summary>
    private const double NearEnough = 0.02;

    /// <summary>Steps that a told value may lie beyond the one found, where rounding alone does not build: the edge of what builds is ragged.</summary>
    private static readonly int[] FurtherSteps = [0, 1, 2, 4, 8, 16, 32];

    /// <summary>Multiples of a dial's search unit at which it is tried, both ways, before the way back is bisected; then the end of its range.</summary>
    private static readonly double[] Reaches = [1.5, 4, 9, 18, 36, 72, double.PositiveInfinity];

    /// <summary>The conflict behind a fault.</summary>
    /// <remarks><b>Method.</b> Each dial in turn is moved outward from what was asked, both ways in growing steps and to the value that the hull would take if
    /// it were left out, until a hull exists, then bisected back; the answer is rounded away from what was asked to a value as it is told, and that is built.
    /// Where no dial helps alone all are moved together toward tame values, as far as it takes, with those that then turn out to be in conflict.</remarks>
    public DialConflict Explain(FormFault fault)
    {
        var helpful = new List<DialHint>();
        foreach (var few in fault.Dials.Distinct().Chunk(AtOnce))
        {
            var nearest = new DialHint?[few.Length];
            Parallel.For(0, few.Length, k => nearest[k] = Nearest(few[k]));
            helpful.AddRange(nearest.OfType<DialHint>());
            if (helpful.Count >= Told)
                break;
        }

        if (helpful.Count > 0)
            return new DialConflict(fault.Reason, [.. helpful.Take(Told)]);
        return Together(fault);
    }

    private DialHint? Nearest(Dial dial)
    {
        if (DialAccess.ValueOf(d, dial) is not double asked)
            return null;
        if (dial == Dial.Hollow)
            return d.Hollow ? null : Hint(dial, 1);
        var unit = DialAccess.UnitOf(d, dial);
        var (least, greatest) = DialAccess.BoundsOf(d, dial);
        double down = asked, up = asked;
        var tame = Math.Abs((DialAccess.LeftOut(d, dial) ?? DialAccess.TameValue(d, dial)) - asked) / unit;
        foreach (var reach in Reaches.Append(tame).Order())
        {
            double lower = Math.Max(least, asked - (reach * unit)), upper = Math.Min(greatest, asked + (reach * unit));
            var below = lower < down ? Back(dial, down, lower) : null;
            var above = upper > up ? Back(dial, up, upper) : null;
            if (below is { Nearest: double b } && above is { Nearest: double a })
                return asked - b <= a - asked ? below : above;
            if ((below ?? above) is DialHint found)
                return found;
            (down, up) = (lower, upper);
        }

        return null;
    }

    /// <summary>Bisects from a value that builds back toward one that does not, and rounds to a value as it is told.</summary>
    private DialHint? Back(Dial dial, double bad, double good)
    {
        if (!Builds(dial, good))
            return null;
        var asked = DialAccess.ValueOf(d, dial)!.Value;
        var step = DialAccess.StepOf(dial);
        var end = good;
        while (Math.Abs(good - bad) > Math.Max(step / 2, NearEnough * Math.Abs(good - asked)))
        {
            var middle = (good + bad) / 2;
            (bad, good) = Builds(dial, middle) ? (bad, middle) : (middle, good);
        }

        var outward = end > asked;
        foreach (var value in FurtherSteps.Select(k => good + (outward ? k * step : -k * step)).Where(v => outward ? v < end : v > end).Append(end))
        {
            if (Hint(dial, told(dial, value, outward)) is DialHint hint)
                return hint;
        }

        return null;
    }

    private DialConflict Together(FormFault fault)
    {
        List<Dial> moved = [];
        var reasons = new List<string>();
        var next = fault;
        while (next is not null && next.Dials.Any(IsNew))
        {
            moved.AddRange(next.Dials.Where(IsNew).Distinct());
            reasons.Add(next.Reason);
            next = HullAttempt.AtOnce(Toward(moved, 1)).Fault;
        }

        var hints = next is null ? Least(moved) : [.. moved.Select(dial => new DialHint(dial, null))];
        return new DialConflict(string.Join("; and with that put right, ", reasons), hints) { Together = true };

        bool IsNew(Dial dial) => dial != Dial.Hollow && DialAccess.ValueOf(d, dial) is not null && !moved.Contains(dial);
    }

    /// <summary>As small a part of the way to tame values as makes a hull, where the whole way does.</summary>
    private IReadOnlyList<DialHint> Least(List<Dial> moved)
    {
        double bad = 0, good = 1;
        while (good - bad > 0.02)
        {
            var middle = (good + bad) / 2;
            (bad, good) = HullAttempt.AtOnce(Toward(moved, middle)).Fault is null ? (bad, middle) : (middle, good);
        }

        var fair = HullAttempt.Make(Toward(moved, good)).IsFair;
        return [.. moved.Select(dial => new DialHint(dial, Moved(dial, good)) { Fair = fair })];
    }

    private HullDials Toward(List<Dial> dials, double share) => dials.Aggregate(d, (hull, dial) => DialAccess.With(hull, dial, Moved(dial, share)));

    private double Moved(Dial dial, double share)
    {
        double asked = DialAccess.ValueOf(d, dial)!.Value, tame = DialAccess.TameValue(d, dial);
        return told(dial, asked + (share * (tame - asked)), tame > asked);
    }

    private bool Builds(Dial dial, double value) => HullAttempt.AtOnce(DialAccess.With(d, dial, value)).Fault is null;

    /// <summary>What is told of a value, if it lies in the dial's range and builds.</summary>
    private DialHint? Hint(Dial dial, double value)
    {
        if (dial != Dial.Hollow)
        {
            var (least, greatest) = DialAccess.BoundsOf(d, dial);
            if (!(value >= least - 1e-12 && value <= greatest + 1e-12))
                return null;
        }

        var hull = DialAccess.With(d, dial, value);
        var attempt = HullAttempt.AtOnce(hull);
        return attempt.Surface is null ? null : new DialHint(dial, value) { Fair = HullAttempt.Make(hull, attempt).IsFair };
    }
}
