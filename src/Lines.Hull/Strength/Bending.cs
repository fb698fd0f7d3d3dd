namespace Lines.Hull.Strength;

/// <summary>The water a boat is bent in.</summary>
public enum WaveForm
{
    /// <summary>Still water.</summary>
    Still,

    /// <summary>A wave with its crest amidships: the ends droop.</summary>
    Hogging,

    /// <summary>A wave with its trough amidships: the middle sags.</summary>
    Sagging,
}

/// <summary>Forces at one place along the main hull.</summary>
/// <param name="X">Place, aft of the foremost point [m].</param>
/// <param name="Buoyancy">Buoyancy of the main hull [N/m].</param>
/// <param name="Weight">Weight of the structure [N/m]; other weights are points.</param>
/// <param name="Shear">Upward forces forward of here, less the weights there [N].</param>
/// <param name="Moment">Bending moment [N m], positive where the middle sags.</param>
public readonly record struct BendingPoint(double X, double Buoyancy, double Weight, double Shear, double Moment);

/// <summary>Forces at a take-apart joint, and what its bolts must hold by a simple model.</summary>
/// <param name="X">Place of the joint [m].</param>
/// <param name="Shear">Shear there [N], by its size.</param>
/// <param name="Moment">Bending moment there [N m], positive where the middle sags.</param>
/// <param name="Tension">Tension of all bolts on the side that opens [N]: the keel's when the middle sags, the sheer's when the ends droop.</param>
public readonly record struct JointForces(double X, double Shear, double Moment, double Tension);

/// <summary>Weight, buoyancy, shear and bending moment along the main hull in one kind of water.</summary>
/// <param name="Wave">The water.</param>
/// <param name="Height">Height of the wave, trough to crest [m]; 0 in still water.</param>
/// <param name="Points">Along the hull, bow first; where a load stands, once before it and once past it.</param>
/// <param name="Joints">At each joint.</param>
public sealed record Bending(WaveForm Wave, double Height, IReadOnlyList<BendingPoint> Points, IReadOnlyList<JointForces> Joints)
{
    /// <summary>Where the bending moment is greatest by size.</summary>
    public BendingPoint Worst => Points.MaxBy(p => Math.Abs(p.Moment));

    /// <summary>Where the shear is greatest by size.</summary>
    public BendingPoint WorstShear => Points.MaxBy(p => Math.Abs(p.Shear));
}
