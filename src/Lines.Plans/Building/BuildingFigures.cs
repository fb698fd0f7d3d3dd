using Lines.Construction.Materials;
using Lines.Construction.Planking;
using Lines.Plans.Figures;

namespace Lines.Plans.Building;

/// <summary>The figures of a hull as it is built.</summary>
public static class BuildingFigures
{
    /// <summary>What is not in the weight.</summary>
    public const string NotWeighed = "thwarts, seats, decks, beams, fittings and paint are not in it";

    /// <summary>The weight of the hull and where it lies.</summary>
    /// <param name="weight">The weight.</param>
    /// <param name="material">What it is built of.</param>
    public static FigureGroup Weight(HullWeight weight, MaterialDials material)
    {
        ArgumentNullException.ThrowIfNull(weight);
        ArgumentNullException.ThrowIfNull(material);
        return new FigureGroup("weight", "Weight of the hull as planked and sheathed",
        [
            new("planked_outside", "Skin, outside", weight.Layer.Outside, Quantity.Area) { Note = "both sides" },
            new("planked_inside", "Skin, inside", weight.Layer.Inside, Quantity.Area) { Note = "both sides" },
            .. weight.Parts.Select(p => new Figure(p.Key + "_mass", p.Name, p.Mass, Quantity.Mass) { IsEstimate = true, Note = Source(p.Key, material) }),
            new("hull_mass", "Hull", weight.Mass, Quantity.Mass) { IsEstimate = true, Note = NotWeighed },
            new("hull_center_aft", "Its center", weight.Center.X, Quantity.Length) { IsEstimate = true, Note = "aft of the foremost point" },
            new("hull_center_height", "Its center, height", weight.Center.Z, Quantity.Length) { IsEstimate = true, Note = "above the base line" },
        ]);
    }

    /// <summary>The strips and the wood for them.</summary>
    /// <param name="strips">The strips.</param>
    /// <param name="stock">The wood.</param>
    public static FigureGroup Planking(StripPlan strips, StripStock stock)
    {
        ArgumentNullException.ThrowIfNull(strips);
        ArgumentNullException.ThrowIfNull(stock);
        return new FigureGroup("planking", "Strip planking",
        [
            new("strips_a_side", "Strips a side", strips.Strips.Count, Quantity.Count),
            new("strips_at_widest", "Strips a side where the girth is greatest", strips.Sections.Select(s => s.Count).DefaultIfEmpty(0).Max(), Quantity.Count),
            new("strips_length", "Strips, all told", stock.Net, Quantity.Run) { Note = "both sides, as they lie on the hull" },
            new("strips_to_saw", "Strips to saw", stock.ToBuy, Quantity.Run) { IsEstimate = true, Note = "with scarfs and waste" },
            new("scarfs", "Scarfs", stock.Scarfs, Quantity.Count) { Note = Invariant($"{StripStock.ScarfRatio:0} times as long as the strip is thick") },
            new("board_feet_net", "Wood in the planking, board feet", stock.NetBoardFeet, Quantity.Ratio) { Note = "144 cubic inches each" },
            new("board_feet", "Wood to buy, board feet", stock.BoardFeet, Quantity.Ratio) { IsEstimate = true, Note = "with kerf, scarfs and waste; planed boards as thick as a strip is wide" },
        ]);
    }

    private static string Source(string key, MaterialDials material) => key switch
    {
        "planking" => Invariant($"{material.Wood.Density:F0} kg/m³: {material.Wood.Source}; boards differ by a fifth either way"),
        "resin" => Invariant($"as heavy as the cloth (suppliers' worksheets), and {1000 * material.FillCoats:F0} g/m² of fill coats"),
        "transom" or "bulkheads" => Invariant($"plywood of {material.Plywood:F0} kg/m³"),
        _ => "",
    };
}
