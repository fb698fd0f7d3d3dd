using Lines.Kernel.Geometry;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Form;

/// <summary>One hull, starboard half, to the outside of planking: its skin and, where it is closed, its deck.</summary>
/// <remarks>
/// <para><b>Frame.</b> Hull frame: x aft from the foremost point, y to starboard, z up from the lowest point of the keel.
/// u runs from bow (0) to stern (1), v from keel (0) to sheer (1). The edge u = 0 is the stem profile (y = 0), u = 1 the
/// sternpost (y = 0) or the edge of the transom, v = 0 the keel (y = 0), v = 1 the sheer. The outward normal is V × U.</para>
/// <para>u = <see cref="WidestU"/> is the section at the widest station. The iso-line v = <see cref="WaterlineV"/> is the design waterline, but
/// toward an end whose foot reaches the waterline it rises above it: the waterline then ends on the keel, or lower on the stem.</para>
/// </remarks>
public sealed class HullSurface
{
    /// <summary>Heights closer than this are one [m]: far below the model length of 1 µm.</summary>
    private const double SameHeight = 1e-9;

    private readonly Lazy<double> _leastSheer;

    /// <summary>Makes the hull from its skin and the places the dials put.</summary>
    public HullSurface(BSplineSurface side, HullDials dials, double widestU, double waterlineV)
    {
        ArgumentNullException.ThrowIfNull(side);
        ArgumentNullException.ThrowIfNull(dials);
        Side = side;
        Dials = dials;
        WidestU = widestU;
        WaterlineV = waterlineV;
        WaterlineFore = WaterlineEnd(0);
        WaterlineAft = WaterlineEnd(1);
        WidestX = side.PointAt(widestU, waterlineV).X;
        _leastSheer = new(() => LeastSheerOf(side));
        if (dials.Stern is TransomStern t)
        {
            var normal = new Vector3(Math.Cos(t.Rake), 0, -Math.Sin(t.Rake));
            var foot = side.PointAt(1, 0);
            Transom = new Plane(normal, (normal.X * foot.X) + (normal.Z * foot.Z));
        }

        Deck = dials.Crown is { } crown ? DeckSurface.Over(side, crown, (dials.Stern as TransomStern)?.Rake ?? 0) : null;
        Patches = Deck is null ? [side] : [side, Deck];
    }

    /// <summary>The starboard skin.</summary>
    public BSplineSurface Side { get; }

    /// <summary>The starboard half of the deck, which shares the sheer with the skin; null on an open hull.</summary>
    /// <remarks>u as the skin's, v from the sheer (0) to the centerplane (1).</remarks>
    public BSplineSurface? Deck { get; }

    /// <summary>Skin and deck: a body is a list of patches, each with its outward normal V × U.</summary>
    public IReadOnlyList<BSplineSurface> Patches { get; }

    /// <summary>The dials the hull was made from.</summary>
    public HullDials Dials { get; }

    /// <summary>The widest section with its keel on the base line, for hulls of nearly the same dials; null on a hull that was not shaped from dials.</summary>
    internal MidshipSection? OnBase { get; init; }

    /// <summary>Parameter u of the section at the widest station.</summary>
    public double WidestU { get; }

    /// <summary>Parameter v of the design waterline.</summary>
    public double WaterlineV { get; }

    /// <summary>x of the fore end of the design waterline [m].</summary>
    public double WaterlineFore { get; }

    /// <summary>x of the after end of the design waterline [m].</summary>
    public double WaterlineAft { get; }

    /// <summary>x of the widest station [m].</summary>
    public double WidestX { get; }

    /// <summary>The plane of the transom, normal pointing aft; null for a pointed stern.</summary>
    public Plane? Transom { get; }

    /// <summary>Least height of the sheer [m]: a higher level water plane floods an open hull, and wets the deck of a closed one.</summary>
    public double LeastSheer => _leastSheer.Value;

    /// <summary>Least height of the sheer of a skin [m].</summary>
    /// <param name="side">The skin.</param>
    public static double LeastSheerOf(BSplineSurface side)
    {
        ArgumentNullException.ThrowIfNull(side);
        return -Peak.Over(u => -side.PointAt(u, 1).Z, [.. Enumerable.Range(0, 33).Select(k => k / 32.0)]).Value;
    }

    /// <summary>Height of the design waterline [m].</summary>
    public double Draft => Dials.Draft;

    /// <summary>Whether the iso-line v = <see cref="WaterlineV"/> is the design waterline all along.</summary>
    public bool WaterlineIsIsoLine => EndIsOnWaterline(0) && EndIsOnWaterline(1);

    private bool EndIsOnWaterline(double u) => Math.Abs(Side.PointAt(u, WaterlineV).Z - Draft) <= SameHeight;

    private double WaterlineEnd(double u)
    {
        if (EndIsOnWaterline(u))
            return Side.PointAt(u, WaterlineV).X;
        return Side.PointAt(u, 0).Z < Draft
            ? Side.PointAt(u, Root.FirstWhere(v => Side.PointAt(u, v).Z >= Draft, 0, 1)).X
            : Side.PointAt(Root.FirstWhere(t => Side.PointAt(t, 0).Z >= Draft, WidestU, u), 0).X;
    }

    /// <summary>Unit normal of the skin, out of the boat, at a pair of parameters.</summary>
    /// <remarks>At the very end of a sharp stem or keel the limit is not defined: use a parameter just inside.</remarks>
    public Vector3 NormalAt(double u, double v)
    {
        var jet = Side.JetAt(u, v);
        return jet.V.Cross(jet.U).Unit();
    }
}

/// <summary>What shaping a hull gave: the surface, or the dials that exclude each other.</summary>
/// <param name="Surface">The hull; null where the dials exclude each other.</param>
/// <param name="Conflicts">Why not; empty where there is a hull.</param>
public sealed record HullSolution(HullSurface? Surface, IReadOnlyList<DialConflict> Conflicts)
{
    /// <summary>The targets that cannot be met; null where all are.</summary>
    public TargetConflict? Unmet { get; init; }
}

/// <summary>A set of dials that no hull can meet together.</summary>
/// <param name="Reason">What is wrong, one clause without a full stop.</param>
/// <param name="Dials">The dials that exclude each other, each with the nearest value that would do alone.</param>
public sealed record DialConflict(string Reason, IReadOnlyList<DialHint> Dials)
{
    /// <summary>Whether no dial helps alone, and the values told are to be taken together.</summary>
    public bool Together { get; init; }
}

/// <summary>One dial of a conflict.</summary>
/// <param name="Dial">Which.</param>
/// <param name="Nearest">Nearest feasible value as it is told, the others kept, SI; null where none was found.</param>
public readonly record struct DialHint(Dial Dial, double? Nearest)
{
    /// <summary>Whether every line of the hull is fair with it.</summary>
    public bool Fair { get; init; }
}
