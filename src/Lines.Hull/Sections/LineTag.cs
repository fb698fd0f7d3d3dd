namespace Lines.Hull.Sections;

/// <summary>Name, kind, place and axes of a hull line.</summary>
/// <param name="Kind">What the line is.</param>
/// <param name="Name">In words, such as "waterline 3".</param>
/// <param name="Label">As written on drawings, such as "WL 3".</param>
/// <param name="Position">x of a station, z of a waterline, y of a buttock, height on the centerplane of a diagonal [m].</param>
/// <param name="Axes">The axes in which the line is seen flat.</param>
/// <param name="OutwardSign">Sign of the curvature in those axes where the line bulges out of the boat: +1 or -1.</param>
public sealed record LineTag(LineKind Kind, string Name, string Label, double Position, FlatAxes Axes, int OutwardSign)
{
    /// <summary>Angle of a diagonal below level [rad]; 0 for every other line.</summary>
    public double Angle { get; init; }

    /// <summary>A station at x [m].</summary>
    public static LineTag Station(double x, string? number = null) =>
        new(LineKind.Station, number is null ? Invariant($"section at x = {1000 * x:F0} mm") : "station " + number, number ?? "", x, FlatAxes.Body, 1);

    /// <summary>A waterline at height z [m].</summary>
    public static LineTag Waterline(double z, string? number = null) =>
        new(LineKind.Waterline, number is null ? Invariant($"waterline at {1000 * z:F0} mm") : "waterline " + number, number is null ? "" : "WL " + number, z, FlatAxes.Plan, -1);

    /// <summary>The design waterline at height z [m].</summary>
    public static LineTag DesignWaterline(double z) => new(LineKind.Waterline, "design waterline", "DWL", z, FlatAxes.Plan, -1);

    /// <summary>A buttock at half-breadth y [m].</summary>
    public static LineTag Buttock(double y, string? number = null) =>
        new(LineKind.Buttock, number is null ? Invariant($"buttock at {1000 * y:F0} mm") : "buttock " + number, number is null ? "" : "B " + number, y, FlatAxes.Profile, 1);

    /// <summary>A diagonal from a height on the centerplane [m] at an angle below level [rad].</summary>
    public static LineTag Diagonal(double height, double angle, string? number = null) =>
        new(LineKind.Diagonal, number is null ? Invariant($"diagonal from {1000 * height:F0} mm") : "diagonal " + number, number is null ? "" : "D " + number, height, FlatAxes.Diagonal(height, angle), -1) { Angle = angle };

    /// <summary>The sheer, seen in plan.</summary>
    public static LineTag Sheer { get; } = new(LineKind.Sheer, "sheer", "sheer", 0, FlatAxes.Plan, -1);

    /// <summary>The keel.</summary>
    public static LineTag Keel { get; } = new(LineKind.Keel, "keel", "keel", 0, FlatAxes.Profile, 1);

    /// <summary>The stem profile.</summary>
    public static LineTag Stem { get; } = new(LineKind.Stem, "stem", "stem", 0, FlatAxes.Profile, 1);

    /// <summary>The sternpost of a pointed stern.</summary>
    public static LineTag Sternpost { get; } = new(LineKind.Stern, "sternpost", "sternpost", 0, FlatAxes.Profile, 1);

    /// <summary>The outline of a transom in its own plane.</summary>
    public static LineTag Transom(FlatAxes axes) => new(LineKind.Stern, "transom", "transom", 0, axes, 1);
}
