using Lines.Construction.Materials;
using Lines.Construction.Planking;

namespace Lines.Design.Schema;

/// <summary>The keys of planking, materials and prices.</summary>
internal static class MaterialKeys
{
    private static readonly string[] s_runs = [.. Enum.GetNames<StripRun>().Select(n => n.ToLowerInvariant())];

    private static readonly MaterialDials s_material = DesignSchema.Builds.Material;

    public static IEnumerable<SchemaKey> Build { get; } =
    [
        new("build.strips", KeyKind.Choice, "The line that the strips run along: the sheer, or a level line at the height of the lowest sheer, above which short strips fill up.", $"\"{s_runs[0]}\"")
            { Choices = s_runs, Default = s_runs[0] },
        DesignSchema.Optional("build.board_length", "Length of the boards that strips are sawn from; longer strips are scarfed.", "2.4 m", 1, 12, DesignSchema.Builds.BoardLength),
        DesignSchema.Optional("build.saw_kerf", "What the saw takes away between strips.", "3 mm", 0, 0.01, DesignSchema.Builds.SawKerf),
        new("build.waste", KeyKind.Ratio, "Strips sawn beyond those on the hull, as a part of them.", "0.15") { Default = Invariant($"{DesignSchema.Builds.Waste}"), Least = 0, Greatest = 1 },
        DesignSchema.Optional("build.stem_molding", "Depth of inner and outer stems, square to their siding; for their weight and wood.", "25 mm", 0.005, 0.2, DesignSchema.Builds.StemMolding),
        DesignSchema.Optional("build.gunwale", "Side of the square inwales and outwales; for their weight and wood.", "19 mm", 0, 0.06, DesignSchema.Builds.Gunwale) with { Default = "none", Also = ["inwale", "outwale", "rail"] },
        DesignSchema.Optional("build.joint_gap", "Width of the saw cut between the two bulkheads of a joint.", "4 mm", 0.0005, 0.02, DesignSchema.Builds.JointGap),
        DesignSchema.Optional("build.joint_bolt", "Diameter of the bolts of a joint.", "8 mm", 0.003, 0.02, DesignSchema.Builds.JointBolt),
        DesignSchema.Optional("build.joint_clearance", "Room to work that molds leave beside the bulkheads of a joint.", "30 mm", 0, 0.3, DesignSchema.Builds.JointClearance),
        DesignSchema.Optional("build.bulkhead_opening", "Diameter of the opening in every bulkhead of a joint, for a hatch or to save weight; what has no hatch lets water through.", "200 mm", 0.02, 0.6, 0) with { Default = "none", Also = ["hatch", "lightening_hole"] },
        new("build.storage", KeyKind.Lengths, "Length, breadth and height of the space that the boat, or each of her pieces, is stored in.", "[\"2.6 m\", \"0.8 m\", \"0.7 m\"]")
            { Default = "not checked", Least = 0.1, Greatest = 15, Members = 3, Also = ["space", "shed"] },
        DesignSchema.Optional("build.bulkhead_stock", "Thickness of the plywood of bulkheads and transom.", "9 mm", 0.002, 0.03, DesignSchema.Builds.BulkheadStock),
    ];

    public static IEnumerable<SchemaKey> Material { get; } =
    [
        new("material.wood", KeyKind.Choice, "Wood of strips, stems and gunwales.", $"\"{s_material.Wood.Name}\"")
            { Choices = [.. Wood.Table.Select(w => w.Name)], Default = s_material.Wood.Name, Also = ["planking", "strips", "timber"] },
        Cloth("material.outside_cloth", "Cloth over the whole outside; 0 g/m2 for none.", s_material.OutsideCloth) with { Also = ["cloth", "glass", "outside"] },
        Cloth("material.bottom_cloth", "Second cloth outside, up to the design waterline.", s_material.BottomCloth) with { Default = "none", Also = ["bottom"] },
        Cloth("material.inside_cloth", "Cloth over the whole inside; 0 g/m2 for none.", s_material.InsideCloth) with { Also = ["inside"] },
        Cloth("material.fill_coats", "Resin that the coats over the cloth leave on each sheathed side after sanding.", s_material.FillCoats),
    ];

    public static IEnumerable<SchemaKey> Price { get; } =
    [
        new("price.currency", KeyKind.Text, "The money meant.", "\"USD\"") { Required = true, Least = 1, Greatest = 8 },
        Money("price.board_foot", "A board foot of the wood of strips, stems and gunwales.", "9.50"),
        Money("price.cloth", "A square meter of cloth.", "8.00"),
        Money("price.resin", "A kilogram of resin with its hardener.", "28.00"),
        Money("price.sheet", "A whole sheet of mold stock.", "38.00"),
        Money("price.profile_sheet", "A whole sheet of the stock of stem and stern molds, where that is not as thick as mold stock.", "55.00"),
        Money("price.plywood_sheet", "A whole sheet of boatbuilding plywood, for bulkheads and transom.", "120.00"),
    ];

    private static SchemaKey Cloth(string path, string doc, double otherwise) =>
        new(path, KeyKind.ArealMass, doc, "\"200 g/m2\"") { Default = new Kernel.Units.ArealMass(otherwise).ToText(inOunces: false), Least = 0, Greatest = 2 };

    private static SchemaKey Money(string path, string doc, string example) =>
        new(path, KeyKind.Ratio, doc, example) { Default = "not counted", Least = 0, Greatest = 1e6 };
}
