using Lines.Construction;
using Lines.Hull.Form;
using Lines.Kernel.Units;

namespace Lines.Design.Schema;

/// <summary>Makes the dials of hull and building from the checked values of a whole, faultless file.</summary>
internal static class VesselBuilder
{
    public static Vessel Vessel(DesignValues values) => new(new HullDials
    {
        Length = values.Number("hull.length"),
        Beam = values.Number("hull.beam"),
        Depth = values.Number("hull.depth"),
        Draft = values.Number("hull.draft"),
        Widest = values.NumberOrNone("hull.widest"),
        KeelLow = values.NumberOrNone("hull.keel_low"),
        Hollow = values.NumberOr("hull.hollow", 0) > 0,
        Bow = new BowDials(
            EntryFullness: values.Number("hull.bow.entry_fullness"),
            Rocker: values.Number("hull.bow.rocker"),
            Sheer: values.Number("hull.bow.sheer"),
            Forefoot: values.Number("hull.bow.forefoot"),
            SheerFullness: values.NumberOrNone("hull.bow.sheer_fullness"),
            Vee: values.NumberOrNone("hull.bow.vee"),
            EntryAngle: values.NumberOrNone("hull.bow.entry_angle")),
        Stern = Stern(values),
        Midship = new MidshipDials(
            Deadrise: values.Number("hull.midship.deadrise"),
            Fullness: values.Number("hull.midship.fullness"),
            Flare: values.Number("hull.midship.flare")),
    });

    public static BuildDials Build(DesignValues values)
    {
        var otherwise = new BuildDials { Planking = values.Number("build.planking") };
        return otherwise with
        {
            Sheathing = values.NumberOr("build.sheathing", otherwise.Sheathing),
            MoldSpacing = values.NumberOr("build.mold_spacing", otherwise.MoldSpacing),
            MoldStock = values.NumberOr("build.mold_stock", otherwise.MoldStock),
            StripWidth = values.NumberOr("build.strip_width", otherwise.StripWidth),
            StemSiding = values.NumberOr("build.stem_siding", otherwise.StemSiding),
            Joints = values.Find("build.joints")?.Numbers ?? otherwise.Joints,
            MoldAt = values.Find("build.mold_at")?.Numbers,
            StrongbackTop = values.NumberOrNone("build.strongback_top"),
            StrongbackStep = values.Notation == LengthNotation.Millimeters ? otherwise.StrongbackStep : Length.Inch,
        };
    }

    private static SternDials Stern(DesignValues values)
    {
        var fullness = values.Number("hull.stern.run_fullness");
        var sheer = values.Number("hull.stern.sheer");
        var sheerFullness = values.NumberOrNone("hull.stern.sheer_fullness");
        if (values.Find("hull.stern.kind")!.Text is DesignSchema.Pointed)
        {
            return new PointedStern(
                RunFullness: fullness,
                Rocker: values.Number("hull.stern.rocker"),
                Sheer: sheer,
                Heel: values.Number("hull.stern.heel"),
                SheerFullness: sheerFullness,
                Vee: values.NumberOrNone("hull.stern.vee"),
                RunAngle: values.NumberOrNone("hull.stern.run_angle"));
        }

        var immersion = values.NumberOrNone("hull.stern.immersion");
        return new TransomStern(
            RunFullness: fullness,
            Foot: immersion is null ? values.Number("hull.stern.rocker") : values.Number("hull.draft") - immersion.Value,
            Sheer: sheer,
            Rake: values.Number("hull.stern.rake"),
            Breadth: values.Number("hull.stern.breadth"),
            SheerFullness: sheerFullness,
            FootIsImmersion: immersion is not null);
    }
}
