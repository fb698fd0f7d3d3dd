using Lines.Construction.Molds;
using Lines.Hull.Sections;
using Lines.Kernel.Units;
using Lines.Plans.Exchange;
using Lines.Plans.Report;

namespace Lines.Plans.Molds;

/// <summary>The table of the setting-up sheet for spreadsheets, as <see cref="CsvText"/>.</summary>
public static class SettingUpCsv
{
    /// <summary>Writes the table, and under it the molds left out.</summary>
    /// <param name="title">Title of the design.</param>
    /// <param name="plan">The molds.</param>
    /// <param name="notation">How lengths are written.</param>
    /// <param name="deck">The deck's lines, whose crown stands in a column of its own; null for an open hull.</param>
    /// <param name="isFair">Whether the hull is fair; one that is not is marked so.</param>
    /// <returns>The text; it is to be stored as UTF-8.</returns>
    public static string Write(string title, MoldPlan plan, LengthNotation notation, DeckLines? deck = null, bool isFair = true)
    {
        ArgumentNullException.ThrowIfNull(plan);
        List<string> headings = [.. SettingUpTable.Table.Headings];
        if (deck is not null)
            headings.Add("Deck at centerline above sheer");
        var text = new CsvText(headings.Count, notation);
        text.Record(["Setting up the molds: " + title]);
        if (!isFair)
            text.Record([Cautions.NotFair]);
        text.Record(["Lengths in " + SettingUpSheet.Unit(notation)]);
        text.Record(headings);
        foreach (var mold in plan.Molds)
            Told(SettingUpTable.Cells(mold, notation).Concat(deck is null ? [] : [Crown(mold)]));
        foreach (var left in plan.LeftOut)
            text.Record([left.Sentence(notation)]);
        text.Record(["Bevels: of molds and transom from square, a transom's plus where its fore face is the larger; of stem and stern from their side to the planking"]);
        text.Record(AngleTable.Table(notation).Headings);
        foreach (var mold in plan.Molds.Where(m => m.Kind == MoldKind.Station))
            Told(AngleTable.Cells(mold, plan.Strongback, notation));
        text.Record(EndTable.Table(notation).Headings);
        foreach (var cells in EndTable.Rows(plan, notation))
            Told(cells);
        return text.ToString();

        void Told(IEnumerable<string> cells) => text.Figures(cells.Select(c => c is SettingUpTable.None ? "" : c));

        string Crown(Mold mold) => CrownAt(mold) is { } rise ? new Length(rise).ToCell(notation) : "";

        double? CrownAt(Mold mold) => mold.Kind switch
        {
            MoldKind.Station => deck!.CrownAt(mold.X),
            MoldKind.Transom => deck!.CrownAtEnd,
            _ => null,
        };
    }
}
