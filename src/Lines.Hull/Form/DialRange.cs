namespace Lines.Hull.Form;

/// <summary>The range of every dial, whatever the others are: what a design file may say, and where a nearest feasible value is looked for.</summary>
public static class DialRange
{
    private const double Degree = Math.PI / 180;

    /// <summary>Most rocker, or height of a transom's foot, as a part of the draft.</summary>
    public const double GreatestRocker = 1.5;

    /// <summary>Below this fullness a waterline without hollow would be a straight-sided wedge.</summary>
    public const double FullnessWithoutHollow = 0.55;

    /// <summary>Least height of a sheer [m].</summary>
    public const double LowestSheer = 0.08;

    /// <summary>The range of a dial, SI, its ends included.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such dial, or it is no number.</exception>
    public static (double Least, double Greatest) Of(Dial dial) => dial switch
    {
        Dial.Length => (1, 15),
        Dial.Beam => (0.1, 3),
        Dial.Depth => (LowestSheer, 1.5),
        Dial.Draft => (0.02, 0.8),
        Dial.Widest => (0.4, 0.6),
        Dial.KeelLow => (0.3, 0.7),
        Dial.EntryFullness => (0.5, 0.8),
        Dial.RunFullness => (0.5, 0.9),
        Dial.BowSheerFullness or Dial.SternSheerFullness or Dial.MidshipFullness => (0.5, 0.95),
        Dial.BowRocker or Dial.SternRocker => (0, 0.5),
        Dial.TransomImmersion => (-0.4, 0.5),
        Dial.BowSheer or Dial.SternSheer => (LowestSheer, 2),
        Dial.Forefoot or Dial.Heel => (0.01, 5),
        Dial.TransomBreadth => (0.05, 3),
        Dial.BowVee or Dial.SternVee => (0, 80 * Degree),
        Dial.EntryAngle or Dial.RunAngle => (2 * Degree, 60 * Degree),
        Dial.TransomRake => (-10 * Degree, 45 * Degree),
        Dial.Deadrise => (0, 35 * Degree),
        Dial.Flare => (-10 * Degree, 35 * Degree),
        _ => throw new ArgumentOutOfRangeException(nameof(dial), dial, "not a dial with a range"),
    };
}
