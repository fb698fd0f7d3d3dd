using Lines.Construction.Molds;
using Lines.Construction.Nesting;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Exchange;
using Lines.Plans.Molds;
using Lines.Plans.Report;

namespace Lines.Plans.Nesting;

/// <summary>What is cut from which sheet, as figures: the table of the cutting list, for paper and for spreadsheets.</summary>
public static class CuttingList
{
    private static readonly string[] s_headings = ["Sheet", "Stock", "Part", "Along the sheet", "Across the sheet"];

    /// <summary>Writes the list for spreadsheets, as <see cref="CsvText"/>.</summary>
    /// <param name="title">Title of the design.</param>
    /// <param name="plan">The cutting plan.</param>
    /// <param name="notation">How lengths are written.</param>
    /// <param name="isFair">Whether the hull is fair; one that is not is marked so.</param>
    /// <returns>The text; it is to be stored as UTF-8.</returns>
    public static string Csv(string title, CuttingPlan plan, LengthNotation notation, bool isFair = true)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var text = new CsvText(s_headings.Length, notation);
        text.Record(["Cutting list: " + title]);
        if (!isFair)
            text.Record([Cautions.NotFair]);
        text.Record(["Lengths in " + SettingUpSheet.Unit(notation)]);
        foreach (var line in Summary(plan, notation))
            text.Record([line]);
        text.Record(s_headings);
        foreach (var sheet in plan.Sheets)
        {
            foreach (var part in sheet.Parts)
            {
                var (along, across) = SizeOf(part.Outline);
                text.Figures([Invariant($"{sheet.Number}"), new Length(sheet.Thickness).ToCell(notation), part.Mold.Name, new Length(along).ToCell(notation), new Length(across).ToCell(notation)]);
            }
        }

        return text.ToString();
    }

    /// <summary>The sheets needed of each thickness, how well they are used, and what goes on none, a line each.</summary>
    internal static IEnumerable<string> Summary(CuttingPlan plan, LengthNotation notation)
    {
        var size = $"{new Length(plan.Stock.Length).ToSize(notation)} by {new Length(plan.Stock.Width).ToSize(notation)}";
        foreach (var stock in plan.Stocks)
        {
            var sheets = stock.Sheets;
            var used = sheets[^1].UsedLength;
            yield return Invariant($"{new Length(stock.Thickness).ToSize(notation)} {(stock.StaysInBoat ? "plywood for " + stock.Parts : "stock")}: {sheets.Count} {(sheets.Count == 1 ? "sheet" : "sheets")} of {size}")
                + $", {new Length(used).ToText(notation)} of the {(sheets.Count == 1 ? "length" : "last one's length")} used.";
        }

        if (plan.Sheets.Count > 0)
            yield return Invariant($"The parts cover {100 * plan.Utilization:F0} % of what is used. They lie {new Length(plan.Stock.Spacing).ToSize(notation)} apart, {new Length(plan.Stock.Margin).ToSize(notation)} from the edges")
                + (plan.Stock.Grained ? ", their breadth along the grain." : ".");
        var halves = plan.Sheets.SelectMany(s => s.Parts).Select(p => p.Mold).Where(m => m.IsHalf).OrderBy(m => m.Number).Select(m => m.Name).ToList();
        if (halves.Count > 0)
            yield return Invariant($"Halves, each turned over at its centerline to mark or cut the other side: {(halves.Count > 2 ? $"{halves[0]} to {halves[^1]}" : string.Join(" and ", halves))}.");
        foreach (var (sheet, mold) in plan.Sheets.SelectMany(s => s.Parts.Select(p => (s, p.Mold))).Where(p => p.Mold is { Kind: MoldKind.Transom, Bevel: not null }))
        {
            var proud = new Length(sheet.Thickness * Math.Tan(Math.Max(mold.Bevel!.Value.Greatest, 0))).ToText(notation);
            yield return $"{mold.Name}: its outline is the after face, the smaller where the bevel is plus, and a router cuts square. Keep up to {proud} outside it and plane to the bevel, or saw it at the bevel.";
        }

        foreach (var mold in plan.TooLarge)
        {
            var (along, across) = SizeOf(mold.Outline);
            yield return $"{mold.Name} goes on no sheet: it is {new Length(along).ToText(notation)} by {new Length(across).ToText(notation)}. Take larger sheets, or join two pieces with a cleat.";
        }
    }

    /// <summary>Extents of an outline along and across [m].</summary>
    internal static (double Along, double Across) SizeOf(ArcPath outline)
    {
        var box = outline.Bounds();
        return (box.Width, box.Height);
    }
}
