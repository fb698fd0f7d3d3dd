namespace Lines.Cli.Output;

/// <summary>Writes one file so that it appears whole or not at all.</summary>
internal static class OutputFile
{
    /// <summary>Refuses a target that must not, or cannot, be written, before any work is done for it.</summary>
    /// <exception cref="CommandFailure">The target exists and is not to be replaced, is a folder, or stands in a file.</exception>
    public static void Check(string path, bool force)
    {
        if (Path.GetFileNameWithoutExtension(path).Length == 0)
            throw new CommandFailure(ExitCode.Wrong, $"\"{path}\" is not the name of a file");
        if (Directory.Exists(path))
            throw new CommandFailure(ExitCode.NoAccess, $"{path}: is a folder; name a file");
        Targets.RefuseDevice(path);
        if (File.Exists(path) && !force)
            throw new CommandFailure(ExitCode.NoAccess, $"{path}: exists already; --force replaces it, or name another file");
        Targets.RefuseInsideFile(path);
    }

    /// <summary>Writes a file beside its place and moves it there; makes the folders it is to stand in.</summary>
    /// <exception cref="CommandFailure">It could not be written; what was there before still is.</exception>
    public static void Write(string path, ReadOnlySpan<byte> content, bool force)
    {
        Check(path, force);
        using var hold = Staging.Hold();
        var part = Staging.Beside(path);
        try
        {
            Staging.MakeFolderOf(path);
            Targets.WriteNew(part, content);
            File.Move(part, path, overwrite: force);
            Staging.Placed(part);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Staging.Remove(part);
            throw new CommandFailure(ExitCode.NoAccess, $"{path}: could not be written: {Fault.Of(fault)}");
        }
    }
}

/// <summary>What every kind of output asks of its place.</summary>
internal static class Targets
{
    /// <summary>Writes a file that is not there yet.</summary>
    /// <exception cref="IOException">It could not be written, or is there.</exception>
    public static void WriteNew(string path, ReadOnlySpan<byte> content)
    {
        using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 0);
        try
        {
            stream.Write(content);
        }
        catch (ArgumentOutOfRangeException fault)
        {
            // So the runtime reports EFBIG, a file larger than the disk or the user's limit takes.
            throw new IOException("the file is larger than the disk or the user may hold", fault);
        }
    }

    /// <summary>Devices are not replaced by files.</summary>
    public static void RefuseDevice(string path)
    {
        var full = Path.GetFullPath(path);
        if (!OperatingSystem.IsWindows() && ((string[])["/dev/", "/proc/", "/sys/"]).Any(d => full.StartsWith(d, StringComparison.Ordinal)))
            throw new CommandFailure(ExitCode.NoAccess, $"{path}: is a device, not a place for files");
    }

    /// <summary>Folders that are missing on the way to a target are made later; a file on the way is a slip.</summary>
    public static void RefuseInsideFile(string path)
    {
        var folder = Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(path)));
        while (folder is not null && !Directory.Exists(folder))
        {
            if (File.Exists(folder))
                throw new CommandFailure(ExitCode.NoAccess, $"{path}: cannot stand in {folder}, which is a file; name another place with -o");
            folder = Path.GetDirectoryName(folder);
        }
    }
}
