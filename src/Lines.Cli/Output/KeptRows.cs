using System.Text;
using System.Text.Json;

namespace Lines.Cli.Output;

/// <summary>Rows that are kept as they come, each a line of JSON, so that a run that is stopped goes on from there.</summary>
/// <remarks>The first line says what the rows are of; rows of anything else are not taken. A line that was cut off is forgotten.</remarks>
internal sealed class KeptRows : IDisposable
{
    private static Func<string>? s_told;

    private readonly SortedDictionary<int, string> _rows = [];
    private readonly StreamWriter _file;
    private readonly Lock _gate = new();

    private KeptRows(string path, SortedDictionary<int, string> rows, StreamWriter file, int all)
    {
        (Path, _rows, _file) = (path, rows, file);
        s_told = () => Invariant($"stopped; {Count} of {all} are kept in {path}: the same command goes on from there");
    }

    /// <summary>What a run that is stopped says of the rows; null where none are kept.</summary>
    public static string? Told => s_told?.Invoke();

    /// <summary>Where they are kept.</summary>
    public string Path { get; }

    /// <summary>How many there are.</summary>
    public int Count
    {
        get
        {
            lock (_gate)
                return _rows.Count;
        }
    }

    /// <summary>The rows by their numbers.</summary>
    public IReadOnlyDictionary<int, string> Rows => _rows;

    /// <summary>Opens what an earlier run of the same kept, or begins.</summary>
    /// <param name="path">The file.</param>
    /// <param name="what">What the rows are of, one line.</param>
    /// <param name="all">How many there will be.</param>
    /// <param name="anew">Whether to forget rows of something else; those of the same are taken even so, for a run that replaces a folder can be stopped too.</param>
    /// <exception cref="CommandFailure">The file is of something else.</exception>
    public static KeptRows Open(string path, string what, int all, bool anew)
    {
        string[] lines = File.Exists(path) ? File.ReadAllText(path) is { } text && text.LastIndexOf('\n') is > 0 and var end ? text[..end].Split('\n') : [] : [];
        var rows = new SortedDictionary<int, string>();
        if (lines.Length > 0 && lines[0].Equals(what, StringComparison.Ordinal))
        {
            foreach (var line in lines.Skip(1))
                rows[NumberOf(line)] = line;
        }
        else if (lines.Length > 0 && !anew)
        {
            throw new CommandFailure(ExitCode.NoAccess, $"{path}: keeps the rows of another sweep that was stopped; --force forgets them, or name another place with -o");
        }

        var kept = new StringBuilder(what).Append('\n');
        foreach (var row in rows.Values)
            kept.Append(row).Append('\n');
        Staging.MakeFolderOf(path);
        File.WriteAllText(path, kept.ToString());
        return new KeptRows(path, rows, new StreamWriter(path, append: true, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { AutoFlush = true, NewLine = "\n" }, all);
    }

    /// <summary>Keeps a row; called from any thread.</summary>
    public void Add(int number, string row)
    {
        lock (_gate)
        {
            _rows[number] = row;
            _file.WriteLine(row);
        }
    }

    /// <summary>Takes the file away: all rows stand elsewhere.</summary>
    public void Discard()
    {
        s_told = null;
        _file.Dispose();
        File.Delete(Path);
    }

    public void Dispose() => _file.Dispose();

    private static int NumberOf(string line)
    {
        using var row = JsonDocument.Parse(line);
        return row.RootElement.GetProperty("number").GetInt32();
    }
}
