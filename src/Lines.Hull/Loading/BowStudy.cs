using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Units;

namespace Lines.Hull.Loading;

/// <summary>A steady thrust forward, as of a sail, held against the drag of the hulls.</summary>
/// <param name="Force">Force [N], above 0.</param>
/// <param name="Height">Its height above the water [m].</param>
public sealed record ForwardThrust(double Force, double Height);

/// <summary>What a boat has forward to keep her bow up, and how far a thrust puts it down: an estimate.</summary>
/// <remarks>
/// <para><b>Method.</b> The thrust and the drag, taken at half the draft of the main hull, make a couple; it trims the boat as the same moment of a weight moved
/// forward would, and the equilibrium is found anew. Steady force in calm water: no wave is met, no sheet let go, and the lift of a moving hull is not in it.</para>
/// <para><b>Accuracy.</b> Volumes to 1e-6; the greatest thrust to 0.1 N.</para>
/// </remarks>
/// <param name="Middle">The middle of the main hull's waterline, aft of her foremost point [m]: forward is forward of it.</param>
/// <param name="Waterplane">Area of the waterplane forward, all hulls [m²].</param>
/// <param name="Reserve">Volume forward between the water and the sheer or deck, all hulls [m³].</param>
/// <param name="Head">Height of the stem's head over the water [m], without the thrust.</param>
/// <param name="BowDown">Trim that the thrust adds, bow down [rad]; null where she finds no rest under it.</param>
/// <param name="HeadDriven">Height of the stem's head over the water under the thrust [m]; null as before.</param>
/// <param name="GreatestThrust">The greatest thrust at that height that leaves the sheer above water [N].</param>
public sealed record BowStudy(double Middle, double Waterplane, double Reserve, double Head, double? BowDown, double? HeadDriven, double GreatestThrust)
{
    private const double Integrals = 1e-8;

    /// <summary>Width to which the greatest thrust is found [N].</summary>
    private const double Found = 0.1;

    /// <summary>Studies a boat.</summary>
    /// <param name="shape">The shaped hulls.</param>
    /// <param name="weight">All weights together.</param>
    /// <param name="water">How she floats under them; her heel is held.</param>
    /// <param name="density">Density of the water [kg/m³].</param>
    /// <param name="thrust">The thrust.</param>
    public static BowStudy Of(VesselShape shape, Weight weight, WaterPlane water, double density, ForwardThrust thrust)
    {
        ArgumentNullException.ThrowIfNull(shape);
        ArgumentNullException.ThrowIfNull(thrust);
        if (!(thrust.Force > 0))
            throw new ArgumentOutOfRangeException(nameof(thrust), thrust.Force, "a force above 0 is wanted");
        var craft = Craft.Of(shape);
        var middle = (shape.Main.WaterlineFore + shape.Main.WaterlineAft) / 2;
        var fore = new Craft([.. shape.Hulls.Where(h => middle > h.Place.X).Select(h => CompartmentBody.Between(h, h.Name, 0, Math.Min(middle - h.Place.X, h.Surface.Dials.Length)))]);
        var below = fore.Below(water, Integrals);
        var head = shape.Main.Side.PointAt(0, 1);
        var driven = Under(thrust.Force);
        return new BowStudy(
            middle, below.Area, fore.WholeVolume(Integrals) - below.Volume, water.HeightOf(head), water.Trim - driven?.Water.Trim, driven?.Water.HeightOf(head), Greatest());

        Afloat? Under(double force)
        {
            var draft = water.Level - (water.Up.X * middle);
            var forward = force * (thrust.Height + (draft / 2)) / (weight.Mass * Standards.Gravity);
            var found = Equilibrium.AtHeel(craft, weight with { Center = weight.Center with { X = weight.Center.X - forward } }, density, water);
            return found is { TrimStiffness: > 0 } ? found : null;
        }

        bool Holds(double force) => Under(force) is { } at && (craft.LowestSheer(at.Water)?.Height ?? at.Water.HeightOf(head)) > 0;

        double Greatest()
        {
            if (!Holds(Found))
                return 0;
            double low = Found, high = 2 * Found;
            while (Holds(high))
                (low, high) = (high, 2 * high);
            while (high - low > Found)
                (low, high) = Holds((low + high) / 2) ? ((low + high) / 2, high) : (low, (low + high) / 2);
            return low;
        }
    }
}
