using System.CommandLine;
using Lines.Cli.Input;
using Lines.Cli.Output;
using Lines.Cli.Terminal;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Loading;
using Lines.Kernel.Units;
using Lines.Plans.Figures;
using Lines.Plans.FormCurves;
using Lines.Plans.Paper;
using Lines.Plans.Report;
using Lines.Plans.Stability;

namespace Lines.Cli.Verbs;

/// <summary><c>lines float FILE</c>: what the hull displaces at its design waterline and against draft, and how its load cases float and stand up.</summary>
internal static class FloatVerb
{
    private const string NoStructure = "No load cases: the file does not say what the empty boat weighs; [structure] with mass and at says it, [material] lets it be estimated.";

    public static Command Make()
    {
        var (file, json, units, force) = (Common.File(), Common.Json(), Common.Units(), Common.Force());
        var output = Common.OutputTo("the file to write load cases and stability to; its ending says the format: .pdf, .svg (left out: prints all)");
        var paper = PaperOption.Of("paper of a PDF", PaperSize.Letter);
        var water = Common.Water("the water of the load cases");
        var freeboard = Common.Length("--freeboard", "least freeboard to keep when telling what more a case carries (left out: 100 mm)", 0, 2);
        var wind = Common.Number("--wind", "KNOTS", Invariant($"steady wind beam on for the heel under sail, in knots (left out: {LoadSettings.UsualWind / Standards.Knot:0})"), 1, 80);
        var verb = new Command("float", "Prints displacement, centers and coefficients at the design waterline and against draft, then how the load cases float and stand up; exit code 1 if a case does not float.")
        {
            file, output, water, wind, freeboard, paper, json, units, force,
        };
        verb.SetAction(parsed =>
        {
            var asked = new Asked(parsed.GetValue(output), Common.Chosen(parsed, water), parsed.GetValue(freeboard), parsed.GetValue(wind) * Standards.Knot, parsed.GetValue(paper) ?? PaperSize.Letter, parsed.GetValue(force));
            return Printed.WithFaults(parsed.GetValue(json), parsed.GetValue(file)!, () => Float(parsed.GetValue(file)!, asked, parsed.GetValue(json), parsed.GetValue(units)));
        });
        return verb.WithExamples("lines float tender.toml", "lines float tender.toml --water fresh --units in", "lines float tender.toml -o tender-afloat.pdf", "lines float tender.toml --json");
    }

    private static int Float(string path, Asked asked, bool json, LengthNotation? units)
    {
        var ending = asked.Output is { } target ? Common.Format(target, ".pdf", ".svg") : "";
        if (asked.Output is not null)
            OutputFile.Check(asked.Output, asked.Force);
        var shaped = Shaped.From(path);
        var notation = shaped.Units(units);
        var usual = shaped.UsualSettings;
        var cases = Products.StabilityOf(shaped, usual with { Water = asked.Water, Freeboard = asked.Freeboard ?? usual.Freeboard, Wind = asked.Wind ?? usual.Wind }, notation);
        if (asked.Output is not null)
        {
            OutputFile.Write(asked.Output, Products.LoadCases(cases ?? throw new CommandFailure(ExitCode.Wrong, $"{path}: {NoStructure}"), asked.Paper, ending), asked.Force);
            Streams.Error.WriteLine($"wrote {asked.Output}");
        }

        FigureGroup[] groups = [HullFigures.Form(shaped.Hull, shaped.Afloat), HullFigures.Afloat(shaped.Afloat)];
        if (!json)
            DesignInput.Show(shaped.LoadNotes);
        var curves = FormCurvesBook.Of(shaped.Design.Title, shaped.Hull, shaped.Curves, notation);
        if (json)
            Printed.Json(new Results(path) { Figures = [.. groups, .. curves.Drafts, .. cases?.Groups ?? []], Diagnostics = shaped.LoadNotes });
        else if (asked.Output is null)
            Streams.Out.Write($"{shaped.Design.Title} ({path})\n\n{FigureText.Table(groups, notation)}\n{curves.Text()}\n{cases?.Text() ?? NoStructure + "\n"}\n{string.Concat(new Products(shaped, notation).EstimatedWeight.Select(n => n + "\n"))}{Cautioned(cases)}");
        return cases is null || cases.AllFloat ? ExitCode.Done : ExitCode.Unfair;
    }

    private static string Cautioned(StabilityBook? cases) =>
        string.Concat((cases?.Cautioned ?? [Cautions.Figures, Cautions.Rules]).Select(c => c + "\n"));

    /// <summary>What was asked for.</summary>
    private sealed record Asked(string? Output, Water Water, double? Freeboard, double? Wind, PaperSize Paper, bool Force);
}
