using Lines.Hull.Loading;
using Lines.Hull.Resistance;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Form;

/// <summary>A boat: a main hull, its outriggers, what it carries and what it is rigged with.</summary>
/// <remarks><b>Frame.</b> All places are in the frame of the main hull: x aft from its foremost point, y to starboard, z up from its base line.</remarks>
/// <param name="MainHull">The main hull; dials left out for a target hold a value to start from.</param>
public sealed record Vessel(HullDials MainHull)
{
    /// <summary>What is asked of the main hull in place of dials.</summary>
    public HullTargets Targets { get; init; } = HullTargets.None;

    /// <summary>The outriggers, in the order of the design; empty for a boat of one hull.</summary>
    public IReadOnlyList<Outrigger> Outriggers { get; init; } = [];

    /// <summary>What the boat carries.</summary>
    public IReadOnlyList<Load> Loads { get; init; } = [];

    /// <summary>The compartments of the main hull.</summary>
    public IReadOnlyList<Compartment> Compartments { get; init; } = [];

    /// <summary>Rudder and boards; null where none are told.</summary>
    public Appendage? Appendage { get; init; }

    /// <summary>The sail plan; null without one.</summary>
    public Rig? Rig { get; init; }

    /// <summary>Weight of the empty boat where it is known; null where it is not.</summary>
    public Structure? Structure { get; init; }

    /// <summary>The load cases, in the order in which the loads first name them.</summary>
    public IReadOnlyList<LoadCase> Cases => LoadCase.Of(Loads);
}

/// <summary>On which side of the main hull an outrigger stands.</summary>
public enum OutriggerSide
{
    /// <summary>To port.</summary>
    Port,

    /// <summary>To starboard.</summary>
    Starboard,

    /// <summary>One on each side, of the same shape.</summary>
    Both,
}

/// <summary>A float beside the main hull, or a pair of them.</summary>
/// <param name="Hull">Its shape, in its own hull frame.</param>
/// <param name="Side">Where it stands.</param>
/// <param name="Spacing">Distance of its centerplane from that of the main hull [m], above 0.</param>
/// <param name="Height">Its base line above that of the main hull [m].</param>
/// <param name="Aft">Its foremost point aft of that of the main hull [m].</param>
public sealed record Outrigger(HullDials Hull, OutriggerSide Side, double Spacing, double Height, double Aft)
{
    /// <summary>What is asked of its hull in place of dials.</summary>
    public HullTargets Targets { get; init; } = HullTargets.None;

    /// <summary>Where the origin of its hull frame stands in that of the main hull, port first.</summary>
    public IReadOnlyList<Vector3> Places => Side switch
    {
        OutriggerSide.Port => [At(-1)],
        OutriggerSide.Starboard => [At(1)],
        _ => [At(-1), At(1)],
    };

    private Vector3 At(double sign) => new(Aft, sign * Spacing, Height);
}

/// <summary>One shaped hull of a vessel at its place.</summary>
/// <param name="Name">What it is called: main hull, outrigger 1 port.</param>
/// <param name="Surface">Its surface, in its own hull frame.</param>
/// <param name="Place">Where the origin of that frame stands in that of the main hull [m].</param>
public sealed record PlacedHull(string Name, HullSurface Surface, Vector3 Place);

/// <summary>All shaped hulls of a vessel.</summary>
/// <param name="Main">The main hull.</param>
/// <param name="Outriggers">Each outrigger with its shape, in the order of the vessel; a pair is shaped once.</param>
public sealed record VesselShape(HullSurface Main, IReadOnlyList<(Outrigger Outrigger, HullSurface Surface)> Outriggers)
{
    /// <summary>Openings through the deck of the main hull; without a deck they count for nothing.</summary>
    public IReadOnlyList<DeckOpening> Openings { get; init; } = [];

    /// <summary>Every hull at its place, the main hull first.</summary>
    public IReadOnlyList<PlacedHull> Hulls =>
        [new("main hull", Main, default), .. Outriggers.SelectMany((o, k) => o.Outrigger.Places.Select(p => new PlacedHull(NameOf(k, p), o.Surface, p)))];

    /// <summary>Whether port and starboard are mirror images: every outrigger has its twin on the other side, and water comes in through the deck on the centerplane alone.</summary>
    public bool IsAlikeOnBothSides => Openings.All(o => o.IsSealed || o.Aside == 0) && Hulls.All(h => Hulls.Any(o => o.Surface == h.Surface && o.Place == h.Place with { Y = -h.Place.Y }));

    private static string NameOf(int index, Vector3 place) => Invariant($"outrigger {index + 1} {(place.Y < 0 ? "port" : "starboard")}");
}
