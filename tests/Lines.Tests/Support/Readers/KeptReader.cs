using System.Diagnostics;
using System.Text.Json;

namespace Lines.Tests.Support;

/// <summary>An outside program that runs a script of ours for as long as the tests do, for it takes longer to start than to read a file.</summary>
/// <remarks>It is told on one line the names of files, as a list in JSON, and answers on one; it ends when nothing can be told any more.</remarks>
/// <param name="reader">The program, by the name that <see cref="OutsideReader"/> knows.</param>
/// <param name="script">The script, beside the readers.</param>
internal sealed class KeptReader(string reader, string script)
{
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(2);

    private readonly Lock _turn = new();

    private Process? _process;

    /// <summary>Its answer to the names of files, JSON.</summary>
    /// <exception cref="InvalidOperationException">The reader is not on this machine, ended, or took over two minutes.</exception>
    public string AnswerTo(IReadOnlyList<string> files)
    {
        lock (_turn)
        {
            _process ??= Start();
            _process.StandardInput.WriteLine(JsonSerializer.Serialize(files));
            _process.StandardInput.Flush();
            var answer = _process.StandardOutput.ReadLineAsync();
            if (answer.Wait(Longest) && answer.Result is { } line)
                return line;
            _process.Kill(entireProcessTree: true);
            _process.Dispose();
            _process = null;
            throw new InvalidOperationException($"{reader} gave no answer on {string.Join(' ', files)}");
        }
    }

    private Process Start()
    {
        var process = Process.Start(new ProcessStartInfo(OutsideReader.ProgramNeeded(reader), [OutsideReader.Script(script)])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            UseShellExecute = false,
        }) ?? throw new InvalidOperationException($"{reader} did not start");
        return process;
    }
}
