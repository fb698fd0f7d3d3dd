using System.CommandLine;
using Lines.Cli.Input;
using Lines.Cli.Output;
using Lines.Cli.Terminal;
using Lines.Kernel.Units;
using Lines.Plans.Paper;

namespace Lines.Cli.Verbs;

/// <summary><c>lines draw FILE</c>: the lines plan.</summary>
internal static class DrawVerb
{
    public static Command Make()
    {
        var (file, units, force) = (Common.File(), Common.Units(), Common.Force());
        var output = Common.OutputTo("the file to write; its ending says the format: .pdf, .svg, .dxf, .png (left out: a PDF named after FILE)");
        var paper = PaperOption.Of("paper the plan is drawn for, laid on its longer side", PaperSize.Tabloid);
        var hull = Common.Hull();
        var verb = new Command("draw", "Draws the lines plan: profile, half-breadths, diagonals, body plan.") { file, hull, output, paper, units, force };
        verb.SetAction(parsed => Draw(
            parsed.GetValue(file)!, parsed.GetValue(hull), parsed.GetValue(output), parsed.GetValue(paper) ?? PaperSize.Tabloid, parsed.GetValue(units), parsed.GetValue(force)));
        return verb.WithExamples("lines draw tender.toml", "lines draw tender.toml -o tender.svg --units ft-in", "lines draw tender.toml -o plan.pdf --paper a2", "lines draw courier.toml --hull outrigger-1");
    }

    private static int Draw(string path, string? hull, string? output, PaperSize paper, LengthNotation? units, bool force)
    {
        var target = output ?? Common.NamedAfter(path, "-lines-plan.pdf", hull);
        var ending = Common.Format(target, ".pdf", ".svg", ".dxf", ".png");
        OutputFile.Check(target, force);
        OutputFile.Write(target, Products.From(path, units, hull).LinesPlan(paper, ending), force);
        Streams.Error.WriteLine($"wrote {target}; open it to see the lines");
        return ExitCode.Done;
    }
}
