using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;

namespace Lines.Hull.Resistance;

/// <summary>Drag of the air on topsides and crew as the boat moves through it, in still air or against a wind.</summary>
/// <remarks>
/// <b>Source.</b> Topsides: ITTC 1978, C_AA = 0.001 A_T / S, A_T the area seen from ahead above the water. Crew: a seated person has a drag area of
/// 6 ft² (S. F. Hoerner, <i>Fluid-Dynamic Drag</i>, 1965; from memory). Air of 1.225 kg/m³. Estimates: a wind from the side also heels and sets the boat, which is not in it.
/// </remarks>
/// <param name="Topsides">Area of the main hull seen from ahead [m²].</param>
/// <param name="Crew">How many sit on it.</param>
public sealed record AirDrag(double Topsides, int Crew)
{
    /// <summary>Density of air [kg/m³].</summary>
    public const double Density = 1.225;

    /// <summary>Drag area of a seated person [m²]: 6 ft².</summary>
    public const double SeatedPerson = 6 * 0.09290304;

    private const double IttcTopsides = 0.001;

    /// <summary>The air drag of a hull.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="water">How it lies in the water.</param>
    /// <param name="crew">How many sit in it.</param>
    public static AirDrag Of(HullSurface hull, WaterPlane water, int crew)
    {
        ArgumentNullException.ThrowIfNull(hull);
        return new AirDrag(hull.Dials.Beam * Math.Max(0, water.HeightOf(hull.Side.PointAt(hull.WidestU, 1))), crew);
    }

    /// <summary>The drag at a speed [N].</summary>
    /// <param name="speed">Speed [m/s].</param>
    /// <param name="water">Density of the water, on which the coefficient of the topsides is [kg/m³].</param>
    /// <param name="headWind">Wind from ahead [m/s], negative from astern; a wind faster than the boat from astern drives it, and the drag is negative.</param>
    public double At(double speed, double water, double headWind = 0) => 0.5 * (speed + headWind) * Math.Abs(speed + headWind) * ((IttcTopsides * water * Topsides) + (Density * SeatedPerson * Crew));
}
