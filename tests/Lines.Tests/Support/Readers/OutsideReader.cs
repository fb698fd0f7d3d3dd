using System.Collections.Concurrent;
using System.Diagnostics;
using Xunit;

namespace Lines.Tests.Support;

/// <summary>What an outside program printed.</summary>
internal sealed record ReaderOutput(int ExitCode, string Output, string Errors);

/// <summary>Programs of others that read what Lines writes; tests/run installs those that tests name.</summary>
/// <remarks>
/// Names: <c>ezdxf</c> (a Python that has it; argument one a script of ours), <c>dxf-parser</c> (node with that package;
/// argument one a script of ours), <c>occt</c> (tests/data/readers/bin/surface-reader, compiled by tests/run), or the name of a
/// command: qpdf, pdftoppm, pdftotext, admesh, convert, chromium.
/// </remarks>
internal static class OutsideReader
{
    private static readonly ConcurrentDictionary<string, string?> Found = new(StringComparer.Ordinal);

    /// <summary>Whether a missing reader fails its tests instead of skipping them: so under tests/run.</summary>
    public static bool Required => string.Equals(Environment.GetEnvironmentVariable("LINES_REQUIRE_READERS"), "1", StringComparison.Ordinal);

    /// <summary>Whether the reader is on this machine.</summary>
    public static bool IsHere(string reader) => Program(reader) is not null;

    /// <summary>Runs a reader.</summary>
    /// <exception cref="InvalidOperationException">The reader is not on this machine, or ran for over two minutes.</exception>
    public static ReaderOutput Run(string reader, params string[] arguments) =>
        Start(ProgramNeeded(reader), arguments);

    /// <summary>A script of ours beside the readers.</summary>
    public static string Script(string name) => Repository.PathOf("tests", "data", "readers", name);

    /// <summary>Where the reader is.</summary>
    /// <exception cref="InvalidOperationException">The reader is not on this machine.</exception>
    public static string ProgramNeeded(string reader) =>
        Program(reader) ?? throw new InvalidOperationException($"the outside reader {reader} is not on this machine; bash tests/run installs it");

    private static string? Program(string reader) => Found.GetOrAdd(reader, Find);

    private static string? Find(string reader) => reader switch
    {
        // Another python3 may come first on the path without the packages of the system's own.
        "ezdxf" => new[] { "/usr/bin/python3", OnPath("python3") }.FirstOrDefault(p => p is not null && File.Exists(p) && Start(p, ["-c", "import ezdxf"]).ExitCode == 0),
        "dxf-parser" => Directory.Exists(Script("node_modules/dxf-parser")) ? OnPath("node") : null,
        "occt" => File.Exists(Script("bin/surface-reader")) ? Script("bin/surface-reader") : null,
        // Other programs answer to this name.
        "convert" => OnPath(reader) is { } p && Start(p, ["-version"]).Output.Contains("ImageMagick", StringComparison.Ordinal) ? p : null,
        _ => OnPath(reader),
    };

    private static string? OnPath(string command) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
            .SelectMany(folder => new[] { Path.Combine(folder, command), Path.Combine(folder, command + ".exe") })
            .FirstOrDefault(File.Exists);

    private static ReaderOutput Start(string program, IEnumerable<string> arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false })
            ?? throw new InvalidOperationException($"{program} did not start");
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEndAsync();
        if (!process.WaitForExit(TimeSpan.FromMinutes(2)))
        {
            process.Kill(entireProcessTree: true);
            throw new InvalidOperationException($"{program} ran for over two minutes");
        }

        return new ReaderOutput(process.ExitCode, output.GetAwaiter().GetResult(), errors.GetAwaiter().GetResult());
    }
}

/// <summary>A test that needs an outside reader: skipped by name where it is missing, failed under tests/run.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class OutsideReaderFactAttribute : FactAttribute
{
    /// <summary>Names the readers the test needs.</summary>
    public OutsideReaderFactAttribute(params string[] readers)
    {
        var missing = readers.Where(r => !OutsideReader.IsHere(r)).ToList();
        if (missing.Count > 0 && !OutsideReader.Required)
            Skip = $"needs the outside reader {string.Join(", ", missing)}, which is not on this machine; bash tests/run installs it";
    }
}

/// <summary>A theory that needs an outside reader: skipped by name where it is missing, failed under tests/run.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class OutsideReaderTheoryAttribute : TheoryAttribute
{
    /// <summary>Names the readers the theory needs.</summary>
    public OutsideReaderTheoryAttribute(params string[] readers) => Skip = new OutsideReaderFactAttribute(readers).Skip;
}
