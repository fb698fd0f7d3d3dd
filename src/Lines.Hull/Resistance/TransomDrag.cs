using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;
using Lines.Kernel.Units;

namespace Lines.Hull.Resistance;

/// <summary>What an immersed transom lacks in pressure: a blunt body's suction while wet, the water's own once it runs dry.</summary>
/// <remarks>
/// <para><b>Method.</b> The pressure that lacks on the wet base and the fall of the water behind it are one: the fall is a part of the velocity head. Slow, that part is
/// a blunt base's in a boundary layer, 0.029 / √(friction over dynamic pressure times the immersed base); at 2.5 times the root of gravity times the
/// immersion, where the transom runs dry, it is 2 / 2.5² and the fall the whole immersion; between, it grows with the square of the speed. Above the fallen
/// level the transom lacks the water's hydrostatic pressure, below it the pressure of the fall.</para>
/// <para><b>Range.</b> An estimate: models run dry at 2.2 to 2.7, and how the part grows between its ends is our assumption. Thin-ship theory, which takes the
/// wake as long as it needs, has none of it.</para>
/// <para><b>Source.</b> Hydrostatic part: as slender-ship methods add it (L. J. Doctors' work on transom sterns); base: S. F. Hoerner, <i>Fluid-Dynamic
/// Drag</i>, 1965. Both from memory.</para>
/// </remarks>
/// <param name="side">A skin, the water at z = 0; its after edge is the transom's.</param>
/// <param name="top">Parameter up the edge where the water crosses it.</param>
internal sealed class TransomDrag(BSplineSurface side, double top)
{
    /// <summary>Speed over the root of gravity times the immersion at which a transom runs dry.</summary>
    private const double Dry = 2.5;

    /// <summary>Hoerner's factor of a blunt base.</summary>
    private const double Base = 0.029;

    /// <summary>Points to a span: exact for the cubes that stand there.</summary>
    private const int Points = 6;

    /// <summary>Resistance of the transom at a speed [N].</summary>
    /// <param name="speed">Speed [m/s].</param>
    /// <param name="density">Of the water [kg/m³].</param>
    /// <param name="friction">Friction of the hull at that speed [N].</param>
    public double At(double speed, double density, double friction)
    {
        var pressure = 0.5 * density * speed * speed;
        var dry = Math.Min(1, speed * speed / (Dry * Dry * Standards.Gravity * -side.PointAt(side.U.End, side.V.Start).Z));
        const double Ventilated = 2 / (Dry * Dry);
        var slow = friction > 0 ? Math.Min(Ventilated, Base * Math.Sqrt(pressure * Projected(side.V.Start, top).Area / friction)) : 0;
        var fallen = (slow + ((Ventilated - slow) * dry)) * pressure / (density * Standards.Gravity);
        var edge = dry < 1 ? Root.FirstWhere(v => side.PointAt(side.U.End, v).Z >= -fallen, side.V.Start, top) : side.V.Start;
        double dryMoment = Projected(edge, top).Moment, wetArea = Projected(side.V.Start, edge).Area;
        return density * Standards.Gravity * (dryMoment + (fallen * wetArea));
    }

    /// <summary>Area of the transom between two places of its edge, both sides, as seen from astern [m²], and its moment about the water [m³].</summary>
    private (double Area, double Moment) Projected(double from, double to)
    {
        double area = 0, moment = 0;
        SplineRows.ForGaussPoints(side.V, from, to, Points, (v, w) =>
        {
            var jet = side.JetAt(side.U.End, v);
            var strip = 2 * w * jet.Point.Y * jet.V.Z;
            area += strip;
            moment -= strip * jet.Point.Z;
        });
        return (area, moment);
    }
}
