using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Strength;
using Lines.Kernel.Units;

namespace Lines.Hull.Loading;

/// <summary>What load cases are studied for.</summary>
/// <param name="Water">The water.</param>
/// <param name="Freeboard">Least freeboard to be kept [m].</param>
/// <param name="Wind">Wind for the steady heel under sail [m/s].</param>
/// <param name="Joints">Take-apart joints, aft of the foremost point [m].</param>
public sealed record LoadSettings(Water Water, double Freeboard, double Wind, IReadOnlyList<double> Joints)
{
    /// <summary>Freeboard kept where none is asked [m]: a hand's breadth (common practice, no source).</summary>
    public const double UsualFreeboard = 0.1;

    /// <summary>Wind where none is asked [m/s]: 12 knots.</summary>
    public const double UsualWind = 12 * Standards.Knot;
}

/// <summary>All that is found out about one load case.</summary>
/// <param name="Name">Name of the case.</param>
/// <param name="Structure">The empty boat.</param>
/// <param name="Loads">What it carries.</param>
/// <param name="Afloat">How it floats.</param>
/// <param name="Further">Greatest further mass, at the center of the loads, that leaves the freeboard asked for [kg].</param>
/// <param name="Arms">Righting arms to starboard; where the boat is not alike on both sides, to port as well.</param>
/// <param name="Sails">Steady heel under sail to the side of each of the righting arms; empty without a rig or a crew, or where it does not float.</param>
/// <param name="Swamped">The boat swamped; empty where its main hull is decked, or nobody is aboard.</param>
/// <param name="Bending">Forces along the main hull in still water, on a crest and in a trough; empty where it does not float.</param>
public sealed record LoadCaseStudy(
    string Name,
    Weight Structure,
    IReadOnlyList<Load> Loads,
    CaseAfloat Afloat,
    double Further,
    IReadOnlyList<RightingArms> Arms,
    IReadOnlyList<SailHeel> Sails,
    IReadOnlyList<SwampedCase> Swamped,
    IReadOnlyList<Bending> Bending)
{
    /// <summary>Name of the case without loads.</summary>
    public const string LightShip = "light ship";

    /// <summary>Studies the light ship and every load case of a vessel, on all cores.</summary>
    /// <param name="shape">The shaped hulls.</param>
    /// <param name="vessel">The vessel.</param>
    /// <param name="structure">The empty boat.</param>
    /// <param name="settings">What for.</param>
    public static IReadOnlyList<LoadCaseStudy> All(VesselShape shape, Vessel vessel, Structure structure, LoadSettings settings)
    {
        ArgumentNullException.ThrowIfNull(shape);
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(structure);
        ArgumentNullException.ThrowIfNull(settings);
        var craft = Craft.Of(shape);
        var bending = new Lazy<BendingStudy>(() => new BendingStudy(shape));
        var swamped = new Lazy<Swamped>(() => new Swamped(shape, vessel.Compartments));
        LoadCase[] cases = [.. vessel.Cases.Any(c => LightShip.Equals(c.Name, StringComparison.OrdinalIgnoreCase)) ? Array.Empty<LoadCase>() : [new LoadCase(LightShip, [])], .. vessel.Cases];
        return [.. cases.AsParallel().AsOrdered().Select(Of)];

        LoadCaseStudy Of(LoadCase loading)
        {
            Weight empty = new(structure.Mass, structure.At), all = Weight.Of([empty, .. loading.Loads.Select(AsWeight)]);
            var density = settings.Water.Density;
            var afloat = CaseAfloat.Of(craft, all, density);
            IReadOnlyList<SwampedCase> full = craft.Bodies[0].IsOpen && loading.Loads.Count > 0 ? swamped.Value.Under(all, density) : [];
            if (afloat.Afloat is not { } floating)
                return new LoadCaseStudy(loading.Name, empty, loading.Loads, afloat, 0, [], [], full, []);
            List<RightingArms> arms = [new(craft, all, density, toPort: false)];
            if (!shape.IsAlikeOnBothSides || all.Center.Y != 0)
                arms.Add(new RightingArms(craft, all, density, toPort: true));
            var place = loading.Loads.Count > 0 ? Weight.Of(loading.Loads.Select(AsWeight)).Center : all.Center;
            var further = afloat.State == FloatState.Floats ? Allowance.Further(craft, all, density, floating.Water, place, settings.Freeboard) : 0;
            IReadOnlyList<SailHeel> sails = vessel.Rig is { } rig && afloat.State == FloatState.Floats && loading.Loads.Count > 0
                ? [.. arms.Select(a => SailHeel.Of(rig, a, all.Mass, afloat.Hulls[0].Depth, settings.Wind))]
                : [];
            var bent = Enum.GetValues<WaveForm>()
                .Select(w => bending.Value.In(floating, empty, [.. loading.Loads.Select(AsWeight)], density, w, settings.Joints)).OfType<Bending>();
            return new LoadCaseStudy(loading.Name, empty, loading.Loads, afloat, further, arms, sails, full, [.. bent]);
        }

        static Weight AsWeight(Load load) => new(load.Mass, load.At);
    }
}
