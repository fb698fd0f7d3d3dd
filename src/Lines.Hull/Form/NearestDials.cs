namespace Lines.Hull.Form;

/// <summary>Finds, for dials that exclude each other, the nearest value of each that would do alone.</summary>
internal static class NearestDials
{
    private const int Told = 3;

    /// <summary>The conflict behind a fault.</summary>
    /// <remarks><b>Method.</b> Each dial in turn is moved to a tame value at which a hull exists, then bisected back toward what was
    /// asked; the answer is rounded to the workshop's step on the side that builds, and built once more.</remarks>
    public static DialConflict Explain(HullDials d, FormFault fault)
    {
        var hints = new List<DialHint>();
        foreach (var dial in fault.Dials)
        {
            if (hints.Count(h => h.Nearest is not null) == Told)
                break;
            hints.Add(new DialHint(dial, Nearest(d, dial)));
        }

        // Dials that help are told with their values; if none helps alone, all are told.
        var helpful = hints.Where(h => h.Nearest is not null).ToList();
        return new DialConflict(fault.Reason, helpful.Count > 0 ? helpful : hints);
    }

    private static double? Nearest(HullDials d, Dial dial)
    {
        if (DialAccess.ValueOf(d, dial) is not double asked)
            return null;
        foreach (var tame in DialAccess.TameValues(d, dial).OrderBy(t => Math.Abs(t - asked)))
        {
            if (!Builds(d, dial, tame))
                continue;
            double bad = asked, good = tame;
            var step = DialAccess.StepOf(dial);
            while (Math.Abs(good - bad) > step / 4)
            {
                var middle = (good + bad) / 2;
                if (Builds(d, dial, middle))
                    good = middle;
                else
                    bad = middle;
            }

            var rounded = good > asked ? Math.Ceiling(good / step) * step : Math.Floor(good / step) * step;
            return Builds(d, dial, rounded) ? rounded : good;
        }

        return null;
    }

    private static bool Builds(HullDials d, Dial dial, double value) =>
        HullAttempt.Make(DialAccess.With(d, dial, value)).Fault is null;
}

/// <summary>Reads and sets a dial by its name.</summary>
internal static class DialAccess
{
    private const double Degree = Math.PI / 180;

    /// <summary>Value of a dial, SI; null where it was left out or does not apply.</summary>
    public static double? ValueOf(HullDials d, Dial dial) => dial switch
    {
        Dial.Length => d.Length,
        Dial.Beam => d.Beam,
        Dial.Depth => d.Depth,
        Dial.Draft => d.Draft,
        Dial.Widest => d.Widest,
        Dial.KeelLow => d.KeelLow,
        Dial.EntryFullness => d.Bow.EntryFullness,
        Dial.BowSheerFullness => d.Bow.SheerFullness,
        Dial.BowRocker => d.Bow.Rocker,
        Dial.BowSheer => d.Bow.Sheer,
        Dial.Forefoot => d.Bow.Forefoot,
        Dial.BowVee => d.Bow.Vee,
        Dial.EntryAngle => d.Bow.EntryAngle,
        Dial.RunFullness => d.Stern.RunFullness,
        Dial.SternSheerFullness => d.Stern.SheerFullness,
        Dial.SternSheer => d.Stern.Sheer,
        Dial.SternRocker => d.Stern is PointedStern p ? p.Rocker : ((TransomStern)d.Stern).Foot,
        Dial.TransomImmersion => d.Stern is TransomStern t ? d.Draft - t.Foot : null,
        Dial.Heel => (d.Stern as PointedStern)?.Heel,
        Dial.SternVee => (d.Stern as PointedStern)?.Vee,
        Dial.RunAngle => (d.Stern as PointedStern)?.RunAngle,
        Dial.TransomRake => (d.Stern as TransomStern)?.Rake,
        Dial.TransomBreadth => (d.Stern as TransomStern)?.Breadth,
        Dial.Deadrise => d.Midship.Deadrise,
        Dial.MidshipFullness => d.Midship.Fullness,
        Dial.Flare => d.Midship.Flare,
        _ => throw new ArgumentOutOfRangeException(nameof(dial), dial, "no such dial"),
    };

    /// <summary>The same dials with one changed.</summary>
    public static HullDials With(HullDials d, Dial dial, double value) => dial switch
    {
        Dial.Length => d with { Length = value },
        Dial.Beam => d with { Beam = value },
        Dial.Depth => d with { Depth = value },
        Dial.Draft => d with { Draft = value },
        Dial.Widest => d with { Widest = value },
        Dial.KeelLow => d with { KeelLow = value },
        Dial.EntryFullness => d with { Bow = d.Bow with { EntryFullness = value } },
        Dial.BowSheerFullness => d with { Bow = d.Bow with { SheerFullness = value } },
        Dial.BowRocker => d with { Bow = d.Bow with { Rocker = value } },
        Dial.BowSheer => d with { Bow = d.Bow with { Sheer = value } },
        Dial.Forefoot => d with { Bow = d.Bow with { Forefoot = value } },
        Dial.BowVee => d with { Bow = d.Bow with { Vee = value } },
        Dial.EntryAngle => d with { Bow = d.Bow with { EntryAngle = value } },
        Dial.RunFullness => d with { Stern = d.Stern with { RunFullness = value } },
        Dial.SternSheerFullness => d with { Stern = d.Stern with { SheerFullness = value } },
        Dial.SternSheer => d with { Stern = d.Stern with { Sheer = value } },
        Dial.Deadrise => d with { Midship = d.Midship with { Deadrise = value } },
        Dial.MidshipFullness => d with { Midship = d.Midship with { Fullness = value } },
        Dial.Flare => d with { Midship = d.Midship with { Flare = value } },
        _ => d with { Stern = WithStern(d, dial, value) },
    };

    /// <summary>Values at which other dials usually find a hull, to start a search from.</summary>
    public static IEnumerable<double> TameValues(HullDials d, Dial dial) => dial switch
    {
        Dial.EntryFullness or Dial.RunFullness => [0.58, 0.62, 0.66, 0.70, 0.75],
        Dial.BowSheerFullness or Dial.SternSheerFullness => [0.60, 0.64, 0.68, 0.72, 0.76],
        Dial.MidshipFullness => [.. ((double[])[0.55, 0.65, 0.75, 0.85]).Where(f => f < MidshipSection.GreatestFullness(d, 0))],
        Dial.Deadrise => [0, 4 * Degree, 8 * Degree, 14 * Degree],
        Dial.Flare => [0, 4 * Degree, 8 * Degree],
        Dial.Widest => [0.46, 0.50, 0.54],
        Dial.KeelLow => [0.45, 0.50, 0.55],
        Dial.BowRocker or Dial.SternRocker => [0.1 * d.Draft, 0.25 * d.Draft, 0.4 * d.Draft, 0.6 * d.Draft],
        Dial.TransomImmersion => [0.1 * d.Draft, 0.2 * d.Draft, 0.35 * d.Draft],
        Dial.Forefoot or Dial.Heel => [0.04 * d.Length, 0.06 * d.Length, 0.09 * d.Length],
        Dial.BowVee or Dial.SternVee => [5 * Degree, 10 * Degree, 15 * Degree, 25 * Degree, 40 * Degree, 60 * Degree],
        Dial.EntryAngle or Dial.RunAngle => [.. Enumerable.Range(2, 12).Select(k => k * 2.5 * Degree)],
        Dial.TransomBreadth => [0.45 * d.Beam, 0.6 * d.Beam, 0.75 * d.Beam],
        Dial.BowSheer or Dial.SternSheer => [d.Depth, 1.2 * d.Depth, 1.4 * d.Depth],
        Dial.Depth => [1.2 * d.Depth, 0.8 * Math.Min(d.Bow.Sheer, d.Stern.Sheer)],
        Dial.Beam => [0.8 * d.Beam, 1.25 * d.Beam],
        _ => [],
    };

    /// <summary>The step a dial is told in: a thousandth, a millimetre, a tenth of a degree.</summary>
    public static double StepOf(Dial dial) => dial switch
    {
        Dial.BowVee or Dial.SternVee or Dial.EntryAngle or Dial.RunAngle or Dial.TransomRake or Dial.Deadrise or Dial.Flare => 0.1 * Degree,
        _ => 0.001,
    };

    private static SternDials WithStern(HullDials d, Dial dial, double value) => (d.Stern, dial) switch
    {
        (PointedStern p, Dial.SternRocker) => p with { Rocker = value },
        (PointedStern p, Dial.Heel) => p with { Heel = value },
        (PointedStern p, Dial.SternVee) => p with { Vee = value },
        (PointedStern p, Dial.RunAngle) => p with { RunAngle = value },
        (TransomStern t, Dial.SternRocker) => t with { Foot = value },
        (TransomStern t, Dial.TransomImmersion) => t with { Foot = d.Draft - value },
        (TransomStern t, Dial.TransomRake) => t with { Rake = value },
        (TransomStern t, Dial.TransomBreadth) => t with { Breadth = value },
        _ => throw new ArgumentOutOfRangeException(nameof(dial), dial, "not a dial of this stern"),
    };
}
