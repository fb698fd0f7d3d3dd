using Lines.Hull.Form;
using Lines.Hull.Sections;

namespace Lines.Hull.Fairness;

/// <summary>Which dial to ease first for a fault: the one that has most say over that line at that place.</summary>
/// <remarks>A rule of thumb from how the hull is shaped, not a proof: the lines that contain the fault hang on these dials. Which way to
/// turn one no kind of fault tells: of 97 faults of hulls drawn at random, tried a small step up and
/// down, four hollow buttocks alone agreed (less rocker at the stern). <see cref="EasingTrial"/> tries it on the hull itself.</remarks>
internal static class DialToEase
{
    /// <summary>The dial for the worst blemish of a line.</summary>
    public static Dial For(LineFairness line, HullSurface hull)
    {
        var p = line.Worst.Place;
        var middle = Math.Abs(p.X - hull.WidestX) < hull.Dials.Length / 8;
        var fore = p.X < hull.WidestX;
        return line.Line.Kind switch
        {
            LineKind.Sheer => line.Name.EndsWith("profile", StringComparison.Ordinal)
                ? SheerProfile(fore, middle)
                : SheerPlan(hull, fore),
            LineKind.Keel => middle ? Dial.KeelLow : Foot(hull, fore),
            LineKind.Stem => Dial.Forefoot,
            LineKind.Stern => hull.Transom is null ? Dial.Heel : Dial.TransomBreadth,
            LineKind.Buttock => p.Z > hull.Draft ? SheerProfile(fore, middle) : middle ? Dial.Deadrise : Foot(hull, fore),
            LineKind.Station when middle => Midship(hull, p.Z),
            _ => p.Z > (hull.Draft + hull.Dials.Depth) / 2 ? SheerPlan(hull, fore)
                : p.Z < hull.Draft * 0.9 ? LowEnd(hull, fore)
                : middle ? Dial.Widest
                : Waterline(hull, fore),
        };
    }

    private static Dial SheerProfile(bool fore, bool middle) => middle ? Dial.Depth : fore ? Dial.BowSheer : Dial.SternSheer;

    private static Dial SheerPlan(HullSurface hull, bool fore) =>
        fore ? Dial.BowSheerFullness : hull.Transom is null ? Dial.SternSheerFullness : Dial.TransomBreadth;

    private static Dial Foot(HullSurface hull, bool fore) =>
        fore ? Dial.BowRocker
        : hull.Dials.Stern is TransomStern { FootIsImmersion: true } ? Dial.TransomImmersion
        : Dial.SternRocker;

    private static Dial Waterline(HullSurface hull, bool fore) =>
        fore
            ? hull.Dials.Bow.EntryAngle is null ? Dial.EntryFullness : Dial.EntryAngle
            : hull.Dials.Stern is PointedStern { RunAngle: not null } ? Dial.RunAngle : Dial.RunFullness;

    // The low lines of an end: a vee that was asked for fights the profile first.
    private static Dial LowEnd(HullSurface hull, bool fore) => fore
        ? hull.Dials.Bow.Vee is null ? Dial.Forefoot : Dial.BowVee
        : hull.Dials.Stern switch
        {
            PointedStern { Vee: not null } => Dial.SternVee,
            PointedStern => Dial.Heel,
            _ => Foot(hull, fore: false),
        };

    private static Dial Midship(HullSurface hull, double z) =>
        z < hull.Dials.Depth / 4 ? Dial.Deadrise : z > 0.7 * hull.Dials.Depth ? Dial.Flare : Dial.MidshipFullness;
}
