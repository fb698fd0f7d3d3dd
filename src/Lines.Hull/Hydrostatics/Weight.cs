using Lines.Kernel.Geometry;

namespace Lines.Hull.Hydrostatics;

/// <summary>A mass and its place: one thing aboard, or all of them together.</summary>
/// <param name="Mass">Mass [kg], not negative.</param>
/// <param name="Center">Center of gravity, hull frame.</param>
public readonly record struct Weight(double Mass, Point3 Center)
{
    /// <summary>All of several weights.</summary>
    /// <param name="weights">The weights; none, or none with a mass, gives mass 0 at the origin.</param>
    public static Weight Of(IEnumerable<Weight> weights)
    {
        ArgumentNullException.ThrowIfNull(weights);
        double mass = 0;
        Vector3 moment = default;
        foreach (var w in weights)
        {
            mass += w.Mass;
            moment += w.Mass * (w.Center - default(Point3));
        }

        return new Weight(mass, mass > 0 ? default(Point3) + ((1 / mass) * moment) : default);
    }

    /// <summary>Both together.</summary>
    public static Weight operator +(Weight a, Weight b) => Of([a, b]);
}
