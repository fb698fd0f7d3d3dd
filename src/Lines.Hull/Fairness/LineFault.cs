namespace Lines.Hull.Fairness;

/// <summary>What a fault of a line looks like.</summary>
public enum FaultKind
{
    /// <summary>The line stands out over a short stretch and goes on as before.</summary>
    Bump,

    /// <summary>The line falls in over a short stretch and goes on as before.</summary>
    Dent,

    /// <summary>The line turns in one place, or within a few centimeters, and goes on in the new direction.</summary>
    Kink,

    /// <summary>The line curves inward.</summary>
    Hollow,

    /// <summary>The line bends less between two places that bend harder.</summary>
    Flat,
}

/// <summary>A fault of a line.</summary>
/// <param name="Kind">What it looks like.</param>
/// <param name="Size">Height of a bump, depth of a dent, hollow or flat; of a kink how far it stands off a batten with ducks 300 mm
/// apart [m], above 0.</param>
/// <param name="Turn">Angle of a kink [rad], positive where the line turns the way it bulges; 0 for other faults.</param>
/// <param name="Length">Length of the part of a bump, dent or kink that stands off by a tenth of its size or more [m]; 0 for hollows and flats.</param>
/// <param name="Place">Place along the line where it is greatest.</param>
public readonly record struct LineFault(FaultKind Kind, double Size, double Turn, double Length, double Place);

/// <summary>A fault of a hull's line with its place on the hull.</summary>
/// <param name="Fault">The fault.</param>
/// <param name="At">Its size, place and nearest station.</param>
public readonly record struct PlacedFault(LineFault Fault, Blemish At);
