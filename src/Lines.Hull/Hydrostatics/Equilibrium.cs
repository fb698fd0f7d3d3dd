namespace Lines.Hull.Hydrostatics;

/// <summary>How a boat floats: the water plane at which buoyancy carries the weight and stands under it.</summary>
/// <param name="Water">The water plane.</param>
/// <param name="Immersed">What lies below it.</param>
/// <param name="Surplus">Buoyancy left over, as a fraction of the weight.</param>
/// <param name="LeverAft">Buoyancy aft of gravity [m]; under 1e-7 at equilibrium.</param>
/// <param name="LeverAcross">Buoyancy to starboard of gravity [m]; under 1e-7 at equilibrium in heel, the righting arm at a heel that is held.</param>
/// <param name="Stiffness">Rate at which that lever grows with heel at free trim [m/rad]: positive where the boat stays at this heel.</param>
/// <param name="TrimStiffness">Rate at which the lever aft grows with trim at the same weight [m/rad].</param>
public sealed record Afloat(WaterPlane Water, Immersed Immersed, double Surplus, double LeverAft, double LeverAcross, double Stiffness, double TrimStiffness)
{
    /// <summary>Whether it comes back when trimmed or heeled a little.</summary>
    public bool Stable => Stiffness > 0 && TrimStiffness > 0;
}

/// <summary>Finds how a boat floats, with heel free or held.</summary>
/// <remarks>
/// <para><b>Method.</b> Newton's method on level, trim and heel with the exact derivatives of <see cref="Balance"/>; a step that does not lessen
/// the misfit is halved. Where that leads nowhere it begins once more from the level that carries the weight at the trim and heel of the start.</para>
/// <para><b>Accuracy.</b> The residual of the computed buoyancy stays under 1e-9 of the weight, and under 1e-7 m of lever.</para>
/// </remarks>
public static class Equilibrium
{
    /// <summary>Residuals at which the search ends, a tenth of what is promised.</summary>
    private const double SurplusBound = 1e-10, LeverBound = 1e-8;

    /// <summary>Relative error of the integrals: under the residuals asked for.</summary>
    private const double Integrals = 1e-10;

    /// <summary>Greatest turn of one step [rad].</summary>
    private const double GreatestTurn = 0.2;

    /// <summary>Halvings of one step, and steps in all, after which there is no equilibrium to be found from here.</summary>
    private const int MostHalvings = 12, MostSteps = 60;

    /// <summary>The equilibrium with heel free.</summary>
    /// <param name="craft">The bodies.</param>
    /// <param name="weight">All weights together.</param>
    /// <param name="density">Density of the water [kg/m³].</param>
    /// <param name="start">Where to begin; its level is found first.</param>
    /// <returns>The equilibrium, stable or not; null where none was found from there, or the bodies cannot carry the weight.</returns>
    public static Afloat? Free(Craft craft, Weight weight, double density, WaterPlane start) => Find(craft, weight, density, start, free: 3);

    /// <summary>Level and trim at a heel that is held.</summary>
    /// <inheritdoc cref="Free"/>
    public static Afloat? AtHeel(Craft craft, Weight weight, double density, WaterPlane start) => Find(craft, weight, density, start, free: 2);

    /// <summary>Level and trim at a heel that is held, looked for over all trims up to 45 degrees.</summary>
    /// <remarks><b>Method.</b> The lever aft at the level of every third degree of trim; between two at which it turns from forward to aft the boat comes back
    /// to its trim. Of several the nearest to the start is taken: a boat that falls over its bow while it heels jumps from one to another.</remarks>
    /// <inheritdoc cref="AtHeel"/>
    internal static Afloat? AtHeelAnyTrim(Craft craft, Weight weight, double density, WaterPlane start)
    {
        const int Most = 15;
        var found = new List<Afloat>();
        Balance? before = null;
        for (var k = -Most; k <= Most; k++)
        {
            if (LevelOf(craft, weight.Mass / density, start with { Trim = k * Math.PI / 60 }) is not { } water)
                return null;
            Balance now = new(water, craft.Below(water, Integrals), weight.Mass / density, weight.Center);
            if (before is { LeverAft: < 0 } last && now.LeverAft >= 0
                && AtHeel(craft, weight, density, now.LeverAft < -last.LeverAft ? now.Water : last.Water) is { TrimStiffness: > 0 } afloat)
            {
                found.Add(afloat);
            }

            before = now;
        }

        return found.MinBy(a => Math.Abs(a.Water.Trim - start.Trim));
    }

    /// <summary>The level that carries a mass at a trim and heel that are held.</summary>
    /// <param name="craft">The bodies.</param>
    /// <param name="volume">Volume to be displaced [m³].</param>
    /// <param name="start">Trim and heel; the level is the first guess.</param>
    /// <param name="error">Relative error of the volume at which it ends; the usual is for a start that is bettered.</param>
    /// <returns>The water plane; null where the whole craft displaces less.</returns>
    public static WaterPlane? LevelOf(Craft craft, double volume, WaterPlane start, double error = 1e-3)
    {
        ArgumentNullException.ThrowIfNull(craft);
        var at = start with { Level = 0 };
        double low = craft.Bodies.Min(b => b.Reach(at, 1e-3).Lowest), high = craft.Bodies.Max(b => b.Reach(at, 1e-3).Highest) + 2e-3;
        if (!(craft.Below(at with { Level = high }, Integrals).Volume > volume))
            return null;
        var level = start.Level > low && start.Level < high ? start.Level : (low + high) / 2;
        while (high - low > 1e-12)
        {
            var now = craft.Below(at with { Level = level }, Integrals);
            var misfit = now.Volume - volume;
            if (Math.Abs(misfit) <= error * volume)
                break;
            (low, high) = misfit < 0 ? (level, high) : (low, level);
            var next = level - (misfit / now.Area);
            level = next > low && next < high ? next : (low + high) / 2;
        }

        return at with { Level = level };
    }

    private static Afloat? Find(Craft craft, Weight weight, double density, WaterPlane start, int free)
    {
        ArgumentNullException.ThrowIfNull(craft);
        if (!(weight.Mass > 0))
            throw new ArgumentOutOfRangeException(nameof(weight), weight.Mass, "a weight above 0 is wanted");
        var volume = weight.Mass / density;
        var near = At(start);
        if (Math.Abs(near.Surplus) < 0.5 && From(near) is { } found)
            return found;
        return LevelOf(craft, volume, start) is { } level ? From(At(level)) : null;

        Afloat? From(Balance now)
        {
            for (var step = 0; step < MostSteps; step++)
            {
                if (Math.Abs(now.Surplus) <= SurplusBound && Math.Abs(now.LeverAft) <= LeverBound && (free == 2 || Math.Abs(now.LeverAcross) <= LeverBound))
                    return Told(now);
                if (Better(now) is not { } next)
                    return null;
                now = next;
            }

            return null;
        }

        Balance At(WaterPlane water) => new(water, craft.Below(water, Integrals), volume, weight.Center);

        Balance? Better(Balance from)
        {
            if (Step(from, free) is not { } full)
                return null;
            var misfit = Misfit(from, free);
            for (var k = 0; k < MostHalvings; k++)
            {
                var part = Math.Pow(0.5, k);
                var water = from.Water;
                var next = At(new WaterPlane(water.Level + (part * full.Level), water.Trim + (part * full.Trim), water.Heel + (part * full.Heel)));
                if (Misfit(next, free) < misfit)
                    return next;
            }

            return null;
        }
    }

    // Volumes count like levers of the cube root of the volume.
    private static double Misfit(Balance b, int free)
    {
        double surplus = b.Surplus * Math.Cbrt(b.Volume), across = free == 3 ? b.LeverAcross : 0;
        return Math.Sqrt((surplus * surplus) + (b.LeverAft * b.LeverAft) + (across * across));
    }

    private static (double Level, double Trim, double Heel)? Step(Balance b, int free)
    {
        var k = b.Slopes();
        double[] r = [-b.Surplus * b.Volume, -b.LeverAft * b.Volume, -b.LeverAcross * b.Volume];
        for (var p = 0; p < free; p++)
        {
            if (k[p, p] == 0 || !double.IsFinite(k[p, p]))
                return null;
            for (var i = p + 1; i < free; i++)
            {
                var factor = k[i, p] / k[p, p];
                for (var j = p; j < free; j++)
                    k[i, j] -= factor * k[p, j];
                r[i] -= factor * r[p];
            }
        }

        var x = new double[3];
        for (var p = free - 1; p >= 0; p--)
        {
            x[p] = r[p];
            for (var j = p + 1; j < free; j++)
                x[p] -= k[p, j] * x[j];
            x[p] /= k[p, p];
        }

        var shrink = Math.Min(1, GreatestTurn / Math.Max(Math.Abs(x[1]), Math.Max(Math.Abs(x[2]), 1e-300)));
        return (shrink * x[0], shrink * x[1], shrink * x[2]);
    }

    private static Afloat Told(Balance b)
    {
        var k = b.Slopes();
        return new Afloat(
            b.Water, b.Immersed, b.Surplus, b.LeverAft, b.LeverAcross, b.StiffnessAtFreeTrim(), (k[1, 1] - (k[1, 0] * k[0, 1] / k[0, 0])) / b.Volume);
    }
}
