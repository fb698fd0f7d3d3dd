using Lines.Construction.Molds;
using Lines.Kernel.Units;
using Lines.Plans.Exchange;

namespace Lines.Plans.Molds;

/// <summary>The table of the setting-up sheet for spreadsheets, as <see cref="CsvText"/>.</summary>
public static class SettingUpCsv
{
    /// <summary>Writes the table.</summary>
    /// <param name="title">Title of the design.</param>
    /// <param name="plan">The molds.</param>
    /// <param name="notation">How lengths are written.</param>
    /// <returns>The text; it is to be stored as UTF-8.</returns>
    public static string Write(string title, MoldPlan plan, LengthNotation notation)
    {
        ArgumentNullException.ThrowIfNull(plan);
        List<string> headings = [.. SettingUpTable.Headings];
        var text = new CsvText(headings.Count, notation);
        text.Record(["Setting up the molds: " + title]);
        text.Record(["Lengths in " + SettingUpSheet.Unit(notation)]);
        text.Record(headings);
        foreach (var mold in plan.Molds)
            text.Figures(SettingUpTable.Cells(mold, notation).Select(c => c is SettingUpTable.None ? "" : c));
        return text.ToString();
    }
}
