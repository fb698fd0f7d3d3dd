namespace Lines.Cli.Terminal;

/// <summary>Colors for a terminal; elsewhere, or where NO_COLOR is set, the text stays plain.</summary>
internal static class Paint
{
    /// <summary>Whether messages go to a terminal that may be painted on.</summary>
    public static bool OnTerminal { get; } =
        !Console.IsErrorRedirected
        && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"))
        && Environment.GetEnvironmentVariable("TERM") is not "dumb";

    /// <summary>What is wrong.</summary>
    public static string Bad(string text) => Wrap(text, "31;1");

    /// <summary>What to look at.</summary>
    public static string Strong(string text) => Wrap(text, "1");

    /// <summary>What is good.</summary>
    public static string Good(string text) => Wrap(text, "32");

    private static string Wrap(string text, string code) => OnTerminal ? $"\u001b[{code}m{text}\u001b[0m" : text;
}
