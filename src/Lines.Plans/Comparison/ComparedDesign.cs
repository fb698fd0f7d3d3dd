using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Loading;
using Lines.Hull.Resistance;
using Lines.Kernel.Geometry;
using Lines.Plans.Figures;

namespace Lines.Plans.Comparison;

/// <summary>One design of a comparison, on the waterline she is compared at.</summary>
/// <param name="Title">Her name.</param>
/// <param name="File">Her file, as the user named it.</param>
/// <param name="Vessel">Her hulls, the main hull's waterline drawn where she floats level under the weight.</param>
/// <param name="Weight">The weight she is compared at, and its center.</param>
/// <param name="Water">How she floats under it.</param>
/// <param name="Case">What is told of the load case she is compared in; empty where only a weight was given.</param>
public sealed record ComparedDesign(string Title, string File, VesselShape Vessel, Weight Weight, WaterPlane Water, IReadOnlyList<FigureGroup> Case)
{
    /// <summary>Her rudder and boards; null where none are told.</summary>
    public Appendage? Appendage { get; init; }

    /// <summary>Relative error of the integrals below the water: far below what any output shows.</summary>
    private const double Tolerance = 1e-9;

    /// <summary>A design floated level under a mass.</summary>
    /// <remarks>The center of gravity is taken over the center of buoyancy, at the height of the water: what keeps a slim boat's trim is a hundred times that lever.</remarks>
    /// <param name="title">Her name.</param>
    /// <param name="file">Her file.</param>
    /// <param name="shape">Her hulls.</param>
    /// <param name="mass">The mass [kg].</param>
    /// <param name="density">Density of the water [kg/m³].</param>
    /// <exception cref="DownfloodingException">She floats under it with her sheer under water, or not at all.</exception>
    public static ComparedDesign Level(string title, string file, VesselShape shape, double mass, double density)
    {
        ArgumentNullException.ThrowIfNull(shape);
        var craft = Craft.Of(shape);
        var (water, vessel) = LevelUnder(shape, craft, mass, density);
        var center = craft.Below(water, Tolerance).Center ?? default;
        return new ComparedDesign(title, file, vessel, new Weight(mass, new Point3(center.X, center.Y, water.Level)), water, []);
    }

    /// <summary>A design in a load case: she trims and heels as it makes her, her form and drag are told level under its mass.</summary>
    /// <param name="title">Her name.</param>
    /// <param name="file">Her file.</param>
    /// <param name="shape">Her hulls.</param>
    /// <param name="study">The case; she floats in it.</param>
    /// <param name="settings">What it was studied for.</param>
    /// <exception cref="DownfloodingException">Level under its mass her sheer is under water.</exception>
    public static ComparedDesign In(string title, string file, VesselShape shape, LoadCaseStudy study, LoadSettings settings)
    {
        ArgumentNullException.ThrowIfNull(shape);
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(settings);
        var afloat = study.Afloat.Afloat ?? throw new ArgumentException("she does not float in that case", nameof(study));
        var (_, vessel) = LevelUnder(shape, Craft.Of(shape), study.Afloat.Weight.Mass, settings.Water.Density);
        FigureGroup[] told =
        [
            LoadCaseFigures.Afloat(shape.Main, study, settings.Freeboard) with { Key = "case", Title = $"Load case: {study.Name}" },
            .. study.Arms.Select(a => new FigureGroup($"case_to_{LoadCaseFigures.SideOf(a)}", $"Righting arms to {LoadCaseFigures.SideOf(a)}", LoadCaseFigures.Stability(study, a))),
        ];
        return new ComparedDesign(title, file, vessel, study.Afloat.Weight, afloat.Water, told);
    }

    /// <summary>The figures that are compared, in the order they are shown.</summary>
    /// <param name="water">The water.</param>
    /// <param name="thrust">The thrust that puts her bow down.</param>
    public IReadOnlyList<FigureGroup> Figures(Water water, ForwardThrust thrust)
    {
        ArgumentNullException.ThrowIfNull(water);
        var afloat = UprightHydrostatics.Below(Vessel.Main, Vessel.Main.Draft, Tolerance);
        return
        [
            .. HullFigures.Of(Vessel.Main, afloat).Select(g => g with { Title = g.Title.Replace("design waterline", "waterline compared at", StringComparison.Ordinal) }),
            .. Case,
            Bow(BowStudy.Of(Vessel, Weight, Water, water.Density, thrust)),
        ];
    }

    /// <summary>Her drag, level on that waterline.</summary>
    /// <param name="water">The water.</param>
    public DragEstimate Drag(Water water) => new(Vessel, water, appendage: Appendage);

    private static FigureGroup Bow(BowStudy bow) => new("bow", "Forward of the middle of the waterline, and under thrust",
    [
        new("middle", "Middle of the waterline", bow.Middle, Quantity.Length) { Note = "aft of the foremost point" },
        new("waterplane_forward", "Waterplane forward", bow.Waterplane, Quantity.Area),
        new("reserve_forward", "Reserve buoyancy forward", bow.Reserve, Quantity.Volume) { Note = "between water and sheer or deck" },
        new("stem_head", "Stem's head over water", bow.Head, Quantity.Length),
        new("bow_down", "Bow-down trim under the thrust", bow.BowDown, Quantity.Angle) { IsEstimate = true, Why = "she goes over her bow", Note = "steady force, calm water" },
        new("stem_head_driven", "Stem's head under the thrust", bow.HeadDriven, Quantity.Length) { IsEstimate = true, Why = "she goes over her bow" },
        new("thrust_greatest", "Thrust that puts the sheer under", bow.GreatestThrust, Quantity.Drag) { IsEstimate = true, Note = "at that height, steady, calm water" },
    ]);

    private static (WaterPlane Water, VesselShape Vessel) LevelUnder(VesselShape shape, Craft craft, double mass, double density)
    {
        var sheer = shape.Main.LeastSheer;
        if (Equilibrium.LevelOf(craft, mass / density, WaterPlane.LevelAt(shape.Main.Draft), Tolerance) is not { } water)
            throw new DownfloodingException(shape.Main.WidestX, sheer, sheer);
        return craft.LowestSheer(water) is { Height: < 0 } under
            ? throw new DownfloodingException(under.At.X, under.At.Z, water.Level)
            : (water, new VesselShape(OtherWaterline.On(shape.Main, water.Level), shape.Outriggers));
    }
}
