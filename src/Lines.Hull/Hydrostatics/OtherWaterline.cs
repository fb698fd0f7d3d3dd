using Lines.Hull.Form;
using Lines.Kernel.Numerics;

namespace Lines.Hull.Hydrostatics;

/// <summary>A hull with her waterline drawn at another height: the same skin, looked at as it floats under another weight.</summary>
public static class OtherWaterline
{
    /// <summary>The hull with another waterline.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="height">Height of the level waterline [m], above the keel and below the sheer at the widest station.</param>
    /// <returns>The hull; its widest station stays where it was shaped.</returns>
    /// <exception cref="DownfloodingException">The plane is above the sheer somewhere.</exception>
    public static HullSurface On(HullSurface hull, double height)
    {
        ArgumentNullException.ThrowIfNull(hull);
        if (!(height > hull.Side.PointAt(hull.WidestU, 0).Z))
            throw new ArgumentOutOfRangeException(nameof(height), height, "the waterline must be above the keel");
        if (!(height < hull.LeastSheer))
            throw new DownfloodingException(hull.WidestX, hull.LeastSheer, height);
        var onWidest = Root.FirstWhere(v => hull.Side.PointAt(hull.WidestU, v).Z >= height, 0, 1);
        return height == hull.Draft ? hull : new HullSurface(hull.Side, hull.Dials with { Draft = height }, hull.WidestU, onWidest);
    }
}
