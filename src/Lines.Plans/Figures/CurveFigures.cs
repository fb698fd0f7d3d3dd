using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;

namespace Lines.Plans.Figures;

/// <summary>The figures of the curves of form: one group for each draft, each with the same figures in the same order.</summary>
public static class CurveFigures
{
    private const string AftOfStation0 = "aft of station 0";

    /// <summary>Beginning of the groups' keys; the number of the draft follows, 01 lowest.</summary>
    public const string GroupKey = "curves_of_form_";

    /// <summary>Beginning of the keys of sectional areas; the number of the station follows, <c>1_half</c> for one and a half.</summary>
    public const string StationKey = "station_";

    /// <summary>The groups, lowest draft first.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="curves">Its curves of form.</param>
    public static IReadOnlyList<FigureGroup> Of(HullSurface hull, CurvesOfForm curves)
    {
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(curves);
        return [.. curves.Drafts.Select((d, k) => new FigureGroup(Invariant($"{GroupKey}{k + 1:00}"), "Curves of form, level, one draft", [.. At(hull, d.Afloat), .. Sections(d)]))];
    }

    // What a draft shares with the design draft is that figure of HullFigures; centers are measured from a place that stays.
    private static IEnumerable<Figure> At(HullSurface hull, Buoyancy afloat)
    {
        var shared = HullFigures.Afloat(afloat).Figures.Concat(HullFigures.Coefficients(afloat)).ToDictionary(f => f.Key, StringComparer.Ordinal);
        return
        [
            new("draft", "Draft", afloat.Height, Quantity.Length) { Note = "base line to the water" },
            .. Shared("volume", "displacement_fresh", "displacement_sea", "waterplane_area", "wetted_surface", "immersion_fresh"),
            HullFigures.Known("center_of_buoyancy_aft_of_station_0", "Center of buoyancy", afloat.Center?.X - hull.WaterlineFore, Quantity.Length) with { Note = AftOfStation0 },
            HullFigures.Known("center_of_flotation_aft_of_station_0", "Center of flotation", afloat.Waterplane?.Flotation - hull.WaterlineFore, Quantity.Length) with { Note = AftOfStation0 },
            .. Shared("center_of_buoyancy_height", "metacenter_height", "metacentric_radius_long", "block", "prismatic", "greatest_section", "waterplane"),
        ];

        IEnumerable<Figure> Shared(params string[] keys) => keys.Select(k => shared[k]);
    }

    private static IEnumerable<Figure> Sections(AtDraft draft) => draft.Sections.Select(s => new Figure(
        StationKey + s.Station.Number.Replace("1/2", "half", StringComparison.Ordinal).Replace(' ', '_'), "Station " + s.Station.Number, s.Area, Quantity.SectionArea));
}
