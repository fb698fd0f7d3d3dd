using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Hydrostatics;

/// <summary>Where a skin passes a plane of constant x, line v by line v.</summary>
internal static class StationPlace
{
    /// <summary>Parameter u at which the skin reaches x on the line v, and whether it does; the nearer end where it does not.</summary>
    public static (double U, bool Reached) On(BSplineSurface skin, double x, double v)
    {
        double fore = skin.JetAt(skin.U.Start, v).Point.X, aft = skin.JetAt(skin.U.End, v).Point.X;
        if (fore >= x)
            return (skin.U.Start, fore == x);
        if (aft <= x)
            return (skin.U.End, aft == x);
        var u = Root.Between(
            at =>
            {
                var jet = skin.JetAt(at, v);
                return (jet.Point.X - x, jet.U.X);
            },
            skin.U.Start,
            skin.U.End);
        return (u, true);
    }
}
