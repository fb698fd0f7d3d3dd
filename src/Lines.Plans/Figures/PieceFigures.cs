using Lines.Construction.Pieces;
using Lines.Kernel.Units;
using Lines.Plans.Building;

namespace Lines.Plans.Figures;

/// <summary>The figures of a hull that comes apart.</summary>
public static class PieceFigures
{
    /// <summary>Size, volume and weight of every piece, and the longest; no group for a hull in one piece.</summary>
    /// <param name="pieces">The pieces.</param>
    public static IReadOnlyList<FigureGroup> Of(IReadOnlyList<Piece> pieces)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        return pieces.Count < 2
            ? []
            :
            [
                new FigureGroup("pieces", "Pieces, from the bow",
                [
                    .. pieces.SelectMany(Figures),
                    new("longest_piece", "Longest piece", pieces.Max(p => p.Length), Quantity.Length) { Note = "saw cuts deducted; outer stems besides" },
                ]),
            ];
    }

    /// <summary>What does not go into the space the pieces are to be stored in, a sentence each.</summary>
    /// <param name="pieces">The pieces.</param>
    /// <param name="space">Length, breadth and height of the space [m]; null where it is not known.</param>
    /// <param name="notation">How lengths are written.</param>
    public static IEnumerable<string> TooLarge(IReadOnlyList<Piece> pieces, IReadOnlyList<double>? space, LengthNotation notation)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        return space is null
            ? []
            : pieces.Where(p => !p.Fits(space)).Select(p => $"{(pieces.Count == 1 ? "The hull" : Invariant($"Piece {p.Number}"))} does not go into the storage space: it is {Size(p.Stored, notation)} with outer stems and outwales, the space {Size(space, notation)}.");
    }

    /// <summary>Three lengths as people write a size.</summary>
    internal static string Size(IReadOnlyList<double> meters, LengthNotation notation) => string.Join(" x ", meters.Select(m => new Length(m).ToText(notation)));

    private static IEnumerable<Figure> Figures(Piece p)
    {
        string key = Invariant($"piece_{p.Number}"), name = Invariant($"Piece {p.Number}");
        yield return new(key, name, p.Length, Quantity.Length) { Note = p.Molds.Count > 0 ? "built over " + string.Join(", ", p.Molds.Select(m => m.Name)) : "no mold stands in it" };
        yield return new(key + "_breadth", name + ", breadth", p.Breadth, Quantity.Length);
        yield return new(key + "_height", name + ", height", p.Height, Quantity.Length);
        yield return new(key + "_volume", name + ", volume", p.Volume, Quantity.Volume) { Note = "level from sheer to sheer, to the outside" };
        yield return new(key + "_mass", name + ", to carry", p.Mass, Quantity.Mass) { IsEstimate = true, Note = Invariant($"with {p.Bulkheads.Count} {(p.Bulkheads.Count == 1 ? "bulkhead" : "bulkheads")}; {BuildingFigures.NotWeighed}") };
    }
}
