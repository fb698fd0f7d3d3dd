using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace Lines.Cli;

/// <summary>Examples at the foot of every help page.</summary>
internal static class Examples
{
    private static readonly Dictionary<Command, string[]> ByCommand = [];

    /// <summary>Gives a verb its examples, whole command lines.</summary>
    public static Command WithExamples(this Command verb, params string[] examples)
    {
        ByCommand[verb] = examples;
        return verb;
    }

    /// <summary>Puts the examples under the help of a command and all its verbs.</summary>
    public static void ShowInHelp(RootCommand root)
    {
        root.Options.Remove(root.Options.OfType<HelpOption>().Single());
        root.Options.Add(new HelpOption("--help", "-h") { Description = "show this page", Action = new HelpWithExamples(new HelpAction()) });
    }

    /// <summary>The help page and, where there are any, its examples.</summary>
    internal sealed class HelpWithExamples(HelpAction plain) : SynchronousCommandLineAction
    {
        public override bool ClearsParseErrors => true;

        public override int Invoke(ParseResult parseResult)
        {
            var code = plain.Invoke(parseResult);
            if (ByCommand.TryGetValue(parseResult.CommandResult.Command, out var examples))
            {
                var output = parseResult.InvocationConfiguration.Output;
                output.Write("Examples:\n");
                foreach (var example in examples)
                    output.Write($"  {example}\n");
                output.Write('\n');
            }

            return code;
        }
    }
}
