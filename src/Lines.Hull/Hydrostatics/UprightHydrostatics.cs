using Lines.Hull.Form;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Hydrostatics;

/// <summary>Volume, centers, areas and moments of a hull below a level water plane, integrated on the surface itself.</summary>
/// <remarks>
/// <para><b>Method.</b> Volume, center and the waterplane's area and moments are those of <see cref="FloatingBody"/> under a level plane. Wetted areas
/// are integrated here, each polynomial piece of the spline on its own, those that the water crosses up to the waterline v(u), and the ends and the
/// breadth of the waterline found on it. The deck of a closed hull is a second patch of the same surface: wherever the sheer is under water the body
/// goes on up to the deck (<see cref="DeckBelow"/>).</para>
/// <para><b>Accuracy.</b> The relative error of every integral is below the tolerance. The Wigley hull's closed forms are met to 1e-9.</para>
/// </remarks>
public static class UprightHydrostatics
{
    /// <summary>Water this high over the deck leaves no doubt that all of it is wet: the model length [m].</summary>
    private const double Clear = 1e-6;

    private static readonly double[] s_none = [0];

    /// <summary>What the hull displaces below the plane z = <paramref name="height"/>.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="height">Height of the water plane, hull frame [m].</param>
    /// <param name="tolerance">Relative error of every integral, above 0.</param>
    /// <returns>The figures, both sides. Nothing immersed is an answer, not an error: the volume is 0. A closed hull that is immersed whole has no waterplane.</returns>
    /// <exception cref="DownfloodingException">The plane is above the sheer of an open hull somewhere; carries the station.</exception>
    public static Buoyancy Below(HullSurface hull, double height, double tolerance)
    {
        ArgumentNullException.ThrowIfNull(hull);
        if (!double.IsFinite(height))
            throw new ArgumentOutOfRangeException(nameof(height), height, "the height of the water plane must be a number");
        var region = new WaterRegion(hull.Side, height, hull.Deck is not null);
        if (region.Spans.Count == 0)
            return new Buoyancy(height, 0, 0, null, null, 0, 0, null, null);
        var skin = SkinBelow(hull.Side, region, tolerance);
        var deck = hull.Deck is { } patch ? new DeckBelow(patch, height, tolerance) : null;
        var immersed = FloatingBody.LevelBelow(hull, height, tolerance);
        var waterplane = PlaneOf(deck is null ? [region] : [region, deck.Region], immersed);
        var sections = new SectionAreas(hull, height, tolerance);
        var (fore, aft) = waterplane is null || deck is { IsWet: true } ? sections.Extent : (waterplane.Fore, waterplane.Aft);
        return new Buoyancy(
            height,
            height - LowestKeel(hull, region),
            immersed.Volume,
            immersed.Center,
            waterplane,
            2 * skin,
            (hull.Transom is null ? 0 : TransomBelow(hull.Side, region, tolerance)) + (hull.Transom is { } plane && deck is not null ? deck.TransomAbove(plane, tolerance) : 0),
            sections.Greatest(fore, aft),
            waterplane is null ? null : sections.At((waterplane.Fore + waterplane.Aft) / 2))
        {
            Deck = 2 * (deck?.Area(skin) ?? 0),
        };
    }

    /// <summary>Volume and center of a closed hull up to its deck.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="tolerance">Relative error of the volume, above 0.</param>
    /// <returns>What it displaces when it is immersed whole; null for an open hull.</returns>
    public static Buoyancy? Enclosed(HullSurface hull, double tolerance)
    {
        ArgumentNullException.ThrowIfNull(hull);
        if (hull.Deck is not { } deck)
            return null;
        var highest = Enumerable.Range(0, deck.U.Count).Max(i => deck.PoleAt(i, deck.V.Count - 1).Z);
        return Below(hull, highest + Clear, tolerance);
    }

    /// <summary>Area of a skin below the water, one side [m²].</summary>
    internal static double SkinBelow(BSplineSurface side, WaterRegion region, double tolerance)
    {
        var (whole, topped) = region.Cells();
        var a = Quadrature.Over((u, v, values) => values[0] = AreaOf(side.JetAt(u, v)), s_none, whole, tolerance);
        var b = Quadrature.Over(
            (u, t, values) =>
            {
                var (v, rate) = region.BelowWaterline(u, t);
                values[0] = AreaOf(side.JetAt(u, v)) * rate;
            },
            a, // where the waterline lies on a knot line but for rounding, these cells are nothing beside the whole ones
            topped,
            tolerance);
        return a[0] + b[0];
    }

    /// <summary>Area of a patch of surface for unit steps of its parameters [m²].</summary>
    internal static double AreaOf(in SurfaceJet jet) => jet.V.Cross(jet.U).Length;

    /// <summary>The waterplane, bounded by the waterlines on all patches; null where a closed hull is immersed whole.</summary>
    private static Waterplane? PlaneOf(IReadOnlyList<WaterRegion> regions, Immersed immersed)
    {
        var lines = regions.SelectMany(r => r.Waterlines.Select(s => (Region: r, Span: s))).ToList();
        if (lines.Count == 0)
            return null;
        var (broadest, half) = lines.Select(l => Peak.Over(u => l.Region.AlongAt(u).Point.Y, l.Span) is var p ? (l.Region.AlongAt(p.At).Point, p.Value) : default).MaxBy(p => p.Value);
        return new Waterplane(
            lines.Min(l => l.Region.AlongAt(l.Span[0]).Point.X),
            lines.Max(l => l.Region.AlongAt(l.Span[^1]).Point.X),
            2 * half,
            broadest.X,
            immersed.Area,
            immersed.Flotation!.Value.X,
            immersed.TransverseMoment,
            immersed.LongitudinalMoment);
    }

    /// <summary>Area of the transom of a skin below the water, in its own plane, both sides [m²].</summary>
    internal static double TransomBelow(BSplineSurface side, WaterRegion region, double tolerance)
    {
        var top = region.WaterlineAt(side.U.End);
        if (top <= 0)
            return 0;
        var up = ((side.PointAt(side.U.End, side.V.End) - side.PointAt(side.U.End, side.V.Start)) with { Y = 0 }).Unit();
        double[] breaks = [.. side.V.Breaks.Where(v => v < top), top];
        return 2 * Quadrature.Over(Strip, [0.0], breaks, tolerance)[0];

        void Strip(double v, Span<double> values)
        {
            var jet = side.JetAt(side.U.End, v);
            values[0] = jet.Point.Y * jet.V.Dot(up);
        }
    }

    private static double LowestKeel(HullSurface hull, WaterRegion region) =>
        region.Spans.Min(s => -Peak.Over(u => -hull.Side.PointAt(u, 0).Z, s).Value);
}
