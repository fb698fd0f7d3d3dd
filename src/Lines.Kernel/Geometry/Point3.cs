namespace Lines.Kernel.Geometry;

/// <summary>A place in space.</summary>
/// <param name="X">First coordinate [m].</param>
/// <param name="Y">Second coordinate [m].</param>
/// <param name="Z">Third coordinate [m].</param>
public readonly record struct Point3(double X, double Y, double Z)
{
    /// <summary>The point reached by a displacement.</summary>
    public static Point3 operator +(Point3 p, Vector3 d) => new(p.X + d.X, p.Y + d.Y, p.Z + d.Z);

    /// <summary>The point reached by the opposite displacement.</summary>
    public static Point3 operator -(Point3 p, Vector3 d) => new(p.X - d.X, p.Y - d.Y, p.Z - d.Z);

    /// <summary>The displacement from <paramref name="b"/> to <paramref name="a"/>.</summary>
    public static Vector3 operator -(Point3 a, Point3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>Straight-line distance to another point [m].</summary>
    public double DistanceTo(Point3 other) => (this - other).Length;
}

/// <summary>A displacement in space.</summary>
/// <param name="X">First component [m].</param>
/// <param name="Y">Second component [m].</param>
/// <param name="Z">Third component [m].</param>
public readonly record struct Vector3(double X, double Y, double Z)
{
    /// <summary>Euclidean length [m].</summary>
    public double Length => Math.Sqrt(Dot(this));

    /// <summary>Sum of two displacements.</summary>
    public static Vector3 operator +(Vector3 a, Vector3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>Difference of two displacements.</summary>
    public static Vector3 operator -(Vector3 a, Vector3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>The opposite displacement.</summary>
    public static Vector3 operator -(Vector3 a) => new(-a.X, -a.Y, -a.Z);

    /// <summary>Displacement stretched by a factor.</summary>
    public static Vector3 operator *(double k, Vector3 a) => new(k * a.X, k * a.Y, k * a.Z);

    /// <summary>Dot product.</summary>
    public double Dot(Vector3 other) => (X * other.X) + (Y * other.Y) + (Z * other.Z);

    /// <summary>Cross product, right-handed.</summary>
    public Vector3 Cross(Vector3 other) =>
        new((Y * other.Z) - (Z * other.Y), (Z * other.X) - (X * other.Z), (X * other.Y) - (Y * other.X));

    /// <summary>The vector of length one in this direction.</summary>
    /// <exception cref="InvalidOperationException">The vector is zero and has no direction.</exception>
    public Vector3 Unit() => Length is > 0 and var l ? (1 / l) * this : throw new InvalidOperationException("a zero vector has no direction");
}
