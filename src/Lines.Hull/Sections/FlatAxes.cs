using Lines.Kernel.Geometry;

namespace Lines.Hull.Sections;

/// <summary>Two perpendicular axes in which a line is seen flat.</summary>
/// <param name="Origin">The point that is seen at (0, 0), hull frame.</param>
/// <param name="Right">Unit vector of the abscissa.</param>
/// <param name="Up">Unit vector of the ordinate.</param>
public readonly record struct FlatAxes(Point3 Origin, Vector3 Right, Vector3 Up)
{
    /// <summary>Half-breadth plan: x aft to the right, y to starboard up.</summary>
    public static FlatAxes Plan => new(default, new Vector3(1, 0, 0), new Vector3(0, 1, 0));

    /// <summary>Profile: x aft to the right, z up.</summary>
    public static FlatAxes Profile => new(default, new Vector3(1, 0, 0), new Vector3(0, 0, 1));

    /// <summary>Body plan of the starboard side: y to the right, z up.</summary>
    public static FlatAxes Body => new(default, new Vector3(0, 1, 0), new Vector3(0, 0, 1));

    /// <summary>A diagonal laid flat: x aft to the right, distance from the centerplane down along the diagonal up.</summary>
    /// <param name="height">Height of the diagonal on the centerplane [m].</param>
    /// <param name="angle">Angle of the diagonal below level [rad].</param>
    public static FlatAxes Diagonal(double height, double angle) =>
        new(new Point3(0, 0, height), new Vector3(1, 0, 0), new Vector3(0, Math.Cos(angle), -Math.Sin(angle)));

    /// <summary>The place of a point in these axes [m].</summary>
    public Point2 Flat(Point3 p)
    {
        var d = p - Origin;
        return new Point2(d.Dot(Right), d.Dot(Up));
    }

    /// <summary>The direction of a vector in these axes.</summary>
    public Vector2 Flat(Vector3 v) => new(v.Dot(Right), v.Dot(Up));
}
