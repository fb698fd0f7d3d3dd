using System.Text;

namespace Lines.Cli.Terminal;

/// <summary>Standard output for results, standard error for everything else; both UTF-8 and with plain line feeds.</summary>
internal static class Streams
{
    private static readonly UTF8Encoding Plain = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Results. Held back until <see cref="Flush"/>.</summary>
    public static TextWriter Out { get; } = new StreamWriter(Console.OpenStandardOutput(), Plain, 1 << 14) { NewLine = "\n" };

    /// <summary>Messages.</summary>
    public static TextWriter Error { get; } = new StreamWriter(Console.OpenStandardError(), Plain, 1 << 10) { NewLine = "\n", AutoFlush = true };

    /// <summary>Sends the results on; a full disk behind a redirection shows here.</summary>
    public static void Flush() => Out.Flush();

    /// <summary>One line of the program itself.</summary>
    public static void Say(string message) => Error.WriteLine($"{Paint.Bad("lines:")} {message}");
}
