namespace Lines.Construction.Pieces;

/// <summary>A bulkhead that stays in the boat and is no part of a joint: under a beam, at the end of a deck or of a compartment.</summary>
/// <param name="Name">What it is for.</param>
/// <param name="At">x of its face away from midships [m]; its plywood stands on the midship side.</param>
/// <param name="Opening">Diameter of an opening in it [m]; null for none.</param>
public sealed record BulkheadPlace(string Name, double At, double? Opening);

/// <summary>An opening in bottom or deck: for a board case, a drive, a mast.</summary>
/// <param name="Name">What it is for.</param>
/// <param name="From">x of its fore end [m].</param>
/// <param name="To">x of its after end [m].</param>
/// <param name="Breadth">Its breadth [m].</param>
/// <param name="InDeck">Whether it is in the deck rather than the bottom.</param>
public sealed record HullOpening(string Name, double From, double To, double Breadth, bool InDeck)
{
    /// <summary>Its middle from the centerplane, to starboard [m]; negative to port.</summary>
    public double Aside { get; init; }

    /// <summary>Whether no water comes in there.</summary>
    public bool IsSealed { get; init; }

    /// <summary>How far from the centerplane it reaches [m].</summary>
    public double Reach => Math.Abs(Aside) + (Breadth / 2);
}

/// <summary>A bulkhead or opening that cannot be where the file puts it.</summary>
/// <param name="IsOpening">Whether an opening is meant; else a bulkhead.</param>
/// <param name="Index">Which of its kind in the file, from 0.</param>
/// <param name="What">What is wrong, one clause; its lengths are <see cref="Kernel.Units.Length"/> values.</param>
public sealed record Clash(bool IsOpening, int Index, FormattableString What);
