using Lines.Hull.Form;

namespace Lines.Construction.Molds;

/// <summary>The level beam the molds stand on, upside down.</summary>
/// <param name="ForeX">x of its fore end [m]: every running distance is measured from there.</param>
/// <param name="Length">Length [m].</param>
/// <param name="Top">Height of its top above the base line, hull upright [m].</param>
/// <param name="Width">Breadth over its top, which is the breadth of every mold's foot [m].</param>
public sealed record Strongback(double ForeX, double Length, double Top, double Width)
{
    /// <summary>Depth of the strongback unless the builder says otherwise [m]: common practice, no source.</summary>
    public const double UsualDepth = 0.090;

    /// <summary>Depth of its section, from its top down [m].</summary>
    public double Depth { get; init; } = UsualDepth;

    /// <summary>Clearance of the highest sheer from the strongback top unless the builder says otherwise: room for the label and clamps [m].</summary>
    public const double UsualClearance = 0.120;

    /// <summary>Least clearance of the highest sheer: the run-on past the sheer and a foot that holds a screw [m].</summary>
    public const double LeastClearance = 0.060;

    /// <summary>How far the strongback runs past each end of the hull at least [m].</summary>
    private const double Overrun = 0.100;

    /// <summary>Running distance of a place [m].</summary>
    public double DistanceTo(double x) => x - ForeX;

    /// <summary>Height above the strongback top of a height above the base line [m].</summary>
    public double HeightOf(double z) => Top - z;

    /// <summary>The strongback for a hull.</summary>
    /// <remarks>Its own sizes go up to the next <see cref="BuildDials.StrongbackStep"/>. Width: a third of the beam, 150 to 400 mm: common practice, no source.</remarks>
    /// <exception cref="BuildDialException">The asked top is too low.</exception>
    public static Strongback For(HullSurface hull, BuildDials build)
    {
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(build);
        // A transom under a crowned deck rises above its sheer, other molds end there.
        var sheer = Enumerable.Range(0, 201).Max(i => hull.Side.PointAt(i / 200.0, 1).Z);
        var highest = hull.Transom is not null && hull.Deck is { } deck ? Math.Max(sheer, deck.PointAt(1, 1).Z) : sheer;
        var least = UpToStep(highest + LeastClearance);
        if (build.StrongbackTop is { } asked && !(asked >= highest + LeastClearance))
        {
            throw new BuildDialException(
                "strongback_top", Invariant($"the strongback top must clear the highest sheer by {LeastClearance * 1000:F0} mm"), least);
        }

        var top = build.StrongbackTop ?? UpToStep(highest + UsualClearance);
        var width = build.StrongbackWidth ?? UpToStep(Math.Clamp(hull.Dials.Beam / 3, 0.150, 0.400));
        var overrun = UpToStep(Overrun);
        return new Strongback(-overrun, hull.Dials.Length + (2 * overrun), top, width) { Depth = build.StrongbackDepth };

        double UpToStep(double length) => Math.Ceiling((length / build.StrongbackStep) - 1e-7) * build.StrongbackStep;
    }
}

/// <summary>A dial of the building table that cannot be as asked.</summary>
/// <param name="key">Its key in the building table.</param>
/// <param name="reason">What is wrong, one clause.</param>
/// <param name="nearest">Nearest value that would do, SI; null where there is no one value.</param>
public sealed class BuildDialException(string key, string reason, double? nearest) : Exception(reason)
{
    /// <summary>Key in the building table.</summary>
    public string Key { get; } = key;

    /// <summary>Nearest value that would do, SI; null where there is no one value.</summary>
    public double? Nearest { get; } = nearest;

    /// <summary>What would be right where there is no one value, one clause; null where nothing is known.</summary>
    public string? Remedy { get; init; }
}
