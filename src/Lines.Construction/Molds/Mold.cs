using Lines.Kernel.Geometry;
using Lines.Kernel.Units;

namespace Lines.Construction.Molds;

/// <summary>One mold or end pattern: what is cut, what is marked on it, and where it stands.</summary>
/// <remarks>
/// <para><b>Frame.</b> Outline, marks and holes are in <see cref="Frame"/> [m]: the labeled face seen square on, the mold standing upside
/// down on the strongback as in the shop, ordinate 0 at the strongback top (for the transom: where its plane meets that level).</para>
/// </remarks>
public sealed record Mold
{
    /// <summary>What it shapes.</summary>
    public required MoldKind Kind { get; init; }

    /// <summary>Number from the bow, 1 on; of a joint's bulkhead that of its joint, of others on from there; 0 for the ends.</summary>
    public required int Number { get; init; }

    /// <summary>Short name: M1, M2 ..., STEM, STERN, TRANSOM, B1 FORE, B1 AFT, B2 ....</summary>
    public string Name => Kind switch
    {
        MoldKind.Station => Invariant($"M{Number}"),
        MoldKind.Bulkhead => Purpose is null ? Invariant($"B{Number} {(IsForward ? "FORE" : "AFT")}") : Invariant($"B{Number}"),
        _ => NameOf(Kind),
    };

    /// <summary>What a bulkhead is for that is no part of a joint; null for those of joints and for molds.</summary>
    public string? Purpose { get; init; }

    /// <summary>Whether a bulkhead belongs to the piece forward of its joint: its labeled face looks aft, to the gap.</summary>
    public bool IsForward => Face == MoldFace.Stern;

    /// <summary>x of the station face [m]; for an end pattern that of its edge at the sheer.</summary>
    public required double X { get; init; }

    /// <summary>The direction the labeled face looks to; the label, the station line and the drawing are all of this face.</summary>
    public required MoldFace Face { get; init; }

    /// <summary>Where the drawing lies in space.</summary>
    public required MoldFrame Frame { get; init; }

    /// <summary>The closed outline to cut, counter-clockwise.</summary>
    public required ArcPath Outline { get; init; }

    /// <summary>Lines marked on the labeled face.</summary>
    public required IReadOnlyList<MoldMark> Marks { get; init; }

    /// <summary>Round holes.</summary>
    public required IReadOnlyList<MoldHole> Holes { get; init; }

    /// <summary>Heights above the strongback top, to set the mold up and check it.</summary>
    public required MoldHeights Heights { get; init; }

    /// <summary>Thickness of the stock it is cut from [m].</summary>
    public required double Stock { get; init; }

    /// <summary>x of the far face of a part square across [m]; that of others is <see cref="X"/>.</summary>
    public double FarX => X + (Face.StockSide() * Stock);

    /// <summary>Planking deducted, square to the skin [m].</summary>
    public required double Planking { get; init; }

    /// <summary>Inner cloth deducted with it, of a bulkhead [m].</summary>
    public double Sheathing { get; init; }

    /// <summary>How far the far face stands proud of the inside of the planking at worst [m]; 0 where it clears all round; null where it is not known,
    /// as of the ends.</summary>
    public double? Proud { get; init; }

    /// <summary>The planking's angles along the edge of a mold or transom; null for bulkheads, which are glued in.</summary>
    public EdgeBevels? Bevels { get; init; }

    /// <summary>Least and greatest bevel of the edge from square [rad], the far face being the larger; null where the edge stays square.</summary>
    public (double Least, double Greatest)? Bevel { get; init; }

    /// <summary>Height of the floor of the slot in which the profile mold that passes stands; null where none passes a station mold.</summary>
    public double? LapFloor { get; init; }

    /// <summary>Why no <see cref="MoldMarkKind.Apex"/> is marked beside a profile mold, one clause; null where it is marked or the mold has none.</summary>
    public FormattableString? WhyNoApex { get; init; }

    /// <summary>Greatest distance from the edge of a profile mold out to its <see cref="MoldMarkKind.Apex"/> [m]: how deep the inner stem must be; null without one.</summary>
    public double? InnerStemDepth { get; init; }

    /// <summary>That no apex is drawn and why, one clause; null where none is missing.</summary>
    /// <param name="notation">How lengths are written.</param>
    internal string? NoApex(LengthNotation notation) =>
        WhyNoApex is { } why ? $"{Name}: no APEX is drawn (where the insides of the planking meet on the centerline), for it could not be found: {why.Told(notation)}" : null;

    /// <summary>Whether it stays in the boat: boatbuilding plywood, better than molds want.</summary>
    public bool StaysInBoat => Kind is MoldKind.Bulkhead or MoldKind.Transom;

    /// <summary>Whether it is only the half to the right of the centerline, which is an edge of its outline.</summary>
    public bool IsHalf { get; init; }

    /// <summary>Distances from the strongback's fore end to the two ends of the mold's foot [m]; equal for a station mold's face.</summary>
    public required (double Fore, double Aft) Foot { get; init; }

    /// <summary>Name of the one mold of an end.</summary>
    internal static string NameOf(MoldKind end) => end switch
    {
        MoldKind.Stem => "STEM",
        MoldKind.Stern => "STERN",
        _ => "TRANSOM",
    };

    /// <summary>Whether starboard lies to the right on the drawing; null where the drawing is of the centerplane.</summary>
    public bool? StarboardRight => Face switch
    {
        MoldFace.Bow => true,
        MoldFace.Stern => false,
        _ => null,
    };
}

/// <summary>What a mold shapes.</summary>
public enum MoldKind
{
    /// <summary>The profile of the bow, in the centerplane.</summary>
    Stem,

    /// <summary>A section square across.</summary>
    Station,

    /// <summary>The profile of a pointed stern, in the centerplane.</summary>
    Stern,

    /// <summary>The transom in its own plane.</summary>
    Transom,

    /// <summary>A bulkhead, beside the saw cut of a joint or elsewhere; it stays in the boat.</summary>
    Bulkhead,
}

/// <summary>The side of the boat that a mold's labeled face looks to.</summary>
public enum MoldFace
{
    /// <summary>The bow; the stock stands aft of the line.</summary>
    Bow,

    /// <summary>The stern; the stock stands forward of the line.</summary>
    Stern,

    /// <summary>Starboard: a profile in the centerplane, its stock half to each side.</summary>
    Starboard,
}

/// <summary>Which way faces look, and to which side of them their stock stands.</summary>
public static class MoldFaces
{
    /// <summary>The face of a part square across that looks away from midships, so that its stock stands on the midship side of it.</summary>
    /// <param name="x">x of the face [m].</param>
    /// <param name="widestX">x of the widest station [m].</param>
    public static MoldFace AwayFromMidships(double x, double widestX) => x <= widestX ? MoldFace.Bow : MoldFace.Stern;

    /// <summary>The way from a face to its stock: 1 aft, -1 forward, 0 where it stands half to each side.</summary>
    public static int StockSide(this MoldFace face) => face switch
    {
        MoldFace.Bow => 1,
        MoldFace.Stern => -1,
        _ => 0,
    };

    /// <summary>Where the stock of a part square across stands, on the midship side of its face.</summary>
    /// <param name="x">x of the face [m].</param>
    /// <param name="widestX">x of the widest station [m].</param>
    /// <param name="stock">Thickness of the stock [m].</param>
    public static (double From, double To) Stock(double x, double widestX, double stock)
    {
        var far = x + (AwayFromMidships(x, widestX).StockSide() * stock);
        return (Math.Min(x, far), Math.Max(x, far));
    }
}

/// <summary>A line marked on a mold.</summary>
/// <param name="Kind">What it marks.</param>
/// <param name="Name">What is written at it.</param>
/// <param name="Path">The line in the mold's frame [m].</param>
/// <param name="Height">Height above the base line of a level mark [m]; null for an upright one.</param>
public sealed record MoldMark(MoldMarkKind Kind, string Name, ArcPath Path, double? Height);

/// <summary>What a mark on a mold stands for.</summary>
public enum MoldMarkKind
{
    /// <summary>A waterline of the grid, level across.</summary>
    Waterline,

    /// <summary>The design waterline, level across.</summary>
    DesignWaterline,

    /// <summary>The sheer, at the edges.</summary>
    Sheer,

    /// <summary>The centerline.</summary>
    Centerline,

    /// <summary>Where the insides of the planking of both sides meet on the centerplane, outside the edge of a profile mold.</summary>
    Apex,

    /// <summary>The side of an opening in bottom or deck, upright from the edge.</summary>
    Opening,

    /// <summary>The face of a station mold that a profile mold passes, upright over its slot.</summary>
    Station,
}

/// <summary>A round hole in a mold.</summary>
/// <param name="At">Center in the mold's frame [m].</param>
/// <param name="Diameter">Diameter [m].</param>
/// <param name="Kind">What it is for.</param>
public sealed record MoldHole(Point2 At, double Diameter, MoldHoleKind Kind);

/// <summary>What a hole in a mold is for.</summary>
public enum MoldHoleKind
{
    /// <summary>A screw to a cleat on the strongback; it is drilled.</summary>
    Screw,

    /// <summary>The jaw of a clamp that holds the inner stem or strips to the edge; it is cut.</summary>
    Clamp,

    /// <summary>A hole to sight or stretch a string through all molds; it is drilled.</summary>
    Sight,

    /// <summary>A bolt that holds two pieces together; it is drilled, through both bulkheads at once.</summary>
    Bolt,

    /// <summary>A hatch's or lightening hole's opening; it is cut.</summary>
    Opening,
}

/// <summary>Heights above the strongback top, the boat upside down [m].</summary>
/// <param name="Sheer">To the sheer mark.</param>
/// <param name="Waterline">To the design waterline; null where the mold does not reach it.</param>
/// <param name="Keel">To the edge at the centerline; for an end profile, where it meets the mold it butts against; for a mold it passes, that mold's level top.</param>
/// <param name="HalfBreadth">From the centerline to the edge at the sheer mark; for an end profile half its siding.</param>
public sealed record MoldHeights(double Sheer, double? Waterline, double Keel, double HalfBreadth);

/// <summary>Where a mold's drawing lies in the hull frame.</summary>
/// <param name="Origin">The drawing's origin, hull frame [m].</param>
/// <param name="Across">Unit vector of the abscissa, to the right as the labeled face is seen.</param>
/// <param name="Up">Unit vector of the ordinate, away from the strongback.</param>
public sealed record MoldFrame(Point3 Origin, Vector3 Across, Vector3 Up)
{
    /// <summary>Unit normal of the labeled face, toward who looks at it.</summary>
    public Vector3 TowardViewer => Across.Cross(Up);

    /// <summary>A point of the hull frame on the drawing.</summary>
    public Point2 ToDrawing(Point3 p) => new((p - Origin).Dot(Across), (p - Origin).Dot(Up));

    /// <summary>A displacement of the hull frame on the drawing.</summary>
    public Vector2 ToDrawing(Vector3 d) => new(d.Dot(Across), d.Dot(Up));

    /// <summary>A point of the drawing in the hull frame.</summary>
    public Point3 ToHull(Point2 p) => Origin + (p.X * Across) + (p.Y * Up);
}
