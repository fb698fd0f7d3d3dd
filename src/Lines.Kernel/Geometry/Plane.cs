namespace Lines.Kernel.Geometry;

/// <summary>A plane in space: the points P with Normal · P = Offset.</summary>
/// <param name="Normal">Unit normal.</param>
/// <param name="Offset">Signed distance of the plane from the origin along the normal [m].</param>
public readonly record struct Plane(Vector3 Normal, double Offset)
{
    /// <summary>The plane x = <paramref name="x"/> [m], normal along +x.</summary>
    public static Plane AtX(double x) => new(new Vector3(1, 0, 0), x);

    /// <summary>The plane y = <paramref name="y"/> [m], normal along +y.</summary>
    public static Plane AtY(double y) => new(new Vector3(0, 1, 0), y);

    /// <summary>The plane z = <paramref name="z"/> [m], normal along +z.</summary>
    public static Plane AtZ(double z) => new(new Vector3(0, 0, 1), z);

    /// <summary>Signed distance of a point from the plane [m], positive on the side of the normal.</summary>
    public double DistanceTo(Point3 p) => (Normal.X * p.X) + (Normal.Y * p.Y) + (Normal.Z * p.Z) - Offset;
}
