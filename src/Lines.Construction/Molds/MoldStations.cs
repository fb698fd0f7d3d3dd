using Lines.Hull.Form;

namespace Lines.Construction.Molds;

/// <summary>Where the molds stand.</summary>
public static class MoldStations
{
    /// <summary>x of every mold station inside the hull, from the bow [m], whether or not a mold finds room there.</summary>
    /// <remarks>One at the widest station and the others spaced from it both ways, or those the builder lists.</remarks>
    /// <exception cref="BuildDialException">The spacing is not longer than the stock, or a listed station lies outside the hull.</exception>
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

            return [.. listed.Order().Distinct()];
        }

        var spacing = build.MoldSpacing;
        if (!(spacing > build.MoldStock && double.IsFinite(spacing)))
            throw new BuildDialException("mold_spacing", "the molds must stand farther apart than their stock is thick", Math.Max(0.1, 2 * build.MoldStock));
        var fore = (int)Math.Ceiling(hull.WidestX / spacing) - 1;
        var aft = (int)Math.Ceiling((length - hull.WidestX) / spacing) - 1;
        return [.. Enumerable.Range(-fore, fore + aft + 1).Select(k => hull.WidestX + (k * spacing))];
    }
}
