using Lines.Kernel.Geometry;

namespace Lines.Hull.Hydrostatics;

/// <summary>How much more a boat carries before its least freeboard falls to a stated height.</summary>
public static class Allowance
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
    /// <param name="freeboard">Least freeboard to be kept [m].</param>
    /// <returns>The mass [kg]; 0 where even nothing more leaves too little.</returns>
    public static double Further(Craft craft, Weight weight, double density, WaterPlane start, Point3 place, double freeboard)
    {
        ArgumentNullException.ThrowIfNull(craft);
        if (!Keeps(0))
            return 0;
        double low = 0, high = Math.Max(1, weight.Mass / 8);
        while (Keeps(high))
            (low, high) = (high, 2 * high);
        while (high - low > Found)
        {
            var middle = (low + high) / 2;
            (low, high) = Keeps(middle) ? (middle, high) : (low, middle);
        }

        return low;

        bool Keeps(double mass)
        {
            var all = mass > 0 ? weight + new Weight(mass, place) : weight;
            // A boat that lolls when light may stand upright when loaded.
            var found = Equilibrium.Free(craft, all, density, start);
            if (found is not { Stable: true })
                found = Equilibrium.Free(craft, all, density, default);
            if (found is not { Stable: true })
                return false;
            var lowest = craft.LowestSheer(found.Water)?.Height ?? craft.Bodies[0].LowestSheer(found.Water).Height;
            if (!(lowest >= freeboard))
                return false;
            start = found.Water;
            return true;
        }
    }
}
