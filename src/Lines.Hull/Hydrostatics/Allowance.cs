using Lines.Kernel.Geometry;

namespace Lines.Hull.Hydrostatics;

/// <summary>What ends a further mass.</summary>
public enum AllowanceEnd
{
    /// <summary>With more her least freeboard is less than is to be kept.</summary>
    Freeboard,

    /// <summary>With more she comes to rest upright no longer.</summary>
    Rest,
}

/// <summary>How much more a boat carries before its least freeboard falls to a stated height.</summary>
/// <param name="Mass">The greatest further mass [kg]; 0 where even nothing more leaves too little.</param>
/// <param name="End">What ends it.</param>
public readonly record struct Allowance(double Mass, AllowanceEnd End)
{
    /// <summary>Mass to which the answer is found [kg]: under what any scale for people shows.</summary>
    private const double Found = 0.01;

    /// <summary>The greatest further mass.</summary>
    /// <remarks><b>Method.</b> Doubled until the freeboard is too small or the boat no longer floats, then halved. <b>Accuracy.</b> 0.01 kg, never too much.</remarks>
    /// <param name="craft">The bodies.</param>
    /// <param name="weight">All weights aboard.</param>
    /// <param name="density">Density of the water [kg/m³].</param>
    /// <param name="start">How it floats now.</param>
    /// <param name="place">Where the further mass is put.</param>
    /// <param name="freeboard">Least freeboard to be kept, of openings in the deck too [m].</param>
    /// <returns>The mass, and what ends it.</returns>
    public static Allowance Further(Craft craft, Weight weight, double density, WaterPlane start, Point3 place, double freeboard)
    {
        ArgumentNullException.ThrowIfNull(craft);
        if (EndAt(0) is { } already)
            return new Allowance(0, already);
        double low = 0, high = Math.Max(1, weight.Mass / 8);
        AllowanceEnd? end;
        while ((end = EndAt(high)) is null)
            (low, high) = (high, 2 * high);
        while (high - low > Found)
        {
            var middle = (low + high) / 2;
            if (EndAt(middle) is { } sooner)
                (high, end) = (middle, sooner);
            else
                low = middle;
        }

        return new Allowance(low, end.Value);

        // What a mass is too much for; null where it is not.
        AllowanceEnd? EndAt(double mass)
        {
            var all = mass > 0 ? weight + new Weight(mass, place) : weight;
            // A boat that lolls when light may stand upright when loaded.
            var found = Equilibrium.Free(craft, all, density, start);
            if (found is not { Stable: true })
                found = Equilibrium.Free(craft, all, density, default);
            if (found is not { Stable: true })
                return AllowanceEnd.Rest;
            var lowest = craft.LowestSheer(found.Water)?.Height ?? craft.Bodies[0].LowestSheer(found.Water).Height;
            if (!(lowest >= freeboard) || craft.LowestRim(found.Water)?.Height < freeboard)
                return AllowanceEnd.Freeboard;
            start = found.Water;
            return null;
        }
    }
}
