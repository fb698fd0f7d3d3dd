using Lines.Cli.Terminal;
using Lines.Design;
using Lines.Design.Diagnostics;
using Lines.Design.Schema;

namespace Lines.Cli.Input;

/// <summary>Reads the design file a verb was given, or ends the verb with what is wrong.</summary>
internal static class DesignInput
{
    /// <summary>No more than this is ever read: what is longer is no design file, and a device may never end [bytes].</summary>
    private const int MostBytes = 16 << 20;

    /// <summary>The design of a file.</summary>
    /// <exception cref="CommandFailure">The file cannot be read, or is not a sound design; its faults were shown.</exception>
    public static VesselDesign Read(string path)
    {
        var reading = DesignFile.Read(Bytes(path), path);
        return reading.Design ?? throw Refused(reading.Diagnostics);
    }

    /// <summary>Shows faults of a file and makes the failure that ends the verb.</summary>
    public static CommandFailure Refused(IReadOnlyList<Diagnostic> faults)
    {
        Show(faults);
        Streams.Say(faults.Count == 1 ? "one fault, nothing written" : Invariant($"{faults.Count} faults, nothing written"));
        return new CommandFailure(ExitCode.Wrong, "") { Diagnostics = faults };
    }

    /// <summary>Shows faults of a file with the lines they stand in.</summary>
    public static void Show(IReadOnlyList<Diagnostic> faults)
    {
        foreach (var fault in faults)
        {
            Streams.Error.WriteLine(Paint.Strong(fault.Headline));
            if (fault.Excerpt.Length > 0)
                Streams.Error.WriteLine(fault.Excerpt);
        }
    }

    /// <summary>The bytes of a file.</summary>
    public static byte[] Bytes(string path)
    {
        if (path.Length == 0)
            throw new CommandFailure(ExitCode.Wrong, "\"\" is not the name of a file");
        if (Directory.Exists(path))
            throw new CommandFailure(ExitCode.NoAccess, $"{path}: is a folder; give a design file in it");
        if (!File.Exists(path))
            throw new CommandFailure(ExitCode.NoAccess, $"{path}: no such file{Near(path)}");
        try
        {
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            using var memory = new MemoryStream();
            var buffer = new byte[1 << 16];
            for (int got; memory.Length <= MostBytes && (got = stream.Read(buffer)) > 0;)
                memory.Write(buffer, 0, got);
            return memory.Length <= MostBytes
                ? memory.ToArray()
                : throw new CommandFailure(ExitCode.Wrong, Invariant($"{path}: is over {MostBytes >> 20} MB; a design file is a page of text"));
        }
        catch (UnauthorizedAccessException)
        {
            throw new CommandFailure(ExitCode.NoAccess, $"{path}: may not be read; check who owns it and its permissions");
        }
        catch (IOException fault)
        {
            throw new CommandFailure(ExitCode.NoAccess, $"{path}: could not be read: {Output.Fault.Of(fault)}");
        }
    }

    /// <summary>A file of nearly that name in the same folder.</summary>
    private static string Near(string path)
    {
        try
        {
            var folder = Path.GetDirectoryName(Path.GetFullPath(path));
            if (folder is null || !Directory.Exists(folder))
                return "";
            var names = Directory.EnumerateFiles(folder, "*.toml").Select(Path.GetFileName).OfType<string>().Order(StringComparer.Ordinal).Take(200);
            return NearestName.Of(Path.GetFileName(path), names) is { } near ? $"; did you mean {Path.Combine(Path.GetDirectoryName(path) ?? "", near)}?" : "";
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // The suggestion is a courtesy; that the file is missing is said in any case.
            return "";
        }
    }
}
