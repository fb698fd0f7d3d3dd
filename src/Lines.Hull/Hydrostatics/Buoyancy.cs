using Lines.Kernel.Geometry;

namespace Lines.Hull.Hydrostatics;

/// <summary>What a hull displaces below one level water plane, both sides.</summary>
/// <remarks><b>Frame.</b> Hull frame: x aft, y to starboard, z up from the base line.</remarks>
/// <param name="Height">Height of the water plane [m].</param>
/// <param name="Draft">Height of the water plane above the lowest point of the keel [m].</param>
/// <param name="Volume">Displaced volume ∇ [m³]; 0 where nothing is immersed, and then all that follows is null or 0.</param>
/// <param name="Center">Center of buoyancy.</param>
/// <param name="Waterplane">The area the water surface cuts from the hull.</param>
/// <param name="Skin">Wetted area of the planked skin, both sides [m²].</param>
/// <param name="TransomArea">Immersed area of the transom in its own plane [m²]; 0 without one, or with its foot clear.</param>
/// <param name="Greatest">The section of greatest immersed area.</param>
/// <param name="Amidships">The section halfway between the ends of the waterline.</param>
public sealed record Buoyancy(
    double Height,
    double Draft,
    double Volume,
    Point3? Center,
    Waterplane? Waterplane,
    double Skin,
    double TransomArea,
    SectionArea? Greatest,
    SectionArea? Amidships)
{
    /// <summary>Wetted area of the deck of a closed hull, both sides [m²].</summary>
    public double Deck { get; init; }

    /// <summary>Wetted surface at rest: skin, deck and immersed transom [m²].</summary>
    public double WettedSurface => Skin + Deck + TransomArea;

    /// <summary>Center of buoyancy aft of the fore end of the waterline [m].</summary>
    public double? CenterAft => Center?.X - Waterplane?.Fore;

    /// <summary>Center of buoyancy aft of the fore end of the waterline, as a fraction of its length.</summary>
    public double? CenterFraction => CenterAft / Waterplane?.Length;

    /// <summary>Center of flotation aft of the fore end of the waterline [m].</summary>
    public double? FlotationAft => Waterplane?.Flotation - Waterplane?.Fore;

    /// <summary>Center of flotation aft of the fore end of the waterline, as a fraction of its length.</summary>
    public double? FlotationFraction => FlotationAft / Waterplane?.Length;

    /// <summary>Block coefficient: volume over waterline length × waterline breadth × draft.</summary>
    public double? Block => Volume / (Waterplane?.Length * Waterplane?.Breadth * Draft);

    /// <summary>Prismatic coefficient: volume over waterline length × greatest section area.</summary>
    public double? Prismatic => Volume / (Waterplane?.Length * Greatest?.Area);

    /// <summary>Greatest-section coefficient: greatest section area over waterline breadth × draft; block over prismatic.</summary>
    public double? GreatestSection => Greatest?.Area / (Waterplane?.Breadth * Draft);

    /// <summary>Waterplane coefficient: its area over waterline length × breadth.</summary>
    public double? WaterplaneFullness => Waterplane?.Area / (Waterplane?.Length * Waterplane?.Breadth);

    /// <summary>Height of the transverse metacenter above the center of buoyancy, BM = I / ∇ [m].</summary>
    public double? TransverseMetacentricRadius => Waterplane?.TransverseMoment / Volume;

    /// <summary>Height of the longitudinal metacenter above the center of buoyancy [m].</summary>
    public double? LongitudinalMetacentricRadius => Waterplane?.LongitudinalMoment / Volume;

    /// <summary>Mass that sinks the hull by one meter, level, at this waterline [kg/m]; a hundredth of it per centimeter.</summary>
    /// <param name="density">Density of the water [kg/m³].</param>
    public double? ImmersionRate(double density) => density * Waterplane?.Area;

    /// <summary>How much deeper the same mass floats in lighter water, to first order [m]; negative in heavier.</summary>
    /// <remarks><b>Method.</b> The volume grows by the ratio of densities, spread over the waterplane.</remarks>
    /// <param name="from">Density of the water at this waterline [kg/m³].</param>
    /// <param name="to">Density of the other water [kg/m³].</param>
    public double? Sinkage(double from, double to) => Immersion.Sinkage(Volume, Waterplane?.Area, from, to);
}

/// <summary>The area a level water plane cuts from a hull, both sides.</summary>
/// <param name="Fore">x of its foremost point [m].</param>
/// <param name="Aft">x of its aftmost point [m].</param>
/// <param name="Breadth">Greatest breadth, both sides [m].</param>
/// <param name="BroadestAt">x of the greatest breadth [m].</param>
/// <param name="Area">Area [m²].</param>
/// <param name="Flotation">x of its centroid, the center of flotation [m].</param>
/// <param name="TransverseMoment">Second moment about the centerline [m⁴].</param>
/// <param name="LongitudinalMoment">Second moment about the athwartships axis through the center of flotation [m⁴].</param>
public sealed record Waterplane(
    double Fore,
    double Aft,
    double Breadth,
    double BroadestAt,
    double Area,
    double Flotation,
    double TransverseMoment,
    double LongitudinalMoment)
{
    /// <summary>Length between its ends [m].</summary>
    public double Length => Aft - Fore;
}

/// <summary>Immersed area of one section, both sides.</summary>
/// <param name="X">Place of the section [m].</param>
/// <param name="Area">Area below the water plane [m²].</param>
public readonly record struct SectionArea(double X, double Area);

/// <summary>Water of another density.</summary>
public static class Immersion
{
    /// <summary>How much deeper a mass floats when the water gets lighter, to first order [m].</summary>
    /// <param name="volume">Displaced volume in the first water [m³].</param>
    /// <param name="waterplaneArea">Waterplane area [m²].</param>
    /// <param name="from">Density of the first water [kg/m³].</param>
    /// <param name="to">Density of the second water [kg/m³].</param>
    /// <returns>Sinkage [m], negative for a rise; null without a waterplane.</returns>
    public static double? Sinkage(double volume, double? waterplaneArea, double from, double to) =>
        volume * ((from / to) - 1) / waterplaneArea;
}

/// <summary>The water plane stands above the sheer of an open hull.</summary>
public sealed class DownfloodingException : ArithmeticException
{
    /// <summary>Makes the exception for one station.</summary>
    /// <param name="x">Station at which the sheer is lowest against the water [m].</param>
    /// <param name="sheer">Height of the sheer there [m].</param>
    /// <param name="water">Height of the water plane [m].</param>
    public DownfloodingException(double x, double sheer, double water)
        : base(Invariant($"the water plane at z = {water} m is above the sheer, {sheer} m, at x = {x} m"))
    {
        X = x;
        Sheer = sheer;
    }

    /// <summary>Station at which the sheer is lowest against the water [m].</summary>
    public double X { get; }

    /// <summary>Height of the sheer there [m].</summary>
    public double Sheer { get; }
}
