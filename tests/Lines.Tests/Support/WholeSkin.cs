using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Tests.Support;

/// <summary>Integrals over the whole of one side, up to the sheer.</summary>
internal static class WholeSkin
{
    /// <summary>Area [m²], and the flux of (0, y, 0): half the volume of the body closed by a transom and a deck level athwartships,
    /// which have none [m³].</summary>
    public static (double Area, double HalfVolume) Of(BSplineSurface side)
    {
        void Integrand(double u, double v, Span<double> values)
        {
            var jet = side.JetAt(u, v);
            var normal = jet.V.Cross(jet.U);
            (values[0], values[1]) = (normal.Length, jet.Point.Y * normal.Y);
        }

        IReadOnlyList<double> us = side.U.Breaks, vs = side.V.Breaks;
        var cells = from i in Enumerable.Range(1, us.Count - 1) from j in Enumerable.Range(1, vs.Count - 1) select new Cell(us[i - 1], us[i], vs[j - 1], vs[j]);
        var sums = Quadrature.Over(Integrand, [0, 0], [.. cells], 1e-9);
        return (sums[0], sums[1]);
    }
}
