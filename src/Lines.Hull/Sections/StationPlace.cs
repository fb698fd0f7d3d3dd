using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Sections;

/// <summary>Where a skin passes a plane of constant x, line v by line v.</summary>
/// <remarks><b>Frame.</b> That of the skin; x grows with u along every line of constant v. <b>Accuracy.</b> Rounding only.</remarks>
public static class StationPlace
{
    /// <summary>Samples of each spline span when the places at which an end passes the plane are bracketed.</summary>
    private const int SamplesPerSpan = 8;

    /// <summary>Parameter u at which the skin reaches x on the line v, and whether it does; the nearer end where it does not.</summary>
    /// <param name="skin">The skin.</param>
    /// <param name="x">The plane [m].</param>
    /// <param name="v">The line.</param>
    public static (double U, bool Reached) On(BSplineSurface skin, double x, double v)
    {
        ArgumentNullException.ThrowIfNull(skin);

        // By the jet, as the root finder reads it: two ways to add up one point differ in the last bit, and a bracket would be lost.
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

    /// <summary>The lines v on which an end of the skin passes the plane, rising.</summary>
    /// <param name="skin">The skin.</param>
    /// <param name="end">The end, u.</param>
    /// <param name="x">The plane [m].</param>
    public static IReadOnlyList<double> Passes(BSplineSurface skin, double end, double x)
    {
        ArgumentNullException.ThrowIfNull(skin);
        var found = new List<double>();
        var breaks = skin.V.Breaks;
        for (var i = 1; i < breaks.Count; i++)
        {
            for (var k = 0; k < SamplesPerSpan; k++)
            {
                double low = At(k), high = At(k + 1);
                if ((Profile(low).Off < 0) != (Profile(high).Off < 0))
                    found.Add(Root.Between(Profile, low, high));
            }

            double At(int k) => breaks[i - 1] + ((breaks[i] - breaks[i - 1]) * k / SamplesPerSpan);
        }

        return found;

        (double Off, double Slope) Profile(double v)
        {
            var jet = skin.JetAt(end, v);
            return (jet.Point.X - x, jet.V.X);
        }
    }
}
