using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Lines.Cli.Input;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Units;
using Lines.Plans.Paper;

namespace Lines.Cli.Verbs;

/// <summary>The arguments and options that several verbs share, each made anew for its verb.</summary>
internal static class Common
{
    public static Argument<string> File() => new("FILE") { Description = "the design file (TOML); templates/README.md lists its keys" };

    public static Option<bool> Json(string what = "print results for programs, as one JSON object") => new("--json") { Description = what };

    public static Option<bool> Force() => new("--force") { Description = "replace a file that is there already" };

    /// <summary>Leave to replace what an earlier run wrote into a folder.</summary>
    /// <param name="taken">What is taken away when it is not made again.</param>
    public static Option<bool> ForceFolder(string taken) => new("--force")
    {
        Description = $"replace the files of an earlier run in the folder and take away its {taken} that are made no more; all other files stay",
    };

    /// <summary>Which hull of a vessel; left out, the main one.</summary>
    public static Option<string?> Hull()
    {
        var option = new Option<string?>("--hull") { Description = $"which hull: {Shaped.MainHull}, or outrigger-1 and on as they stand in FILE (left out: {Shaped.MainHull})", HelpName = "HULL" };
        option.CompletionSources.Add([Shaped.MainHull, Shaped.OutriggerName(1), Shaped.OutriggerName(2)]);
        return option;
    }

    /// <summary>Which water; left out, the sea.</summary>
    /// <param name="what">What it is the water of.</param>
    public static Option<string> Water(string what)
    {
        var option = new Option<string>("--water") { Description = $"{what}: sea, fresh (left out: sea)", HelpName = "WATER", DefaultValueFactory = _ => "sea" };
        option.AcceptOnlyFromAmong("sea", "fresh");
        return option;
    }

    /// <summary>The water that was chosen.</summary>
    public static Water Chosen(ParseResult parsed, Option<string> water) =>
        "fresh".Equals(parsed.GetValue(water), StringComparison.Ordinal) ? Lines.Hull.Hydrostatics.Water.Fresh : Lines.Hull.Hydrostatics.Water.Sea;

    public static Option<string?> OutputTo(string what) => new("--output", "-o") { Description = what, HelpName = "PATH" };

    /// <summary>A length with its unit.</summary>
    /// <param name="name">The option.</param>
    /// <param name="description">What it is, with its range.</param>
    /// <param name="least">Least length [m].</param>
    /// <param name="most">Greatest length [m].</param>
    public static Option<double?> Length(string name, string description, double least, double most) => new(name)
    {
        Description = description,
        HelpName = "LENGTH",
        CustomParser = result =>
        {
            var text = result.Tokens[0].Value;
            if (!Lines.Kernel.Units.Length.TryParse(text, out var length, out var fault))
                result.AddError($"{name} \"{text}\" {fault}");
            else if (!(length.Meters >= least && length.Meters <= most))
                result.AddError(Invariant($"{name} takes {1000 * least:0.###} mm to {1000 * most:0.###} mm, not \"{text}\""));
            return length.Meters;
        },
    };

    /// <summary>The name of a paper on the command line and in names of files.</summary>
    public static string NameOf(PaperSize size) => size.Name.ToLowerInvariant().Replace(' ', '-');

    /// <summary>The file of a build that holds the full-size patterns.</summary>
    public static string PatternsFile(PaperSize size) => $"templates-{NameOf(size)}.pdf";

    /// <summary>An output in the current folder named after the design file, and after the hull where it is not the main one.</summary>
    public static string NamedAfter(string design, string ending, string? hull = null) =>
        Path.GetFileNameWithoutExtension(design) + (hull is null or Shaped.MainHull ? "" : $"-{hull}") + ending;

    /// <summary>The ending of a name of an output, when it is one of those that can be written.</summary>
    /// <exception cref="CommandFailure">It is not.</exception>
    public static string Format(string output, params string[] endings)
    {
        var ending = Path.GetExtension(output).ToLowerInvariant();
        return endings.Contains(ending, StringComparer.Ordinal)
            ? ending
            : throw new CommandFailure(
                ExitCode.Wrong, $"{output}: {(ending.Length == 0 ? "has no ending" : $"cannot be written as {ending}")}; the ending says the format: {string.Join(", ", endings)}");
    }

    /// <summary>A notation of lengths; left out, <see cref="Shaped.Units"/> chooses.</summary>
    public static Option<LengthNotation?> Units(string description = "how lengths are shown: mm, in, ft-in, ft-in-8ths (left out: as most lengths in FILE are written)")
    {
        var option = new Option<LengthNotation?>("--units") { Description = description, HelpName = "NOTATION", CustomParser = Notation };
        option.CompletionSources.Add([.. LengthNotations.ByName.Select(n => n.Name)]);
        return option;
    }

    private static LengthNotation? Notation(ArgumentResult result)
    {
        var name = result.Tokens[0].Value;
        foreach (var known in LengthNotations.ByName)
        {
            if (known.Name.Equals(name, StringComparison.OrdinalIgnoreCase))
                return known.Notation;
        }

        result.AddError($"--units does not know \"{name}\"; it takes {string.Join(", ", LengthNotations.ByName.Select(n => n.Name))}");
        return null;
    }

    /// <summary>A number of a range.</summary>
    public static Option<double?> Number(string name, string what, string description, double least, double most) => new(name)
    {
        Description = description,
        HelpName = what,
        CustomParser = result =>
        {
            var text = result.Tokens[0].Value;
            if (double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most)
                return value;
            result.AddError(Invariant($"{name} takes a number from {least:0.##} to {most:0.##}, not \"{text}\""));
            return null;
        },
    };
}
