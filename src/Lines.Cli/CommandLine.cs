using System.CommandLine;
using System.Runtime.InteropServices;
using Lines.Cli.Output;
using Lines.Cli.Terminal;
using Lines.Cli.Verbs;

namespace Lines.Cli;

/// <summary>The command: its verbs, what is wrong with a line typed, and how a run ends.</summary>
internal static class CommandLine
{
    /// <summary>Runs one command line.</summary>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    public static int Run(string[] args)
    {
        using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
        using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
        try
        {
            var code = Invoke(args);
            Streams.Flush();
            return code;
        }
        catch (CommandFailure failure)
        {
            if (failure.Message.Length > 0)
                Streams.Say(failure.Message);
            return failure.Code;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Streams.Say(Fault.Of(fault));
            return ExitCode.NoAccess;
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            Streams.Say("this is a fault of the program, not of your file; please report it with the file and these lines:");
            Streams.Error.WriteLine(fault);
            return ExitCode.Bug;
        }
    }

    /// <summary>The command with all its verbs.</summary>
    public static RootCommand Root()
    {
        var root = new RootCommand(
            "From a page of plain dimensions to a hull proved fair, and the patterns to build it. Exit codes: 0 done; 1 done, but the hull is not "
            + "fair or a check failed; 2 the command line or a file is wrong; 3 a file could not be read or written; 130 stopped by a signal, nothing written or all; 70 a fault of the program.")
        {
            NewVerb.Make(),
            CheckVerb.Make(),
            DrawVerb.Make(),
            OffsetsVerb.Make(),
            MoldsVerb.Make(),
            PrintVerb.Make(),
            FloatVerb.Make(),
            DragVerb.Make(),
            CompareVerb.Make(),
            SweepVerb.Make(),
            ExportVerb.Make(),
            BuildVerb.Make(),
            CompletionVerb.Make(),
        };
        root.Options.OfType<VersionOption>().Single().Description = "show the version";
        root.WithExamples(
            "lines new tender.toml --from silt-sampler --title \"Mud Tender\"",
            "lines check tender.toml",
            "lines build tender.toml -o tender",
            "lines build --help");
        Examples.ShowInHelp(root);
        return root;
    }

    private static int Invoke(string[] args)
    {
        var root = Root();
        if (args.Length == 0)
        {
            root.Parse(["--help"]).Invoke(new InvocationConfiguration { Output = Streams.Error });
            return ExitCode.Wrong;
        }

        if (args[0].Equals("help", StringComparison.Ordinal))
            args = [.. args[1..], "--help"];
        if (Mistakes.UnknownVerb(args[0], root) is { } mistake)
            throw new CommandFailure(ExitCode.Wrong, mistake);
        var parsed = root.Parse(args, new ParserConfiguration { EnablePosixBundling = false, ResponseFileTokenReplacer = null });
        if (parsed.Errors.Count > 0 && !Mistakes.AreAnswered(parsed))
            return Mistakes.Show(parsed);
        return parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false, Output = Streams.Out, Error = Streams.Error });
    }

    /// <summary>Leaves nothing unfinished behind when the run is stopped.</summary>
    private static void Stop(PosixSignalContext context)
    {
        context.Cancel = true;
        Waiting.End();
        Staging.RemoveAll();
        Streams.Say(Staging.IsPlaced ? "stopped, but all was written" : KeptRows.Told ?? "stopped, nothing written");
        Environment.Exit(ExitCode.Interrupted);
    }
}
