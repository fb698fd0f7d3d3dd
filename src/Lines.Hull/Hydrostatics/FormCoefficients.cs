using Lines.Hull.Form;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Hydrostatics;

/// <summary>The fullness of a hull's ends and of its widest section, read back from the surface.</summary>
/// <remarks>
/// <b>Method.</b> The design waterline and the widest section are iso-lines of the surface, piecewise polynomials; their areas are
/// integrated knot span by knot span with a rule that is exact for the degree. <b>Accuracy.</b> Rounding only.
/// </remarks>
/// <param name="Entry">Area of the half design waterplane forward of its widest point over the rectangle around it.</param>
/// <param name="Run">The same aft of it.</param>
/// <param name="Midship">Immersed area of the widest section over its waterline breadth times its own draft.</param>
/// <param name="EntryAngle">Half-angle of entrance of the design waterline [rad].</param>
/// <param name="RunAngle">Half-angle of the design waterline at its after end [rad], positive where it closes toward the stern.</param>
public sealed record FormCoefficients(double Entry, double Run, double Midship, double EntryAngle, double RunAngle)
{
    /// <summary>The coefficients of a hull.</summary>
    public static FormCoefficients Of(HullSurface hull)
    {
        ArgumentNullException.ThrowIfNull(hull);
        var (side, u, v) = (hull.Side, hull.WidestU, hull.WaterlineV);
        var widest = side.PointAt(u, v);
        var keel = side.PointAt(u, 0);
        double Width(double at)
        {
            var jet = side.JetAt(at, v);
            return jet.Point.Y * jet.U.X;
        }

        double Height(double at)
        {
            var jet = side.JetAt(u, at);
            return jet.Point.Y * jet.V.Z;
        }

        var (fore, aft) = (side.JetAt(0, v).U, side.JetAt(1, v).U);
        return new FormCoefficients(
            Integral(side.U, Width, 0, u) / (widest.Y * (widest.X - hull.WaterlineFore)),
            Integral(side.U, Width, u, 1) / (widest.Y * (hull.WaterlineAft - widest.X)),
            Integral(side.V, Height, 0, v) / (widest.Y * (widest.Z - keel.Z)),
            Math.Atan2(fore.Y, fore.X),
            Math.Atan2(-aft.Y, aft.X));
    }

    private static double Integral(SplineBasis basis, Func<double, double> f, double from, double to)
    {
        // A product of a coordinate and a derivative has degree 2p - 1: p points are exact.
        var breaks = basis.Breaks.Where(b => b > from && b < to).Prepend(from).Append(to).ToArray();
        var sum = 0.0;
        for (var i = 1; i < breaks.Length; i++)
            sum += GaussLegendre.Integrate(f, breaks[i - 1], breaks[i], basis.Degree);
        return sum;
    }
}
