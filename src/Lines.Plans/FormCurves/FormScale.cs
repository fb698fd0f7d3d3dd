using Lines.Plans.LinesPlan;

namespace Lines.Plans.FormCurves;

/// <summary>What a square of the grid is worth, in the unit shown.</summary>
/// <param name="Zero">Value at the left edge of the panel.</param>
/// <param name="PerSquare">Value of a square's width.</param>
internal readonly record struct FormScale(double Zero, double PerSquare)
{
    /// <summary>The largest picture in a round scale: 1, 2, 5 and their tens to a square.</summary>
    /// <param name="values">What must fit, at least one value.</param>
    /// <param name="squares">Squares there are.</param>
    /// <param name="fromZero">Whether the panel begins at zero rather than at the next round value below.</param>
    public static FormScale Of(IReadOnlyList<double> values, int squares, bool fromZero)
    {
        double least = fromZero ? 0 : values.Min(), most = values.Max();
        var perSquare = RoundNumber.AtLeast((most - least) / squares);
        while (true)
        {
            var zero = fromZero ? 0 : perSquare * Math.Floor(least / perSquare);
            if (most <= zero + (squares * perSquare * (1 + 1e-9)))
                return new FormScale(zero, perSquare);
            perSquare = RoundNumber.AtLeast(1.5 * perSquare);
        }
    }
}
