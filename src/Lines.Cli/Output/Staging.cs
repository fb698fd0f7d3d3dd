namespace Lines.Cli.Output;

/// <summary>Knows the unfinished files and folders of this run, so that a run stopped from outside leaves none behind.</summary>
internal static class Staging
{
    private static readonly Lock Gate = new();
    private static readonly HashSet<string> Unfinished = new(StringComparer.Ordinal);

    /// <summary>A name beside the target that nothing else has; noted as unfinished.</summary>
    public static string Beside(string target)
    {
        var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(target));
        var path = Path.Combine(Path.GetDirectoryName(full)!, $".{Path.GetFileName(full)}.{Guid.NewGuid():N}.part");
        lock (Gate)
            Unfinished.Add(path);
        return path;
    }

    /// <summary>Takes an unfinished file or folder away, if it is still there.</summary>
    public static void Remove(string path)
    {
        if (Directory.Exists(path))
            Directory.Delete(path, recursive: true);
        else
            File.Delete(path);
        Forget(path);
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
