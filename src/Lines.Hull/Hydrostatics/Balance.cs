using Lines.Kernel.Geometry;

namespace Lines.Hull.Hydrostatics;

/// <summary>How weight and buoyancy stand to each other at one water plane, and how that changes as the plane moves.</summary>
/// <remarks>
/// <para><b>Method.</b> Force: ∇ - m/ρ. Moments: (∫p d∇ - ∇ G) along the level directions aft and to starboard. Their derivatives by level,
/// trim and heel are moments of the waterplane and, of a turn, ∇ times the height of B over G; exact, so Newton's method converges squarely.</para>
/// </remarks>
/// <param name="Water">The water plane.</param>
/// <param name="Immersed">What lies below it.</param>
/// <param name="Volume">The volume that would carry the weight, m/ρ [m³].</param>
/// <param name="Gravity">Center of gravity.</param>
internal readonly record struct Balance(WaterPlane Water, Immersed Immersed, double Volume, Point3 Gravity)
{
    private Vector3 Moment => Immersed.Moment - (Immersed.Volume * (Gravity - default(Point3)));

    /// <summary>Volume too much, as a fraction of what is needed.</summary>
    public double Surplus => (Immersed.Volume - Volume) / Volume;

    /// <summary>Buoyancy aft of gravity, level [m].</summary>
    public double LeverAft => Moment.Dot(Water.Aft) / Volume;

    /// <summary>Buoyancy to starboard of gravity, level [m].</summary>
    public double LeverAcross => Moment.Dot(Water.Across) / Volume;

    /// <summary>Buoyancy above gravity, as a moment of volume [m⁴].</summary>
    private double Rise => Moment.Dot(Water.Up);

    /// <summary>Derivatives of surplus, lever aft and lever across (rows, times the volume needed) by level, trim and heel (columns).</summary>
    public double[,] Slopes()
    {
        double ga = Water.Aft.Dot(Gravity - default(Point3)), gb = Water.Across.Dot(Gravity - default(Point3));
        double c = Math.Cos(Water.Trim), s = Math.Sin(Water.Trim);
        var i = Immersed;
        return new[,]
        {
            { i.Area, i.AreaAft, c * i.AreaAcross },
            { i.AreaAft - (ga * i.Area), i.AftAft - (ga * i.AreaAft) + Rise, (c * (i.AftAcross - (ga * i.AreaAcross))) - (s * LeverAcross * Volume) },
            { i.AreaAcross - (gb * i.Area), i.AftAcross - (gb * i.AreaAft), (c * (i.AcrossAcross - (gb * i.AreaAcross) + Rise)) + (s * LeverAft * Volume) },
        };
    }

    /// <summary>Rate at which the lever across grows with heel while the boat goes on carrying its weight at free trim [m/rad].</summary>
    public double StiffnessAtFreeTrim()
    {
        var k = Slopes();
        var d = (k[0, 0] * k[1, 1]) - (k[0, 1] * k[1, 0]);
        if (d == 0)
            return k[2, 2] / Volume;
        double level = ((-k[0, 2] * k[1, 1]) + (k[0, 1] * k[1, 2])) / d, trim = ((-k[0, 0] * k[1, 2]) + (k[1, 0] * k[0, 2])) / d;
        return (k[2, 2] + (k[2, 0] * level) + (k[2, 1] * trim)) / Volume;
    }
}
