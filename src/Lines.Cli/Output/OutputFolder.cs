namespace Lines.Cli.Output;

/// <summary>A folder of results that appears whole or not at all.</summary>
/// <remarks>
/// The files are written into an unfinished folder beside the target and moved when all are there. Where the target exists and
/// may be replaced, each of its files that has the name of a new one is set aside, the new one put in its place, and all is put back
/// if that fails; files of other names stay as they are.
/// </remarks>
internal sealed class OutputFolder : IDisposable
{
    private readonly string _target;
    private readonly bool _force;
    private readonly string _part;
    private readonly List<string> _names = [];
    private bool _finished;

    /// <summary>Begins a folder.</summary>
    /// <param name="target">Where it is to appear.</param>
    /// <param name="force">Whether files that are there already may be replaced.</param>
    /// <exception cref="CommandFailure">The place cannot be written, or is taken.</exception>
    public OutputFolder(string target, bool force)
    {
        Check(target, force);
        _target = target;
        _force = force;
        _part = Staging.Beside(target);
        Guarded(() =>
        {
            Staging.MakeFolderOf(target);
            Directory.CreateDirectory(_part);
        });
    }

    /// <summary>The names written so far, in order, with forward slashes.</summary>
    public IReadOnlyList<string> Names => _names;

    /// <summary>Refuses a place that must not, or cannot, be written, before any work is done for it.</summary>
    public static void Check(string target, bool force)
    {
        if (target.Length == 0)
            throw new CommandFailure(ExitCode.Wrong, "-o names no folder");
        Targets.RefuseDevice(target);
        if (File.Exists(Path.TrimEndingDirectorySeparator(target)))
            throw new CommandFailure(ExitCode.NoAccess, $"{target}: is a file; name a folder");
        if (!force && Directory.Exists(target) && Directory.EnumerateFileSystemEntries(target).Any())
            throw new CommandFailure(ExitCode.NoAccess, $"{target}: exists already and is not empty; --force replaces what an earlier run wrote in it, or name another with -o");
        Targets.RefuseInsideFile(target);
    }

    /// <summary>Adds a file.</summary>
    /// <param name="name">Its name in the folder, with forward slashes.</param>
    /// <param name="content">Its bytes.</param>
    public void Add(string name, ReadOnlySpan<byte> content)
    {
        var bytes = content.ToArray();
        Guarded(() =>
        {
            var path = Path.Combine(_part, name);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            Targets.WriteNew(path, bytes);
        });
        _names.Add(name);
    }

    /// <summary>Moves the folder to its place.</summary>
    /// <param name="stale">Names of files an earlier run wrote here and this one does not: they are taken away.</param>
    public void Finish(IEnumerable<string> stale)
    {
        Guarded(() =>
        {
            if (!Directory.Exists(_target))
                Directory.Move(_part, _target);
            else if (!Directory.EnumerateFileSystemEntries(_target).Any())
                ReplaceEmpty();
            else if (_force)
                Merge([.. _names, .. stale.Except(_names, StringComparer.Ordinal)]);
            else
                throw new IOException("it appeared meanwhile");
            Staging.Placed(_part);
        });
        _finished = true;
        Staging.Remove(_part);
    }

    /// <summary>Takes the unfinished folder away where the run did not come to its end.</summary>
    public void Dispose()
    {
        if (!_finished)
            Staging.Remove(_part);
    }

    private void ReplaceEmpty()
    {
        Directory.Delete(_target);
        Directory.Move(_part, _target);
    }

    private void Merge(IReadOnlyList<string> names)
    {
        var aside = Staging.Beside(_target);
        var done = new Stack<Action>();
        try
        {
            Directory.CreateDirectory(aside);
            foreach (var name in names)
                Replace(name, aside, done);
        }
        catch
        {
            while (done.TryPop(out var undo))
                undo();
            Staging.Remove(aside);
            throw;
        }

        Staging.Remove(aside);
    }

    private void Replace(string name, string aside, Stack<Action> done)
    {
        var (from, to, old) = (Path.Combine(_part, name), Path.Combine(_target, name), Path.Combine(aside, name));
        if (Directory.Exists(to))
            throw new IOException($"{name} is a folder there");
        if (File.Exists(to))
        {
            Directory.CreateDirectory(Path.GetDirectoryName(old)!);
            File.Move(to, old);
            done.Push(() => File.Move(old, to, overwrite: true));
        }

        if (!File.Exists(from))
            return;
        Directory.CreateDirectory(Path.GetDirectoryName(to)!);
        File.Move(from, to);
        done.Push(() => File.Delete(to));
    }

    private void Guarded(Action work)
    {
        using var hold = Staging.Hold();
        try
        {
            work();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Staging.Remove(_part);
            throw new CommandFailure(ExitCode.NoAccess, $"{_target}: could not be written: {Fault.Of(fault)}");
        }
    }
}
