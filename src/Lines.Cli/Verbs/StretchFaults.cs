using Lines.Cli.Terminal;
using Lines.Design.Diagnostics;
using Lines.Design.Schema;
using Lines.Design.Studies;

namespace Lines.Cli.Verbs;

/// <summary>Tells the faults of a stretched design by the options that made them: there is no file yet to point into.</summary>
internal static class StretchFaults
{
    private static readonly Dictionary<string, (string Name, Func<StretchWish, string?> Value)> Options = new(StringComparer.Ordinal)
    {
        ["title"] = ("--title", w => w.Title),
        ["hull.length"] = ("--length", w => w.Length),
        ["hull.beam"] = ("--beam", w => w.Beam),
        ["hull.depth"] = ("--depth", w => w.Depth),
        ["hull.draft"] = ("--draft", w => w.Draft),
    };

    /// <summary>Shows the faults and makes the failure that ends the verb.</summary>
    public static CommandFailure Refused(IReadOnlyList<Diagnostic> faults, StretchWish wish)
    {
        foreach (var fault in faults)
            Streams.Error.WriteLine(Paint.Strong(Line(fault, wish)));
        Streams.Say(faults.Count == 1 ? "one fault, nothing written" : Invariant($"{faults.Count} faults, nothing written"));
        return new CommandFailure(ExitCode.Wrong, "") { Diagnostics = faults };
    }

    private static string Line(Diagnostic fault, StretchWish wish)
    {
        if (Options.TryGetValue(fault.Key, out var own))
            return $"{own.Name}{(own.Value(wish) is null ? ", not given" : "")}: {fault.Problem}; {fault.Remedy}";
        if (fault.Instead is var (key, remedy) && Options.TryGetValue(key, out var other) && other.Value(wish) is { } value)
            return $"{other.Name}: with \"{value}\", {fault.Key} {fault.Problem}; {remedy}";
        var drivers = Drivers(DesignSchema.Find(fault.Key)?.Stretch ?? Stretch.None);
        // What stretched it was given, for what the template has keeps to every limit.
        var given = drivers.Select(d => Options[d.Key]).Where(o => o.Value(wish) is not null).Select(o => o.Name).ToList();
        var ways = drivers.Select(d => $"a {(d.Grows == fault.Toward > 0 ? "larger" : "smaller")} {Options[d.Key].Name}");
        return $"{string.Join(", ", given)}: stretches {fault.Key} too far: {fault.Problem}; ask for {string.Join(" or ", ways)}";
    }

    /// <summary>The dimensions a key follows, and whether it grows with each.</summary>
    private static IReadOnlyList<(string Key, bool Grows)> Drivers(Stretch stretch) => stretch switch
    {
        Stretch.Along => [("hull.length", true)],
        Stretch.Across => [("hull.beam", true)],
        Stretch.Up => [("hull.depth", true)],
        Stretch.UpOverAcross => [("hull.depth", true), ("hull.beam", false)],
        Stretch.AcrossOverUp => [("hull.beam", true), ("hull.depth", false)],
        Stretch.AcrossOverAlong => [("hull.beam", true), ("hull.length", false)],
        Stretch.AlongOverUp => [("hull.length", true), ("hull.depth", false)],
        Stretch.Volume => [("hull.length", true), ("hull.beam", true), ("hull.depth", true)],
        _ => [("hull.length", true), ("hull.beam", true)],
    };
}
