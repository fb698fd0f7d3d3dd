using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Hydrostatics;

/// <summary>The fullness of a hull's ends and of its widest section, read back from the surface.</summary>
/// <remarks>
/// <b>Method.</b> The design waterline and the widest section are iso-lines of the surface, piecewise polynomials; their areas are
/// integrated knot span by knot span with a rule that is exact for the degree. A waterline that ends on the keel is cut from the surface.
/// <b>Accuracy.</b> Rounding only; 1e-8 where the waterline is cut.
/// </remarks>
/// <param name="Entry">Area of the half design waterplane forward of its widest point over the rectangle around it.</param>
/// <param name="Run">The same aft of it.</param>
/// <param name="Midship">Immersed area of the widest section over its waterline breadth times its own draft.</param>
/// <param name="EntryAngle">Half-angle of entrance of the design waterline [rad].</param>
/// <param name="RunAngle">Half-angle of the design waterline at its after end [rad], positive where it closes toward the stern.</param>
/// <param name="SheerFore">Area of half the sheer in plan forward of the widest station over the rectangle around it.</param>
/// <param name="SheerAft">The same aft of it.</param>
public sealed record FormCoefficients(double Entry, double Run, double Midship, double EntryAngle, double RunAngle, double SheerFore, double SheerAft)
{
    /// <summary>Relative error of the area of a waterline that is no iso-line.</summary>
    private const double CutTolerance = 1e-8;

    /// <summary>How far inside its end, in the parameter along the hull, the direction of a waterline is taken that ends where keel and stem meet.</summary>
    private const double Inside = 1e-4;

    /// <summary>Least rise of the section at its end, over the beam, by which a waterline has a direction there: with less it leaves the keel square.</summary>
    private const double LeastRise = 1e-9;

    /// <summary>The coefficients of a hull.</summary>
    public static FormCoefficients Of(HullSurface hull)
    {
        ArgumentNullException.ThrowIfNull(hull);
        var (side, u, v) = (hull.Side, hull.WidestU, hull.WaterlineV);
        var widest = side.PointAt(u, v);
        var keel = side.PointAt(u, 0);
        double Height(double at)
        {
            var jet = side.JetAt(u, at);
            return jet.Point.Y * jet.V.Z;
        }

        var (entry, run, foreSlope, aftSlope) = hull.WaterlineIsIsoLine ? OnIsoLine(hull, v) : OnCut(hull);
        var (sheerFore, sheerAft, _, _) = OnIsoLine(hull, 1);
        var sheer = side.PointAt(u, 1);
        return new FormCoefficients(
            entry / (widest.Y * (widest.X - hull.WaterlineFore)),
            run / (widest.Y * (hull.WaterlineAft - widest.X)),
            Integral(side.V, Height, 0, v) / (widest.Y * (widest.Z - keel.Z)),
            Math.Atan2(foreSlope.Y, foreSlope.X),
            Math.Atan2(-aftSlope.Y, aftSlope.X),
            sheerFore / (sheer.Y * (sheer.X - side.PointAt(0, 1).X)),
            sheerAft / (sheer.Y * (side.PointAt(1, 1).X - sheer.X)));
    }

    private static (double Fore, double Aft, Vector3 ForeSlope, Vector3 AftSlope) OnIsoLine(HullSurface hull, double v)
    {
        double Width(double at)
        {
            var jet = hull.Side.JetAt(at, v);
            return jet.Point.Y * jet.U.X;
        }

        return (
            Integral(hull.Side.U, Width, 0, hull.WidestU),
            Integral(hull.Side.U, Width, hull.WidestU, 1),
            hull.Side.JetAt(0, v).U,
            hull.Side.JetAt(1, v).U);
    }

    private static (double Fore, double Aft, Vector3 ForeSlope, Vector3 AftSlope) OnCut(HullSurface hull)
    {
        var region = new WaterRegion(hull.Side, hull.Draft);
        double[] places = [.. region.Spans.SelectMany(s => s), hull.WidestU];
        double[] fore = [.. places.Where(u => u <= hull.WidestU).Distinct().Order()], aft = [.. places.Where(u => u >= hull.WidestU).Distinct().Order()];
        double Area(double[] breaks) => Quadrature.Over(
            (u, sums) =>
            {
                var (point, slope) = region.AlongAt(u);
                sums[0] = point.Y * slope.X;
            },
            [hull.Dials.Beam * hull.Dials.Length],
            breaks,
            CutTolerance)[0];
        return (Area(fore), Area(aft), EndSlope(fore[0], 1), EndSlope(aft[^1], -1));

        // Where the keel meets the stem just at the water, the waterline ends on a point at which it has no direction of its own: a hair inside it has.
        Vector3 EndSlope(double u, int inward)
        {
            var corner = Math.Min(u - hull.Side.U.Start, hull.Side.U.End - u) < Inside && region.WaterlineAt(u) < Inside;
            var at = corner ? u + (inward * Inside) : u;
            return hull.Side.JetAt(at, region.WaterlineAt(at)).V.Z > LeastRise * hull.Dials.Beam ? region.AlongAt(at).Slope : new Vector3(0, inward, 0);
        }
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
