namespace Lines.Hull.Form;

/// <summary>Where the search for the dials left out begins: proportions of a slim boat, brought near the targets by closed forms.</summary>
/// <remarks>All numbers here are common practice without a source; they decide how long the search takes, not what it finds.</remarks>
public static class TargetStart
{
    /// <summary>Length over beam.</summary>
    private const double Slimness = 7;

    /// <summary>Draft over beam.</summary>
    private const double Depth = 0.17;

    /// <summary>Length, and breadth, of the design waterline over that of the hull.</summary>
    private const double OnTheWater = 0.94;

    /// <summary>Prismatic coefficient.</summary>
    private const double Prismatic = 0.56;

    /// <summary>Factors on one dial by which a start that is no hull is varied.</summary>
    private static readonly double[] s_variations = [0.85, 1.18, 0.7, 1.4, 0.5, 2, 3.5];

    /// <summary>A value to hold the place of a dial left out, SI.</summary>
    public static double PlaceOf(Dial dial) => dial switch
    {
        Dial.Length => 5,
        Dial.Beam => 5 / Slimness,
        Dial.Draft => Depth * 5 / Slimness,
        Dial.MidshipFullness => 0.72,
        _ => 0.62,
    };

    /// <summary>Starts, the likeliest first.</summary>
    /// <param name="d">The dials; those left out do not count.</param>
    /// <param name="targets">What is asked.</param>
    internal static IEnumerable<HullDials> Of(HullDials d, HullTargets targets)
    {
        var start = Likeliest(d, targets);
        yield return start;
        foreach (var factor in s_variations)
        {
            foreach (var dial in targets.LeftOut)
                yield return With(start, dial, factor * DialAccess.ValueOf(start, dial)!.Value);
        }
    }

    private static HullDials Likeliest(HullDials d, HullTargets targets)
    {
        bool free(Dial dial) => targets.LeftOut.Contains(dial);
        double? asked(Target target) => targets.Asked.Where(t => t.Target == target).Select(t => (double?)t.Value).FirstOrDefault();
        double? length = asked(Target.WaterlineLength) / OnTheWater, beam = asked(Target.WaterlineBeam) / OnTheWater;
        if (!free(Dial.Length))
            length = d.Length;
        if (!free(Dial.Beam))
            beam = d.Beam;
        d = With(d, Dial.Length, length ?? beam * Slimness ?? d.Length);
        if (free(Dial.Draft))
            d = With(d, Dial.Draft, Depth * (beam ?? d.Length / Slimness));
        if (free(Dial.Beam))
            d = With(d, Dial.Beam, beam ?? d.Length / Slimness);
        foreach (var fullness in targets.LeftOut.Where(dial => dial is Dial.MidshipFullness or Dial.EntryFullness or Dial.RunFullness))
            d = With(d, fullness, DialAccess.TameValue(d, fullness));
        if (asked(Target.Displacement) is not { } mass)
            return d;

        // The dimensions that no other target holds share what the volume wants.
        List<Dial> shared = [.. targets.LeftOut.Where(dial => dial == Dial.Draft || (dial == Dial.Length && length is null) || (dial == Dial.Beam && beam is null))];
        var volume = Prismatic * d.Midship.Fullness * OnTheWater * OnTheWater * d.Length * d.Beam * d.Draft;
        var factor = Math.Pow(mass / targets.Water.Density / volume, 1.0 / Math.Max(1, shared.Count));
        return shared.Aggregate(d, (hull, dial) => With(hull, dial, factor * DialAccess.ValueOf(hull, dial)!.Value));
    }

    private static HullDials With(HullDials d, Dial dial, double value)
    {
        var (least, greatest) = DialAccess.BoundsOf(d, dial);
        return DialAccess.With(d, dial, Math.Max(least, Math.Min(greatest, value)));
    }
}
