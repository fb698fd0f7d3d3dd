using Lines.Kernel.Numerics;

namespace Lines.Hull.Hydrostatics;

/// <summary>A waterplane known by half-breadths at equally spaced stations, integrated by Simpson's first rule.</summary>
/// <remarks><b>Accuracy.</b> Exact where half-breadths, their moments and their cubes are cubics between every third station.</remarks>
/// <param name="HalfBreadths">Half-breadths from the fore end [m], an odd number from 3.</param>
/// <param name="Spacing">Distance between stations [m].</param>
public sealed record WaterplaneTable(IReadOnlyList<double> HalfBreadths, double Spacing)
{
    /// <summary>Area, both sides [m²].</summary>
    public double Area => 2 * SimpsonRules.First(HalfBreadths, Spacing);

    /// <summary>Center of flotation aft of the fore end [m].</summary>
    public double FlotationAft => 2 * Moment(1) / Area;

    /// <summary>Second moment about the athwartships axis at a distance aft of the fore end [m⁴].</summary>
    /// <param name="axis">Place of the axis [m].</param>
    public double LongitudinalMomentAbout(double axis) =>
        2 * SimpsonRules.First([.. HalfBreadths.Select((y, i) => y * Math.Pow((i * Spacing) - axis, 2))], Spacing);

    /// <summary>Second moment about the athwartships axis through the center of flotation [m⁴].</summary>
    public double LongitudinalMoment => (2 * Moment(2)) - (Area * FlotationAft * FlotationAft);

    /// <summary>Second moment about the centerline [m⁴].</summary>
    public double TransverseMoment => 2 * SimpsonRules.First([.. HalfBreadths.Select(y => y * y * y / 3)], Spacing);

    private double Moment(int power) => SimpsonRules.First([.. HalfBreadths.Select((y, i) => y * Math.Pow(i * Spacing, power))], Spacing);
}
