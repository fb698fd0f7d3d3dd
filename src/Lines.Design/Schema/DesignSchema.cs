using Lines.Construction;
using Lines.Construction.Molds;
using Lines.Hull.Form;
using Lines.Kernel.Units;

namespace Lines.Design.Schema;

/// <summary>The one table of the keys of a design file, in the order they are written.</summary>
public static class DesignSchema
{
    /// <summary>A stern that comes to an edge.</summary>
    public const string Pointed = "pointed";

    /// <summary>A stern cut off by a flat transom.</summary>
    public const string Transom = "transom";

    /// <summary>Fresh water.</summary>
    public const string FreshWater = "fresh";

    /// <summary>Sea water.</summary>
    public const string SeaWater = "sea";

    /// <summary>Nothing is cut nearer to the end of a hull [m].</summary>
    private const double LeastPlace = 0.001;

    /// <summary>What the builder decides where a key is left out.</summary>
    internal static BuildDials Builds { get; } = new() { Planking = 0.006 };

    /// <summary>The tables of the file itself.</summary>
    public static IReadOnlyList<SchemaTable> Tables { get; } =
    [
        new("", "Before the first table."),
        new("hull", "The main hull, to the outside of planking."),
        new("hull.bow", "The bow."),
        new("hull.stern", "The stern, pointed or with a transom."),
        new("hull.midship", "The section at the widest station."),
        new("build", "How the hull is built."),
        new("material", "What the hull is built of, for its weight and what is to be bought. Where `[structure]` does not give the boat's weight, load cases take the estimate from here.") { MayBeMissing = true },
        new("price", "What things cost, for the sums of the bill of materials; a price left out counts nothing.") { MayBeMissing = true },
        new("appendage", "Rudder, leeboard, skeg: what hangs in the water below the hulls, all together; without it no drag of them is told.") { MayBeMissing = true },
        new("rig", "The sail plan; without it the boat is paddled or rowed.") { MayBeMissing = true },
        new("structure", "Weight of the empty boat where it is known.") { MayBeMissing = true },
    ];

    /// <summary>Tables that a later version reads; this one says so rather than calling them unknown.</summary>
    public static IReadOnlyList<string> Later { get; } =
        ["beam", "board", "rudder"];

    /// <summary>The keys of the file itself.</summary>
    public static IReadOnlyList<SchemaKey> Keys { get; } =
    [
        new("title", KeyKind.Text, "Name of the design, printed on every sheet; one line.", "\"Gauge Tender\"")
            { Required = true, Least = 1, Greatest = 60, Also = ["name"] },
        .. Main(),
        .. Bow(),
        .. Stern(),
        .. Midship(),
        .. Build(),
        .. MaterialKeys.Build,
        .. MaterialKeys.Material,
        .. MaterialKeys.Price,
        .. VesselKeys.Rig,
        .. VesselKeys.Structure,
    ];

    /// <summary>The file itself.</summary>
    public static SchemaForm Vessel { get; } = new("", Tables, Keys);

    /// <summary>A float beside the main hull, or a pair of them; its hull has the keys of the main hull.</summary>
    public static SchemaForm Outrigger { get; } = new(
        "outrigger",
        [new("", "A float beside the main hull, or a pair; several may stand in a file."), .. Tables.Where(t => t.Path.Split('.')[0] is "hull")],
        [.. VesselKeys.Outrigger, .. Keys.Where(k => k.Path.StartsWith("hull.", StringComparison.Ordinal))]);

    /// <summary>Something or somebody on board.</summary>
    public static SchemaForm Load { get; } = new("load", [new("", "Something or somebody on board, one table for each.")], [.. VesselKeys.Load]);

    /// <summary>A part of the main hull between bulkheads.</summary>
    public static SchemaForm Compartment { get; } = new("compartment", [new("", "A part of the main hull between bulkheads, one table for each.")], [.. VesselKeys.Compartment]);

    /// <summary>A bulkhead of the main hull beside those of its joints.</summary>
    public static SchemaForm Bulkhead { get; } = new(
        "bulkhead", [new("", "A bulkhead of the main hull under a beam, at the end of a deck or elsewhere, one table for each; those of joints need none.")], [.. VesselKeys.Bulkhead]);

    /// <summary>An opening in bottom or deck of the main hull.</summary>
    public static SchemaForm Opening { get; } = new("opening", [new("", "An opening in bottom or deck of the main hull, for a board case, a drive or a mast step, one table for each.")], [.. VesselKeys.Opening]);

    /// <summary>The forms that may stand several times in a file, in double brackets.</summary>
    public static IReadOnlyList<SchemaForm> Repeated { get; } = [Outrigger, Load, Compartment, Bulkhead, Opening];

    /// <summary>The names of all tables that have one, with the head line of each.</summary>
    public static IReadOnlyDictionary<string, string> Heads { get; } = Repeated.Prepend(Vessel)
        .SelectMany(f => f.Tables.Where(t => f.IsRepeated || t.Path.Length > 0).Select(t => (Name: f.Shown(t.Path), Head: f.Head(t.Path))))
        .ToDictionary(h => h.Name, h => h.Head, StringComparer.Ordinal);

    /// <summary>The keys of the file itself by path.</summary>
    public static IReadOnlyDictionary<string, SchemaKey> ByPath { get; } = Keys.ToDictionary(k => k.Path, StringComparer.Ordinal);

    /// <summary>The keys by the dial they set.</summary>
    public static IReadOnlyDictionary<Dial, SchemaKey> ByDial { get; } = Keys.Where(k => k.Dial is not null).ToDictionary(k => k.Dial!.Value);

    /// <summary>The keys by the target they set.</summary>
    public static IReadOnlyDictionary<Target, SchemaKey> ByTarget { get; } = Keys.Where(k => k.Target is not null).ToDictionary(k => k.Target!.Value);

    /// <summary>The key of a path as it stands in a file, in whichever form.</summary>
    /// <param name="path">The key with its tables, like <c>outrigger.hull.beam</c>.</param>
    /// <returns>The key; null where there is none.</returns>
    public static SchemaKey? Find(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return ByPath.GetValueOrDefault(path) ?? Repeated.Where(f => path.StartsWith(f.Name + ".", StringComparison.Ordinal)).Select(f => f.ByPath.GetValueOrDefault(path[(f.Name.Length + 1)..])).FirstOrDefault();
    }

    private static IEnumerable<SchemaKey> Main() =>
    [
        Needed("hull.length", "Foremost to aftmost point of the sides; no outer stems, rudder, fittings or crown of a deck.", "5.20 m", (2, 12), Stretch.Along, Dial.Length)
            with { Also = ["loa", "length_overall"] },
        Needed("hull.beam", "Greatest breadth.", "740 mm", (0.2, 2), Stretch.Across, Dial.Beam)
            with { Bounds = KeyBounds.Beam, Also = ["width", "breadth"] },
        Needed("hull.depth", "Base line to the sheer at the widest station.", "360 mm", (0.1, 0.8), Stretch.Up, Dial.Depth)
            with { Also = ["height"] },
        Needed("hull.draft", "Base line to the design waterline.", "115 mm", (0.04, 0.4), Stretch.Up, Dial.Draft)
            with { Bounds = KeyBounds.Draft, Also = ["draught"] },
        Ratio("hull.widest", "Widest point of the design waterline, fraction of its length from its fore end.", "0.50", Dial.Widest)
            with { Default = "0.50, with a transom 0.56; further off where the waterline is plainly fairer" },
        Ratio("hull.keel_low", "Lowest point of the keel, fraction of the hull's length from the foremost point.", "0.50", Dial.KeelLow)
            with { Default = "at the widest station" },
        new("hull.hollow", KeyKind.Flag, "Whether lines may curve inward near the ends.", "false") { Default = "false", Dial = Dial.Hollow },
        new("hull.crown", KeyKind.Length, "Closes the hull with a deck: its height at the centerplane above the sheer where that is broadest, falling with the sheer's breadth to nothing at pointed ends. Molds still end at the sheer and no patterns are made for the deck; bulkheads rise to the underside of one as thick as planking and inner cloth.", "\"40 mm\"")
            { Default = "an open hull", Least = 0, Greatest = 0.2, Stretch = Stretch.Up, Bounds = KeyBounds.Crown, Also = ["camber", "deck"] },
        Asked(Target.Displacement, "hull.displacement", KeyKind.Mass, "Mass that floats at the design waterline, boat and crew.", "\"130 kg\"", (1, 10000), Stretch.Volume)
            with { Also = ["mass", "weight"] },
        new("hull.water", KeyKind.Choice, "Water the displacement is meant in.", $"\"{FreshWater}\"") { Choices = [FreshWater, SeaWater], Default = FreshWater },
        Asked(Target.Prismatic, "hull.prismatic", KeyKind.Ratio, "Prismatic coefficient: displaced volume over waterline length and greatest section area.", "0.56", (0.4, 0.8), Stretch.None)
            with { Also = ["cp", "prismatic_coefficient"] },
        Asked(Target.CenterOfBuoyancy, "hull.center_of_buoyancy", KeyKind.Ratio, "Center of buoyancy aft of the waterline's fore end, fraction of its length.", "0.51", (0.35, 0.65), Stretch.None)
            with { Also = ["lcb", "buoyancy"] },
        Asked(Target.WaterlineLength, "hull.waterline_length", KeyKind.Length, "Length of the design waterline.", "\"4.90 m\"", (0.9, 15), Stretch.Along)
            with { Also = ["lwl"] },
        Asked(Target.WaterlineBeam, "hull.waterline_beam", KeyKind.Length, "Greatest breadth of the design waterline.", "\"680 mm\"", (0.08, 3), Stretch.Across)
            with { Also = ["bwl"] },
    ];

    private static IEnumerable<SchemaKey> Bow() =>
    [
        Ratio("hull.bow.entry_fullness", "Area of half the design waterplane forward of its widest point over the rectangle around it.", "0.62", Dial.EntryFullness)
            with { Required = true, Bounds = KeyBounds.Fullness },
        Ratio("hull.bow.sheer_fullness", "The same measure of the sheer in plan: volume above water.", "0.68", Dial.BowSheerFullness)
            with { Default = "the fairest" },
        Needed("hull.bow.rocker", "Height of the keel at the forefoot; above the draft the design waterline ends on the keel.", "50 mm", (0, 0.15), Stretch.Up, Dial.BowRocker)
            with { Bounds = KeyBounds.Rocker("bow") },
        Needed("hull.bow.sheer", "Height of the sheer at the bow.", "520 mm", (0.1, 1), Stretch.Up, Dial.BowSheer)
            with { Bounds = KeyBounds.Sheer },
        Needed("hull.bow.forefoot", "Where the stem meets the keel, aft of the foremost point.", "250 mm", (0.05, 1), Stretch.Along, Dial.Forefoot)
            with { Bounds = KeyBounds.Profile },
        Profile("hull.bow.profile", "The stem from abeam: curved, a quarter ellipse plumb at the sheer; plumb, upright above a tight turn; raked, nearly straight and leaning out."),
        Angle("hull.bow.vee", "Angle of the section from level at the keel, 5 % of the design waterline's length aft of the forefoot; a steep one wants hollow = true.", "12 deg", Stretch.UpOverAcross, Dial.BowVee)
            with { Default = "the fairest" },
        Angle("hull.bow.entry_angle", "Half-angle of entrance at the design waterline.", "12 deg", Stretch.AcrossOverAlong, Dial.EntryAngle)
            with { Default = "what the batten takes", Target = Target.EntryAngle },
    ];

    private static IEnumerable<SchemaKey> Stern() =>
    [
        new("hull.stern.kind", KeyKind.Choice, "Shape of the stern.", "\"pointed\"") { Required = true, Choices = [Pointed, Transom] },
        Ratio("hull.stern.run_fullness", "Area of half the design waterplane aft of its widest point over the rectangle around it.", "0.60", Dial.RunFullness)
            with { Required = true, Bounds = KeyBounds.Fullness },
        Ratio("hull.stern.sheer_fullness", "The same measure of the sheer in plan.", "0.66", Dial.SternSheerFullness)
            with { Default = "the fairest" },
        Needed("hull.stern.rocker", "Height of the keel at the heel, or of the foot of a transom; above the draft it is clear of the water.", "40 mm", (0, 0.15), Stretch.Up, Dial.SternRocker)
            with { Bounds = KeyBounds.Rocker("stern") },
        Needed("hull.stern.sheer", "Height of the sheer at the stern.", "480 mm", (0.1, 1), Stretch.Up, Dial.SternSheer)
            with { Bounds = KeyBounds.Sheer },
        Needed("hull.stern.heel", "Where the sternpost meets the keel, forward of the aftmost point.", "220 mm", (0.05, 1), Stretch.Along, Dial.Heel)
            with { Stern = Pointed, Bounds = KeyBounds.Profile },
        Profile("hull.stern.profile", "The sternpost from abeam, like the stem.") with { Stern = Pointed },
        Angle("hull.stern.vee", "Angle of the section from level at the keel, 5 % of the design waterline's length forward of the heel; a steep one wants hollow = true.", "12 deg", Stretch.UpOverAcross, Dial.SternVee)
            with { Stern = Pointed, Default = "the fairest" },
        Angle("hull.stern.run_angle", "Half-angle of the run at the after end of the design waterline.", "12 deg", Stretch.AcrossOverAlong, Dial.RunAngle)
            with { Stern = Pointed, Default = "what the batten takes" },
        Angle("hull.stern.rake", "Angle of the transom from plumb, positive when its top is aft.", "12 deg", Stretch.AlongOverUp, Dial.TransomRake)
            with { Stern = Transom, Required = true, Default = null, Bounds = KeyBounds.Rake },
        Needed("hull.stern.breadth", "Greatest breadth of the transom, on its own plane.", "620 mm", (0.1, 1.5), Stretch.Across, Dial.TransomBreadth)
            with { Stern = Transom, Bounds = KeyBounds.TransomBreadth, Also = ["width", "beam"] },
        Needed("hull.stern.immersion", "Depth of the foot of the transom below the design waterline; negative is clear of it.", "30 mm", (-0.05, 0.15), Stretch.Up, Dial.TransomImmersion)
            with { Stern = Transom, Required = false, Default = "rocker gives the foot", Bounds = KeyBounds.Immersion, InPlaceOf = "hull.stern.rocker" },
    ];

    private static IEnumerable<SchemaKey> Midship() =>
    [
        Angle("hull.midship.deadrise", "Angle of the bottom from level, at the keel.", "6 deg", Stretch.UpOverAcross, Dial.Deadrise)
            with { Required = true, Default = null },
        Ratio("hull.midship.fullness", "Immersed area over the product of the section's waterline breadth and its own draft.", "0.80", Dial.MidshipFullness)
            with { Required = true },
        Angle("hull.midship.flare", "Angle from plumb at the sheer; negative is tumblehome.", "6 deg", Stretch.AcrossOverUp, Dial.Flare)
            with { Required = true, Default = null },
    ];

    private static IEnumerable<SchemaKey> Build() =>
    [
        new("build.planking", KeyKind.Length, "Thickness of the planking, deducted from the molds square to the surface.", "\"6 mm\"")
            { Required = true, Least = 0.001, Greatest = 0.03, Bounds = KeyBounds.Planking, Also = ["thickness", "planking_thickness"] },
        Optional("build.sheathing", "Thickness of the inner cloth, deducted with the planking for bulkheads.", "0.4 mm", 0, 0.005, Builds.Sheathing),
        Optional("build.mold_spacing", "Distance between molds.", "300 mm", 0.05, 1.5, Builds.MoldSpacing)
            with { Bounds = KeyBounds.MoldSpacing, Also = ["spacing", "station_spacing"] },
        Optional("build.mold_stock", "Thickness of the mold stock.", "12 mm", 0.002, 0.05, Builds.MoldStock),
        Optional("build.strip_width", "Width of a planking strip.", "19 mm", 0.005, 0.15, Builds.StripWidth),
        Optional("build.stem_siding", "Thickness of the inner stem.", "19 mm", 0.004, 0.15, Builds.StemSiding),
        Optional("build.sheet_length", "Length of the sheets molds are cut from, the way of their grain.", "2440 mm", 0.6, 4, Builds.SheetLength),
        Optional("build.sheet_width", "Width of the sheets.", "1220 mm", 0.3, 2.5, Builds.SheetWidth)
            with { Also = ["sheet"] },
        Optional("build.sheet_margin", "Least distance of a part from the edges of its sheet.", "15 mm", 0, 0.1, Builds.SheetMargin)
            with { Also = ["margin"] },
        Optional("build.part_spacing", "Least distance of two parts on a sheet; more than the diameter of the tool.", "12 mm", 0, 0.1, Builds.PartSpacing),
        new("build.grain", KeyKind.Flag, "Whether parts keep the grain of the sheet: they lie with their breadth along it, turned end for end at most.", "false") { Default = "false" },
        new("build.joints", KeyKind.Lengths, "Take-apart planes, distances from the foremost point.", "[\"1.30 m\", \"3.90 m\"]")
            { Default = "none", Least = LeastPlace, Greatest = 15, Stretch = Stretch.Along, Bounds = KeyBounds.Inside, Apart = KeyBounds.JointsApart },
        new("build.mold_at", KeyKind.Lengths, "Mold stations, distances from the foremost point, in place of even spacing; at least one.", "[\"0.9 m\", \"1.8 m\", \"2.6 m\"]")
            { Default = "one at the widest station, the others spaced from it both ways", Least = LeastPlace, Greatest = 15, Stretch = Stretch.Along, Bounds = KeyBounds.Inside, Apart = KeyBounds.MoldsApart },
        new("build.strongback_top", KeyKind.Length, "Height of the strongback top above the base line, hull upright; the hull is built over it.", "\"700 mm\"")
            { Default = "clear of the highest sheer", Least = DialRange.LowestSheer + Strongback.LeastClearance, Greatest = 3, Stretch = Stretch.Up, Bounds = KeyBounds.StrongbackTop },
        Optional("build.strongback_width", "Breadth of the strongback's section; the feet of the molds are just as wide.", "190 mm", 0.08, 0.6, 0)
            with { Default = "a third of the beam, 150 mm to 400 mm" },
        Optional("build.strongback_depth", "Depth of the strongback's section.", "90 mm", 0.02, 0.6, Builds.StrongbackDepth),
    ];

    private static SchemaKey Asked(Target target, string path, KeyKind kind, string doc, string example, (double Least, double Greatest) range, Stretch stretch) =>
        new(path, kind, doc, example) { Target = target, Least = range.Least, Greatest = range.Greatest, Stretch = stretch, Default = "what the dials give" };

    private static SchemaKey Needed(string path, string doc, string example, (double, double) slider, Stretch stretch, Dial dial) =>
        OfDial(path, KeyKind.Length, doc, $"\"{example}\"", stretch, dial) with { Required = true, Slider = slider };

    private static SchemaKey Profile(string path, string doc)
    {
        string[] profiles = [.. Enum.GetNames<StemProfile>().Select(name => name.ToLowerInvariant())];
        return new(path, KeyKind.Choice, doc, $"\"{profiles[0]}\"") { Choices = profiles, Default = profiles[0] };
    }

    internal static SchemaKey Optional(string path, string doc, string example, double least, double greatest, double otherwise) =>
        new(path, KeyKind.Length, doc, $"\"{example}\"")
        {
            Default = new Length(otherwise).ToText(LengthNotation.Millimeters),
            Least = least,
            Greatest = greatest,
        };

    private static SchemaKey Ratio(string path, string doc, string example, Dial dial) =>
        OfDial(path, KeyKind.Ratio, doc, example, Stretch.None, dial) with { Slider = DialRange.Of(dial) };

    private static SchemaKey Angle(string path, string doc, string example, Stretch stretch, Dial dial) =>
        OfDial(path, KeyKind.Angle, doc, $"\"{example}\"", stretch, dial) with { Slider = DialRange.Of(dial) };

    private static SchemaKey OfDial(string path, KeyKind kind, string doc, string example, Stretch stretch, Dial dial)
    {
        var (least, greatest) = DialRange.Of(dial);
        return new(path, kind, doc, example) { Least = least, Greatest = greatest, Stretch = stretch, Dial = dial };
    }
}
