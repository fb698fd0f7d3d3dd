using System.Collections.Concurrent;
using Lines.Kernel.Numerics;

namespace Lines.Hull.Hydrostatics;

/// <summary>The boat held at one heel, at the level and trim at which it carries its weight.</summary>
/// <param name="Heel">Heel to the side of the curve [rad].</param>
/// <param name="Afloat">How it floats.</param>
/// <param name="Arm">Righting arm [m]: positive where it turns the boat back.</param>
/// <param name="Slope">Its rate by heel [m/rad].</param>
/// <param name="Entry">Height over the water of the lowest open sheer, or rim of an opening in the deck [m], negative where the boat floods; null where all is closed.</param>
public sealed record RightingArm(double Heel, Afloat Afloat, double Arm, double Slope, double? Entry);

/// <summary>What happens to a closed hull while the boat heels on from where she rests.</summary>
/// <param name="Body">The hull.</param>
/// <param name="Submerges">Least heel from there on at which it comes wholly under water [rad]; null where that does not happen before the righting arm ends, or it is so from the first.</param>
/// <param name="LiftsClear">Least heel from there on at which it comes wholly out of the water [rad]; null as before.</param>
public sealed record FloatEvents(FloatingBody Body, double? Submerges, double? LiftsClear)
{
    /// <summary>Whether it is wholly under water from the first.</summary>
    public bool StartsUnder { get; init; }

    /// <summary>Whether it is wholly out of the water from the first.</summary>
    public bool StartsClear { get; init; }
}

/// <summary>Righting arms of a boat heeled to one side, with free trim.</summary>
/// <remarks>
/// <para><b>Sign.</b> Heel counts from upright toward the side; an arm is positive where it turns the boat back toward upright and beyond.</para>
/// <para><b>Method.</b> At every heel level and trim are found anew (<see cref="Equilibrium.AtHeel"/>), begun from a neighbor. Where water stands over an
/// open sheer the hull is taken as decked level, and where it stands over the rim of an opening in a deck, as closed: those arms are drawn but count for nothing, as the boat fills.</para>
/// <para><b>Accuracy.</b> Arms to 1e-7 m. Heels of events to 1e-6 rad. The area under the curve is that of the cubics through neighboring arms
/// with their own slopes.</para>
/// </remarks>
public sealed class RightingArms
{
    /// <summary>Angles of the curve, from 0 to 180 degrees, and the step between them [rad].</summary>
    public const int Angles = 37;

    /// <inheritdoc cref="Angles"/>
    public const double Step = Math.PI / (Angles - 1);

    /// <summary>Width of a bracket at which a heel counts as found [rad].</summary>
    private const double Found = 1e-7;

    /// <summary>Width of a bracket at which a heel where the arms turn counts as found [rad].</summary>
    private const double Turning = 1e-4;

    /// <summary>Arms this small are none: ten times what is left at equilibrium [m].</summary>
    private const double Level = 1e-7;

    /// <summary>Steps this small and no equilibrium still: there is none [rad].</summary>
    private const double LeastStep = 1e-3;

    private readonly Craft _craft;
    private readonly Weight _weight;
    private readonly double _density;
    private readonly double _side;
    private readonly ConcurrentDictionary<double, RightingArm> _known = new();

    // The heels of the curve, and under a right angle those between two of them at which the arms turn from rising to falling or back.
    private readonly IReadOnlyList<double> _places;

    /// <summary>Computes the curve.</summary>
    /// <param name="craft">The bodies.</param>
    /// <param name="weight">All weights together.</param>
    /// <param name="density">Density of the water [kg/m³].</param>
    /// <param name="toPort">Whether the boat heels to port; else to starboard.</param>
    public RightingArms(Craft craft, Weight weight, double density, bool toPort)
    {
        ArgumentNullException.ThrowIfNull(craft);
        (_craft, _weight, _density, _side) = (craft, weight, density, toPort ? -1 : 1);
        ToPort = toPort;
        var curve = new List<RightingArm>();
        for (var k = 0; k < Angles && Held(curve.Count == 0 ? null : curve[^1], k * Step) is { } arm; k++)
            curve.Add(arm);
        Curve = curve;
        foreach (var arm in curve)
            _known[arm.Heel] = arm;
        _places = [.. curve.Zip(curve.Skip(1), Turn).OfType<double>().Concat(curve.Select(c => c.Heel)).Order()];
        From = Resting();
        Downflooding = Crossing(p => p.Entry < 0, From ?? 0);
        Vanishing = From is { } b ? Crossing(p => p.Heel > b + 1e-6 && p.Arm < 0, b) : null;
    }

    /// <summary>Whether the boat heels to port.</summary>
    public bool ToPort { get; }

    /// <summary>The arms from 0 to 180 degrees by 5; shorter where no equilibrium was found beyond, empty where the weight cannot be carried.</summary>
    public IReadOnlyList<RightingArm> Curve { get; }

    /// <summary>Heel from which the boat is turned back: where it floats, 0 for a boat alike on both sides [rad]; null where none is found under a right angle.</summary>
    public double? From { get; }

    /// <summary>Whether the boat rests at that heel, and is not turned back already when upright.</summary>
    public bool Rests => From is { } from && At(from) is { } arm && Math.Abs(arm.Arm) <= 10 * Level;

    /// <summary>Least heel at which water comes over an open sheer or into an opening in a deck [rad]; null where it never does.</summary>
    public double? Downflooding { get; }

    /// <summary>Heel at which the righting arm ends, open hulls taken as decked [rad]; null where it lasts to 180 degrees.</summary>
    public double? Vanishing { get; }

    /// <summary>Heel beyond which no level and trim carry the weight, as the boat stands on end [rad]; null where there are to 180 degrees.</summary>
    public double? Lost => Curve.Count is > 0 and < Angles ? Curve[^1].Heel : null;

    /// <summary>End of what counts: downflooding, the end of the righting arm or 180 degrees, whichever comes first [rad].</summary>
    public double End => Math.Min(Downflooding ?? Math.PI, Vanishing ?? (Curve.Count > 0 ? Curve[^1].Heel : 0));

    /// <summary>Range over which the boat is turned back and dry [rad].</summary>
    public double Range => From is { } from ? Math.Max(0, End - from) : 0;

    /// <summary>The greatest righting arm within the range; null where there is no range.</summary>
    public RightingArm? Greatest
    {
        get
        {
            if (!(Range > 0))
                return null;
            double[] places = [From!.Value, .. Curve.Select(c => c.Heel).Where(h => h > From && h < End), End];
            return At(Peak.Over(h => At(h)?.Arm ?? double.NegativeInfinity, places).At);
        }
    }

    /// <summary>Area under the arms within the range [m·rad].</summary>
    public double Area => From is { } from ? AreaBetween(from, End) : 0;

    /// <summary>Area under the arms between two heels within the range [m·rad].</summary>
    /// <param name="from">First heel [rad].</param>
    /// <param name="to">Last heel [rad].</param>
    public double AreaBetween(double from, double to)
    {
        double sum = 0;
        RightingArm? before = null;
        foreach (var heel in (double[])[from, .. Curve.Select(c => c.Heel).Where(h => h > from && h < to), to])
        {
            if (At(heel) is not { } next)
                break;
            if (before is not null)
            {
                var h = heel - before.Heel;
                sum += (h * (before.Arm + next.Arm) / 2) + (h * h * (before.Slope - next.Slope) / 12);
            }

            before = next;
        }

        return sum;
    }

    /// <summary>Least heel at which the righting arm holds a heeling arm, within the range.</summary>
    /// <param name="heelingArm">The heeling arm by heel [rad] → [m].</param>
    /// <returns>The heel [rad]; null where the boat is heeled beyond its range.</returns>
    public double? Steady(Func<double, double> heelingArm)
    {
        ArgumentNullException.ThrowIfNull(heelingArm);
        return From is { } from && Crossing(p => p.Arm >= heelingArm(p.Heel), from) is { } heel && heel <= End ? heel : null;
    }

    /// <summary>When each closed hull but the main hull goes under or comes clear.</summary>
    public IReadOnlyList<FloatEvents> Floats() => [.. _craft.Bodies.Skip(1).Where(b => !b.IsOpen).Select(Events)];

    private FloatEvents Events(FloatingBody body)
    {
        bool Under(RightingArm arm) => body.Reach(arm.Afloat.Water, 1e-7).Highest < 0;
        bool Clear(RightingArm arm) => body.Reach(arm.Afloat.Water, 1e-7).Lowest > 0;
        var from = From ?? 0;
        var (under, clear) = (Crossing(Under, from), Crossing(Clear, from));
        return new FloatEvents(body, Comes(under), Comes(clear)) { StartsUnder = under == from, StartsClear = clear == from };

        double? Comes(double? heel) => heel == from ? null : Righted(heel);
    }

    // A heel from which the boat is still turned back, open hulls taken as decked.
    private double? Righted(double? heel) => heel <= (Vanishing ?? Math.PI) ? heel : null;

    /// <summary>The boat held at a heel.</summary>
    /// <param name="heel">Heel to the side [rad], 0 to π.</param>
    /// <returns>How it floats; null where no level and trim carry the weight.</returns>
    public RightingArm? At(double heel)
    {
        if (_known.TryGetValue(heel, out var known))
            return known;

        // From the curve, not from what was asked before: the answer must not hang on who asked what first.
        var reached = Held(Curve.Count == 0 ? null : Curve.MinBy(k => Math.Abs(k.Heel - heel)), heel);
        if (reached is not null)
            _known[heel] = reached;
        return reached;
    }

    private RightingArm? Held(RightingArm? near, double heel) => Reach(near, heel) ?? Anywhere(near, heel);

    // Where the boat comes to rest on this side: upright unless a weight or its own tenderness heels it to it.
    private double? Resting()
    {
        if (Curve.Count == 0)
            return null;
        var upright = Curve[0];
        var falls = upright.Arm < -Level || (upright.Arm <= Level && upright.Slope < 0);
        return !falls ? 0 : Crossing(a => a.Heel > 0 && a.Arm >= 0, 0) is { } rest and < Math.PI / 2 ? rest : null;
    }

    // Where a float lifts clear arms have a sharp peak, which the angles of the curve pass by.
    private double? Turn(RightingArm before, RightingArm after)
    {
        if (before.Slope * after.Slope >= 0 || after.Heel > Math.PI / 2)
            return null;
        double low = before.Heel, high = after.Heel;
        while (high - low > Turning)
        {
            var middle = (low + high) / 2;
            if (At(middle) is not { } arm)
                return null;
            (low, high) = arm.Slope * before.Slope > 0 ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    // Straight from the neighbor, else by way of the middle.
    private RightingArm? Reach(RightingArm? near, double heel)
    {
        var start = near?.Afloat.Water ?? default;
        if (Equilibrium.AtHeel(_craft, _weight, _density, start with { Heel = _side * heel }) is { TrimStiffness: > 0 } afloat)
            return Told(heel, afloat);
        if (near is null || Math.Abs(heel - near.Heel) < LeastStep)
            return null;
        return Reach(near, (near.Heel + heel) / 2) is { } middle ? Reach(middle, heel) : null;
    }

    // She falls over her bow or stern: the trim of the neighbor leads to none here.
    private RightingArm? Anywhere(RightingArm? near, double heel) =>
        Equilibrium.AtHeelAnyTrim(_craft, _weight, _density, (near?.Afloat.Water ?? default) with { Heel = _side * heel }) is { } afloat ? Told(heel, afloat) : null;

    private RightingArm Told(double heel, Afloat afloat) =>
        new(heel, afloat, _side * afloat.LeverAcross, afloat.Stiffness, _craft.LowestEntry(afloat.Water));

    // Least heel from which a condition holds; between the places looked at it changes once.
    private double? Crossing(Func<RightingArm, bool> holds, double from)
    {
        RightingArm? before = null;
        foreach (var heel in (double[])[from, .. _places.Where(h => h > from)])
        {
            if (At(heel) is not { } arm)
                return null;
            if (holds(arm))
                return before is null ? heel : Between(before.Heel, heel);
            before = arm;
        }

        return null;

        double Between(double low, double high)
        {
            while (high - low > Found)
            {
                var middle = (low + high) / 2;
                if (At(middle) is { } arm && holds(arm))
                    high = middle;
                else
                    low = middle;
            }

            return high;
        }
    }
}
