using System.Text;
using Lines.Cli.Input;
using Lines.Cli.Output;
using Lines.Cli.Terminal;
using Lines.Design.Diagnostics;
using Lines.Plans.Figures;
using Lines.Plans.Molds;

namespace Lines.Cli.Verbs;

/// <summary>A folder of DXF files for a router, looked through by <c>lines check FOLDER</c>.</summary>
internal static class RouterFolder
{
    private const string Molds = "molds";

    /// <summary>Tells the faults of all files of a folder: of its molds where it is the folder of a build.</summary>
    /// <returns>1 where a file has a fault, else 0.</returns>
    /// <exception cref="CommandFailure">There is no such file in it, or one cannot be read.</exception>
    public static int Check(string folder, bool json)
    {
        var files = Files(folder);
        var texts = files.ConvertAll(f => (File: f, Text: Encoding.UTF8.GetString(DesignInput.Bytes(f))));
        List<Diagnostic> faults =
        [
            .. texts.SelectMany(t => RouterFileCheck.Faults(t.File, t.Text)),
            .. texts.GroupBy(t => Path.GetDirectoryName(t.File), StringComparer.Ordinal).SelectMany(g => RouterSetCheck.Faults([.. g])),
        ];
        if (json)
        {
            Printed.Json(new Results(folder) { Files = files, Diagnostics = faults });
        }
        else
        {
            foreach (var fault in faults)
                Streams.Out.Write(fault.Headline + "\n");
            var faulty = faults.Select(f => f.File).Distinct(StringComparer.Ordinal).Count();
            Streams.Out.Write(faults.Count == 0
                ? Invariant($"{Counted(files.Count, "router file")}: outlines closed, each path drawn once, no file missing, units, scale and layers as they should be\n")
                : Invariant($"{Counted(faults.Count, "fault")} in {faulty} of {Counted(files.Count, "router file")}\n"));
        }

        return faults.Exists(f => f.Severity == Severity.Error) ? ExitCode.Unfair : ExitCode.Done;
    }

    private static string Counted(int count, string what) => Invariant($"{count} {what}{(count == 1 ? "" : "s")}");

    private static List<string> Files(string folder)
    {
        try
        {
            var places = Directory.EnumerateDirectories(folder, "outrigger-*").Order(StringComparer.Ordinal).Prepend(folder).Select(p => Path.Combine(p, Molds)).Where(Directory.Exists).ToList();
            List<string> files = [.. (places.Count > 0 ? places : [folder]).SelectMany(p => Directory.EnumerateFiles(p, "*.dxf").Order(StringComparer.Ordinal))];
            return files.Count > 0 ? files : throw new CommandFailure(ExitCode.NoAccess, $"{folder}: is a folder without DXF files; give one with router files, or a design file");
        }
        catch (UnauthorizedAccessException)
        {
            throw new CommandFailure(ExitCode.NoAccess, $"{folder}: may not be read; check who owns it and its permissions");
        }
        catch (IOException fault)
        {
            throw new CommandFailure(ExitCode.NoAccess, $"{folder}: could not be read: {Fault.Of(fault)}");
        }
    }
}
