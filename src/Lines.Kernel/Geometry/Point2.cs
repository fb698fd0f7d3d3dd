namespace Lines.Kernel.Geometry;

/// <summary>A place in a plane.</summary>
/// <param name="X">Abscissa [m, or the unit its owner states].</param>
/// <param name="Y">Ordinate, same unit.</param>
public readonly record struct Point2(double X, double Y)
{
    /// <summary>The point reached by a displacement.</summary>
    public static Point2 operator +(Point2 p, Vector2 d) => new(p.X + d.X, p.Y + d.Y);

    /// <summary>The displacement from <paramref name="b"/> to <paramref name="a"/>.</summary>
    public static Vector2 operator -(Point2 a, Point2 b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>The point reached by the opposite displacement.</summary>
    public static Point2 operator -(Point2 p, Vector2 d) => new(p.X - d.X, p.Y - d.Y);

    /// <summary>Straight-line distance to another point, same unit as the coordinates.</summary>
    public double DistanceTo(Point2 other) => (this - other).Length;
}

/// <summary>A displacement in a plane.</summary>
/// <param name="X">Component along the abscissa.</param>
/// <param name="Y">Component along the ordinate.</param>
public readonly record struct Vector2(double X, double Y)
{
    /// <summary>Euclidean length.</summary>
    public double Length => Math.Sqrt((X * X) + (Y * Y));

    /// <summary>The vector turned a quarter to the left (counter-clockwise).</summary>
    public Vector2 TurnedLeft => new(-Y, X);

    /// <summary>The vector turned to the left by the angle that has a sine and a cosine.</summary>
    public Vector2 Turned(double sin, double cos) => new((cos * X) - (sin * Y), (sin * X) + (cos * Y));

    /// <summary>Sum of two displacements.</summary>
    public static Vector2 operator +(Vector2 a, Vector2 b) => new(a.X + b.X, a.Y + b.Y);

    /// <summary>Difference of two displacements.</summary>
    public static Vector2 operator -(Vector2 a, Vector2 b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>The opposite displacement.</summary>
    public static Vector2 operator -(Vector2 a) => new(-a.X, -a.Y);

    /// <summary>Displacement stretched by a factor.</summary>
    public static Vector2 operator *(double k, Vector2 a) => new(k * a.X, k * a.Y);

    /// <summary>Dot product.</summary>
    public double Dot(Vector2 other) => (X * other.X) + (Y * other.Y);

    /// <summary>Third component of the cross product; positive when <paramref name="other"/> lies to the left.</summary>
    public double Cross(Vector2 other) => (X * other.Y) - (Y * other.X);

    /// <summary>The two components, in every locale alike.</summary>
    public override string ToString() => Invariant($"({X}, {Y})");

    /// <summary>The vector of length one in this direction.</summary>
    /// <exception cref="InvalidOperationException">The vector is zero and has no direction.</exception>
    public Vector2 Unit() => Length is > 0 and var l ? (1 / l) * this : throw new InvalidOperationException("a zero vector has no direction");
}
