using Lines.Construction.Molds;
using Lines.Hull.Form;

namespace Lines.Design.Schema;

/// <summary>The limits that keys of a design put on each other, as far as plain arithmetic tells.</summary>
/// <remarks>What only the shaping of the hull can tell comes later, as a conflict of dials.</remarks>
internal static class KeyBounds
{
    /// <summary>A hull stouter than this is no slim hull: length over beam.</summary>
    private const double StoutestHull = 2.5;

    /// <summary>A hull slimmer than this is no boat: length over beam.</summary>
    private const double SlimmestHull = 30;

    /// <summary>The stem, or sternpost, ends this part of the length from its end: the widest station may be at 0.40.</summary>
    private const double LongestProfile = 0.4;

    /// <summary>More molds than this are a mistake in a unit.</summary>
    private const int MostMolds = 100;

    /// <summary>Planking thicker than this part of the beam is a mistake in a unit.</summary>
    private const double ThickestPlanking = 1 / 8.0;

    public static IReadOnlyList<KeyBound> Beam { get; } =
    [
        KeyBound.AtMost(
            Invariant($"the length / {StoutestHull}"),
            "hull.length",
            1 / StoutestHull,
            Invariant($"makes the hull less than {StoutestHull} times as long as broad, which is no slim hull")) with { Otherwise = ", or a longer hull" },
        KeyBound.AtLeast(
            Invariant($"the length / {SlimmestHull}"),
            "hull.length",
            1 / SlimmestHull,
            Invariant($"makes the hull more than {SlimmestHull} times as long as broad, too slim to carry anybody")) with { Otherwise = ", or a shorter hull" },
    ];

    public static IReadOnlyList<KeyBound> Draft { get; } =
        [KeyBound.LessThan("the depth", "hull.depth", "reaches the sheer: it is not below the depth")];

    public static IReadOnlyList<KeyBound> Sheer { get; } =
        [KeyBound.MoreThan("the draft", "hull.draft", "is under water: it is not above the draft")];

    public static IReadOnlyList<KeyBound> Profile { get; } =
    [
        KeyBound.AtMost(
            Invariant($"{LongestProfile} of the length"),
            "hull.length",
            LongestProfile,
            Invariant($"reaches over more than {LongestProfile * 100:F0} % of the length")),
    ];

    public static IReadOnlyList<KeyBound> Fullness { get; } =
    [
        new(
            IsUpper: false,
            Invariant($"{DialRange.FullnessWithoutHollow} unless hollow is true"),
            ["hull.hollow"],
            n => n("hull.hollow") > 0 ? null : DialRange.FullnessWithoutHollow,
            Invariant($"is below {DialRange.FullnessWithoutHollow}, which only hollow lines reach")) { Named = false, Otherwise = ", or hollow = true in the hull's table" },
    ];

    public static IReadOnlyList<KeyBound> Rake { get; } =
    [
        new(
            IsUpper: true,
            Invariant($"what brings its top {LongestProfile} of the length aft"),
            ["hull.length", "hull.stern.sheer"],
            n => n("hull.length") is { } length && n("hull.stern.sheer") is { } sheer ? Math.Atan(LongestProfile * length / sheer) : null,
            "lets the transom reach over more than the after body") { Named = false },
    ];

    public static IReadOnlyList<KeyBound> TransomBreadth { get; } =
        [KeyBound.AtMost("the beam", "hull.beam", 1, "is more than the beam")];

    public static IReadOnlyList<KeyBound> Immersion { get; } =
    [
        KeyBound.AtMost("the draft", "hull.draft", 1, "puts the foot of the transom below the keel"),
        KeyBound.AtLeast("half the draft clear of the water", "hull.draft", 1 - DialRange.GreatestRocker, "lifts the foot of the transom more than half the draft clear of the water"),
    ];

    public static IReadOnlyList<KeyBound> Crown { get; } =
        [KeyBound.AtMost("the beam / 4", "hull.beam", 0.25, "is more than a quarter of the beam")];

    public static IReadOnlyList<KeyBound> Planking { get; } =
        [KeyBound.AtMost("the beam / 8", "hull.beam", ThickestPlanking, "is more than 1/8 of the beam")];

    public static IReadOnlyList<KeyBound> MoldSpacing { get; } =
    [
        KeyBound.AtMost("the length / 2", "hull.length", 0.5, "is more than half the length"),
        KeyBound.AtLeast(Invariant($"the length / {MostMolds}"), "hull.length", 1.0 / MostMolds, Invariant($"makes more than {MostMolds} molds")),
        KeyBound.AtLeast("twice the mold stock", "build.mold_stock", 2, "leaves no room for the stock of two molds"),
    ];

    public static IReadOnlyList<KeyBound> Inside { get; } =
        [KeyBound.LessThan("the length", "hull.length", "is not between the ends of the hull")];

    /// <summary>Joints are saw cuts.</summary>
    public static KeyBound JointsApart { get; } = new(IsUpper: false, "1 mm", [], _ => 0.001, "") { Named = false };

    /// <summary>The stock of a mold ends before the next; what two at the widest station need more is for the molds to say.</summary>
    public static KeyBound MoldsApart { get; } = new(
        IsUpper: false,
        "the mold stock",
        ["build.mold_stock"],
        n => n("build.mold_stock") ?? DesignSchema.Builds.MoldStock,
        ", which leaves no room for the stock");

    public static IReadOnlyList<KeyBound> StrongbackTop { get; } =
    [
        new(
            IsUpper: false,
            Invariant($"the highest sheer + {Strongback.LeastClearance * 1000:F0} mm"),
            ["hull.depth", "hull.bow.sheer", "hull.stern.sheer"],
            n => n("hull.depth") is { } middle && n("hull.bow.sheer") is { } bow && n("hull.stern.sheer") is { } stern
                ? Math.Max(middle, Math.Max(bow, stern)) + Strongback.LeastClearance
                : null,
            Invariant($"is not {Strongback.LeastClearance * 1000:F0} mm clear of the highest sheer, past which the molds run on and need a foot")) { Otherwise = ", or leave it out" },
    ];

    public static IReadOnlyList<KeyBound> Rocker(string end) =>
    [
        KeyBound.AtMost(
            Invariant($"{DialRange.GreatestRocker} times the draft"), "hull.draft", DialRange.GreatestRocker, $"lifts the keel at the {end} more than half the draft clear of the water"),
    ];
}
