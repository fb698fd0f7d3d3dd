using System.Diagnostics;

namespace Lines.Cli.Terminal;

/// <summary>A line on a terminal that says what takes so long, gone when it is done; elsewhere nothing.</summary>
internal static class Waiting
{
    /// <summary>What takes less is not spoken of.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(0.7);

    private static readonly TimeSpan Tick = TimeSpan.FromSeconds(1);

    private static readonly Lock Gate = new();

    /// <summary>The line, while there is a wait.</summary>
    private static Func<string>? _line;

    private static bool _shown;

    /// <summary>Does work that may take long.</summary>
    /// <param name="line">What is being done, for who waits.</param>
    /// <param name="work">The work.</param>
    public static T For<T>(string line, Func<T> work) => For(() => line, work);

    /// <summary>Does work that may take long.</summary>
    /// <param name="line">What is being done, asked for anew each second.</param>
    /// <param name="work">The work.</param>
    public static T For<T>(Func<string> line, Func<T> work)
    {
        if (!Paint.OnTerminal)
            return work();
        _line = line;
        var watch = Stopwatch.StartNew();
        using var timer = new Timer(_ => Show(watch.Elapsed), null, Patience, Tick);
        try
        {
            return work();
        }
        finally
        {
            End();
        }
    }

    /// <summary>Takes the line off the terminal, for good.</summary>
    public static void End()
    {
        lock (Gate)
        {
            if (_shown)
                Streams.Error.Write("\r\u001b[K");
            (_line, _shown) = (null, false);
        }
    }

    private static void Show(TimeSpan elapsed)
    {
        lock (Gate)
        {
            if (_line is null)
                return;
            Streams.Error.Write(Invariant($"\r{_line()} {elapsed.TotalSeconds:F0} s\u001b[K"));
            _shown = true;
        }
    }
}
