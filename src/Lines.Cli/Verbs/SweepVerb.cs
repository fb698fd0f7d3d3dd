using System.CommandLine;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Lines.Cli.Input;
using Lines.Cli.Output;
using Lines.Cli.Terminal;
using Lines.Design.Studies;
using Lines.Drawing.Pdf;
using Lines.Drawing.Svg;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Units;
using Lines.Plans.Charts;
using Lines.Plans.Exchange;
using Lines.Plans.Figures;
using Lines.Plans.Paper;

namespace Lines.Cli.Verbs;

/// <summary><c>lines sweep FILE --vary KEY=FIRST:LAST:COUNT</c>: many variants of a design, their figures and drag, and a trade-off chart.</summary>
internal static class SweepVerb
{
    /// <summary>Most variants of a sweep.</summary>
    private const int Most = 100_000;

    private static readonly double[] s_usual = [3 * Standards.Knot, 6 * Standards.Knot];

    public static Command Make()
    {
        var (file, force) = (Common.File(), Common.ForceFolder("charts"));
        var output = Common.OutputTo("the folder to write, made with any folders on the way to it (left out: named after FILE, with -sweep)");
        var (vary, speeds, water, paper) = (Vary(), DragVerb.Speeds("speeds in knots for the drag, separated by commas (left out: 3,6)"), Common.Water("the water"), PaperOption.Of("paper of the chart", PaperSize.Letter));
        var load = new Option<string?>("--load") { Description = "a load case, as float names it, whose drafts, trim, freeboard, stability and drag are told of each variant as well (left out: none)", HelpName = "CASE" };
        var chart = new Option<string?>("--chart") { Description = "the two figures of the chart, names of columns of the table, separated by a comma (left out: drag at the first speed and at the last)", HelpName = "FIGURES" };
        var verb = new Command("sweep", "Varies keys of a design over ranges, every value with every other, and writes figures and drag of each variant as a table and as lines of JSON, and a trade-off chart; a run that is stopped goes on where it was.")
        {
            file, vary, output, load, speeds, chart, water, paper, force,
        };
        verb.SetAction(parsed => Run(
            parsed.GetValue(file)!,
            parsed.GetValue(vary)!,
            new Wish(
                parsed.GetValue(output),
                parsed.GetValue(speeds) is { Length: > 0 } knots ? [.. knots.Select(k => k * Standards.Knot)] : s_usual,
                parsed.GetValue(load),
                parsed.GetValue(chart),
                Common.Chosen(parsed, water),
                parsed.GetValue(paper) ?? PaperSize.Letter,
                parsed.GetValue(force))));
        return verb.WithExamples(
            "lines sweep tender.toml --vary hull.bow.entry_fullness=0.55:0.75:21",
            "lines sweep tender.toml --vary \"hull.beam=650 mm:750 mm:6\" --vary hull.midship.fullness=0.7:0.8:6 -o beams",
            "lines sweep courier.toml --vary \"outrigger.spacing=0.9 m:1.4 m:11\"",
            "lines sweep tender.toml --vary hull.stern.run_fullness=0.58:0.7:13 --speeds 3,5 --chart drag_at_3_kn_n,prismatic",
            "lines sweep courier.toml --vary \"hull.beam=600 mm:700 mm:6\" --load solo --chart case_drag_at_3_kn_n,case_metacentric_height_free_trim_m");
    }

    private static int Run(string path, IReadOnlyList<Variation> varied, Wish wish)
    {
        var target = wish.Output ?? Common.NamedAfter(path, "-sweep");
        OutputFolder.Check(target, wish.Force);
        if (varied.GroupBy(v => v.Key.Path, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new CommandFailure(ExitCode.Wrong, $"--vary: {twice.Key} stands twice; one range of it is enough");
        var variants = varied.Aggregate(1L, (n, v) => n * v.Values.Count);
        if (variants > Most)
            throw new CommandFailure(ExitCode.Wrong, Invariant($"--vary: {variants} variants; {Most} are the most"));
        var design = DesignInput.Read(path);
        if (varied.Select(v => v.Key.Missing(design.Outriggers.Count)).FirstOrDefault(m => m is not null) is { } missing)
            throw new CommandFailure(ExitCode.Wrong, $"--vary: {missing}");
        if (wish.Load is not null)
            _ = Shaped.CaseOf(design, path, wish.Load);
        var text = design.Source.Text;
        var sweep = new Sweep(path, text, varied, wish.Speeds, wish.Water, wish.Load);
        if (wish.Chart is not null)
            _ = Charted(wish, Waiting.For("looking what there is for the chart ...", sweep.Figures), "");
        var what = $"{{\"sweep\":\"{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', [Printed.Version, text, wish.Water.Name, .. varied.Select(v => v.Key.Path + string.Join(',', v.Values)), string.Join(',', wish.Speeds), wish.Load ?? ""]))))}\"}}";
        using var kept = KeptRows.Open(Path.TrimEndingDirectorySeparator(target) + ".part.jsonl", what, sweep.Count, wish.Force);
        if (kept.Count > 0)
            Streams.Error.WriteLine(Invariant($"going on from {kept.Count} of {sweep.Count} variants in {kept.Path}"));
        int[] open = [.. Enumerable.Range(1, sweep.Count).Where(n => !kept.Rows.ContainsKey(n))];
        _ = Waiting.For(
            () => Invariant($"{kept.Count} of {sweep.Count} variants ..."),
            () => sweep.Each(open, Environment.ProcessorCount, kept.Add));
        return Finish(design.Title, target, wish, kept);
    }

    private static int Finish(string title, string target, Wish wish, KeptRows kept)
    {
        var rows = kept.Rows.OrderBy(r => r.Key).Select(r => r.Value).ToList();
        var table = rows.ConvertAll(r => JsonDocument.Parse(r).RootElement.EnumerateObject().ToDictionary(p => p.Name, p => p.Value, StringComparer.Ordinal));
        var built = table.Where(r => !r["state"].ValueEquals("refused")).ToList();
        List<string> columns = [.. (built.FirstOrDefault() ?? table[0]).Keys];
        columns.AddRange(built.SelectMany(r => r.Keys).Distinct(StringComparer.Ordinal).Where(c => !columns.Contains(c, StringComparer.Ordinal)).ToList());
        var names = Charted(wish, built.Count > 0 ? columns : [], $". The variants are kept in {kept.Path}");
        using var folder = new OutputFolder(target, wish.Force);
        folder.Add("sweep.jsonl", Encoding.UTF8.GetBytes(string.Join('\n', rows) + "\n"));
        folder.Add("sweep.csv", Encoding.UTF8.GetBytes(Csv(columns, table)));
        TradeOff[] dots = [.. built.Select(r => (Row: r, Across: Number(r, names[0]), Up: Number(r, names[1]))).Where(r => r.Across is not null && r.Up is not null)
            .Select(r => new TradeOff(r.Row["number"].GetInt32(), r.Across!.Value, r.Up!.Value, r.Row["state"].ValueEquals("fair")))];
        double[] masses = [.. built.Select(r => Number(r, "displacement_fresh_kg")).OfType<double>()];
        var range = string.Join(" to ", new[] { masses.DefaultIfEmpty().Min(), masses.DefaultIfEmpty().Max() }.Select(m => Invariant($"{m:0.0}")).Distinct(StringComparer.Ordinal)) + " kg";
        var afloat = masses.Length == 0 ? "" : Invariant($"Every variant floats at her own design waterline, not at one weight: the main hulls displace {range} in fresh water. lines compare lays chosen ones over each other at one weight.");
        if (TradeOffSheet.Of(title, UnitEnding.InWords(names[0]), UnitEnding.InWords(names[1]), dots, afloat, wish.Paper.Height) is { } sheet)
        {
            folder.Add("trade-off.pdf", PdfFile.Write($"{title}: trade-off", [sheet]));
            folder.Add("trade-off.svg", Encoding.UTF8.GetBytes(SvgFile.Write(sheet)));
        }

        folder.Finish([]);
        kept.Discard();
        Streams.Error.WriteLine(Invariant($"wrote {folder.Names.Count} files into {target}: {table.Count} variants, {built.Count} built, {built.Count(r => r["state"].ValueEquals("fair"))} fair"));
        if (afloat.Length > 0)
            Streams.Error.WriteLine(afloat);
        return ExitCode.Done;
    }

    // The two columns of the chart, which must be among those there are, where any are known.
    private static string[] Charted(Wish wish, IReadOnlyList<string> columns, string kept)
    {
        var names = wish.Chart?.Split(',', StringSplitOptions.TrimEntries) ?? [Sweep.DragAt(wish.Speeds[0]), Sweep.DragAt(wish.Speeds[^1])];
        string[] known = [.. columns.Except([.. Sweep.Words, "number"], StringComparer.Ordinal)];
        return names.Length == 2 && (known.Length == 0 || names.All(n => known.Contains(n, StringComparer.Ordinal)))
            ? names
            : throw new CommandFailure(ExitCode.Wrong, $"--chart takes two columns of the table, as {Sweep.DragAt(wish.Speeds[0])},prismatic, not \"{wish.Chart}\"; there are {string.Join(", ", known)}{kept}");
    }

    private static double? Number(Dictionary<string, JsonElement> row, string column) =>
        row.TryGetValue(column, out var value) && value.ValueKind == JsonValueKind.Number ? value.GetDouble() : null;

    private static string Csv(List<string> columns, List<Dictionary<string, JsonElement>> table)
    {
        var text = new StringBuilder().AppendJoin(',', columns).Append("\r\n");
        foreach (var row in table)
            text.AppendJoin(',', columns.Select(c => row.TryGetValue(c, out var value) ? Cell(value) : "")).Append("\r\n");
        return text.ToString();
    }

    private static string Cell(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Number => value.GetRawText(),
        JsonValueKind.String => CsvText.Quoted(value.GetString()!),
        _ => "",
    };

    private static Option<Variation[]> Vary() => new("--vary")
    {
        Description = "a key and its values: KEY=FIRST:LAST:COUNT; may stand several times, every value goes with every other; outrigger.spacing is the outrigger's, outrigger-2.spacing the second's of several",
        HelpName = "RANGE",
        Required = true,
        Arity = ArgumentArity.OneOrMore,
        CustomParser = result =>
        {
            var varied = new List<Variation>();
            foreach (var token in result.Tokens)
            {
                try
                {
                    varied.Add(Variation.Parse(token.Value));
                }
                catch (FormatException fault)
                {
                    result.AddError($"--vary: {fault.Message}");
                }
            }

            return [.. varied];
        },
    };

    /// <summary>What was asked for.</summary>
    private sealed record Wish(string? Output, IReadOnlyList<double> Speeds, string? Load, string? Chart, Water Water, PaperSize Paper, bool Force);
}
