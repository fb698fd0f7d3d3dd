using Lines.Design.Diagnostics;

namespace Lines.Cli;

/// <summary>What the command returns to the shell.</summary>
internal static class ExitCode
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>Done, but the hull is not fair or a check failed.</summary>
    public const int Unfair = 1;

    /// <summary>The command line or a file is wrong.</summary>
    public const int Wrong = 2;

    /// <summary>A file could not be read or written.</summary>
    public const int NoAccess = 3;

    /// <summary>The program itself is at fault (EX_SOFTWARE of BSD's sysexits).</summary>
    public const int Bug = 70;

    /// <summary>Stopped from the keyboard: 128 and the number of the signal, as shells count.</summary>
    public const int Interrupted = 130;
}

/// <summary>Ends a verb with a message and an exit code.</summary>
/// <param name="exitCode">One of <see cref="ExitCode"/>.</param>
/// <param name="message">One line without the program's name; empty where all was said already.</param>
internal sealed class CommandFailure(int exitCode, string message) : Exception(message)
{
    public int Code { get; } = exitCode;

    /// <summary>The faults of a design file that were shown, for those who asked for JSON.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; init; } = [];
}
