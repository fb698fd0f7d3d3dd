using Lines.Kernel.Geometry;

namespace Lines.Hull.Hydrostatics;

/// <summary>A water plane at any trim and heel. The boat stays where it was drawn; the water tilts.</summary>
/// <remarks><b>Sign.</b> Trim is positive by the stern, heel positive to starboard. The boat is heeled about its own trimmed axis.</remarks>
/// <param name="Level">Signed distance of the plane from the origin of the hull frame, along <see cref="Up"/> [m].</param>
/// <param name="Trim">Angle of the x axis below level [rad], under a right angle either way.</param>
/// <param name="Heel">Angle of the y axis below level [rad], -π to π.</param>
public readonly record struct WaterPlane(double Level, double Trim, double Heel)
{
    /// <summary>The way up out of the water, a unit vector of the hull frame.</summary>
    public Vector3 Up => new(-Math.Sin(Trim), -Math.Sin(Heel) * Math.Cos(Trim), Math.Cos(Heel) * Math.Cos(Trim));

    /// <summary>The level direction aft, a unit vector of the hull frame.</summary>
    public Vector3 Aft => new(Math.Cos(Trim), -Math.Sin(Heel) * Math.Sin(Trim), Math.Cos(Heel) * Math.Sin(Trim));

    /// <summary>The level direction to starboard, a unit vector of the hull frame: up × aft.</summary>
    public Vector3 Across => new(0, Math.Cos(Heel), Math.Sin(Heel));

    /// <summary>The plane itself, normal up.</summary>
    public Plane Plane => new(Up, Level);

    /// <summary>A level water plane.</summary>
    /// <param name="height">Height above the base line [m].</param>
    public static WaterPlane LevelAt(double height) => new(height, 0, 0);

    /// <summary>Height of a point above the water [m]; negative under it.</summary>
    public double HeightOf(Point3 p) => Plane.DistanceTo(p);

    /// <summary>The plane as a body sees it that is placed at an offset.</summary>
    /// <param name="offset">Place of the body's own origin in the hull frame.</param>
    internal WaterPlane From(Vector3 offset) => this with { Level = Level - Up.Dot(offset) };
}
