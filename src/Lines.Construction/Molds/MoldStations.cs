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
    /// <remarks>One at the widest station and the others spaced from it both ways, or those the builder lists; none in the room of a joint.</remarks>
    /// <exception cref="BuildDialException">Two molds leave no room for their stock, or a listed station lies outside the hull or in the room of a joint.</exception>
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

            foreach (var (x, joint) in listed.SelectMany(x => build.Joints.Where(j => StandsIn(j, x, hull.WidestX, build)).Select(j => (x, j))))
            {
                var (before, after) = Sides(joint, hull.WidestX, build);
                throw new BuildDialException("mold_at", Invariant($"the mold at {x:F3} m stands in the room of the joint at {joint:F3} m"), null)
                {
                    Remedy = Invariant($"set it at {Math.Floor(before * 1000) / 1000:F3} m or further forward, or at {Math.Ceiling(after * 1000) / 1000:F3} m or further aft"),
                };
            }

            return Apart([.. listed.Order()], hull.WidestX, build.MoldStock);
        }

        // The mold at the widest station and the next abaft it have their stock between them.
        var spacing = build.MoldSpacing;
        if (!(spacing >= 2 * build.MoldStock && double.IsFinite(spacing)))
            throw new BuildDialException("mold_spacing", "the stock of two molds finds no room between their stations", Math.Max(0.1, 2 * build.MoldStock));
        var fore = (int)Math.Ceiling(hull.WidestX / spacing) - 1;
        var aft = (int)Math.Ceiling((length - hull.WidestX) / spacing) - 1;
        return Clear([.. Enumerable.Range(-fore, fore + aft + 1).Select(k => hull.WidestX + (k * spacing))], hull, build);
    }

    /// <summary>How near to a joint no mold's stock may stand [m]: half the gap, the bulkhead, and room to work.</summary>
    public static double JointRoom(BuildDials build)
    {
        ArgumentNullException.ThrowIfNull(build);
        return (build.JointGap / 2) + build.BulkheadStock + build.JointClearance;
    }

    // Evenly spaced molds that would stand in the room of a joint move to its nearer side; one that then has no room beside another is not needed.
    private static List<double> Clear(IReadOnlyList<double> even, HullSurface hull, BuildDials build)
    {
        var places = new List<double>();
        foreach (var x in even.Select(x => build.Joints.Aggregate(x, (at, joint) => Beside(joint, at, hull.WidestX, build))).Order())
        {
            if (places.Count == 0 || x - places[^1] >= 2 * build.MoldStock)
                places.Add(x);
        }

        return places;
    }

    private static double Beside(double joint, double x, double widest, BuildDials build)
    {
        if (!StandsIn(joint, x, widest, build))
            return x;
        var (fore, aft) = Sides(joint, widest, build);
        return x - fore <= aft - x ? fore : aft;
    }

    private static bool StandsIn(double joint, double x, double widest, BuildDials build)
    {
        var (from, to) = MoldFaces.Stock(x, widest, build.MoldStock);
        return to > joint - JointRoom(build) + 1e-9 && from < joint + JointRoom(build) - 1e-9;
    }

    // The stations nearest to a joint whose stock, on the midship side, keeps clear of it.
    private static (double Fore, double Aft) Sides(double joint, double widest, BuildDials build)
    {
        double before = joint - JointRoom(build), after = joint + JointRoom(build);
        return (before - build.MoldStock <= widest ? before - build.MoldStock : before, after <= widest ? after : after + build.MoldStock);
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
