using System.CommandLine;
using Lines.Kernel.Units;
using Lines.Plans.Paper;

namespace Lines.Cli.Verbs;

/// <summary>The option <c>--paper</c>.</summary>
internal static class PaperOption
{
    private static readonly PaperSize[] Named = [PaperSize.Letter, PaperSize.Tabloid, PaperSize.AnsiC, PaperSize.A4, PaperSize.A3, PaperSize.A2, PaperSize.A1];

    /// <summary>A choice of named papers.</summary>
    /// <param name="description">What it is for.</param>
    /// <param name="otherwise">The paper where none is asked for.</param>
    /// <param name="sizes">The papers; none for all.</param>
    public static Option<PaperSize> Of(string description, PaperSize otherwise, params PaperSize[] sizes) => Option(description, otherwise, sizes.Length == 0 ? Named : sizes, anySize: false);

    /// <summary>A choice of named papers, and any size of sheet or roll.</summary>
    /// <param name="description">What it is for.</param>
    /// <param name="otherwise">The paper where none is asked for.</param>
    public static Option<PaperSize> AnySize(string description, PaperSize otherwise) => Option(description, otherwise, Named, anySize: true);

    private static Option<PaperSize> Option(string description, PaperSize otherwise, PaperSize[] sizes, bool anySize)
    {
        var names = string.Join(", ", sizes.Select(Common.NameOf)) + (anySize ? ", any sheet as \"24 in x 36 in\", a roll as \"36 in roll\"" : "");
        var option = new Option<PaperSize>("--paper")
        {
            Description = $"{description}: {names} (left out: {Common.NameOf(otherwise)})",
            HelpName = "SIZE",
            CustomParser = result =>
            {
                var text = result.Tokens[0].Value;
                if (Array.Find(sizes, s => Common.NameOf(s).Equals(text, StringComparison.OrdinalIgnoreCase)) is { } size)
                    return size;
                var fault = $"does not know \"{text}\"; it takes {names}";
                if (anySize && (Roll(text, ref fault) ?? Sheet(text, ref fault)) is { } other)
                    return other;
                result.AddError($"--paper {fault}");
                return otherwise;
            },
        };
        option.CompletionSources.Add([.. sizes.Select(Common.NameOf)]);
        return option;
    }

    // A width and the word.
    private static PaperSize? Roll(string text, ref string fault)
    {
        const string roll = "roll";
        if (!text.EndsWith(roll, StringComparison.OrdinalIgnoreCase))
            return null;
        var wide = text[..^roll.Length].Trim();
        if (!Length.TryParse(wide, out var width, out _, out var wrong))
            fault = $"\"{text}\": {wrong}";
        else if (width.Millimeters is >= PaperSize.Narrowest and <= PaperSize.LongestOfRoll)
            return new PaperSize($"{wide} {roll}", width.Millimeters, PaperSize.LongestOfRoll) { IsRoll = true };
        else
            fault = Invariant($"takes rolls from {PaperSize.Narrowest:0} mm to {PaperSize.LongestOfRoll:0} mm wide, not \"{text}\"");
        return null;
    }

    // Two lengths with an x between them; the shorter is the width, whichever comes first.
    private static PaperSize? Sheet(string text, ref string fault)
    {
        var sides = text.Split('x', 'X');
        if (sides.Length != 2)
            return null;
        var lengths = new Length[2];
        for (var i = 0; i < 2; i++)
        {
            if (Length.TryParse(sides[i].Trim(), out lengths[i], out _, out var wrong))
                continue;
            fault = $"\"{text}\": a side {wrong}; a sheet is written like \"24 in x 36 in\"";
            return null;
        }

        var (width, height) = lengths[0].Meters <= lengths[1].Meters ? (lengths[0], lengths[1]) : (lengths[1], lengths[0]);
        if (width.Millimeters >= PaperSize.Narrowest && height.Millimeters <= Math.Min(PaperSize.Longest, PaperSize.Slimmest * width.Millimeters))
            return new PaperSize(string.Join(" x ", sides.Select(s => s.Trim())), width.Millimeters, height.Millimeters);
        fault = Invariant($"takes sheets from {PaperSize.Narrowest:0} mm to {PaperSize.Longest:0} mm a side, no more than {PaperSize.Slimmest} times as long as broad, not \"{text}\"");
        return null;
    }
}
