using Lines.Hull.Form;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Hydrostatics;

/// <summary>All bodies that keep a boat afloat together.</summary>
/// <param name="Bodies">The bodies, the main hull first.</param>
public sealed record Craft(IReadOnlyList<FloatingBody> Bodies)
{
    /// <summary>All hulls of a vessel.</summary>
    public static Craft Of(VesselShape vessel)
    {
        ArgumentNullException.ThrowIfNull(vessel);
        return new Craft([.. vessel.Hulls.Select(FloatingBody.Of)]);
    }

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
