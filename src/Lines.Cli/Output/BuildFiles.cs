using Lines.Plans.Report;

namespace Lines.Cli.Output;

/// <summary>What the files of a build are for.</summary>
internal static class BuildFiles
{
    /// <summary>The files as the report lists them; many molds are one row each, in the order they were written.</summary>
    /// <param name="names">Their names, with forward slashes.</param>
    /// <param name="pages">How many pages each PDF has, by its name.</param>
    public static IReadOnlyList<ReportFile> Of(IEnumerable<string> names, IReadOnlyDictionary<string, int> pages) =>
        [.. names.Select(n => new ReportFile(n, pages.TryGetValue(n, out var count) ? $"{Purpose(n)} {Counted(count)}" : Purpose(n)))];

    private static string Counted(int pages) => pages == 1 ? "One page." : Invariant($"{pages} pages.");

    private static string Purpose(string name) =>
        name.StartsWith("outrigger-", StringComparison.Ordinal) && name.IndexOf('/', StringComparison.Ordinal) is > 0 and var slash
            ? $"{OfOneHull(name[(slash + 1)..])} Of outrigger {name["outrigger-".Length..slash]}."
            : OfOneHull(name);

    private static string OfOneHull(string name) => name switch
    {
        "lines-plan.pdf" => "Lines plan to scale, to print.",
        "lines-plan.svg" => "Lines plan for a browser or a drawing program.",
        "lines-plan.dxf" => "Lines plan for CAD.",
        "lines-plan.png" => "Lines plan as a picture.",
        "offsets.csv" => "Table of offsets for a spreadsheet.",
        "offsets.txt" => "Table of offsets as plain text.",
        "offsets.pdf" => "Table of offsets, to print.",
        "curves-of-form.csv" => "Displacement, areas, centers and coefficients against draft for a spreadsheet or a program, SI.",
        "curves-of-form.pdf" => "The same as curves and tables, to print.",
        EarlierRun.LoadCases => "Load cases, stability, swamped and bent: pictures and tables, to print.",
        EarlierRun.RightingArms => "Righting arms for a browser or a drawing program.",
        "drag.csv" => "Drag and its parts, towing power and what each of the crew gives against speed, for a spreadsheet or a program, SI.",
        "drag.pdf" => "Watts and drag against speed as a chart, to print.",
        "hull.step" => "Surface of the hull for CAD: the starboard skin in mm.",
        "hull.igs" => "The same surface for CAD that does not read STEP.",
        "hull.stl" => "Closed body of flat facets in mm, both sides and a deck, for 3D printers and mills.",
        "numbers.json" => "The figures and the fairness for programs.",
        "molds/all-molds.dxf" => "All molds and end patterns in one drawing.",
        "molds/setting-up.pdf" => "Where every mold stands on the strongback.",
        "molds/setting-up.csv" => "The table of the setting-up sheet for a spreadsheet.",
        EarlierRun.Planking => "Strips at every mold and one by one, for a spreadsheet.",
        EarlierRun.Materials => "Bill of materials and order of work, for a spreadsheet.",
        "molds/stem.dxf" => "Profile mold of the stem for a router, full size in mm.",
        "molds/stern.dxf" => "Profile mold of the stern for a router, full size in mm.",
        "molds/transom.dxf" => "Pattern of the transom for a router, full size in mm.",
        _ when name.StartsWith("templates-", StringComparison.Ordinal) => "Every mold full size, to tape together; page 1 is to be measured, the index after it says which pages make which mold.",
        "molds/" + EarlierRun.CuttingList => "Which part is cut from which sheet, with a picture of every sheet.",
        "molds/cutting-list.csv" => "The same for a spreadsheet.",
        _ when name.StartsWith("molds/sheet-", StringComparison.Ordinal) => "A sheet of stock with the molds laid on it for a router, full size in mm.",
        _ when name.StartsWith("molds/bulkhead-", StringComparison.Ordinal) => "Bulkhead for a router, full size in mm.",
        _ when name.StartsWith("molds/mold-", StringComparison.Ordinal) => "Mold for a router, full size in mm.",
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "a file of a build that nobody explained"),
    };
}
