using System.CommandLine;
using System.Text;
using Lines.Cli.Input;
using Lines.Cli.Output;
using Lines.Cli.Terminal;
using Lines.Hull.Offsets;
using Lines.Kernel.Units;
using Lines.Plans.Offsets;
using Lines.Plans.Paper;

namespace Lines.Cli.Verbs;

/// <summary><c>lines offsets FILE</c>: the table of offsets.</summary>
internal static class OffsetsVerb
{
    public static Command Make()
    {
        var (file, units, force) = (Common.File(), Common.Units(), Common.Force());
        var output = Common.OutputTo("the file to write; its ending says the format: .txt, .csv, .pdf (left out: prints the table)");
        var inside = new Option<bool>("--inside") { Description = "to the inside of planking (left out: to the outside)" };
        var paper = PaperOption.Of("paper of a PDF", PaperSize.Letter);
        var verify = new Option<bool>("--verify") { Description = "lay every line down again from the rounded table alone and say how far it departs; exit code 1 if too far" };
        var json = Common.Json("with --verify: print its answer for programs, as one JSON object");
        var hull = Common.Hull();
        var verb = new Command("offsets", "Prints, writes or verifies the table of offsets.") { file, hull, output, inside, paper, verify, json, units, force };
        verb.SetAction(parsed => parsed.GetValue(verify) || parsed.GetValue(json) ? Checked(parsed) : Offsets(
            parsed.GetValue(file)!,
            parsed.GetValue(hull),
            parsed.GetValue(output),
            parsed.GetValue(inside),
            parsed.GetValue(paper) ?? PaperSize.Letter,
            parsed.GetValue(units),
            parsed.GetValue(force)));

        int Checked(ParseResult parsed)
        {
            if (!parsed.GetValue(verify))
                throw new CommandFailure(ExitCode.Wrong, "--json is for --verify; for spreadsheets write the table with -o FILE.csv");
            if (parsed.GetValue(output) is not null || parsed.GetValue(inside))
                throw new CommandFailure(ExitCode.Wrong, "--verify prints its answer for the table to the outside; leave out --output and --inside");
            var asJson = parsed.GetValue(json);
            return Printed.WithFaults(asJson, parsed.GetValue(file)!, () => Verify(parsed.GetValue(file)!, parsed.GetValue(hull), asJson, parsed.GetValue(units)));
        }

        return verb.WithExamples("lines offsets tender.toml --units ft-in-8ths", "lines offsets tender.toml -o tender.csv", "lines offsets tender.toml --verify --units in", "lines offsets tender.toml --inside -o inside.pdf --paper a4");
    }

    private static int Offsets(string path, string? hull, string? output, bool inside, PaperSize paper, LengthNotation? units, bool force)
    {
        if (output is null)
        {
            Streams.Out.Write(Encoding.UTF8.GetString(Products.From(path, units, hull).Offsets(inside, paper, ".txt")));
            return ExitCode.Done;
        }

        var ending = Common.Format(output, ".txt", ".csv", ".pdf");
        OutputFile.Check(output, force);
        OutputFile.Write(output, Products.From(path, units, hull).Offsets(inside, paper, ending), force);
        Streams.Error.WriteLine($"wrote {output}; lay the boat down from it, bow first");
        return ExitCode.Done;
    }

    private static int Verify(string path, string? hull, bool json, LengthNotation? units)
    {
        var shaped = Shaped.From(path, hull);
        var refit = OffsetsRefit.Of(shaped.Lines, shaped.Units(units).Step());
        if (json)
            Streams.Out.Write(Encoding.UTF8.GetString(OffsetsRefitReport.Json(refit, path, Printed.Version)));
        else
            Streams.Out.Write($"{shaped.Design.Title} ({path})\n\n{OffsetsRefitReport.Text(refit)}");
        return refit.Holds ? ExitCode.Done : ExitCode.Unfair;
    }
}
