using System.Globalization;
using Lines.Kernel.Units;
using Lines.Plans.Exchange;

namespace Lines.Plans.Building;

/// <summary>The planking, the bill of materials and the order of work for spreadsheets, as <see cref="CsvText"/>.</summary>
public static class BuildingCsv
{
    /// <summary>The strips: at every mold, one by one, and where they are bent too far.</summary>
    public static string Planking(BuildingBook book)
    {
        ArgumentNullException.ThrowIfNull(book);
        var sections = book.Sections;
        var text = new CsvText(sections.Columns.Count, book.Notation);
        text.Record(["Strip planking: " + book.Title]);
        text.Record([$"Strips {new Length(book.Build.StripWidth).ToSize(book.Notation)} wide along the {(book.Build.Strips == Construction.Planking.StripRun.Sheer ? "sheer" : "level line amidships")}; girths to the outside of planking"]);
        text.Record(sections.Columns.Select(c => c.Place.Length > 0 ? $"{c.Name}, {c.Place}" : c.Name));
        foreach (var row in sections.Rows)
            text.Figures(row);
        text.Record(["Strip from the sheer", "Length" + (book.Unit.Length > 0 ? ", " + book.Unit : ""), "Second part"]);
        foreach (var strip in book.Strips.Strips)
            text.Figures(strip.Lengths.Select(l => new Length(l).ToCell(book.Notation)).Prepend(strip.Number.ToString(CultureInfo.InvariantCulture)));
        foreach (var bend in book.Bends)
            text.Record([bend]);
        return text.ToString();
    }

    /// <summary>The bill of materials, and the order of work under it.</summary>
    public static string Materials(BuildingBook book)
    {
        ArgumentNullException.ThrowIfNull(book);
        var lines = Bill.Of(book);
        var currency = book.Build.Material.Prices?.Currency;
        var all = book.AllHulls;
        var text = new CsvText(Math.Max(6, all?.Columns.Count ?? 0), book.Notation);
        text.Record(["Bill of materials: " + book.Title]);
        if (book.IsOneOfPair)
            text.Record(["For ONE of a pair: buy and make all of it twice but strongback, cleats and the sheets for molds, which serve both"]);
        text.Record(["Item", "Pieces", "Size", "Amount", currency is null ? "" : "Price, " + currency, "Note"]);
        foreach (var line in lines)
            text.Record([line.Item, line.Pieces, line.Size, line.Amount, Money(line.Price), line.Note]);
        if (Bill.Sum(lines) is { } sum)
            text.Record(["Sum of the prices given", "", "", "", Money(sum), ""]);
        if (all is not null)
        {
            text.Record([all.Title]);
            text.Record(all.Columns.Select(c => c.Place.Length > 0 ? $"{c.Name}, {c.Place}" : c.Name));
            foreach (var row in all.Rows)
                text.Record(row);
        }

        foreach (var warning in book.TooLarge)
            text.Record([warning]);
        text.Record(["Order of work", "", "", "", "", "Caution"]);
        foreach (var (step, k) in OrderOfWork.Of(book).Select((s, k) => (s, k + 1)))
            text.Record([Invariant($"{k}. {step.What}"), "", "", "", "", step.Caution]);
        return text.ToString();
    }

    /// <summary>A price with its hundredths; empty where there is none.</summary>
    internal static string Money(double? price) => price?.ToString("F2", CultureInfo.InvariantCulture) ?? "";
}
