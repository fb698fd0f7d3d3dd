using Lines.Kernel.Geometry;

namespace Lines.Hull.Hydrostatics;

/// <summary>What lies below a water plane, and the area the plane cuts: integrals that add up body by body.</summary>
/// <remarks><b>Frame.</b> Moments of volume in the hull frame; moments of the waterplane about the origin of the hull frame, along the
/// level directions aft (a) and to starboard (b) of <see cref="WaterPlane"/>.</remarks>
/// <param name="Volume">Displaced volume ∇ [m³].</param>
/// <param name="Moment">∫ p d∇ [m⁴].</param>
/// <param name="Area">Waterplane area [m²].</param>
/// <param name="AreaAft">∫ a dA [m³].</param>
/// <param name="AreaAcross">∫ b dA [m³].</param>
/// <param name="AftAft">∫ a² dA [m⁴].</param>
/// <param name="AftAcross">∫ ab dA [m⁴].</param>
/// <param name="AcrossAcross">∫ b² dA [m⁴].</param>
public readonly record struct Immersed(
    double Volume,
    Vector3 Moment,
    double Area,
    double AreaAft,
    double AreaAcross,
    double AftAft,
    double AftAcross,
    double AcrossAcross)
{
    /// <summary>Center of buoyancy, hull frame; null where nothing is immersed.</summary>
    public Point3? Center => Volume > 0 ? new Point3(Moment.X / Volume, Moment.Y / Volume, Moment.Z / Volume) : null;

    /// <summary>Center of flotation along the level directions aft and to starboard, from the origin of the hull frame [m]; null without a waterplane.</summary>
    public Point2? Flotation => Area > 0 ? new Point2(AreaAft / Area, AreaAcross / Area) : null;

    /// <summary>Second moment of the waterplane about the level lengthwise axis through the center of flotation [m⁴].</summary>
    public double TransverseMoment => Area > 0 ? AcrossAcross - (AreaAcross * AreaAcross / Area) : 0;

    /// <summary>Second moment about the level athwartships axis through the center of flotation [m⁴].</summary>
    public double LongitudinalMoment => Area > 0 ? AftAft - (AreaAft * AreaAft / Area) : 0;

    /// <summary>Product moment about the same two axes [m⁴]; 0 for a boat alike on both sides.</summary>
    public double ProductMoment => Area > 0 ? AftAcross - (AreaAft * AreaAcross / Area) : 0;

    /// <summary>Both together.</summary>
    public static Immersed operator +(Immersed p, Immersed q) => new(
        p.Volume + q.Volume,
        p.Moment + q.Moment,
        p.Area + q.Area,
        p.AreaAft + q.AreaAft,
        p.AreaAcross + q.AreaAcross,
        p.AftAft + q.AftAft,
        p.AftAcross + q.AftAcross,
        p.AcrossAcross + q.AcrossAcross);

    /// <summary>The same integrals of a body moved as a whole, its water with it.</summary>
    /// <param name="offset">Where it is moved, hull frame [m].</param>
    /// <param name="water">The water plane, for its directions.</param>
    internal Immersed Moved(Vector3 offset, WaterPlane water)
    {
        double a = offset.Dot(water.Aft), b = offset.Dot(water.Across);
        return new Immersed(
            Volume,
            Moment + (Volume * offset),
            Area,
            AreaAft + (a * Area),
            AreaAcross + (b * Area),
            AftAft + (2 * a * AreaAft) + (a * a * Area),
            AftAcross + (a * AreaAcross) + (b * AreaAft) + (a * b * Area),
            AcrossAcross + (2 * b * AreaAcross) + (b * b * Area));
    }
}
