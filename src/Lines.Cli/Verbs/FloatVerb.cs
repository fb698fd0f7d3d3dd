using System.CommandLine;
using Lines.Cli.Input;
using Lines.Cli.Output;
using Lines.Cli.Terminal;
using Lines.Kernel.Units;
using Lines.Plans.Figures;
using Lines.Plans.FormCurves;
using Lines.Plans.Report;

namespace Lines.Cli.Verbs;

/// <summary><c>lines float FILE</c>: what the hull displaces at its design waterline, and against draft.</summary>
internal static class FloatVerb
{
    public static Command Make()
    {
        var (file, json, units) = (Common.File(), Common.Json(), Common.Units());
        var verb = new Command("float", "Prints volume, displacement, centers and coefficients, upright, at the design waterline and against draft.") { file, json, units };
        verb.SetAction(parsed => Printed.WithFaults(
            parsed.GetValue(json), parsed.GetValue(file)!, () => Float(parsed.GetValue(file)!, parsed.GetValue(json), parsed.GetValue(units))));
        return verb.WithExamples("lines float tender.toml", "lines float tender.toml --units in", "lines float tender.toml --json");
    }

    private static int Float(string path, bool json, LengthNotation? units)
    {
        var shaped = Shaped.From(path);
        var notation = shaped.Units(units);
        FigureGroup[] groups = [HullFigures.Form(shaped.Hull, shaped.Afloat), HullFigures.Afloat(shaped.Afloat)];
        var curves = FormCurvesBook.Of(shaped.Design.Title, shaped.Hull, shaped.Curves, notation);
        if (json)
            Printed.Json(new Results(path) { Figures = [.. groups, .. curves.Drafts] });
        else
            Streams.Out.Write($"{shaped.Design.Title} ({path})\n\n{FigureText.Table(groups, notation)}\n{curves.Text()}\n{Cautions.Figures}\n{Cautions.Rules}\n");
        return ExitCode.Done;
    }
}
