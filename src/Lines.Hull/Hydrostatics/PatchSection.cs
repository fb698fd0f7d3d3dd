using Lines.Hull.Sections;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Hydrostatics;

/// <summary>The cut of one patch of a hull by a station plane, up to a level water plane.</summary>
/// <param name="patch">The patch, starboard.</param>
/// <param name="x">Place of the station [m].</param>
/// <param name="height">Height of the water plane [m].</param>
internal sealed class PatchSection(BSplineSurface patch, double x, double height)
{
    /// <summary>What the patch adds to half the immersed area of the section: the integral of y dz [m²].</summary>
    /// <param name="least">The size below which that counts as nothing [m²].</param>
    /// <param name="tolerance">Relative error, above 0.</param>
    public double HalfArea(double[] least, double tolerance)
    {
        var half = 0.0;
        foreach (var (from, to) in Reaches())
        {
            if (to > from)
                half += Quadrature.Over(Strip, least, [from, .. patch.V.Breaks.Where(v => v > from && v < to), to], tolerance)[0];
        }

        return half;

        void Strip(double v, Span<double> values)
        {
            var (y, _, slope) = Along(v);
            values[0] = y * slope;
        }
    }

    // Intervals of v over which the station plane cuts the patch, each cut off at the water.
    private IEnumerable<(double From, double To)> Reaches()
    {
        List<double> ends = [patch.V.Start, .. StationPlace.Passes(patch, patch.U.Start, x), .. StationPlace.Passes(patch, patch.U.End, x), patch.V.End];
        ends.Sort();
        for (var i = 1; i < ends.Count; i++)
        {
            double from = ends[i - 1], to = ends[i], middle = (from + to) / 2;
            if (PlaceOf(patch.U.Start, middle) > x || PlaceOf(patch.U.End, middle) < x)
                continue;
            double low = Along(from).Z - height, high = Along(to).Z - height;
            if (low >= 0)
                continue;
            yield return (from, high <= 0 ? to : Root.Between(Height, from, to));
        }

        (double, double) Height(double v)
        {
            var (_, z, slope) = Along(v);
            return (z - height, slope);
        }
    }

    private double PlaceOf(double u, double v) => patch.JetAt(u, v).Point.X;

    private (double Y, double Z, double SlopeZ) Along(double v)
    {
        var jet = patch.JetAt(StationPlace.On(patch, x, v).U, v);
        return (jet.Point.Y, jet.Point.Z, jet.V.Z - (jet.U.Z * jet.V.X / jet.U.X));
    }
}
