namespace Lines.Kernel.Units;

/// <summary>Values exact by definition.</summary>
public static class Standards
{
    /// <summary>Standard acceleration of gravity [m/s²].</summary>
    public const double Gravity = 9.80665;

    /// <summary>A nautical mile [m].</summary>
    public const double NauticalMile = 1852;

    /// <summary>A knot, one nautical mile an hour [m/s].</summary>
    public const double Knot = NauticalMile / 3600;
}
