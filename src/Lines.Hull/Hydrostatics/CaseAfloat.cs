using Lines.Kernel.Geometry;

namespace Lines.Hull.Hydrostatics;

/// <summary>How a loading of a boat ends.</summary>
public enum FloatState
{
    /// <summary>It floats dry and comes back when heeled a little.</summary>
    Floats,

    /// <summary>It would float with water over an open sheer, or the rim of an opening in its deck: it fills.</summary>
    Floods,

    /// <summary>It comes to rest nowhere under a right angle of heel and half of one of trim.</summary>
    Capsizes,

    /// <summary>All its hulls together displace less than it weighs.</summary>
    Sinks,

    /// <summary>Not even held upright is there a level and trim that carry the weight: it goes over, or stands on end.</summary>
    NotFound,
}

/// <summary>One hull of a boat afloat.</summary>
/// <param name="Body">The hull.</param>
/// <param name="Displacement">Mass of the water it displaces [kg].</param>
/// <param name="Share">Part of the whole displacement.</param>
/// <param name="Immersion">Part of its own volume that is under water, open hulls to the sheer.</param>
/// <param name="Depth">Depth of its lowest point under water [m]; negative out of it.</param>
/// <param name="Top">Height of its highest point over water [m].</param>
public sealed record HullAfloat(FloatingBody Body, double Displacement, double Share, double Immersion, double Depth, double Top);

/// <summary>How one loading of a boat floats, in calm water with the crew still.</summary>
/// <param name="State">How it ends.</param>
/// <param name="Weight">All weights together.</param>
/// <param name="Density">Density of the water [kg/m³].</param>
/// <param name="Capacity">Mass of the water all hulls displace when immersed to the sheer or deck [kg].</param>
/// <param name="Afloat">Level, trim, heel and integrals; null where it sinks or was not found; of a boat that capsizes, held upright.</param>
/// <param name="Freeboard">The lowest sheer over water, its place and hull; of closed hulls the deck edge of the main hull; null without an equilibrium.</param>
/// <param name="Hulls">Each hull, the main hull first; empty without an equilibrium.</param>
public sealed record CaseAfloat(
    FloatState State,
    Weight Weight,
    double Density,
    double Capacity,
    Afloat? Afloat,
    (double Height, Point3 At, FloatingBody Body)? Freeboard,
    IReadOnlyList<HullAfloat> Hulls)
{
    /// <summary>Trim from which a boat stands on end [rad].</summary>
    private const double GreatestTrim = Math.PI / 4;

    /// <summary>Heel under which a boat is in balance upright, stable or not [rad]; with weights aside she is not.</summary>
    private const double Upright = 1e-6;

    /// <summary>Heel as far as which no other rest lies between upright and one that was found from there [rad].</summary>
    private const double Near = Math.PI / 60;

    /// <summary>Heels this near to each other are told apart no further [rad].</summary>
    private const double LeastStep = 1e-3;

    /// <summary>Levers this small are none [m]: ten times what is left at equilibrium.</summary>
    private const double Balanced = 1e-7;

    /// <summary>Relative error of volumes told beside the equilibrium.</summary>
    private const double Tolerance = 1e-9;

    /// <summary>Whether the boat comes to rest as <see cref="Afloat"/> says; if not, it is told held upright.</summary>
    public bool Rests => State is FloatState.Floats or FloatState.Floods;

    /// <summary>The lowest point of the rims of openings in the deck over water, its place and the opening; null without one, or without an equilibrium.</summary>
    public (double Height, Point3 At, string Name)? Opening { get; init; }

    /// <summary>Whether she is turned over from where she floats upright and comes to rest aside: a loll, not a list from weights.</summary>
    public bool Lolls { get; init; }

    /// <summary>Height of the transverse metacenter above the center of gravity [m], the trim held while she heels.</summary>
    public double? TransverseMetacentricHeight => Rise + (Afloat?.Immersed.TransverseMoment / Afloat?.Immersed.Volume);

    /// <summary>The same, the trim free while she heels [m]: the rate by heel of the righting arm. Less than with the trim held where outriggers to one side stand before those to the other.</summary>
    public double? FreeMetacentricHeight => Afloat?.Stiffness;

    /// <summary>Height of the longitudinal metacenter above the center of gravity [m].</summary>
    public double? LongitudinalMetacentricHeight => Rise + (Afloat?.Immersed.LongitudinalMoment / Afloat?.Immersed.Volume);

    /// <summary>Moment that changes the trim over a length by a centimeter [kg m].</summary>
    /// <param name="length">The length the trim is told over [m].</param>
    public double? MomentToTrim(double length) => Weight.Mass * LongitudinalMetacentricHeight * 0.01 / length;

    /// <summary>Mass that sinks the boat by a centimeter [kg].</summary>
    public double? WeightToSink => 0.01 * Density * Afloat?.Immersed.Area;

    /// <summary>Draft on the centerplane of the main hull, from its base line [m].</summary>
    /// <param name="x">Where [m].</param>
    public double? DraftAt(double x) => Afloat is { Water: var w } ? (w.Level - (w.Up.X * x)) / w.Up.Z : null;

    /// <summary>The water plane at which she carries her weight held upright: of a boat that lies heeled, the hulls stand elsewhere then.</summary>
    /// <param name="craft">The bodies.</param>
    /// <returns>The plane; null where no level and trim carry the weight.</returns>
    public WaterPlane? HeldUpright(Craft craft) =>
        Afloat is { } afloat ? Equilibrium.AtHeel(craft, Weight, Density, afloat.Water with { Heel = 0 })?.Water : null;

    private double? Rise => Afloat is { } a && a.Immersed.Center is { } b ? a.Water.Up.Dot(b - Weight.Center) : null;

    /// <summary>Finds how a boat floats under a weight.</summary>
    /// <remarks><b>Method.</b> <see cref="Equilibrium.Free"/> from upright; where that is not stable, or far from upright, from where the boat, let go upright, falls and is first
    /// turned back: to the side of her weights, or in balance to either, the nearer.</remarks>
    /// <param name="craft">The bodies, the main hull first.</param>
    /// <param name="weight">All weights together.</param>
    /// <param name="density">Density of the water [kg/m³].</param>
    public static CaseAfloat Of(Craft craft, Weight weight, double density)
    {
        ArgumentNullException.ThrowIfNull(craft);
        var capacity = density * craft.WholeVolume(Tolerance);
        if (!(capacity > weight.Mass))
            return new CaseAfloat(FloatState.Sinks, weight, density, capacity, null, null, []);
        var upright = Equilibrium.Free(craft, weight, density, default);
        var rest = IsRest(upright) && Math.Abs(upright!.Water.Heel) < Near ? upright : Aside(craft, weight, density);
        var told = rest ?? Equilibrium.AtHeel(craft, weight, density, default);
        if (told is not null && Math.Abs(told.Water.Trim) >= GreatestTrim)
            told = null;
        if (told is null)
            return new CaseAfloat(FloatState.NotFound, weight, density, capacity, null, null, []);
        var freeboard = craft.LowestSheer(told.Water) ?? Edge(craft.Bodies[0], told.Water);
        var opening = craft.LowestRim(told.Water);
        var floods = (freeboard.Body.IsOpen && freeboard.Height < 0) || opening?.Height < 0;
        var state = rest is null ? FloatState.Capsizes : floods ? FloatState.Floods : FloatState.Floats;
        return new CaseAfloat(state, weight, density, capacity, told, freeboard, [.. craft.Bodies.Select(b => HullOf(b, told, density))]) { Opening = opening, Lolls = rest is not null && rest != upright && Math.Abs(upright?.Water.Heel ?? 1) < Upright };
    }

    private static bool IsRest(Afloat? afloat) =>
        afloat is { Stable: true } && Math.Abs(afloat.Water.Heel) < Math.PI / 2 && Math.Abs(afloat.Water.Trim) < GreatestTrim;

    // Heeled by and by until the arm turns the boat back: there it comes to rest.
    private static Afloat? Aside(Craft craft, Weight weight, double density)
    {
        // Let go upright she falls to one side; in balance there, to either.
        if (Equilibrium.AtHeel(craft, weight, density, default) is not { } upright)
            return null;
        int[] sides = Math.Abs(upright.LeverAcross) <= Balanced ? [1, -1] : [-Math.Sign(upright.LeverAcross)];
        return sides.Select(Heeled).OfType<Afloat>().MinBy(a => Math.Abs(a.Water.Heel));

        Afloat? Heeled(int side)
        {
            var before = upright;
            for (var k = 1; k * Near < Math.PI / 2; k++)
            {
                if (At(before, side * k * Near) is not { } held)
                    return null;
                if (Turned(side, before, held) is { } rest)
                    return rest;
                before = held;
            }

            return null;
        }

        Afloat? At(Afloat near, double heel) => Equilibrium.AtHeel(craft, weight, density, near.Water with { Heel = heel });

        // Where she is first turned back between two heels: under the top of an arm that rises and falls between them too.
        Afloat? Turned(int side, Afloat before, Afloat after)
        {
            double from = side * before.Water.Heel, to = side * after.Water.Heel;
            if (side * before.LeverAcross > Balanced)
                return null;
            var turned = side * after.LeverAcross >= 0;
            if (turned && Equilibrium.Free(craft, weight, density, after.Water) is { } found && IsRest(found) && side * found.Water.Heel >= from && side * found.Water.Heel <= to + Balanced)
                return found;
            if (to - from < LeastStep || !(turned || (before.Stiffness > 0 && after.Stiffness < 0)))
                return null;
            return At(before, (before.Water.Heel + after.Water.Heel) / 2) is { } middle ? Turned(side, before, middle) ?? Turned(side, middle, after) : null;
        }
    }

    private static (double Height, Point3 At, FloatingBody Body) Edge(FloatingBody body, WaterPlane water)
    {
        var (height, at) = body.LowestSheer(water);
        return (height, at, body);
    }

    private static HullAfloat HullOf(FloatingBody body, Afloat afloat, double density)
    {
        var volume = body.Below(afloat.Water, Tolerance).Volume;
        var whole = body.Below(WaterPlane.LevelAt(body.Reach(default, 0.01).Highest + 1), Tolerance).Volume;
        var (lowest, highest) = body.Reach(afloat.Water, 1e-6);
        return new HullAfloat(body, density * volume, volume / afloat.Immersed.Volume, volume / whole, -lowest, highest);
    }
}
