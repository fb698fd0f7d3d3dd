using Lines.Hull.Hydrostatics;

namespace Lines.Hull.Resistance;

/// <summary>Rudder, leeboard and skeg as one streamlined plate in the flow.</summary>
/// <remarks>
/// <b>Method.</b> Friction of both sides by <see cref="FrictionLine"/> on the chord, times 1 + 2 t/c + 60 (t/c)⁴ (S. F. Hoerner, <i>Fluid-Dynamic Drag</i>, 1965; from
/// memory). No lift, so no drag of leeway. Below the least Reynolds number of the line its coefficient there is kept.
/// </remarks>
/// <param name="Area">Area of one side [m²].</param>
/// <param name="Chord">Length along the flow [m].</param>
/// <param name="Thickness">Thickness over that length.</param>
public sealed record Appendage(double Area, double Chord, double Thickness)
{
    /// <summary>Thickness over chord where none is told.</summary>
    public const double UsualThickness = 0.1;

    /// <summary>The drag at a speed [N].</summary>
    /// <param name="speed">Speed [m/s].</param>
    /// <param name="water">The water.</param>
    public double At(double speed, Water water)
    {
        ArgumentNullException.ThrowIfNull(water);
        var friction = FrictionLine.Coefficient(Math.Max(FrictionLine.LeastReynolds, speed * Chord / water.Viscosity));
        return 0.5 * water.Density * speed * speed * 2 * Area * friction * (1 + (2 * Thickness) + (60 * Math.Pow(Thickness, 4)));
    }
}
