namespace Lines.Kernel.Units;

/// <summary>Values exact by definition.</summary>
public static class Standards
{
    /// <summary>Standard acceleration of gravity [m/s²].</summary>
    public const double Gravity = 9.80665;

    /// <summary>A knot, one nautical mile of 1852 m an hour [m/s].</summary>
    public const double Knot = 1852.0 / 3600;
}
