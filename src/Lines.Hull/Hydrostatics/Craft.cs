using Lines.Hull.Form;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Hydrostatics;

/// <summary>All bodies that keep a boat afloat together.</summary>
/// <param name="Bodies">The bodies, the main hull first.</param>
public sealed record Craft(IReadOnlyList<FloatingBody> Bodies)
{
    /// <summary>Openings in a deck at which water comes in, each with points of its rim, hull frame.</summary>
    public IReadOnlyList<(string Name, IReadOnlyList<Point3> Rim)> Rims { get; init; } = [];

    /// <summary>All hulls of a vessel, with the openings through the main hull's deck that are not sealed.</summary>
    public static Craft Of(VesselShape vessel)
    {
        ArgumentNullException.ThrowIfNull(vessel);
        return new Craft([.. vessel.Hulls.Select(FloatingBody.Of)]) { Rims = [.. vessel.Openings.Where(o => !o.IsSealed).Select(o => (o.Name, Rim: o.Rim(vessel.Main))).Where(o => o.Rim.Count > 0)] };
    }

    /// <summary>The lowest point of the rims of all openings over a water plane, and which opening's it is; null without any.</summary>
    /// <param name="water">The water plane, hull frame.</param>
    public (double Height, Point3 At, string Name)? LowestRim(WaterPlane water)
    {
        (double Height, Point3 At, string Name)? lowest = null;
        foreach (var (name, rim) in Rims)
        {
            var at = rim.MinBy(water.HeightOf);
            if (lowest is not { } known || water.HeightOf(at) < known.Height)
                lowest = (water.HeightOf(at), at, name);
        }

        return lowest;
    }

    /// <summary>Height of the lowest place at which water comes in, open sheer or rim, over a water plane [m]; null where all is closed.</summary>
    /// <param name="water">The water plane, hull frame.</param>
    public double? LowestEntry(WaterPlane water) => (LowestSheer(water)?.Height, LowestRim(water)?.Height) switch
    {
        ({ } sheer, { } rim) => Math.Min(sheer, rim),
        var (sheer, rim) => sheer ?? rim,
    };

    /// <summary>What lies below a water plane, all bodies together.</summary>
    /// <param name="water">The water plane, hull frame.</param>
    /// <param name="tolerance">Relative error of each body's volume and area, above 0.</param>
    public Immersed Below(WaterPlane water, double tolerance)
    {
        var sum = default(Immersed);
        foreach (var body in Bodies)
            sum += body.Below(water, tolerance);
        return sum;
    }

    /// <summary>The lowest point of all open sheers over a water plane, and whose it is; null where all bodies are closed.</summary>
    /// <param name="water">The water plane, hull frame.</param>
    public (double Height, Point3 At, FloatingBody Body)? LowestSheer(WaterPlane water)
    {
        (double Height, Point3 At, FloatingBody Body)? lowest = null;
        foreach (var body in Bodies.Where(b => b.IsOpen))
        {
            var (height, at) = body.LowestSheer(water);
            if (lowest is not { } known || height < known.Height)
                lowest = (height, at, body);
        }

        return lowest;
    }

    /// <summary>Volume of all bodies, open ones to their sheer [m³].</summary>
    /// <param name="tolerance">Relative error, above 0.</param>
    public double WholeVolume(double tolerance) => Below(WaterPlane.LevelAt(Highest + 1), tolerance).Volume;

    /// <summary>A height above every body [m].</summary>
    internal double Highest => Bodies.Max(b => b.Reach(WaterPlane.LevelAt(0), 0.01).Highest);
}
