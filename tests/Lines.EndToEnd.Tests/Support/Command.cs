using System.Diagnostics;
using System.Text;
using Lines.Tests.Support;

namespace Lines.EndToEnd.Tests.Support;

/// <summary>What one run of the command gave.</summary>
/// <param name="Code">Exit code.</param>
/// <param name="Out">Standard output.</param>
/// <param name="Error">Standard error.</param>
public sealed record CommandRun(int Code, string Out, string Error);

/// <summary>Runs the built command as a process of its own.</summary>
public static class Command
{
    /// <summary>The command as users run it, compiled ahead: what is copied beside the tests is compiled anew in every run, which doubles its time.</summary>
    public static string Dll { get; } = Path.Combine(
        Repository.PathOf("src", "Lines.Cli"), Path.GetRelativePath(Repository.PathOf("tests", "Lines.EndToEnd.Tests"), AppContext.BaseDirectory), "lines.dll");

    /// <summary>The dotnet that runs the tests.</summary>
    public static string Dotnet { get; } = Environment.ProcessPath is { } path && Path.GetFileNameWithoutExtension(path) is "dotnet" ? path : "dotnet";

    /// <summary>Runs the command in a folder.</summary>
    public static CommandRun Run(string folder, params string[] arguments) =>
        Run(folder, new Dictionary<string, string>(StringComparer.Ordinal), arguments);

    /// <summary>Runs the command in a folder with some of the environment changed.</summary>
    public static CommandRun Run(string folder, IReadOnlyDictionary<string, string> environment, params string[] arguments) =>
        Start(Dotnet, folder, environment, [Dll, .. arguments]);

    /// <summary>Runs a line of the shell in a folder; <c>$LINES</c> in it is the command.</summary>
    public static CommandRun Shell(string folder, string line) =>
        Start("bash", folder, new Dictionary<string, string>(StringComparer.Ordinal) { ["LINES"] = $"{Dotnet} {Dll}" }, ["-c", line]);

    private static CommandRun Start(string program, string folder, IReadOnlyDictionary<string, string> environment, string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            WorkingDirectory = folder,
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        };
        foreach (var (name, value) in environment)
            start.Environment[name] = value;
        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        if (!process.WaitForExit(TimeSpan.FromMinutes(2)))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"{string.Join(' ', arguments)} did not end");
        }

        return new CommandRun(process.ExitCode, output, error.GetAwaiter().GetResult());
    }
}

/// <summary>A folder of its own for one test, removed afterwards.</summary>
public sealed class Workplace : IDisposable
{
    /// <summary>Makes the folder.</summary>
    public Workplace() => Root = Directory.CreateTempSubdirectory("lines-test-").FullName;

    /// <summary>The folder.</summary>
    public string Root { get; }

    /// <summary>A path in it.</summary>
    public string PathOf(string name) => Path.Combine(Root, name);

    /// <summary>Writes a file in it.</summary>
    public string Write(string name, string text)
    {
        File.WriteAllText(PathOf(name), text);
        return name;
    }

    /// <summary>Every file and folder in it, hidden ones too, sorted.</summary>
    public IReadOnlyList<string> Entries() =>
        [.. Directory.EnumerateFileSystemEntries(Root, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.None })
            .Select(p => Path.GetRelativePath(Root, p)).Order(StringComparer.Ordinal)];

    /// <summary>Removes the folder.</summary>
    public void Dispose() => Directory.Delete(Root, recursive: true);
}
