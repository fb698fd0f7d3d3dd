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

    /// <summary>What was moved to its place is no longer unfinished.</summary>
    public static void Forget(string path)
    {
        lock (Gate)
            Unfinished.Remove(path);
    }

    /// <summary>Takes everything unfinished away; called when the run is stopped.</summary>
    public static void RemoveAll()
    {
        string[] all;
        lock (Gate)
            all = [.. Unfinished];
        foreach (var path in all)
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
