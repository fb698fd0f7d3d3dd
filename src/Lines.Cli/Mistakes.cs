using System.CommandLine;
using System.CommandLine.Completions;
using System.CommandLine.Parsing;
using Lines.Cli.Terminal;
using Lines.Design.Schema;

namespace Lines.Cli;

/// <summary>Says what is wrong with a command line and what was most likely meant.</summary>
internal static class Mistakes
{
    /// <summary>Whether the line asks for help, version or completion, which answer whatever else is on it.</summary>
    public static bool AreAnswered(ParseResult parsed) => parsed.UnmatchedTokens.Count == 0 && parsed.Action?.ClearsParseErrors is true;

    /// <summary>Shows the mistakes.</summary>
    /// <returns>The exit code for a wrong command line.</returns>
    public static int Show(ParseResult parsed)
    {
        var verb = parsed.CommandResult.Command;
        var isRoot = verb is RootCommand;
        var unknown = Unknown(parsed.UnmatchedTokens);
        foreach (var token in unknown)
            Streams.Say(IsOption(token, verb) ? $"{token} stands before the command; write it behind: lines {verb.Name} ... {token}" : Unknown(token, verb));
        if (unknown.Count == 0)
        {
            foreach (var error in parsed.Errors.DistinctBy(e => e.Message, StringComparer.Ordinal))
                Streams.Say(Reworded(error, verb, isRoot));
        }

        Streams.Error.WriteLine($"see: {(isRoot ? "lines --help" : $"lines {verb.Name} --help")}");
        return ExitCode.Wrong;
    }

    /// <summary>What to say of a first word that is no verb; null where it is one, or an option or directive.</summary>
    public static string? UnknownVerb(string word, RootCommand root)
    {
        var verbs = root.Subcommands.Select(c => c.Name).ToList();
        if (word.StartsWith('-') || word.StartsWith('[') || verbs.Contains(word, StringComparer.Ordinal))
            return null;
        var near = NearestName.Of(word, verbs);
        return near is null
            ? $"there is no command \"{word}\"; the commands are {string.Join(", ", verbs)}"
            : $"there is no command \"{word}\"; did you mean {near}?";
    }

    /// <summary>The tokens to speak of: behind an unknown option others are unknown only because of it.</summary>
    private static IReadOnlyList<string> Unknown(IReadOnlyList<string> tokens)
    {
        var options = tokens.Where(t => t.StartsWith('-')).ToList();
        return options.Count > 0 ? options : tokens;
    }

    private static bool IsOption(string token, Command verb) => verb.Options.Any(o => o.Name.Equals(token, StringComparison.Ordinal) || o.Aliases.Contains(token));

    private static string Unknown(string token, Command verb)
    {
        if (!token.StartsWith('-'))
            return $"\"{token}\" is one argument too many for {verb.Name}; what has a blank in it goes in quotes";
        var options = verb.Options.SelectMany(o => o.Aliases.Prepend(o.Name)).Where(n => n.StartsWith("--", StringComparison.Ordinal));
        var near = NearestName.Of(token, options);
        return near is null ? $"there is no option {token} here" : $"there is no option {token}; did you mean {near}?";
    }

    private static string Among(Option option) => string.Join(", ", option.GetCompletions(CompletionContext.Empty).Select(c => c.Label));

    /// <summary>The parser's message in our words where it speaks of its own types.</summary>
    private static string Reworded(ParseError error, Command verb, bool isRoot) => error.SymbolResult switch
    {
        _ when isRoot && error.SymbolResult is CommandResult => "a command is missing",
        ArgumentResult { Tokens.Count: 0, Parent: OptionResult option } => $"{option.Option.Name} needs a value",
        ArgumentResult { Tokens.Count: 0 } argument => $"{verb.Name} needs {argument.Argument.Name}",
        OptionResult { Tokens.Count: 0 } option when error.Message.Contains("equired argument", StringComparison.Ordinal) => $"{option.Option.Name} needs a value",
        CommandResult when verb.Arguments.Count > 0 && error.Message.Contains("equired argument", StringComparison.Ordinal) => $"{verb.Name} needs {verb.Arguments[0].Name}",
        OptionResult { Tokens: [var token, ..] } option when Among(option.Option) is { Length: > 0 } words && error.Message.Contains("not recognized", StringComparison.Ordinal) => $"{option.Option.Name} does not know \"{token.Value}\"; it takes {words}",
        _ => error.Message,
    };
}
