using System.Runtime.CompilerServices;
using Lines.Hull.Form;
using Lines.Hull.Sections;

namespace Lines.Hull.Fairness;

/// <summary>A hollow nobody asked for on some line of a hull, of its plan or between.</summary>
/// <param name="Line">The line.</param>
/// <param name="Hollow">The hollow.</param>
/// <param name="Limit">How deep it may be [m].</param>
internal sealed record UnaskedHollow(HullLine Line, Hollow Hollow, double Limit)
{
    /// <summary>Its depth as a part of what is allowed.</summary>
    public double Part => Hollow.Depth / Limit;

    /// <summary>Whether a hull is refused for it where it is too deep: that of a buttock is a matter of fairness alone.</summary>
    public bool ExcludesHull => Line.Kind != LineKind.Buttock;

    /// <summary>The line in words that say where it is, for it may be none of the plan.</summary>
    public string Subject => Line.Kind switch
    {
        LineKind.Waterline => Invariant($"the waterline {1000 * Line.Position:F0} mm above the base line"),
        LineKind.Station => Invariant($"the section {1000 * Line.Position:F0} mm aft of the foremost point"),
        LineKind.Diagonal => Invariant($"the diagonal from {1000 * Line.Position:F0} mm up the centerplane at {Line.Tag.Angle * 180 / Math.PI:F0} deg below level"),
        LineKind.Sheer => "the sheer in plan",
        _ => "the " + Line.Name,
    };
}

/// <summary>Looks for hollows nobody asked for on the lines of the plan and on many between them: a hull is asked for convex, not its plan.</summary>
internal static class UnaskedHollows
{
    private const double Degree = Math.PI / 180;

    /// <summary>Parts of the draft, and of the side above it, at which waterlines are cut.</summary>
    private const int BelowWater = 10, AboveWater = 8;

    /// <summary>Sections beside those of the plan.</summary>
    private const int Sections = 32;

    /// <summary>Heights on the centerplane, as parts of the side above the design waterline, from which diagonals are cut at each angle [deg below level].</summary>
    private static readonly double[] s_heights = [0.2, 0.4, 0.6, 0.85], s_angles = [25, 35, 50, 60];

    /// <summary>Heights of further waterlines, as parts of the height of a foot: where they turn round it they are hollow if anywhere.</summary>
    private static readonly double[] s_aroundFeet = [0.85, 0.92, 0.97, 1.01, 1.06, 1.15, 1.3];

    private static readonly ConditionalWeakTable<HullSurface, IReadOnlyList<UnaskedHollow>> Found = [];

    /// <summary>All of them, however shallow, line by line; looked for once.</summary>
    public static IReadOnlyList<UnaskedHollow> Of(HullSurface hull) => Found.GetValue(hull, static h => [.. Looked(h)]);

    private static IEnumerable<UnaskedHollow> Looked(HullSurface hull)
    {
        foreach (var line in Cuts(hull))
        {
            var intention = Intention.Of(line, hull);
            foreach (var hollow in Hollows.In(LineTrace.Of(line, intention.Axes, intention.OutwardSign), 0))
            {
                if (!intention.Asks(line.At(hollow.Place).Point))
                    yield return new UnaskedHollow(line, hollow, intention.HollowLimit);
            }
        }
    }

    private static IEnumerable<HullLine> Cuts(HullSurface hull)
    {
        var d = hull.Dials;
        var side = Math.Min(d.Depth, Math.Min(d.Bow.Sheer, d.Stern.Sheer)) - d.Draft;
        IEnumerable<double> low = new[] { d.Bow.Rocker, d.Stern.FootHeight }.Distinct().SelectMany(_ => s_aroundFeet, (foot, part) => part * foot).Where(z => z > 0 && z < d.Draft);
        double[] heights = [.. Enumerable.Range(1, BelowWater).Select(k => d.Draft * k / BelowWater), .. low, .. Enumerable.Range(1, AboveWater - 1).Select(k => d.Draft + (side * k / AboveWater))];
        var grid = LinesGrid.For(hull);
        return heights.SelectMany(z => Cut.Waterline(hull, z))
            .Concat(Enumerable.Range(1, Sections - 1).Select(k => d.Length * k / Sections).Concat(grid.Stations.Select(s => s.X)).SelectMany(x => Cut.Station(hull, x)))
            .Concat([Cut.Sheer(hull), Cut.Stern(hull)])
            .Concat(grid.Diagonals.Concat(s_heights.SelectMany(_ => s_angles, (h, a) => new DiagonalMark(d.Draft + (h * side), a * Degree))).SelectMany(m => Cut.Diagonal(hull, m.Height, m.Angle)))
            .Concat(grid.Buttocks.SelectMany(y => Cut.Buttock(hull, y)));
    }
}
