using System.CommandLine;
using System.Text;
using Lines.Cli.Input;
using Lines.Cli.Output;
using Lines.Cli.Terminal;
using Lines.Kernel.Units;
using Lines.Plans.Paper;

namespace Lines.Cli.Verbs;

/// <summary><c>lines offsets FILE</c>: the table of offsets.</summary>
internal static class OffsetsVerb
{
    public static Command Make()
    {
        var (file, units, force) = (Common.File(), Common.Units(), Common.Force());
        var output = Common.OutputTo("the file to write; its ending says the format: .txt, .csv, .pdf (left out: prints the table)");
        var inside = new Option<bool>("--inside") { Description = "to the inside of planking (unless told otherwise to the outside)" };
        var paper = Common.Paper("paper of a PDF", PaperSize.Letter);
        var verb = new Command("offsets", "Prints or writes the table of offsets.") { file, output, inside, paper, units, force };
        verb.SetAction(parsed => Offsets(
            parsed.GetValue(file)!,
            parsed.GetValue(output),
            parsed.GetValue(inside),
            parsed.GetValue(paper) ?? PaperSize.Letter,
            parsed.GetValue(units),
            parsed.GetValue(force)));
        return verb.WithExamples("lines offsets tender.toml --units ft-in-8ths", "lines offsets tender.toml -o tender.csv", "lines offsets tender.toml --inside -o inside.pdf --paper a4");
    }

    private static int Offsets(string path, string? output, bool inside, PaperSize paper, LengthNotation units, bool force)
    {
        if (output is null)
        {
            Streams.Out.Write(Encoding.UTF8.GetString(new Products(Shaped.From(path), units).Offsets(inside, paper, ".txt")));
            return ExitCode.Done;
        }

        var ending = Common.Format(output, ".txt", ".csv", ".pdf");
        OutputFile.Check(output, force);
        OutputFile.Write(output, new Products(Shaped.From(path), units).Offsets(inside, paper, ending), force);
        Streams.Error.WriteLine($"wrote {output}; lay the boat down from it, bow first");
        return ExitCode.Done;
    }
}
