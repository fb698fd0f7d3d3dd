using Lines.Kernel.Splines;

namespace Lines.Hull.Form;

/// <summary>How one end of the design waterline would lie if the other were not there, in a unit square.</summary>
/// <param name="Ordinate">Half-breadth at the end over that at the widest station.</param>
/// <param name="Slope">Slope there toward the widest station, by the same half-breadth and the distance to that station.</param>
internal readonly record struct EndAlone(double Ordinate, double Slope)
{
    private static readonly SplineBasis s_basis = SplineBasis.Clamped(3, [.. Enumerable.Range(0, 9).Select(k => k / 8.0)]);

    /// <summary>Bends a batten of this end alone, level at the widest station.</summary>
    /// <param name="fullness">Its area over the rectangle around it.</param>
    /// <param name="convex">Whether it must not turn hollow.</param>
    /// <param name="ends">Half-breadths between which it ends, over that at the widest station; null where it comes to a point.</param>
    public static EndAlone Of(double fullness, bool convex, (double Least, double Most)? ends)
    {
        using var line = new Batten(s_basis, [.. Enumerable.Range(0, s_basis.Count).Select(s_basis.GrevilleAt)]);
        line.Pass(1, 1);
        line.Slope(1, 0);
        line.Area(0, 1, fullness);
        if (ends is { } e)
        {
            line.AtLeast(0, e.Least);
            line.AtMost(0, e.Most);
        }
        else
        {
            line.Pass(0, 0);
        }

        if (convex)
            line.OneSided(-1);
        var lain = line.Solve();
        return new EndAlone(ends is null ? 0 : lain.At(0), lain.SlopeAt(0));
    }
}
