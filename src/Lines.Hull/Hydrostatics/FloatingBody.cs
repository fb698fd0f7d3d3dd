using System.Runtime.CompilerServices;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Hull.Hydrostatics;

/// <summary>A body that floats: the starboard half as patches, the port half their mirror image, placed somewhere in the boat.</summary>
/// <remarks>
/// <para><b>Frame.</b> The body's own: x aft, y to starboard from its own centerplane, z up; <see cref="Offset"/> places it in the hull frame. Of
/// each patch u runs aft and v from the keel upward, then inboard over a deck; the outward normal is V × U.</para>
/// <para>Patches join along v. Ends that leave the centerplane (a transom, a bulkhead) are flat and square to it. An open body has no deck; where
/// water stands above its sheer it is taken as decked level from side to side, and <see cref="LowestSheer"/> tells that it floods.</para>
/// </remarks>
public sealed class FloatingBody
{
    private static readonly ConditionalWeakTable<HullSurface, FloatingSkin[]> Made = [];

    private readonly FloatingSkin[] _skins;
    private readonly FloatingSkin _sheer;

    /// <summary>Makes a body of patches.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="patches">Starboard patches from the keel up; a deck's last edge lies on the centerplane.</param>
    /// <param name="open">Whether it is open along the last edge of the last patch.</param>
    /// <param name="offset">Place of its origin in the hull frame [m].</param>
    public FloatingBody(string name, IReadOnlyList<BSplineSurface> patches, bool open, Vector3 offset)
        : this(name, SkinsOf(patches, open), open, offset)
    {
    }

    private FloatingBody(string name, FloatingSkin[] skins, bool open, Vector3 offset)
    {
        (Name, IsOpen, Offset, _skins) = (name, open, offset, skins);
        _sheer = open ? skins[^2] : skins[0];
    }

    /// <summary>What it is called.</summary>
    public string Name { get; }

    /// <summary>Whether it is open to the sheer.</summary>
    public bool IsOpen { get; }

    /// <summary>Place of its origin in the hull frame [m].</summary>
    public Vector3 Offset { get; }

    /// <summary>The body of a hull: open to the sheer, or closed by its deck.</summary>
    /// <param name="hull">The hull at its place in the boat.</param>
    public static FloatingBody Of(PlacedHull hull)
    {
        ArgumentNullException.ThrowIfNull(hull);
        return new FloatingBody(hull.Name, Made.GetValue(hull.Surface, static h => SkinsOf(h.Patches, h.Deck is null)), hull.Surface.Deck is null, hull.Place);
    }

    /// <summary>What a hull displaces below a level plane, in its own frame.</summary>
    internal static Immersed LevelBelow(HullSurface hull, double height, double tolerance) =>
        Of(new PlacedHull("", hull, default)).Below(WaterPlane.LevelAt(height), tolerance);

    /// <summary>What lies below a water plane.</summary>
    /// <remarks>
    /// <para><b>Method.</b> Flux of (0, y, 0) and of its moments through the skin below the plane and through the waterplane, whose own moments
    /// are integrals along its rim (divergence theorem and Green's); flat ends and a level deck have no such flux. See <see cref="SkinClip"/>.</para>
    /// <para><b>Accuracy.</b> Relative error of volume and area below the tolerance; Wigley's hull is met to 1e-9.</para>
    /// </remarks>
    /// <param name="water">The water plane, hull frame.</param>
    /// <param name="tolerance">Relative error, above 0.</param>
    /// <returns>The integrals, hull frame; nothing immersed is an answer, not an error: the volume is 0.</returns>
    public Immersed Below(WaterPlane water, double tolerance)
    {
        if (!(tolerance > 0))
            throw new ArgumentOutOfRangeException(nameof(tolerance), tolerance, "the tolerance must be above 0");
        var own = water.From(Offset);

        // Where water grazes the sheer, skin and deck would each decide by rounding who is wet, a square root of rounding apart: it stands a hair lower.
        if (Math.Abs(LowestSheer(water).Height) < FloatingSkin.Touching)
            own = own with { Level = own.Level - (2 * FloatingSkin.Touching) };
        var resolution = Math.Min(0.01, Math.Sqrt(tolerance) / 4);
        Span<double> starboard = stackalloc double[SkinClip.Sums];
        Span<double> port = stackalloc double[SkinClip.Sums];
        foreach (var skin in _skins)
            skin.Add(own, resolution, starboard);
        if (own.Heel == 0)
        {
            starboard.CopyTo(port);
        }
        else
        {
            var mirrored = own with { Heel = -own.Heel };
            foreach (var skin in _skins)
                skin.Add(mirrored, resolution, port);
        }

        Span<double> both = stackalloc double[SkinClip.Sums];
        for (var k = 0; k < SkinClip.Sums; k++)
            both[k] = k is 2 or 6 or 8 ? starboard[k] - port[k] : starboard[k] + port[k];
        if (own.Heel != 0)
            AddFlatEnds(own, both[4..]);
        return Closed(own, both).Moved(Offset, water);
    }

    /// <summary>The lowest point of the sheer over a water plane, both sides: of the last edge of an open body, of the first patch's of a closed one.</summary>
    /// <param name="water">The water plane, hull frame.</param>
    /// <returns>Its height over the water [m], negative where an open body floods, and the place, hull frame.</returns>
    public (double Height, Point3 At) LowestSheer(WaterPlane water)
    {
        var own = water.From(Offset);
        var (starboard, port) = (_sheer.LowestEdge(own), _sheer.LowestEdge(own with { Heel = -own.Heel }));
        return starboard.Height <= port.Height
            ? (starboard.Height, starboard.At + Offset)
            : (port.Height, (port.At with { Y = -port.At.Y }) + Offset);
    }

    /// <summary>Heights of its lowest and highest points over a water plane [m].</summary>
    /// <param name="water">The water plane, hull frame.</param>
    /// <param name="tolerance">Greatest error [m], above 0.</param>
    public (double Lowest, double Highest) Reach(WaterPlane water, double tolerance)
    {
        var own = water.From(Offset);
        var mirrored = own with { Heel = -own.Heel };
        (double Least, double Greatest)[] reaches = [.. _skins.SelectMany(s => new[] { s.Reach(own, tolerance), s.Reach(mirrored, tolerance) })];
        return (reaches.Min(r => r.Least), reaches.Max(r => r.Greatest));
    }

    private void AddFlatEnds(WaterPlane own, Span<double> sums)
    {
        var corners = new (double A, double B)?[2];
        foreach (var skin in _skins)
        {
            skin.AddFlatEnds(own, mirrored: false, corners, sums);
            skin.AddFlatEnds(own with { Heel = -own.Heel }, mirrored: true, corners, sums);
        }
    }

    // Adds the flux through the waterplane, on which p = level up + a aft + b across.
    private static Immersed Closed(WaterPlane water, ReadOnlySpan<double> sums)
    {
        double area = sums[4], a = sums[5], b = sums[6], aa = sums[7], ab = sums[8], bb = sums[9];
        Vector3 up = water.Level * water.Up, aft = water.Aft, across = water.Across;
        double y = (up.Y * area) + (aft.Y * a) + (across.Y * b);
        double Mixed(double p0, double p1, double p2) =>
            (p0 * y) + (p1 * ((up.Y * a) + (aft.Y * aa) + (across.Y * ab))) + (p2 * ((up.Y * b) + (aft.Y * ab) + (across.Y * bb)));
        var share = water.Up.Y;
        return new Immersed(
            sums[0] + (share * y),
            new Vector3(
                sums[1] + (share * Mixed(up.X, aft.X, across.X)),
                sums[2] + (share / 2 * Mixed(up.Y, aft.Y, across.Y)),
                sums[3] + (share * Mixed(up.Z, aft.Z, across.Z))),
            area,
            a,
            b,
            aa,
            ab,
            bb);
    }

    // Patch by patch; an open body's level deck comes last.
    private static FloatingSkin[] SkinsOf(IReadOnlyList<BSplineSurface> patches, bool open)
    {
        ArgumentNullException.ThrowIfNull(patches);
        return [.. (open ? patches.Append(LevelDeck(patches[^1])) : patches).Select(p => new FloatingSkin(p))];
    }

    // Ruled from sheer to sheer: the starboard half, from the sheer to the centerline.
    internal static BSplineSurface LevelDeck(BSplineSurface side)
    {
        var poles = new Point3[side.U.Count, 2];
        for (var i = 0; i < side.U.Count; i++)
        {
            poles[i, 0] = side.PoleAt(i, side.V.Count - 1);
            poles[i, 1] = poles[i, 0] with { Y = 0 };
        }

        return new BSplineSurface(side.U, SplineBasis.Clamped(1, [0, 1]), poles);
    }
}
