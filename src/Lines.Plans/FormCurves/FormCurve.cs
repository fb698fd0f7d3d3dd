using Lines.Drawing.Model;

namespace Lines.Plans.FormCurves;

/// <summary>One curve of a panel.</summary>
/// <param name="Key">The figure.</param>
/// <param name="Name">What is written at its end.</param>
/// <param name="Ink">Its ink.</param>
/// <param name="With">The figure whose scale it is drawn to; its own when they are the same.</param>
/// <param name="Also">A figure in constant proportion to it, that the same curve shows; nothing where there is none.</param>
internal sealed record FormCurve(string Key, string Name, Layer Ink, string With, string Also = "")
{
    private static readonly double[] s_long = [5, 1.2];
    private static readonly double[] s_short = [1.6, 1];
    private static readonly double[] s_dot = [6, 1, 1, 1];

    /// <summary>All panels, left to right.</summary>
    public static IReadOnlyList<FormPanel> Panels { get; } =
    [
        new("Masses and areas", 7, false,
        [
            new("displacement_fresh", "displacement, fresh water", Line("displacement-fresh", 0.5), "displacement_sea"),
            new("displacement_sea", "displacement, sea water", Line("displacement-sea", 0.25), "displacement_sea"),
            new("waterplane_area", "waterplane, immersion", Line("waterplane-area", 0.4, s_long), "waterplane_area", "immersion_fresh"),
            new("wetted_surface", "wetted surface", Line("wetted-surface", 0.3, s_dot), "wetted_surface"),
        ]),
        new("Heights", 5, false,
        [
            new("center_of_buoyancy_height", "center of buoyancy", Line("buoyancy-height", 0.5), "metacenter_height"),
            new("metacenter_height", "transverse metacenter", Line("metacenter-height", 0.4, s_long), "metacenter_height"),
            new("metacentric_radius_long", "long. metacentric radius", Line("longitudinal-radius", 0.3, s_dot), "metacentric_radius_long"),
        ]),
        new("Centers aft of station 0", 4, true,
        [
            new("center_of_buoyancy_aft_of_station_0", "center of buoyancy", Line("buoyancy-aft", 0.5), ""),
            new("center_of_flotation_aft_of_station_0", "center of flotation", Line("flotation-aft", 0.4, s_long), ""),
        ]),
        new("Coefficients", 5, true,
        [
            new("block", "block", Line("block", 0.5), ""),
            new("prismatic", "prismatic", Line("prismatic", 0.4, s_long), ""),
            new("greatest_section", "greatest section", Line("greatest-section", 0.3, s_dot), ""),
            new("waterplane", "waterplane", Line("waterplane", 0.4, s_short), ""),
        ]),
    ];

    private static Layer Line(string name, double width, IReadOnlyList<double>? dash = null) => new("curve-" + name, new Ink(width, dash));
}

/// <summary>Curves that stand in one panel.</summary>
/// <param name="Title">What they are.</param>
/// <param name="Squares">Its width in squares of the grid.</param>
/// <param name="Numbered">Whether all share one scale, whose numbers stand below the panel.</param>
/// <param name="Curves">The curves.</param>
internal sealed record FormPanel(string Title, int Squares, bool Numbered, IReadOnlyList<FormCurve> Curves);
