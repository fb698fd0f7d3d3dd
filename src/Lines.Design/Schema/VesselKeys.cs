using Lines.Hull.Form;

namespace Lines.Design.Schema;

/// <summary>The keys of what a vessel has beside its main hull.</summary>
internal static class VesselKeys
{
    /// <summary>Nothing of a boat is further from its bow, centerplane or base line [m]: more is a mistake in a unit.</summary>
    private const double Furthest = 17;

    /// <summary>The same ahead, to port and below [m].</summary>
    private const double Least = -6;

    public static IEnumerable<SchemaKey> Rig { get; } =
    [
        new("appendage.area", KeyKind.Area, "Area under water of all of them, seen from the side.", "\"0.12 m2\"") { Required = true, Least = 0.001, Greatest = 5 },
        Length("appendage.chord", "Their length along the flow.", "200 mm", 0.02, 2) with { Required = true },
        new("appendage.thickness", KeyKind.Ratio, "Their thickness over that length.", "0.1") { Default = "0.1", Least = 0.005, Greatest = 0.4 },
        new("rig.area", KeyKind.Area, "Area of all sails set.", "\"7.5 m2\"") { Required = true, Least = 0.5, Greatest = 60, Also = ["sail_area"] },
        Length("rig.aft", "Center of the sail area aft of the foremost point of the main hull.", "2.3 m", Least, Furthest) with { Required = true, Stretch = Stretch.Along, Also = ["x"] },
        Length("rig.height", "Center of the sail area above the base line of the main hull.", "2.1 m", 0.2, 15) with { Required = true, Also = ["z", "center"] },
    ];

    public static IEnumerable<SchemaKey> Structure { get; } =
    [
        new("structure.mass", KeyKind.Mass, "Mass of the empty boat with all that is fixed to it, as weighed.", "\"38 kg\"") { Required = true, Least = 1, Greatest = 5000, Also = ["weight"] },
        At("structure.at", "Its center"),
    ];

    public static IEnumerable<SchemaKey> Outrigger { get; } =
    [
        new("side", KeyKind.Choice, "Where it stands; both is a pair of one shape.", "\"both\"") { Required = true, Choices = [.. Enum.GetNames<OutriggerSide>().Select(n => n.ToLowerInvariant())] },
        Length("spacing", "Its centerplane from that of the main hull.", "1.10 m", 0.2, 6) with { Required = true, Stretch = Stretch.Across, Slider = (0.4, 2.5), Also = ["distance"] },
        Length("height", "Its base line above that of the main hull; negative is below.", "60 mm", -0.5, 1.5) with { Required = true, Stretch = Stretch.Up, Slider = (-0.1, 0.4) },
        Length("aft", "Its foremost point aft of that of the main hull; negative is ahead.", "900 mm", -4, 10) with { Required = true, Stretch = Stretch.Along, Slider = (0, 3), Also = ["x"] },
    ];

    public static IEnumerable<SchemaKey> Load { get; } =
    [
        new("name", KeyKind.Text, "What or who it is, a name of its own.", "\"paddler\"") { Required = true, Least = 1, Greatest = 40 },
        new("mass", KeyKind.Mass, "Its mass.", "\"80 kg\"") { Required = true, Least = 0.1, Greatest = 5000, Also = ["weight"] },
        At("at", "Its center"),
        new("cases", KeyKind.Names, "The load cases in which it is on board.", "[\"solo\", \"two up\"]") { Default = "every case", Least = 1, Greatest = 40, Also = ["case"] },
    ];

    public static IEnumerable<SchemaKey> Compartment { get; } =
    [
        new("name", KeyKind.Text, "What it is called.", "\"bow\"") { Default = "numbered from the first", Least = 1, Greatest = 40 },
        Length("from", "Its forward bulkhead aft of the foremost point of the main hull.", "0.10 m", 0, 15) with { Required = true, Stretch = Stretch.Along },
        Length("to", "Its after bulkhead, further aft.", "1.20 m", 0.001, 15) with { Required = true, Stretch = Stretch.Along, Bounds = [KeyBound.MoreThan("from", "from", "is not aft of where it begins")] },
        new("sealed", KeyKind.Flag, "Whether no water gets into it.", "true") { Default = "false" },
    ];

    public static IEnumerable<SchemaKey> Bulkhead { get; } =
    [
        new("name", KeyKind.Text, "What it is for, a name of its own.", "\"fore beam\"") { Required = true, Least = 1, Greatest = 40 },
        Length("at", "Its face away from midships, aft of the foremost point of the main hull.", "1.70 m", 0.001, 15) with { Required = true, Stretch = Stretch.Along, Also = ["x", "from"] },
        Length("opening", "Diameter of an opening in it, for a hatch or to save weight.", "120 mm", 0.02, 0.6) with { Default = "none", Also = ["hatch", "lightening_hole"] },
    ];

    public static IEnumerable<SchemaKey> Opening { get; } =
    [
        new("name", KeyKind.Text, "What it is for, a name of its own.", "\"board case\"") { Required = true, Least = 1, Greatest = 40 },
        Length("from", "Its fore end, aft of the foremost point of the main hull.", "2.30 m", 0, 15) with { Required = true, Stretch = Stretch.Along },
        Length("to", "Its after end, further aft.", "2.65 m", 0.001, 15) with { Required = true, Stretch = Stretch.Along, Bounds = [KeyBound.MoreThan("from", "from", "is not aft of where it begins")] },
        Length("breadth", "Its breadth, half to each side of its middle.", "40 mm", 0.001, 2) with { Required = true, Also = ["width"] },
        Length("aside", "How far its middle stands from the centerplane, to starboard; negative to port.", "150 mm", -2, 2) with { Default = "on the centerplane", Also = ["offset", "y"] },
        new("through", KeyKind.Choice, "What it goes through.", "\"bottom\"") { Choices = ["bottom", "deck"], Default = "bottom" },
        new("sealed", KeyKind.Flag, "Whether no water comes in there through the deck: a hatch that seals, a mast in its collar.", "true") { Default = "false", Also = ["tight"] },
    ];

    private static SchemaKey Length(string path, string doc, string example, double least, double greatest) =>
        new(path, KeyKind.Length, doc, $"\"{example}\"") { Least = least, Greatest = greatest };

    private static SchemaKey At(string path, string what) =>
        new(path, KeyKind.Position, $"{what}: aft of the foremost point of the main hull, to starboard of the centerplane (negative to port), above the base line.", "[\"2.9 m\", \"0 m\", \"0.45 m\"]")
        {
            Required = true,
            Least = Least,
            Greatest = Furthest,
            Stretch = Stretch.Everywhere,
            Also = ["position", "center", "cg"],
        };
}
