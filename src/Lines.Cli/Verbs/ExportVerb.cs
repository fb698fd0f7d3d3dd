using System.CommandLine;
using Lines.Cli.Input;
using Lines.Cli.Output;
using Lines.Cli.Terminal;
using Lines.Kernel.Units;

namespace Lines.Cli.Verbs;

/// <summary><c>lines export FILE</c>: the hull surface for CAD.</summary>
internal static class ExportVerb
{
    public static Command Make()
    {
        var (file, force) = (Common.File(), Common.Force());
        var output = Common.OutputTo("the file to write, .step or .stp (left out: named after FILE)");
        var verb = new Command("export", "Writes the hull surface for CAD, as STEP: the starboard skin in mm.") { file, output, force };
        verb.SetAction(parsed => Export(parsed.GetValue(file)!, parsed.GetValue(output), parsed.GetValue(force)));
        return verb.WithExamples("lines export tender.toml", "lines export tender.toml -o hulls/tender.step --force");
    }

    private static int Export(string path, string? output, bool force)
    {
        var target = output ?? Common.NamedAfter(path, ".step");
        Common.Format(target, ".step", ".stp");
        OutputFile.Check(target, force);
        OutputFile.Write(target, new Products(Shaped.From(path), LengthNotation.Millimeters).Step(), force);
        Streams.Error.WriteLine($"wrote {target}; open it in a CAD program");
        return ExitCode.Done;
    }
}
