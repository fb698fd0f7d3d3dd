using Lines.Hull.Hydrostatics;
using Lines.Kernel.Numerics;

namespace Lines.Hull.Form;

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
        Dial.Hollow => d.Hollow ? 1 : 0,
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
        Dial.SternRocker => d.Stern.FootHeight,
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
        Dial.Draft => WithDraft(d, value),
        Dial.Widest => d with { Widest = value },
        Dial.KeelLow => d with { KeelLow = value },
        Dial.Hollow => d with { Hollow = value > 0 },
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

    /// <summary>A value at which other dials usually find a hull.</summary>
    public static double TameValue(HullDials d, Dial dial) => dial switch
    {
        Dial.EntryFullness => 0.63,
        Dial.RunFullness => d.Stern is TransomStern ? 0.72 : 0.62,
        Dial.BowSheerFullness or Dial.SternSheerFullness => 0.68,
        Dial.MidshipFullness => MidshipSection.GreatestFullness(d, 0) is var most && most > 0.5 ? 0.5 + (0.55 * (most - 0.5)) : 0.7,
        Dial.Deadrise => 8 * Degree,
        Dial.Flare => 6 * Degree,
        Dial.Widest or Dial.KeelLow => 0.5,
        Dial.BowRocker or Dial.SternRocker => 0.4 * d.Draft,
        Dial.TransomImmersion => 0.2 * d.Draft,
        Dial.Forefoot or Dial.Heel => 0.06 * d.Length,
        Dial.BowVee or Dial.SternVee or Dial.EntryAngle or Dial.RunAngle => 10 * Degree,
        Dial.TransomBreadth => 0.6 * d.Beam,
        Dial.BowSheer or Dial.SternSheer => 1.3 * d.Depth,
        _ => ValueOf(d, dial) ?? 0,
    };

    /// <summary>The value a hull takes of itself where an angle is left out; null for other dials, and where there is no such hull.</summary>
    public static double? LeftOut(HullDials d, Dial dial)
    {
        var without = (dial, d.Stern) switch
        {
            (Dial.BowVee, _) => d with { Bow = d.Bow with { Vee = null } },
            (Dial.EntryAngle, _) => d with { Bow = d.Bow with { EntryAngle = null } },
            (Dial.SternVee, PointedStern p) => d with { Stern = p with { Vee = null } },
            (Dial.RunAngle, PointedStern p) => d with { Stern = p with { RunAngle = null } },
            _ => null,
        };
        if (without is null || HullAttempt.AtOnce(without).Surface is not { } hull)
            return null;
        return dial switch
        {
            Dial.EntryAngle => FormCoefficients.Of(hull).EntryAngle,
            Dial.RunAngle => FormCoefficients.Of(hull).RunAngle,
            _ => VeeMeasure.At(hull, dial == Dial.BowVee),
        };
    }

    /// <summary>The first step of a search for a dial's nearest feasible value.</summary>
    public static double UnitOf(HullDials d, Dial dial) => dial switch
    {
        Dial.Length => 0.01 * d.Length,
        Dial.Beam or Dial.TransomBreadth => 0.01 * d.Beam,
        Dial.Depth or Dial.BowSheer or Dial.SternSheer => 0.01 * d.Depth,
        Dial.Draft or Dial.BowRocker or Dial.SternRocker or Dial.TransomImmersion => 0.02 * d.Draft,
        Dial.Forefoot or Dial.Heel => 0.002 * d.Length,
        Dial.BowVee or Dial.SternVee or Dial.TransomRake or Dial.Deadrise or Dial.Flare => Degree,
        Dial.EntryAngle or Dial.RunAngle => 0.4 * Degree,
        _ => 0.005,
    };

    /// <summary>Values between which a nearest feasible value is looked for: the dial's range, and what the other dials leave of it.</summary>
    public static (double Least, double Greatest) BoundsOf(HullDials d, Dial dial)
    {
        var (least, greatest) = DialRange.Of(dial);
        var (low, high) = dial switch
        {
            Dial.BowRocker => (least, Math.Min(DialRange.GreatestRocker * d.Draft, 0.98 * d.Bow.Sheer)),
            Dial.SternRocker => (least, Math.Min(DialRange.GreatestRocker * d.Draft, 0.98 * d.Stern.Sheer)),
            Dial.TransomImmersion => ((1 - DialRange.GreatestRocker) * d.Draft, d.Draft),
            Dial.TransomBreadth => (least, d.Beam),
            Dial.Forefoot or Dial.Heel => (least, 0.4 * d.Length),
            Dial.Depth or Dial.BowSheer or Dial.SternSheer => (1.02 * d.Draft, greatest),
            Dial.Length => (Math.Max(d.Bow.Forefoot, ValueOf(d, Dial.Heel) ?? 0) / 0.4, greatest),
            Dial.Draft => (LeastDraft(d), 0.98 * Math.Min(d.Depth, Math.Min(d.Bow.Sheer, d.Stern.Sheer))),
            Dial.Beam => (Math.Max(d.Length / 30, ValueOf(d, Dial.TransomBreadth) ?? 0), d.Length / 2.5),
            Dial.EntryFullness or Dial.RunFullness => (d.Hollow ? least : DialRange.FullnessWithoutHollow, greatest),
            _ => (least, greatest),
        };
        return (Math.Max(least, low), Math.Min(greatest, high));
    }

    /// <summary>A value rounded to its dial's step.</summary>
    public static double ToStep(Dial dial, double value, bool upward) => Rounding.ToStep(value, StepOf(dial), upward);

    /// <summary>The step a dial is told in: a thousandth, a millimeter, a tenth of a degree.</summary>
    public static double StepOf(Dial dial) => dial switch
    {
        Dial.BowVee or Dial.SternVee or Dial.EntryAngle or Dial.RunAngle or Dial.TransomRake or Dial.Deadrise or Dial.Flare => 0.1 * Degree,
        _ => 0.001,
    };

    /// <summary>Another draft; the foot of a transom given by its immersion keeps that.</summary>
    private static HullDials WithDraft(HullDials d, double draft) => d with
    {
        Draft = draft,
        Stern = d.Stern is TransomStern { FootIsImmersion: true } t ? t with { Foot = t.Foot + draft - d.Draft } : d.Stern,
    };

    /// <summary>The draft from which on no end of the keel is lifted out of the water further than allowed, and no transom's foot is below the keel.</summary>
    private static double LeastDraft(HullDials d)
    {
        var bow = d.Bow.Rocker / DialRange.GreatestRocker;
        if (d.Stern is not TransomStern { FootIsImmersion: true } t)
            return Math.Max(bow, d.Stern.FootHeight / DialRange.GreatestRocker);
        var immersion = d.Draft - t.Foot;
        return Math.Max(bow, Math.Max(immersion, immersion / (1 - DialRange.GreatestRocker)));
    }

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
