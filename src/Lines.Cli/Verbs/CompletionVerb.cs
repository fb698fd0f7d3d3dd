using System.CommandLine;
using Lines.Cli.Terminal;

namespace Lines.Cli.Verbs;

/// <summary><c>lines completion SHELL</c>: the script that lets a shell complete verbs, options and their values.</summary>
internal static class CompletionVerb
{
    private const string Bash = """
        # lines: completion for bash. Put into ~/.bashrc: eval "$(lines completion bash)"
        _lines_complete() {
            local word="${COMP_WORDS[COMP_CWORD]}" found
            found="$(lines "[suggest:${COMP_POINT}]" "${COMP_LINE}" 2>/dev/null)"
            [[ "$word" == -* ]] || found="$(grep -v '^-' <<< "$found")"
            COMPREPLY=($(compgen -W "$found" -- "$word"))
        }
        complete -o default -F _lines_complete lines

        """;

    private const string Zsh = """
        # lines: completion for zsh. Put into ~/.zshrc after compinit: eval "$(lines completion zsh)"
        _lines_complete() {
            local -a found
            found=("${(@f)$(lines "[suggest:${CURSOR}]" "${BUFFER}" 2>/dev/null)}")
            [[ "$PREFIX" == -* ]] || found=("${(@)found:#-*}")
            found=("${(@)found:#}")
            (( ${#found} )) && compadd -- "${found[@]}"
            _files
        }
        compdef _lines_complete lines

        """;

    private const string Fish = """
        # lines: completion for fish. Save as ~/.config/fish/completions/lines.fish
        function __lines_complete
            set -l line (commandline -cp)
            lines "[suggest:"(string length -- "$line")"]" "$line" 2>/dev/null
        end
        complete -c lines -a '(__lines_complete)'

        """;

    private static readonly string[] Shells = ["bash", "zsh", "fish"];

    public static Command Make()
    {
        var shell = new Argument<string>("SHELL") { Description = "bash, zsh or fish" };
        shell.CompletionSources.Add(Shells);
        var verb = new Command("completion", "Prints the script that lets a shell complete commands and options.") { shell };
        verb.SetAction(parsed => Print(parsed.GetValue(shell)!));
        return verb.WithExamples("eval \"$(lines completion bash)\"", "lines completion fish > ~/.config/fish/completions/lines.fish");
    }

    private static int Print(string shell)
    {
        Streams.Out.Write(shell switch
        {
            "bash" => Bash,
            "zsh" => Zsh,
            "fish" => Fish,
            _ => throw new CommandFailure(ExitCode.Wrong, $"there is no script for \"{shell}\"; the shells are {string.Join(", ", Shells)}"),
        });
        return ExitCode.Done;
    }
}
