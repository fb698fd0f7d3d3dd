using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Numerics;

namespace Lines.Hull.Hydrostatics;

/// <summary>Volume, centers, areas and moments of a hull below a level water plane, integrated on the surface itself.</summary>
/// <remarks>
/// <para><b>Method.</b> The volume is the flux of the field (0, y, 0), whose divergence is 1, through the skin; its first moments
/// are those of (0, xy, 0) and (0, zy, 0). The centerplane, the water plane and a transom, which is square to the
/// centerplane, have no flux of these fields, so they are closed exactly and the integrals run over the skin alone. Each
/// polynomial piece of the spline is integrated on its own, those that the water crosses up to the waterline v(u).</para>
/// <para><b>Accuracy.</b> The relative error of every integral is below the tolerance. The Wigley hull's closed forms are met to 1e-9.</para>
/// </remarks>
public static class UprightHydrostatics
{
    private static readonly double[] s_none = [0, 0, 0, 0];

    /// <summary>What the hull displaces below the plane z = <paramref name="height"/>.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="height">Height of the water plane, hull frame [m].</param>
    /// <param name="tolerance">Relative error of every integral, above 0.</param>
    /// <returns>The figures, both sides. Nothing immersed is an answer, not an error: the volume is 0.</returns>
    /// <exception cref="DownfloodingException">The plane is above the sheer somewhere; carries the station.</exception>
    public static Buoyancy Below(HullSurface hull, double height, double tolerance)
    {
        ArgumentNullException.ThrowIfNull(hull);
        if (!double.IsFinite(height))
            throw new ArgumentOutOfRangeException(nameof(height), height, "the height of the water plane must be a number");
        var region = new WaterRegion(hull.Side, height);
        if (region.Spans.Count == 0)
            return new Buoyancy(height, 0, 0, null, null, 0, 0, null, null);
        var (volume, center, skin) = Skin(hull, region, tolerance);
        var waterplane = PlaneOf(region, tolerance);
        var sections = new SectionAreas(hull.Side, height, tolerance);
        return new Buoyancy(
            height,
            height - LowestKeel(hull, region),
            volume,
            center,
            waterplane,
            skin,
            TransomBelow(hull, region, tolerance),
            sections.Greatest(waterplane.Fore, waterplane.Aft),
            sections.At((waterplane.Fore + waterplane.Aft) / 2));
    }

    private static (double Volume, Point3 Center, double Skin) Skin(HullSurface hull, WaterRegion region, double tolerance)
    {
        var (whole, topped) = region.Cells();
        var a = Quadrature.Over((u, v, values) => Fluxes(hull, u, v, 1, values), s_none, whole, tolerance);
        var b = Quadrature.Over(
            (u, t, values) =>
            {
                var (v, rate) = region.BelowWaterline(u, t);
                Fluxes(hull, u, v, rate, values);
            },
            a, // where the waterline lies on a knot line but for rounding, these cells are nothing beside the whole ones
            topped,
            tolerance);
        var volume = a[0] + b[0];
        return (2 * volume, new Point3((a[1] + b[1]) / volume, 0, (a[2] + b[2]) / volume), 2 * (a[3] + b[3]));
    }

    private static void Fluxes(HullSurface hull, double u, double v, double rate, Span<double> values)
    {
        var jet = hull.Side.JetAt(u, v);
        var normal = jet.V.Cross(jet.U);
        var flux = jet.Point.Y * normal.Y * rate;
        values[0] = flux;
        values[1] = jet.Point.X * flux;
        values[2] = jet.Point.Z * flux;
        values[3] = normal.Length * rate;
    }

    private static Waterplane PlaneOf(WaterRegion region, double tolerance)
    {
        var sums = new double[4];
        foreach (var span in region.Spans)
        {
            var part = Quadrature.Over(Strip, s_none, span, tolerance);
            for (var k = 0; k < sums.Length; k++)
                sums[k] += part[k];
        }

        var (broadest, half) = region.Spans.Select(s => Peak.Over(u => region.AlongAt(u).Point.Y, s)).MaxBy(p => p.Value);
        double area = 2 * sums[0], flotation = sums[1] / sums[0];
        return new Waterplane(
            region.AlongAt(region.Spans[0][0]).Point.X,
            region.AlongAt(region.Spans[^1][^1]).Point.X,
            2 * half,
            region.AlongAt(broadest).Point.X,
            area,
            flotation,
            2 * sums[3],
            (2 * sums[2]) - (area * flotation * flotation));

        void Strip(double u, Span<double> values)
        {
            var (p, slope) = region.AlongAt(u);
            values[0] = p.Y * slope.X;
            values[1] = p.X * values[0];
            values[2] = p.X * values[1];
            values[3] = p.Y * p.Y * values[0] / 3;
        }
    }

    private static double TransomBelow(HullSurface hull, WaterRegion region, double tolerance)
    {
        var top = region.WaterlineAt(hull.Side.U.End);
        if (hull.Transom is not { } plane || top <= 0)
            return 0;
        double[] breaks = [.. hull.Side.V.Breaks.Where(v => v < top), top];
        return 2 * Quadrature.Over(Strip, [0.0], breaks, tolerance)[0];

        // Heights are measured up the plane, whose direction is (−n_z, 0, n_x).
        void Strip(double v, Span<double> values)
        {
            var jet = hull.Side.JetAt(hull.Side.U.End, v);
            values[0] = jet.Point.Y * ((plane.Normal.X * jet.V.Z) - (plane.Normal.Z * jet.V.X));
        }
    }

    private static double LowestKeel(HullSurface hull, WaterRegion region) =>
        region.Spans.Min(s => -Peak.Over(u => -hull.Side.PointAt(u, 0).Z, s).Value);
}
