using System.CommandLine;
using Lines.Cli.Input;
using Lines.Cli.Output;
using Lines.Cli.Terminal;
using Lines.Kernel.Units;
using Lines.Plans.Figures;

namespace Lines.Cli.Verbs;

/// <summary><c>lines check FILE</c>: shapes the hull, judges its lines, prints the numbers; of a folder, looks through its router files.</summary>
internal static class CheckVerb
{
    public static Command Make()
    {
        var (file, json, units) = (Common.File(), Common.Json(), Common.Units());
        var verb = new Command("check", "Shapes the hull, judges its lines and prints the numbers; exit code 1 if a hull is not fair, a mold asked for cannot be made, bulkheads or openings clash, or a piece does not go into the storage given. Of a folder in place of FILE it looks through the DXF files for a router: open outlines, lines drawn twice, wrong units or scale, missing layers.") { file, json, units };
        verb.SetAction(parsed => Printed.WithFaults(
            parsed.GetValue(json), parsed.GetValue(file)!, () => Check(parsed.GetValue(file)!, parsed.GetValue(json), parsed.GetValue(units))));
        return verb.WithExamples("lines check tender.toml", "lines check tender.toml --units ft-in", "lines check tender.toml --json > tender.json", "lines check tender/molds");
    }

    private static int Check(string path, bool json, LengthNotation? units)
    {
        if (Directory.Exists(path))
            return RouterFolder.Check(path, json);
        var shaped = Shaped.From(path);
        if (json)
        {
            Printed.Json(new Results(path) { Figures = shaped.Figures, Fairness = shaped.Fairness, Outriggers = shaped.OutriggersJudged, Diagnostics = shaped.AllWarnings });
        }
        else
        {
            Streams.Out.Write($"{shaped.Design.Title} ({path})\n\n");
            if (VesselFigures.Table(shaped.Hulls, shaped.Units(units)) is { Length: > 0 } hulls)
                Streams.Out.Write(hulls + "\n");
            Streams.Out.Write(FigureText.Table(shaped.Figures, shaped.Units(units)));
            Streams.Out.Write($"\n{FairnessText.Of(shaped.Fairness)}");
            foreach (var (name, report) in shaped.OutriggersJudged)
                Streams.Out.Write($"\n{FairnessText.Of(report, name)}");
        }

        var warned = shaped.Warned();
        return shaped.AllFair ? warned : ExitCode.Unfair;
    }
}
