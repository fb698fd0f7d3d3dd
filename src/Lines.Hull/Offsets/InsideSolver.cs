using Lines.Hull.Form;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Offsets;

/// <summary>Points of the inside of the planking on two planes at once.</summary>
/// <remarks>
/// <para><b>Method.</b> From the point of the outside on both planes the thickness is taken off in steps, each solved by Newton in
/// (u, v); where a step does not settle, the whole is done again in four times as many. A point that is followed so may cross
/// the centerplane, where both sides have met: then there is none. Where the skin turns so sharply that the following does not
/// settle at all (low down at a forefoot), the neighborhood is searched on a grid, the cell nearest to the outside point first.</para>
/// <para><b>Accuracy.</b> Within 1e-11 m of both planes.</para>
/// </remarks>
internal sealed class InsideSolver(HullSurface hull, double thickness)
{
    private const double Settled = 1e-11;
    private const int FewestSteps = 2;
    private const int MostSteps = 128;

    /// <summary>Newton steps within which a settled iteration has long been over: it doubles its digits each time.</summary>
    private const int NewtonLimit = 25;

    /// <summary>Cells each way of the grid that is searched.</summary>
    private const int Cells = 64;

    /// <summary>How far the search reaches from the outside point, in parameters.</summary>
    private const double Reach = 0.2;

    /// <summary>How far a solution may lie past the ends of the skin, in its parameters: planks are thin.</summary>
    private const double PastEnd = 0.1;

    /// <summary>The point of the inside on both planes.</summary>
    /// <param name="first">One plane.</param>
    /// <param name="second">The other plane.</param>
    /// <param name="u">Parameter of the point of the outside there.</param>
    /// <param name="v">Parameter of the point of the outside there.</param>
    /// <returns>The point; null where the inside has none there on this side of the centerplane.</returns>
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

        return Search(first, second, startU, startV);
    }

    // Cells in which both distances change sign hold the crossings; rows crowd toward the keel, where the skin turns.
    private Point3? Search(Plane first, Plane second, double startU, double startV)
    {
        var skin = InsetSkin.Of(hull, thickness);
        double[] us = [.. Enumerable.Range(0, Cells + 1).Select(i => startU + (Reach * ((2.0 * i / Cells) - 1))).Where(u => u is > 0 and < 1)];
        double[] vs = [.. Enumerable.Range(0, Cells + 1).Select(j => (startV + Reach) * Math.Pow(j / (double)Cells, 2)).Where(v => v is > 0 and <= 1)];
        var grid = us.Select(u => vs.Select(v => skin.At(u, v).Point).ToArray()).ToArray();
        var cells = new List<(double Far, double U, double V)>();
        for (var i = 1; i < us.Length; i++)
        {
            for (var j = 1; j < vs.Length; j++)
            {
                ReadOnlySpan<Point3> corners = [grid[i - 1][j - 1], grid[i - 1][j], grid[i][j - 1], grid[i][j]];
                double u = (us[i - 1] + us[i]) / 2, v = (vs[j - 1] + vs[j]) / 2;
                if (Straddles(first, corners) && Straddles(second, corners))
                    cells.Add((Math.Abs(u - startU) + Math.Abs(v - startV), u, v));
            }
        }

        foreach (var (_, u, v) in cells.OrderBy(c => c.Far))
        {
            if (Settle(skin, first, second, u, v) is { Point.Y: >= -Settled, U: >= 0 and <= 1, V: >= 0 and <= 1 } found)
                return found.Point;
        }

        return null;
    }

    private static bool Straddles(Plane plane, ReadOnlySpan<Point3> corners)
    {
        double low = double.PositiveInfinity, high = double.NegativeInfinity;
        foreach (var corner in corners)
        {
            var distance = plane.DistanceTo(corner);
            (low, high) = (Math.Min(low, distance), Math.Max(high, distance));
        }

        return low <= 0 && high >= 0;
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
