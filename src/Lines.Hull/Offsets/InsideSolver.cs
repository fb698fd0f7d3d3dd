using Lines.Hull.Form;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Offsets;

/// <summary>Points of the inside of the planking on two planes at once.</summary>
/// <remarks>
/// <para><b>Method.</b> From the point of the outside on both planes the thickness is taken off in steps, each solved by Newton in
/// (u, v); where a step does not settle, the whole is done again in four times as many. A point that is followed so either
/// crosses the centreplane, where both sides have met, or ends where the inside only touches the planes: then there is none.</para>
/// <para><b>Accuracy.</b> Within 1e-11 m of both planes.</para>
/// </remarks>
internal sealed class InsideSolver(HullSurface hull, double thickness)
{
    private const double Settled = 1e-11;
    private const int FewestSteps = 2;
    private const int MostSteps = 128;

    /// <summary>Newton steps within which a settled iteration has long been over: it doubles its digits each time.</summary>
    private const int NewtonLimit = 25;

    /// <summary>How far a solution may lie past the ends of the skin, in its parameters: planks are thin.</summary>
    private const double PastEnd = 0.1;

    /// <summary>The point of the inside on both planes.</summary>
    /// <param name="first">One plane.</param>
    /// <param name="second">The other plane.</param>
    /// <param name="u">Parameter of the point of the outside there.</param>
    /// <param name="v">Parameter of the point of the outside there.</param>
    /// <returns>The point; null where the inside has none there on this side of the centreplane.</returns>
    public Point3? On(Plane first, Plane second, double u, double v)
    {
        // At a corner of the skin, and along a sharp edge, the normal may be missing: begin a hair inside.
        double startU = Math.Clamp(u, 1e-6, 1 - 1e-6), startV = Math.Max(v, 1e-4);
        for (var steps = FewestSteps; steps <= MostSteps; steps *= 4)
        {
            InsetPoint? at = null;
            for (var k = 1; k <= steps; k++)
            {
                at = Settle(InsetSkin.Of(hull, thickness * k / steps), first, second, at?.U ?? startU, at?.V ?? startV);
                if (at is null)
                    break;
                if (at.Value.Point.Y < -Settled)
                    return null;
            }

            if (at is { } end)
                return end.Point;
        }

        return null;
    }

    private static InsetPoint? Settle(InsetSkin skin, Plane first, Plane second, double u, double v)
    {
        for (var i = 0; i < NewtonLimit; i++)
        {
            var p = skin.At(u, v);
            double f = first.DistanceTo(p.Point), g = second.DistanceTo(p.Point);
            if (Math.Abs(f) + Math.Abs(g) <= Settled)
                return p.IsSound ? p : null;
            double a = p.DU.Dot(first.Normal), b = p.DV.Dot(first.Normal), c = p.DU.Dot(second.Normal), d = p.DV.Dot(second.Normal);
            var det = (a * d) - (b * c);
            u -= ((f * d) - (g * b)) / det;
            v -= ((a * g) - (c * f)) / det;
            if (!(u is > -PastEnd and < 1 + PastEnd && v is > -PastEnd and < 1 + PastEnd))
                return null;
        }

        return null;
    }
}
