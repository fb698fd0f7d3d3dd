using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Loading;
using Lines.Hull.Strength;
using Lines.Kernel.Units;

namespace Lines.Plans.Figures;

/// <summary>The figures of load cases: afloat, righting arms, swamped, bending; every case has the same figures in the same order, one that rests with openings in its deck one more.</summary>
public static class LoadCaseFigures
{
    /// <summary>Why there is no heel under sail where her arms end as water comes in.</summary>
    public const string SheFills = "water comes in: it blows harder than the greatest wind she holds";

    /// <summary>Why there is no heel under sail where her arms end dry.</summary>
    public const string SheCapsizes = "she capsizes: it blows harder than the greatest wind she holds";

    /// <summary>Beginning of the groups' keys; the name of the case follows.</summary>
    public const string GroupKey = "case_";

    private const string NotAfloat = "the boat comes to no rest afloat";

    /// <summary>All groups of a case.</summary>
    /// <param name="hull">The main hull.</param>
    /// <param name="study">The case.</param>
    /// <param name="freeboard">Least freeboard to be kept [m].</param>
    public static IReadOnlyList<FigureGroup> Of(HullSurface hull, LoadCaseStudy study, double freeboard) =>
        [Afloat(hull, study, freeboard), .. Arms(study), .. Swamped(study), .. Bending(study)];

    /// <summary>How a case floats.</summary>
    public static FigureGroup Afloat(HullSurface hull, LoadCaseStudy study, double freeboard)
    {
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(study);
        var case_ = study.Afloat.Rests ? study.Afloat : study.Afloat with { Afloat = null, Freeboard = null, Opening = null, Hulls = [] };
        var (immersed, center) = (case_.Afloat?.Immersed, case_.Weight.Center);
        var flotation = case_.Afloat is { } a && immersed?.Flotation is { } f ? (f.X * a.Water.Aft.X) + (a.Water.Up.X * a.Water.Level) : (double?)null;
        return new FigureGroup(KeyOf(study), $"{study.Name}: {StateOf(study.Afloat)}",
        [
            new("floats", "Floats dry and upright", case_.State == FloatState.Floats ? 1 : 0, Quantity.Count) { Note = StateOf(study.Afloat) },
            new("mass", "Mass, all told", case_.Weight.Mass, Quantity.Mass),
            new("center_aft", "Center of gravity", center.X, Quantity.Length) { Note = "aft of the foremost point" },
            new("center_to_starboard", "Center of gravity to starboard", center.Y, Quantity.Length),
            new("center_height", "Center of gravity, height", center.Z, Quantity.Length) { Note = "above the base line" },
            Known("heel", "Heel, to starboard", case_.Afloat?.Water.Heel, Quantity.Angle),
            Known("trim", "Trim, by the stern", case_.DraftAt(hull.WaterlineAft) - case_.DraftAt(hull.WaterlineFore), Quantity.Length) with { Note = "between the ends of the design waterline" },
            Known("draft_fore", "Draft forward", case_.DraftAt(hull.WaterlineFore), Quantity.Length) with { Note = "at the fore end of the design waterline, from the base line" },
            Known("draft_aft", "Draft aft", case_.DraftAt(hull.WaterlineAft), Quantity.Length) with { Note = "at its after end" },
            Known("freeboard_least", "Least freeboard", case_.Freeboard?.Height, Quantity.Length) with { Note = "calm water, crew still" },
            Known("freeboard_at", "Least freeboard at", case_.Freeboard?.At.X, Quantity.Length) with { Note = "aft of the foremost point" },
            .. case_.Opening is { } opening ? [new Figure("opening_least", "Lowest opening in the deck", opening.Height, Quantity.Length) { Note = $"{opening.Name}: its rim, at the deck, over water" }] : Array.Empty<Figure>(),
            new("further_mass", "Further mass allowed", study.Further.Mass, Quantity.Mass) { Note = "at the center of the loads; with more " + (study.Further.End == AllowanceEnd.Rest ? "she comes to rest no more" : Invariant($"her freeboard is under {1000 * freeboard:0} mm")) },
            new("crew_and_gear", "Crew and gear allowed, with those aboard", Allowed(study, freeboard), Quantity.Mass)
            {
                Note = Invariant($"keeping {1000 * freeboard:0} mm of freeboard, calm water"),
                Why = Invariant($"with those aboard she does not float upright, or keeps less than {1000 * freeboard:0} mm of freeboard"),
            },
            new("capacity", "Displacement to the sheer", case_.Capacity, Quantity.Mass) { Note = "all hulls, immersed to sheer or deck" },
            .. case_.Hulls.SelectMany(HullOf),
            Known("waterplane_area", "Waterplane area", immersed?.Area, Quantity.Area),
            Known("center_of_buoyancy_aft", "Center of buoyancy", immersed?.Center?.X, Quantity.Length) with { Note = "aft of the foremost point" },
            Known("center_of_buoyancy_height", "Center of buoyancy, height", immersed?.Center?.Z, Quantity.Length),
            Known("center_of_flotation_aft", "Center of flotation", flotation, Quantity.Length) with { Note = "aft of the foremost point" },
            Known("metacentric_height_free_trim", "Metacentric height, athwart, free trim", study.Afloat.FreeMetacentricHeight, Quantity.Length) with { Note = "above the center of gravity: what her righting arms begin with" },
            Known("metacentric_height", "Metacentric height, athwart, trim held", study.Afloat.TransverseMetacentricHeight, Quantity.Length) with { Note = "of the waterplane alone" },
            Known("metacentric_height_long", "Metacentric height, lengthwise", case_.LongitudinalMetacentricHeight, Quantity.Length),
            Known("moment_to_trim", "Moment to trim", case_.MomentToTrim(hull.WaterlineAft - hull.WaterlineFore), Quantity.TrimMoment) with { Note = "over the design waterline" },
            Known("immersion", "Immersion", 100 * case_.WeightToSink, Quantity.MassPerLength) with { Note = "mass that sinks her so far" },
        ]);
    }

    /// <summary>Righting arms, a group for each side computed.</summary>
    public static IReadOnlyList<FigureGroup> Arms(LoadCaseStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return [.. study.Arms.Select(a => new FigureGroup(
            $"{KeyOf(study)}_to_{SideOf(a)}", $"{study.Name}: righting arms to {SideOf(a)}", [.. Stability(study, a), .. a.Curve.Select(ArmOf)]))];
    }

    /// <summary>What the righting arms of one side come to.</summary>
    public static IReadOnlyList<Figure> Stability(LoadCaseStudy study, RightingArms arms)
    {
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(arms);
        var greatest = arms.Greatest;
        return
        [
            Maybe("rests_at", "Rests at a heel of", arms.Rests ? arms.From : null, "it comes to no rest on this side"),
            new("range", "Range", arms.Range, Quantity.Angle) { Note = "over which she comes back, dry" },
            Maybe("downflooding", "Water comes in at", arms.Downflooding, "nothing open goes under"),
            Maybe("vanishing", "Righting arm ends at", arms.Vanishing, arms.From is null ? "it comes to no rest on this side" : "it lasts to 180 degrees") with { Note = "open hulls taken as decked" },
            .. arms.Lost is { } lost ? [new Figure("lost", "No trim carries her beyond", lost, Quantity.Angle) { Note = "she stands on end" }] : Array.Empty<Figure>(),
            new("greatest_arm", "Greatest righting arm", greatest?.Arm, Quantity.Length) { Why = "there is no range" },
            new("greatest_moment", "Greatest righting moment", study.Afloat.Weight.Mass * greatest?.Arm, Quantity.MassMoment) { Why = "there is no range" },
            Maybe("greatest_arm_at", "Greatest righting arm at", greatest?.Heel, "there is no range"),
            new("area", "Area under the arms", arms.Area, Quantity.RightingArea) { Note = "within the range" },
            .. arms.Floats().SelectMany(f => new[]
            {
                Maybe(Slug(f.Body.Name) + "_submerges", $"{FigureText.Capital(f.Body.Name)} goes under at", f.Submerges, f.StartsUnder ? "it is under from the first" : "it does not go under before her righting arm ends"),
                Maybe(Slug(f.Body.Name) + "_lifts_clear", $"{FigureText.Capital(f.Body.Name)} lifts clear at", f.LiftsClear, f.StartsClear ? "it is clear of the water from the first" : "it does not lift clear before her righting arm ends"),
            }),
            .. study.Sails.Zip(study.Arms).Where(s => s.Second == arms).SelectMany(s => SailOf(s.First, arms)),
        ];
    }

    /// <summary>Boats full of water; a group for each thing holed.</summary>
    public static IReadOnlyList<FigureGroup> Swamped(LoadCaseStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return [.. study.Swamped.Select(s => new FigureGroup(
            $"{KeyOf(study)}_swamped{(s.Holed is { } h ? "_" + Slug(h) + "_holed" : "")}",
            $"{study.Name}, swamped{(s.Holed is { } name ? $", {name} holed" : "")}: {StateOf(s.Afloat)}",
            [
                new("floats", "Floats", s.Afloat.State is FloatState.Floats ? 1 : 0, Quantity.Count) { Note = StateOf(s.Afloat) },
                new("reserve", "Sealed buoyancy less the weight", s.Reserve, Quantity.Mass),
                new("sheer", "Lowest sheer above water", s.Afloat.Rests ? s.Sheer : null, Quantity.Length) { Why = NotAfloat, Note = "negative is under it" },
                Known("heel", "Heel, to starboard", s.Afloat.Rests ? s.Afloat.Afloat?.Water.Heel : null, Quantity.Angle),
                Known("trim_angle", "Trim, by the stern", s.Afloat.Rests ? s.Afloat.Afloat?.Water.Trim : null, Quantity.Angle),
            ]))];
    }

    /// <summary>Forces along the main hull; a group for each kind of water.</summary>
    public static IReadOnlyList<FigureGroup> Bending(LoadCaseStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return [.. study.Bending.Select(b => new FigureGroup(
            $"{KeyOf(study)}_bending_{b.Wave.ToString().ToLowerInvariant()}",
            $"{study.Name}, along the hull: {WaterOf(b)}",
            [
                new("wave_height", "Wave, trough to crest", b.Height, Quantity.Length),
                new("moment_greatest", "Greatest bending moment", b.Worst.Moment, Quantity.Moment) { IsEstimate = true, Note = "positive where the middle sags" },
                new("moment_greatest_at", "Greatest bending moment at", b.Worst.X, Quantity.Length),
                new("shear_greatest", "Greatest shear", Math.Abs(b.WorstShear.Shear), Quantity.Force) { IsEstimate = true },
                new("shear_greatest_at", "Greatest shear at", b.WorstShear.X, Quantity.Length),
                .. b.Joints.SelectMany((j, k) => new Figure[]
                {
                    new(Invariant($"joint_{k + 1}"), Invariant($"Joint {k + 1} at"), j.X, Quantity.Length),
                    new(Invariant($"joint_{k + 1}_moment"), Invariant($"Joint {k + 1} moment"), j.Moment, Quantity.Moment) { IsEstimate = true },
                    new(Invariant($"joint_{k + 1}_shear"), Invariant($"Joint {k + 1} shear"), j.Shear, Quantity.Force) { IsEstimate = true },
                    new(Invariant($"joint_{k + 1}_tension"), Invariant($"Joint {k + 1} tension"), j.Tension, Quantity.Force) { IsEstimate = true, Note = j.Moment > 0 ? "bolts at the keel" : "bolts at the sheer" },
                }),
            ]))];
    }

    /// <summary>How a case ends, one clause with its numbers.</summary>
    public static string StateOf(CaseAfloat afloat)
    {
        ArgumentNullException.ThrowIfNull(afloat);
        return afloat.State switch
        {
            FloatState.Floats when afloat.Lolls => Invariant($"floats at an angle of loll of {Math.Abs(afloat.Afloat!.Water.Heel) * 180 / Math.PI:0.0} deg: she does not stay upright"),
            FloatState.Floats => "floats",
            FloatState.Floods when afloat.Opening is { Height: < 0 } o => Invariant($"FLOODS: {o.Name}, open through the deck, is {-1000 * o.Height:0} mm under water at {o.At.X:0.00} m{Side(o.At.Y)}"),
            FloatState.Floods => Invariant($"FLOODS: the sheer is {-1000 * afloat.Freeboard!.Value.Height:0} mm under water at {afloat.Freeboard.Value.At.X:0.00} m{Side(afloat.Freeboard.Value.At.Y)}"),
            FloatState.Capsizes => "CAPSIZES: comes to no rest under 90 deg of heel and 45 of trim; held upright, " + Upset(afloat),
            FloatState.Sinks => Invariant($"SINKS: {afloat.Weight.Mass:0.0} kg on hulls that displace {afloat.Capacity:0.0} kg"),
            _ => Invariant($"NO EQUILIBRIUM under 90 deg of heel and 45 of trim: {afloat.Weight.Mass:0.0} kg at {afloat.Weight.Center.X:0.00} m, {afloat.Weight.Center.Z:0.00} m up; she goes over, or stands on end"),
        };
    }

    // Held upright, a boat goes over as her weight stands too high, or aside of what carries it.
    private static string Upset(CaseAfloat afloat) => afloat switch
    {
        { FreeMetacentricHeight: < 0 and var height } => Invariant($"her metacenter is {-1000 * height:0} mm below the center of gravity"),
        { Afloat.LeverAcross: not 0 and var lever } => Invariant($"the weight stands {1000 * Math.Abs(lever):0} mm to {(lever > 0 ? "port" : "starboard")} of the buoyancy"),
        _ => Invariant($"her metacenter is {1000 * afloat.FreeMetacentricHeight!.Value:0} mm above the center of gravity"),
    };

    /// <summary>Name of a side.</summary>
    internal static string SideOf(RightingArms arms) => arms.ToPort ? "port" : "starboard";

    /// <summary>The wind of the heel under sail, in words.</summary>
    internal static string WindOf(double wind) => Invariant($"beam on, steady {wind / Standards.Knot:0} kn, all sail set, sheeted in");

    /// <summary>Name of a case as its hull is bent in it: one that capsizes is held upright.</summary>
    internal static string BentIn(LoadCaseStudy study) => study.Name + (study.Afloat.State is FloatState.Capsizes ? ", held upright" : "");

    /// <summary>The water a hull is bent in, in words.</summary>
    internal static string WaterOf(Bending bending) => bending.Wave switch
    {
        WaveForm.Still => "still water",
        WaveForm.Hogging => "crest amidships",
        _ => "trough amidships",
    };

    private static string Side(double y) => Math.Abs(y) < 1e-6 ? "" : y > 0 ? ", starboard" : ", port";

    private static string KeyOf(LoadCaseStudy study) => GroupKey + Slug(study.Name);

    private static double? Allowed(LoadCaseStudy study, double freeboard) =>
        study.Afloat.State == FloatState.Floats && study.Afloat.Freeboard?.Height >= freeboard ? study.Loads.Sum(l => l.Mass) + study.Further.Mass : null;

    private static IEnumerable<Figure> HullOf(HullAfloat hull)
    {
        var (key, name) = (Slug(hull.Body.Name), FigureText.Capital(hull.Body.Name));
        yield return new Figure(key + "_displacement", name + " displaces", hull.Displacement, Quantity.Mass);
        yield return new Figure(key + "_immersion", name + ", part under water", hull.Immersion, Quantity.Fraction) { Note = "of its volume to the sheer or deck" };
        yield return new Figure(key + "_depth", name + ", keel under water", hull.Depth, Quantity.Length) { Note = "negative is clear of it" };
    }

    private static IEnumerable<Figure> SailOf(SailHeel sail, RightingArms arms)
    {
        yield return Maybe("sail_heel", "Heel under sail", sail.Heel, arms.Downflooding <= arms.End ? SheFills : SheCapsizes) with { IsEstimate = true, Note = WindOf(sail.Wind) };
        yield return new Figure("sail_wind", "Greatest steady wind held", sail.GreatestWind, Quantity.Wind) { IsEstimate = true, Note = "at the end of her righting arms" };
    }

    private static Figure ArmOf(RightingArm arm) =>
        new(Invariant($"arm_{arm.Heel * 180 / Math.PI:000}_deg"), Invariant($"Righting arm at {arm.Heel * 180 / Math.PI:0} deg"), arm.Arm, Quantity.Length);

    private static Figure Known(string key, string name, double? value, Quantity quantity) => new(key, name, value, quantity) { Why = NotAfloat };

    private static Figure Maybe(string key, string name, double? angle, string why) => new(key, name, angle, Quantity.Angle) { Why = why };

    private static string Slug(string name) => string.Concat(name.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '_'));
}
