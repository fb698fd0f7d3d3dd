using Lines.Construction;
using Lines.Construction.Materials;
using Lines.Construction.Pieces;
using Lines.Construction.Planking;
using Lines.Hull.Form;
using Lines.Hull.Loading;
using Lines.Hull.Resistance;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;

namespace Lines.Design.Schema;

/// <summary>Makes the vessel, and the dials of building, from the checked values of a whole, faultless file.</summary>
internal static class VesselBuilder
{
    public static Vessel Vessel(FileValues file)
    {
        var targets = TargetBalance.Of(file.Main);
        return new Vessel(Hull(file.Main, targets))
        {
            Targets = targets,
            Outriggers = [.. file.Of(DesignSchema.Outrigger).Select(Outrigger)],
            Loads = [.. file.Of(DesignSchema.Load).Select(v => new Load(v.Find("name")!.Text, v.Number("mass"), At(v, "at"), v.Find("cases")?.Items.Select(i => i.Text).ToList()))],
            Compartments = [.. file.Of(DesignSchema.Compartment).Select(
                (v, k) => new Compartment(v.Find("name")?.Text ?? Invariant($"compartment {k + 1}"), v.Number("from"), v.Number("to"), v.NumberOr("sealed", 0) > 0))],
            Appendage = file.Main.Has("appendage.area") ? new Appendage(file.Main.Number("appendage.area"), file.Main.Number("appendage.chord"), file.Main.NumberOrNone("appendage.thickness") ?? Appendage.UsualThickness) : null,
            Rig = file.Main.Has("rig.area") ? new Rig(file.Main.Number("rig.area"), file.Main.Number("rig.aft"), file.Main.Number("rig.height")) : null,
            Structure = file.Main.Has("structure.mass") ? new Structure(file.Main.Number("structure.mass"), At(file.Main, "structure.at")) : null,
        };
    }

    private static Outrigger Outrigger(DesignValues values)
    {
        var targets = TargetBalance.Of(values);
        return new Outrigger(
            Hull(values, targets), Enum.Parse<OutriggerSide>(values.Find("side")!.Text, ignoreCase: true), values.Number("spacing"), values.Number("height"), values.Number("aft"))
        {
            Targets = targets,
        };
    }

    private static Point3 At(DesignValues values, string path) => values.Find(path)!.Numbers is [var x, var y, var z] ? new Point3(x, y, z) : throw new ArgumentException($"{path} is no place", nameof(path));

    private static HullDials Hull(DesignValues values, HullTargets targets) => new()
    {
        Length = Found(values, Dial.Length),
        Beam = Found(values, Dial.Beam),
        Depth = values.Number("hull.depth"),
        Draft = Found(values, Dial.Draft),
        Widest = values.NumberOrNone("hull.widest"),
        KeelLow = values.NumberOrNone("hull.keel_low"),
        Hollow = values.NumberOr("hull.hollow", 0) > 0,
        Crown = values.NumberOrNone("hull.crown"),
        Bow = new BowDials(
            EntryFullness: Found(values, Dial.EntryFullness),
            Rocker: values.Number("hull.bow.rocker"),
            Sheer: values.Number("hull.bow.sheer"),
            Forefoot: values.Number("hull.bow.forefoot"),
            SheerFullness: values.NumberOrNone("hull.bow.sheer_fullness"),
            Vee: values.NumberOrNone("hull.bow.vee"),
            EntryAngle: targets.Asked.Any(t => t.Target == Target.EntryAngle) ? null : values.NumberOrNone("hull.bow.entry_angle"),
            Profile: ProfileOf(values, "hull.bow.profile")),
        Stern = Stern(values),
        Midship = new MidshipDials(
            Deadrise: values.Number("hull.midship.deadrise"),
            Fullness: Found(values, Dial.MidshipFullness),
            Flare: values.Number("hull.midship.flare")),
    };

    /// <summary>The value of a dial, or one that holds its place where it is left out for a target.</summary>
    private static double Found(DesignValues values, Dial dial) => values.NumberOrNone(DesignSchema.ByDial[dial].Path) ?? TargetStart.PlaceOf(dial);

    private static BuildDials Build(DesignValues values)
    {
        var otherwise = new BuildDials { Planking = values.Number("build.planking") };
        return otherwise with
        {
            Sheathing = values.NumberOr("build.sheathing", otherwise.Sheathing),
            MoldSpacing = values.NumberOr("build.mold_spacing", otherwise.MoldSpacing),
            MoldStock = values.NumberOr("build.mold_stock", otherwise.MoldStock),
            StripWidth = values.NumberOr("build.strip_width", otherwise.StripWidth),
            StemSiding = values.NumberOr("build.stem_siding", otherwise.StemSiding),
            SheetLength = values.NumberOr("build.sheet_length", otherwise.SheetLength),
            SheetWidth = values.NumberOr("build.sheet_width", otherwise.SheetWidth),
            SheetMargin = values.NumberOr("build.sheet_margin", otherwise.SheetMargin),
            PartSpacing = values.NumberOr("build.part_spacing", otherwise.PartSpacing),
            Grain = values.NumberOr("build.grain", 0) > 0,
            Joints = values.Find("build.joints")?.Numbers ?? otherwise.Joints,
            MoldAt = values.Find("build.mold_at")?.Numbers,
            StrongbackTop = values.NumberOrNone("build.strongback_top"),
            StrongbackWidth = values.NumberOrNone("build.strongback_width"),
            StrongbackDepth = values.NumberOr("build.strongback_depth", otherwise.StrongbackDepth),
            Strips = values.Find("build.strips") is { } strips ? Enum.Parse<StripRun>(strips.Text, ignoreCase: true) : otherwise.Strips,
            BoardLength = values.NumberOr("build.board_length", otherwise.BoardLength),
            SawKerf = values.NumberOr("build.saw_kerf", otherwise.SawKerf),
            Waste = values.NumberOr("build.waste", otherwise.Waste),
            StemMolding = values.NumberOr("build.stem_molding", otherwise.StemMolding),
            Gunwale = values.NumberOr("build.gunwale", otherwise.Gunwale),
            JointGap = values.NumberOr("build.joint_gap", otherwise.JointGap),
            JointBolt = values.NumberOr("build.joint_bolt", otherwise.JointBolt),
            JointClearance = values.NumberOr("build.joint_clearance", otherwise.JointClearance),
            BulkheadOpening = values.NumberOrNone("build.bulkhead_opening"),
            Storage = values.Find("build.storage")?.Numbers,
            BulkheadStock = values.NumberOr("build.bulkhead_stock", otherwise.BulkheadStock),
            Material = Material(values),
            StrongbackStep = values.Notation == LengthNotation.Millimeters ? otherwise.StrongbackStep : Length.Inch,
        };
    }

    /// <summary>The dials of building with the bulkheads and openings of the main hull.</summary>
    public static BuildDials Build(FileValues file) => Build(file.Main) with
    {
        Bulkheads = [.. file.Of(DesignSchema.Bulkhead).Select(v => new BulkheadPlace(v.Find("name")!.Text, v.Number("at"), v.NumberOrNone("opening")))],
        Openings = [.. file.Of(DesignSchema.Opening).Select(
            v => new HullOpening(v.Find("name")!.Text, v.Number("from"), v.Number("to"), v.Number("breadth"), v.Find("through")?.Text is "deck") { Aside = v.NumberOr("aside", 0), IsSealed = v.NumberOr("sealed", 0) > 0 })],
    };

    private static MaterialDials Material(DesignValues values)
    {
        var otherwise = new MaterialDials();
        return otherwise with
        {
            IsGiven = values.HasTable("material"),
            Wood = values.Find("material.wood") is { } wood ? Wood.Find(wood.Text)! : otherwise.Wood,
            OutsideCloth = values.NumberOr("material.outside_cloth", otherwise.OutsideCloth),
            BottomCloth = values.NumberOr("material.bottom_cloth", otherwise.BottomCloth),
            InsideCloth = values.NumberOr("material.inside_cloth", otherwise.InsideCloth),
            FillCoats = values.NumberOr("material.fill_coats", otherwise.FillCoats),
            Prices = values.Find("price.currency") is { } currency
                ? new Prices(
                    currency.Text, values.NumberOr("price.board_foot", 0), values.NumberOr("price.cloth", 0), values.NumberOr("price.resin", 0), values.NumberOr("price.sheet", 0),
                    values.NumberOr("price.profile_sheet", 0), values.NumberOr("price.plywood_sheet", 0))
                : null,
        };
    }

    private static StemProfile ProfileOf(DesignValues values, string path) =>
        values.Find(path) is { } value ? Enum.Parse<StemProfile>(value.Text, ignoreCase: true) : StemProfile.Curved;

    private static SternDials Stern(DesignValues values)
    {
        var fullness = Found(values, Dial.RunFullness);
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
                RunAngle: values.NumberOrNone("hull.stern.run_angle"),
                Profile: ProfileOf(values, "hull.stern.profile"));
        }

        var immersion = values.NumberOrNone("hull.stern.immersion");
        return new TransomStern(
            RunFullness: fullness,
            Foot: immersion is null ? values.Number("hull.stern.rocker") : Found(values, Dial.Draft) - immersion.Value,
            Sheer: sheer,
            Rake: values.Number("hull.stern.rake"),
            Breadth: values.Number("hull.stern.breadth"),
            SheerFullness: sheerFullness,
            FootIsImmersion: immersion is not null);
    }
}
