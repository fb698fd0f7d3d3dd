using Lines.Hull.Sections;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Offsets;

/// <summary>The table from which a boat is laid down full size: where the lines of a hull stand at its stations and ends.</summary>
/// <remarks>
/// <para><b>Frame.</b> Hull frame, starboard side. Heights are above the base line, half-breadths from the centerplane, offsets of
/// diagonals along the diagonal from the centerplane. A value is null where the line does not exist at the station.</para>
/// <para><b>Accuracy.</b> Every value is that of the surface, within 1e-9 m.</para>
/// </remarks>
/// <param name="Stations">The stations, bow first.</param>
/// <param name="Heights">Heights of sheer, buttocks (outermost first) and keel.</param>
/// <param name="HalfBreadths">Half-breadths of sheer and waterlines (highest first).</param>
/// <param name="Diagonals">Offsets of the diagonals (highest first).</param>
/// <param name="Ends">The profile of the ends: distances at sheer and waterlines (highest first).</param>
/// <param name="Forefoot">Where the stem meets the keel.</param>
/// <param name="Heel">Where the sternpost meets the keel, or the foot of the transom.</param>
/// <param name="Transom">The transom on its own true plane (highest first); empty for a pointed stern.</param>
/// <param name="TransomRake">Angle of the transom from plumb, positive where its top is aft [rad]; null for a pointed stern.</param>
/// <param name="Length">Foremost to aftmost point of the hull [m].</param>
/// <param name="StationSpacing">Distance between whole stations [m].</param>
/// <param name="Planking">Planking deducted, square to the surface [m]; 0 where the table is to the outside.</param>
public sealed record TableOfOffsets(
    IReadOnlyList<StationMark> Stations,
    IReadOnlyList<OffsetRow> Heights,
    IReadOnlyList<OffsetRow> HalfBreadths,
    IReadOnlyList<OffsetRow> Diagonals,
    IReadOnlyList<EndOffset> Ends,
    ProfileCorner Forefoot,
    ProfileCorner Heel,
    IReadOnlyList<TransomOffset> Transom,
    double? TransomRake,
    double Length,
    double StationSpacing,
    double Planking)
{
    /// <summary>The table to the outside of the planking.</summary>
    /// <param name="lines">The hull with its lines.</param>
    public static TableOfOffsets Outside(HullLines lines) => new OffsetsTaker(lines, 0).Table();

    /// <summary>The table to the inside of the planking.</summary>
    /// <remarks><b>Method.</b> The inside is the surface S − t n. Each value is the point of it at the station and on the plane of the
    /// line; the keel is where both insides meet on the centerplane, and so are stem and sternpost. The sheer is taken at the
    /// height it has on the outside, as it is marked on a mold.</remarks>
    /// <param name="lines">The hull with its lines.</param>
    /// <param name="planking">Thickness of the planking [m], above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The thickness is not above 0.</exception>
    public static TableOfOffsets Inside(HullLines lines, double planking)
    {
        if (!(planking > 0 && double.IsFinite(planking)))
            throw new ArgumentOutOfRangeException(nameof(planking), planking, "a table to the inside needs a planking thickness above 0");
        return new OffsetsTaker(lines, planking).Table();
    }
}

/// <summary>One line of a table of offsets with its value at every station.</summary>
/// <param name="Kind">What the line is.</param>
/// <param name="Label">As written on drawings: "sheer", "WL 3", "DWL", "B 1", "D 2", "keel".</param>
/// <param name="Position">Height of a waterline, half-breadth of a buttock, height of a diagonal on the centerplane [m]; null for sheer and keel.</param>
/// <param name="Angle">Angle of a diagonal below level [rad]; null for other lines.</param>
/// <param name="Values">Value at each station [m]; null where the line does not exist there.</param>
public sealed record OffsetRow(LineKind Kind, string Label, double? Position, double? Angle, IReadOnlyList<double?> Values)
{
    /// <summary>Points between the stations, from the bow: the ends of a buttock, and where a line turns faster than the stations follow.</summary>
    public IReadOnlyList<OffsetPoint> Between { get; init; } = [];

    /// <summary>0 for the row of the line itself; 1 and on where a line turns back along x, for what comes to a station once more.</summary>
    public int Back { get; init; }

    /// <summary>The row in words: "B 3", and "B 3 back" for what of it turns back.</summary>
    public string Name => Back switch { 0 => Label, 1 => Label + " back", _ => Invariant($"{Label} back {Back}") };
}

/// <summary>A point of a line between the stations.</summary>
/// <param name="X">x aft of the hull's foremost point [m].</param>
/// <param name="Value">Height, half-breadth or distance along the diagonal, as in the line's row [m].</param>
public readonly record struct OffsetPoint(double X, double Value)
{
    /// <summary>The point flat: x and value.</summary>
    public Point2 Flat => new(X, Value);
}

/// <summary>How far the profile stands from the ends of the hull at one height.</summary>
/// <param name="Label">The line at that height: "sheer", "WL 3", "DWL".</param>
/// <param name="Fore">Height at the fore end [m].</param>
/// <param name="AftOfFore">Aft of the hull's foremost point, to the stem's face or where the line leaves the keel [m].</param>
/// <param name="Aft">Height at the after end [m].</param>
/// <param name="ForwardOfAft">Forward of the hull's aftmost point, to the sternpost's face, the transom or the keel [m].</param>
public sealed record EndOffset(string Label, double Fore, double? AftOfFore, double Aft, double? ForwardOfAft);

/// <summary>A corner of the profile.</summary>
/// <param name="AftOfFore">Aft of the hull's foremost point [m].</param>
/// <param name="ForwardOfAft">Forward of the hull's aftmost point [m].</param>
/// <param name="Height">Height above the base line [m].</param>
public readonly record struct ProfileCorner(double AftOfFore, double ForwardOfAft, double Height);

/// <summary>The transom at one height.</summary>
/// <param name="Label">The line that crosses it there: "sheer", "WL 3".</param>
/// <param name="Height">Height above the base line [m].</param>
/// <param name="UpPlane">Distance from its foot up its own plane [m].</param>
/// <param name="HalfBreadth">Half-breadth [m]; null where the inside does not reach.</param>
public sealed record TransomOffset(string Label, double Height, double UpPlane, double? HalfBreadth);
