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
/// <param name="Further">Greatest further mass, at the center of the loads, that leaves the freeboard asked for; nothing where it does not float.</param>
/// <param name="Arms">Righting arms to starboard; where the boat is not alike on both sides, to port as well.</param>
/// <param name="Sails">Steady heel under sail to the side of each of the righting arms; empty without a rig or a crew, or where it does not float.</param>
public sealed record LoadCaseStudy(
    string Name,
    Weight Structure,
    IReadOnlyList<Load> Loads,
    CaseAfloat Afloat,
    Allowance Further,
    IReadOnlyList<RightingArms> Arms,
    IReadOnlyList<SailHeel> Sails)
{
    /// <summary>The boat swamped; empty where it was not looked at, nobody is aboard, or its main hull is decked and has no compartments.</summary>
    public IReadOnlyList<SwampedCase> Swamped { get; init; } = [];

    /// <summary>Forces along the main hull in still water, on a crest and in a trough; empty where they were not looked at, or it does not float.</summary>
    public IReadOnlyList<Bending> Bending { get; init; } = [];

    /// <summary>Studies the light ship and every load case of a vessel, on all cores.</summary>
    /// <param name="shape">The shaped hulls.</param>
    /// <param name="vessel">The vessel.</param>
    /// <param name="structure">The empty boat.</param>
    /// <param name="settings">What for.</param>
    public static IReadOnlyList<LoadCaseStudy> All(VesselShape shape, Vessel vessel, Structure structure, LoadSettings settings)
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(settings);
        var bending = new Lazy<BendingStudy>(() => new BendingStudy(shape));
        var swamped = new Lazy<Swamped>(() => new Swamped(shape, vessel.Compartments));
        return [.. LoadCase.All(vessel).AsParallel().AsOrdered().Select(Whole)];

        LoadCaseStudy Whole(LoadCase loading)
        {
            var study = Of(shape, vessel, structure, settings, loading);
            var density = settings.Water.Density;
            return study with
            {
                Swamped = loading.Loads.Count > 0 && (shape.Main.Deck is null || vessel.Compartments.Count > 0) ? swamped.Value.Under(study.Afloat.Weight, density) : [],
                Bending = study.Afloat.Afloat is { } afloat
                    ? [.. Enum.GetValues<WaveForm>().Select(w => bending.Value.In(afloat, study.Structure, [.. loading.Weights], density, w, settings.Joints)).OfType<Bending>()]
                    : [],
            };
        }
    }

    /// <summary>Studies how a vessel floats and stands up in one load case; swamped and bent she is not looked at.</summary>
    /// <param name="shape">The shaped hulls.</param>
    /// <param name="vessel">The vessel.</param>
    /// <param name="structure">The empty boat.</param>
    /// <param name="settings">What for.</param>
    /// <param name="loading">The case.</param>
    public static LoadCaseStudy Of(VesselShape shape, Vessel vessel, Structure structure, LoadSettings settings, LoadCase loading)
    {
        ArgumentNullException.ThrowIfNull(shape);
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(structure);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(loading);
        Weight empty = new(structure.Mass, structure.At), all = loading.With(structure);
        var (craft, density) = (Craft.Of(shape), settings.Water.Density);
        var afloat = CaseAfloat.Of(craft, all, density);
        if (afloat.Afloat is not { } floating)
            return new LoadCaseStudy(loading.Name, empty, loading.Loads, afloat, default, [], []);
        List<RightingArms> arms = [new(craft, all, density, toPort: false)];
        if (!shape.IsAlikeOnBothSides || all.Center.Y != 0)
            arms.Add(new RightingArms(craft, all, density, toPort: true));
        var place = loading.Loads.Count > 0 ? Weight.Of(loading.Weights).Center : all.Center;
        var further = afloat.State == FloatState.Floats ? Allowance.Further(craft, all, density, floating.Water, place, settings.Freeboard) : default;
        IReadOnlyList<SailHeel> sails = vessel.Rig is { } rig && afloat.State == FloatState.Floats && loading.Loads.Count > 0
            ? [.. arms.Select(a => SailHeel.Of(rig, a, arms.FirstOrDefault(o => o.ToPort != a.ToPort), all.Mass, afloat.Hulls[0].Depth, settings.Wind))]
            : [];
        return new LoadCaseStudy(loading.Name, empty, loading.Loads, afloat, further, arms, sails);
    }
}
