using Lines.Hull.Form;

namespace Lines.Construction.Molds;

/// <summary>Where the molds stand.</summary>
public static class MoldStations
{
    /// <summary>The key of the building table that says where the molds stand.</summary>
    public static string KeyOf(BuildDials build)
    {
        ArgumentNullException.ThrowIfNull(build);
        return build.MoldAt is null ? "mold_spacing" : "mold_at";
    }

    /// <summary>x of every mold station inside the hull, from the bow [m], whether or not a mold finds room there.</summary>
    /// <remarks>One at the widest station and the others spaced from it both ways, or those the builder lists.</remarks>
    /// <exception cref="BuildDialException">Two molds leave no room for their stock, or a listed station lies outside the hull.</exception>
    public static IReadOnlyList<double> Of(HullSurface hull, BuildDials build)
    {
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(build);
        var length = hull.Dials.Length;
        if (build.MoldAt is { Count: > 0 } listed)
        {
            foreach (var x in listed)
            {
                if (!(x > 0 && x < length))
                    throw new BuildDialException("mold_at", Invariant($"{x:F3} m is not between the ends of the hull"), null);
            }

            return Apart([.. listed.Order()], hull.WidestX, build.MoldStock);
        }

        // The mold at the widest station and the next abaft it have their stock between them.
        var spacing = build.MoldSpacing;
        if (!(spacing >= 2 * build.MoldStock && double.IsFinite(spacing)))
            throw new BuildDialException("mold_spacing", "the stock of two molds finds no room between their stations", Math.Max(0.1, 2 * build.MoldStock));
        var fore = (int)Math.Ceiling(hull.WidestX / spacing) - 1;
        var aft = (int)Math.Ceiling((length - hull.WidestX) / spacing) - 1;
        return [.. Enumerable.Range(-fore, fore + aft + 1).Select(k => hull.WidestX + (k * spacing))];
    }

    /// <summary>Listed stations, when the stock of each mold, on the side of the widest station, finds room.</summary>
    private static IReadOnlyList<double> Apart(IReadOnlyList<double> stations, double widest, double stock)
    {
        for (var k = 1; k < stations.Count; k++)
        {
            var (before, after) = (stations[k - 1], stations[k]);
            var least = before <= widest && after > widest ? 2 * stock : stock;
            if (!(after - before >= least - 1e-9))
            {
                throw new BuildDialException("mold_at", Invariant($"the stock of the molds at {before:F3} m and {after:F3} m finds no room between them"), null)
                {
                    Remedy = Invariant($"set them at least {least * 1000:0.#} mm apart"),
                };
            }
        }

        return stations;
    }
}
