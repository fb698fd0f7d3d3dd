namespace Lines.Cli.Output;

/// <summary>Knows the unfinished files and folders of this run, so that a run that fails or is stopped leaves none behind.</summary>
internal static class Staging
{
    private static readonly Lock Gate = new();
    private static readonly HashSet<string> Unfinished = new(StringComparer.Ordinal);

    /// <summary>Folders made for an output to stand in, the deepest on top.</summary>
    private static readonly Stack<string> Made = new();

    /// <summary>A name beside the target that nothing else has; noted as unfinished.</summary>
    public static string Beside(string target)
    {
        var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(target));
        var path = Path.Combine(Path.GetDirectoryName(full)!, $".{Path.GetFileName(full)}.{Guid.NewGuid():N}.part");
        lock (Gate)
            Unfinished.Add(path);
        return path;
    }

    /// <summary>Makes the folders that are missing on the way to a target.</summary>
    /// <exception cref="IOException">One could not be made.</exception>
    public static void MakeFolderOf(string target)
    {
        var missing = new Stack<string>();
        for (var folder = Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(target))); folder is not null && !Directory.Exists(folder); folder = Path.GetDirectoryName(folder))
            missing.Push(folder);
        foreach (var folder in missing)
        {
            Directory.CreateDirectory(folder);
            lock (Gate)
                Made.Push(folder);
        }
    }

    /// <summary>Takes an unfinished file or folder away, if it is still there, and the folders made for it that stayed empty.</summary>
    public static void Remove(string path)
    {
        if (Directory.Exists(path))
            Directory.Delete(path, recursive: true);
        else if (File.Exists(path))
            File.Delete(path);
        lock (Gate)
        {
            Unfinished.Remove(path);
            while (Made.TryPeek(out var folder) && Directory.Exists(folder) && !Directory.EnumerateFileSystemEntries(folder).Any())
                Directory.Delete(Made.Pop());
        }
    }

    /// <summary>Whether the output stands whole in its place.</summary>
    public static bool IsPlaced { get; private set; }

    /// <summary>Notes that the output stands in its place.</summary>
    public static void Placed(string path)
    {
        lock (Gate)
        {
            Unfinished.Remove(path);
            IsPlaced = true;
        }
    }

    /// <summary>Held while files are written or moved: a stop waits for its end, and nothing is left half moved.</summary>
    public static Lock.Scope Hold() => Gate.EnterScope();

    /// <summary>Takes everything unfinished away; called when the run is stopped.</summary>
    /// <remarks>The gate stays shut behind it, so that nothing is written until the process ends.</remarks>
    public static void RemoveAll()
    {
        Gate.Enter();
        foreach (var path in Unfinished.ToList())
        {
            try
            {
                Remove(path);
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                Terminal.Streams.Say($"{path}: could not be removed: {Fault.Of(fault)}");
            }
        }
    }
}
