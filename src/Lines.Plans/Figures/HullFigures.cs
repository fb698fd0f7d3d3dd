using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Sections;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Plans.Figures;

/// <summary>The figures of one hull: its dimensions as built, its form, and what it displaces at the design waterline.</summary>
public static class HullFigures
{
    /// <summary>Relative error of the enclosed volume: far below what any output shows.</summary>
    private const double EnclosedTolerance = 1e-9;

    private static readonly double[] s_places = [.. Enumerable.Range(0, 33).Select(k => k / 32.0)];

    private const string AftOfFore = "aft of the fore end of the waterline";

    /// <summary>All groups, in the order they are shown.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="afloat">What it displaces at its design waterline.</param>
    public static IReadOnlyList<FigureGroup> Of(HullSurface hull, Buoyancy afloat)
    {
        ArgumentNullException.ThrowIfNull(hull);
        var deck = UprightHydrostatics.Enclosed(hull, EnclosedTolerance) is { } whole ? (FigureGroup[])[Deck(hull, whole)] : [];
        return [Dimensions(hull, afloat), ShapeFigures.Of(hull), Form(hull, afloat), Afloat(afloat), .. deck];
    }

    /// <summary>The crowned deck of a closed hull and what is enclosed up to it.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="whole">What it displaces when immersed whole.</param>
    public static FigureGroup Deck(HullSurface hull, Buoyancy whole)
    {
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(whole);
        return new FigureGroup("deck", "Closed to the deck",
        [
            new("crown", "Crown of the deck", hull.Dials.Crown, Quantity.Length) { Note = "at the centerplane above the sheer, where that is broadest" },
            new("length_over_deck", "Length over the deck", LengthOver(hull.Patches), Quantity.Length) { Note = "a crown on a raked transom reaches past the sheer" },
            new("enclosed_volume", "Enclosed volume", whole.Volume, Quantity.Volume) { Note = "to the outside of planking" },
            Displacement("enclosed_fresh", "Displacement immersed whole, fresh water", whole, Water.Fresh),
            new("enclosed_center", "Center of the enclosed volume", whole.Center?.X, Quantity.Length) { Note = "aft of the foremost point" },
            new("enclosed_center_height", "Center of the enclosed volume, height", whole.Center?.Z, Quantity.Length) { Note = "above the base line" },
            new("deck_area", "Deck area", whole.Deck, Quantity.Area) { Note = "both sides, to the outside of planking" },
        ]);
    }

    /// <summary>Principal dimensions, measured on the surface.</summary>
    public static FigureGroup Dimensions(HullSurface hull, Buoyancy afloat)
    {
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(afloat);
        var (dials, side) = (hull.Dials, hull.Side);
        var (bow, stern, middle) = (side.PointAt(0, 1), side.PointAt(1, 1), side.PointAt(hull.WidestU, 1));
        return new FigureGroup("dimensions", "Principal dimensions",
        [
            new("length", "Length", LengthOver([side]), Quantity.Length) { Note = "foremost to aftmost point" },
            new("beam", "Beam", 2 * Greatest(u => Greatest(v => side.PointAt(u, v).Y)), Quantity.Length) { Note = "greatest breadth, outside of planking" },
            new("depth", "Depth", middle.Z, Quantity.Length) { Note = "base line to sheer at the widest station" },
            new("draft", "Draft", dials.Draft, Quantity.Length) { Note = "base line to design waterline" },
            new("waterline_length", "Waterline length", hull.WaterlineAft - hull.WaterlineFore, Quantity.Length),
            new("waterline_beam", "Waterline beam", afloat.Waterplane?.Breadth, Quantity.Length) { Why = "nothing is immersed" },
            new("waterline_fore", "Fore end of the waterline", hull.WaterlineFore, Quantity.Length) { Note = "aft of the foremost point" },
            new("station_spacing", "Station spacing", (hull.WaterlineAft - hull.WaterlineFore) / LinesGrid.StationSpaces, Quantity.Length) { Note = "ten spaces to the waterline" },
            new("widest_station", "Widest station", hull.WidestX, Quantity.Length) { Note = "aft of the foremost point" },
            new("widest_part", "Widest station, part of the waterline", (hull.WidestX - hull.WaterlineFore) / (hull.WaterlineAft - hull.WaterlineFore), Quantity.Fraction) { Note = AftOfFore },
            new("sheer_bow", "Sheer at the bow", bow.Z, Quantity.Length) { Note = "above the base line" },
            new("sheer_stern", "Sheer at the stern", stern.Z, Quantity.Length) { Note = "above the base line" },
            new("freeboard", "Freeboard at the widest station", middle.Z - dials.Draft, Quantity.Length),
            new("freeboard_least", "Least freeboard", hull.LeastSheer - dials.Draft, Quantity.Length),
            new("length_over_beam", "Length over beam", dials.Length / dials.Beam, Quantity.Ratio),
        ]);
    }

    /// <summary>Coefficients of form at the design waterline.</summary>
    public static FigureGroup Form(HullSurface hull, Buoyancy afloat)
    {
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(afloat);
        var form = FormCoefficients.Of(hull);
        return new FigureGroup("form", "Form at the design waterline",
        [
            new("entry_fullness", "Entry fullness", form.Entry, Quantity.Ratio) { Note = "half waterplane forward of its widest point over the rectangle around it" },
            new("run_fullness", "Run fullness", form.Run, Quantity.Ratio) { Note = "the same aft of it" },
            new("sheer_fullness_fore", "Fullness of the sheer forward", form.SheerFore, Quantity.Ratio) { Note = "half the sheer in plan forward of the widest station over the rectangle around it" },
            new("sheer_fullness_aft", "Fullness of the sheer aft", form.SheerAft, Quantity.Ratio) { Note = "the same aft of it" },
            new("midship_fullness", "Midship fullness", form.Midship, Quantity.Ratio) { Note = "immersed area over breadth times own draft" },
            new("entry_angle", "Half-angle of entrance", form.EntryAngle, Quantity.Angle),
            new("run_angle", "Half-angle of the run", form.RunAngle, Quantity.Angle) { Note = "at the after end of the waterline" },
            .. Coefficients(afloat),
            Known("length_over_volume", "Waterline length over cube root of volume", afloat.Volume > 0 ? afloat.Waterplane!.Length / Math.Cbrt(afloat.Volume) : null, Quantity.Ratio),
        ]);
    }

    /// <summary>Volume, displacement, centers, areas and moments at the design waterline, level.</summary>
    public static FigureGroup Afloat(Buoyancy afloat)
    {
        ArgumentNullException.ThrowIfNull(afloat);
        return new FigureGroup("afloat", "Afloat at the design waterline, level",
        [
            new("volume", "Displaced volume", afloat.Volume, Quantity.Volume),
            Displacement("displacement_fresh", "Displacement in fresh water", afloat, Water.Fresh),
            Displacement("displacement_sea", "Displacement in sea water", afloat, Water.Sea),
            Known("center_of_buoyancy_aft", "Center of buoyancy", afloat.CenterAft, Quantity.Length) with { Note = AftOfFore },
            Known("center_of_buoyancy_part", "Center of buoyancy, part of the length", afloat.CenterFraction, Quantity.Fraction) with { Note = AftOfFore },
            Known("center_of_buoyancy_height", "Center of buoyancy, height", afloat.Center?.Z, Quantity.Length) with { Note = "above the base line" },
            Known("center_of_flotation_aft", "Center of flotation", afloat.FlotationAft, Quantity.Length) with { Note = AftOfFore },
            Known("center_of_flotation_part", "Center of flotation, part of the length", afloat.FlotationFraction, Quantity.Fraction) with { Note = AftOfFore },
            Known("waterplane_area", "Waterplane area", afloat.Waterplane?.Area, Quantity.Area),
            new("wetted_surface", "Wetted surface", afloat.WettedSurface, Quantity.Area) { Note = afloat.TransomArea > 0 ? "immersed transom counted in" : "" },
            new("transom_area", "Immersed transom", afloat.TransomArea, Quantity.Area),
            Known("greatest_section_area", "Greatest section", afloat.Greatest?.Area, Quantity.SectionArea),
            Known("greatest_section_aft", "Greatest section, place", afloat.Greatest?.X - afloat.Waterplane?.Fore, Quantity.Length) with { Note = AftOfFore },
            Known("immersion_fresh", "Immersion in fresh water", afloat.ImmersionRate(Water.Fresh.Density), Quantity.MassPerLength),
            Known("metacentric_radius", "Transverse metacentric radius", afloat.TransverseMetacentricRadius, Quantity.Length) with { Note = "metacenter above center of buoyancy" },
            Known("metacentric_radius_long", "Longitudinal metacentric radius", afloat.LongitudinalMetacentricRadius, Quantity.Length),
            Known("metacenter_height", "Transverse metacenter, height", afloat.Center?.Z + afloat.TransverseMetacentricRadius, Quantity.Length) with { Note = "above the base line" },
        ]);
    }

    /// <summary>The coefficients that follow from what a hull displaces at any draft.</summary>
    internal static IReadOnlyList<Figure> Coefficients(Buoyancy afloat) =>
    [
        Known("prismatic", "Prismatic coefficient", afloat.Prismatic, Quantity.Ratio),
        Known("block", "Block coefficient", afloat.Block, Quantity.Ratio),
        Known("greatest_section", "Greatest-section coefficient", afloat.GreatestSection, Quantity.Ratio),
        Known("waterplane", "Waterplane coefficient", afloat.WaterplaneFullness, Quantity.Ratio),
    ];

    /// <summary>A figure that is unknown where nothing is immersed.</summary>
    internal static Figure Known(string key, string name, double? value, Quantity quantity) =>
        new(key, name, value, quantity) { Why = value is null ? "nothing is immersed" : "" };

    /// <summary>A water with its density and where that is from.</summary>
    internal static string InWords(Water water) => Invariant($"{water.Name}, {water.Density:0.0} kg/m³ (ITTC 7.5-02-01-03)");

    // Over a parameter from 0 to 1; with tumblehome a breadth is greatest below the sheer, with a reverse stem a length above the keel.
    private static double Greatest(Func<double, double> f) => Peak.Over(f, s_places).Value;

    private static double LengthOver(IReadOnlyList<BSplineSurface> patches)
    {
        double Reach(int sense, double u) => patches.Max(patch => Greatest(v => sense * patch.PointAt(u, v).X));
        return Reach(1, 1) + Reach(-1, 0);
    }

    private static Figure Displacement(string key, string name, Buoyancy afloat, Water water) =>
        new(key, name, afloat.Volume * water.Density, Quantity.Mass)
        {
            IsEstimate = true,
            Note = InWords(water),
        };
}
