using Lines.Construction;

namespace Lines.Plans.Figures;

/// <summary>The figures of a hull that comes apart.</summary>
public static class PieceFigures
{
    /// <summary>Length of every piece and of the longest; no group for a hull in one piece.</summary>
    /// <param name="length">Length of the hull [m].</param>
    /// <param name="joints">Take-apart planes, x from the foremost point [m].</param>
    public static IReadOnlyList<FigureGroup> Of(double length, IReadOnlyList<double> joints)
    {
        ArgumentNullException.ThrowIfNull(joints);
        if (joints.Count == 0)
            return [];
        var pieces = TakeApart.PieceLengths(length, joints);
        return
        [
            new FigureGroup("pieces", "Pieces, from the bow",
            [
                .. pieces.Select((p, k) => new Figure(Invariant($"piece_{k + 1}"), Invariant($"Piece {k + 1}"), p, Quantity.Length)),
                new("longest_piece", "Longest piece", pieces.Max(), Quantity.Length) { Note = "the space to store it must take this; saw cuts not deducted" },
            ]),
        ];
    }
}
