using System.CommandLine;
using Lines.Cli.Input;
using Lines.Cli.Output;
using Lines.Cli.Terminal;
using Lines.Drawing.Dxf;
using Lines.Kernel.Units;
using Lines.Plans.Exchange;
using Lines.Plans.Figures;
using Lines.Plans.FormCurves;
using Lines.Plans.Paper;
using Lines.Plans.Stability;

namespace Lines.Cli.Verbs;

/// <summary><c>lines build FILE -o OUT</c>: everything a builder needs, in one folder.</summary>
internal static class BuildVerb
{
    private const string Numbers = "numbers.json";

    private const string Report = "report.html";

    public static Command Make()
    {
        var (file, units, force) = (Common.File(), Common.Units(), Common.ForceFolder("molds (mold-NN, stem, stern, transom), patterns and load cases"));
        var output = Common.OutputTo("the folder to write, made with any folders on the way to it (left out: named after FILE)");
        var paper = PaperOption.Of("paper in the printer", PaperSize.Letter, PrintVerb.Papers);
        var printer = new PrinterOptions();
        var verb = new Command("build", "Writes everything a builder needs into one folder, an outrigger's part into a folder of its own in it; exit code 1 if a hull is not fair, a mold asked for cannot be made, bulkheads or openings clash, or a piece does not go into the storage given.")
        {
            file, output, paper,
        };
        foreach (var option in (Option[])[.. printer.All, units, force])
            verb.Add(option);
        verb.SetAction(parsed => Build(
            parsed.GetValue(file)!,
            parsed.GetValue(output),
            new Wish(printer.Of(parsed, parsed.GetValue(paper) ?? PaperSize.Letter), parsed.GetValue(units)),
            parsed.GetValue(force)));
        return verb.WithExamples("lines build tender.toml -o tender", "lines build tender.toml -o tender --units ft-in-8ths --force", "lines build tender.toml -o tender --paper a4");
    }

    private static int Build(string path, string? output, Wish wish, bool force)
    {
        var target = output ?? Path.GetFileNameWithoutExtension(path);
        OutputFolder.Check(target, force);
        var shaped = Shaped.From(path);
        var products = new Products(shaped, shaped.Units(wish.Units));
        var stale = EarlierRun.MoldsPatternsAndCases(target);
        using var folder = new OutputFolder(target, force);
        // The patterns take as long as all the rest together, so their work begins first.
        var patterns = Task.Run(() => products.Patterns(wish.Print));
        var floats = products.Outriggers.Select((o, k) => (Folder: Shaped.OutriggerName(k + 1) + "/", Products: o)).ToList();
        var others = Works(products, wish, "").Concat(Afloat(shaped, products, wish)).Concat(floats.SelectMany(f => Works(f.Products, wish, f.Folder).Append(
            () => [(f.Folder + Common.PatternsFile(wish.Paper), f.Products.Patterns(wish.Print))]))).Select(Task.Run).ToList();
        _ = Task.Run(() => products.Curvature); // the report waits for all others and then finds it drawn
        // The name alone: the same design gives the same numbers wherever it lies.
        var name = Path.GetFileName(path);
        var numbers = Task.Run(() => FigureJson.Write(
            new Results(name)
            {
                Figures = [.. shaped.Figures, .. products.Building.Figures, .. products.Curves.Drafts, .. products.Stability?.Groups ?? [], .. products.Drag?.Book.Groups ?? []],
                Fairness = shaped.Fairness,
                Outriggers = shaped.OutriggersJudged,
                Molds = [.. products.MoldEntries("molds/"), .. floats.SelectMany(f => f.Products.MoldEntries(f.Folder + "molds/"))],
                Diagnostics = [.. shaped.AllWarnings.Select(w => w with { File = name })],
            },
            Printed.Version));
        foreach (var made in others)
        {
            foreach (var (product, content) in made.GetAwaiter().GetResult())
                folder.Add(product, content);
        }

        folder.Add(Common.PatternsFile(wish.Paper), patterns.GetAwaiter().GetResult());
        folder.Add(Numbers, numbers.GetAwaiter().GetResult());
        var counts = floats.Prepend((Folder: "", Products: products)).SelectMany(f => Pages(f.Products, wish, f.Folder)).ToDictionary(StringComparer.Ordinal);
        var pages = counts.Where(c => c.Key.EndsWith(Common.PatternsFile(wish.Paper), StringComparison.Ordinal)).Sum(c => c.Value);
        folder.Add(Report, products.Report(PlanPaper(wish), wish.Paper, BuildFiles.Of(folder.Names, counts)));
        folder.Finish(stale);

        var warned = shaped.Warned();
        if (!shaped.Fairness.Fair)
            Streams.Say(shaped.Fairness.Verdict);
        foreach (var (outrigger, report) in shaped.OutriggersJudged.Where(o => !o.Report.Fair))
            Streams.Say($"{outrigger}: {report.Verdict}");
        Streams.Error.WriteLine(Invariant($"wrote {folder.Names.Count} files into {target} (the patterns take {pages} pages of {wish.Paper.Name}); open {Path.Combine(target, Report)} first"));
        shaped.TellMissing(products.Units);
        return shaped.AllFair ? warned : ExitCode.Unfair;
    }

    /// <summary>How many pages each PDF of a hull has.</summary>
    private static IEnumerable<KeyValuePair<string, int>> Pages(Products products, Wish wish, string folder) =>
    [
        new(folder + "lines-plan.pdf", 1),
        new(folder + "offsets.pdf", products.OffsetsPages(inside: false, wish.Paper).Count),
        new(folder + "curves-of-form.pdf", FormCurvesPages.Count),
        new(folder + "drag.pdf", 1),
        new(folder + "load-cases.pdf", products.Stability is { } cases ? StabilityPages.Of(cases, wish.Paper).Count : 0),
        new(folder + "molds/setting-up.pdf", products.SettingUpPages.Count),
        new(folder + "molds/" + EarlierRun.CuttingList, products.CuttingPages.Count),
        new(folder + Common.PatternsFile(wish.Paper), products.PatternPages(wish.Print).Count),
    ];

    /// <summary>What makes the files of a hull beside the patterns and the numbers, in the order they are written; the works do not wait for each other.</summary>
    private static IEnumerable<Func<IReadOnlyList<(string Name, byte[] Content)>>> Works(Products products, Wish wish, string folder)
    {
        foreach (var ending in (string[])[".pdf", ".svg", ".dxf", ".png"])
            yield return () => [($"{folder}lines-plan{ending}", products.LinesPlan(PlanPaper(wish), ending))];
        yield return () => [.. ((string[])[".csv", ".txt", ".pdf"]).Select(e => ($"{folder}offsets{e}", products.Offsets(inside: false, wish.Paper, e)))];
        yield return () => [.. products.Molds(DxfSettings.Usual).Select(m => ($"{folder}molds/{m.Name}", m.Content)), ($"{folder}molds/setting-up.pdf", products.SettingUp()), ($"{folder}molds/setting-up.csv", products.SettingUpTable())];
        yield return () => [.. products.Sheets(DxfSettings.Usual).Select(m => ($"{folder}molds/{m.Name}", m.Content))];
        yield return () => [.. products.Lists().Select(l => (folder + l.Name, l.Content))];
        yield return () => [.. ((string[])[".csv", ".pdf"]).Select(e => ($"{folder}curves-of-form{e}", products.FormCurves(wish.Paper, e)))];
        yield return () => [.. ((string[])[".step", ".igs", ".stl"]).Select(e => ($"{folder}hull{e}", products.Hull(e, HullMesh.UsualChordError)))];
    }

    /// <summary>What makes the files of the whole boat on the water.</summary>
    private static IEnumerable<Func<IReadOnlyList<(string Name, byte[] Content)>>> Afloat(Shaped shaped, Products products, Wish wish)
    {
        yield return () => products.Stability is { } cases
            ? [(EarlierRun.LoadCases, Products.LoadCases(cases, wish.Paper, ".pdf")), (EarlierRun.RightingArms, Products.LoadCases(cases, wish.Paper, ".svg"))]
            : [];
        yield return () => products.Drag is { } study ? [.. ((string[])[".csv", ".pdf"]).Select(e => ($"drag{e}", Products.DragIn(shaped, study, wish.Paper, e)))] : [];
    }

    /// <summary>The lines plan goes on the sheet of two of the printer's, which copy shops print.</summary>
    private static PaperSize PlanPaper(Wish wish) => wish.Paper == PaperSize.A4 ? PaperSize.A3 : PaperSize.Tabloid;

    /// <summary>What a builder asked for.</summary>
    private sealed record Wish(PrintSettings Print, LengthNotation? Units)
    {
        public PaperSize Paper => Print.Paper;
    }
}
