using System.Globalization;
using Lines.Design;
using Lines.Design.Diagnostics;
using Lines.Design.Schema;
using Lines.Hull.Form;
using Lines.Kernel.Units;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Design;

/// <summary>Holds what the table of keys says, and so what <c>templates/README.md</c> says, against what the reader does.</summary>
public sealed class SchemaTruthTests
{
    /// <summary>What else must change for a key to stand at an end of its range; without it a limit that another key sets would come first.</summary>
    private static readonly Dictionary<(string Path, bool Upper), (string Path, string Value)[]> s_companions = new()
    {
        [("hull.length", false)] = [("hull.beam", "\"300 mm\"")],
        [("hull.beam", false)] = [("hull.length", "\"2 m\"")],
        [("hull.beam", true)] = [("hull.length", "\"15 m\"")],
        [("hull.depth", false)] = [("hull.draft", "\"60 mm\""), ("hull.bow.rocker", "\"20 mm\""), ("hull.stern.rocker", "\"20 mm\"")],
        [("hull.draft", false)] = [("hull.bow.rocker", "\"10 mm\""), ("hull.stern.rocker", "\"10 mm\"")],
        [("hull.draft", true)] = [("hull.depth", "\"1 m\""), ("hull.bow.sheer", "\"1.2 m\""), ("hull.stern.sheer", "\"1.2 m\"")],
        [("hull.crown", true)] = [("hull.beam", "\"900 mm\"")],
        [("hull.bow.entry_fullness", false)] = [("hull.hollow", "true")],
        [("hull.stern.run_fullness", false)] = [("hull.hollow", "true")],
        [("hull.bow.rocker", true)] = [("hull.draft", "\"600 mm\""), ("hull.depth", "\"900 mm\""), ("hull.bow.sheer", "\"1 m\""), ("hull.stern.sheer", "\"1 m\"")],
        [("hull.stern.rocker", true)] = [("hull.draft", "\"600 mm\""), ("hull.depth", "\"900 mm\""), ("hull.bow.sheer", "\"1 m\""), ("hull.stern.sheer", "\"1 m\"")],
        [("hull.bow.sheer", false)] = [("hull.draft", "\"70 mm\"")],
        [("hull.stern.sheer", false)] = [("hull.draft", "\"70 mm\"")],
        [("hull.bow.forefoot", true)] = [("hull.length", "\"15 m\"")],
        [("hull.stern.heel", true)] = [("hull.length", "\"15 m\"")],
        [("hull.stern.rake", true)] = [("hull.stern.sheer", "\"400 mm\"")],
        [("hull.stern.breadth", true)] = [("hull.length", "\"15 m\""), ("hull.beam", "\"3 m\"")],
        [("hull.stern.immersion", false)] = [("hull.draft", "\"800 mm\""), ("hull.depth", "\"1.1 m\""), ("hull.bow.sheer", "\"1.3 m\""), ("hull.stern.sheer", "\"1.3 m\"")],
        [("hull.stern.immersion", true)] = [("hull.draft", "\"600 mm\""), ("hull.depth", "\"900 mm\""), ("hull.bow.sheer", "\"1 m\""), ("hull.stern.sheer", "\"1 m\"")],
        [("build.joints", true)] = [("hull.length", "\"15 m\"")],
        [("build.mold_at", true)] = [("hull.length", "\"15 m\"")],
        [("build.mold_spacing", false)] = [("hull.length", "\"3 m\"")],
        [("build.strongback_top", false)] = [("hull.draft", "\"40 mm\""), ("hull.bow.rocker", "\"10 mm\""), ("hull.stern.rocker", "\"10 mm\""),
            ("hull.depth", "\"80 mm\""), ("hull.bow.sheer", "\"80 mm\""), ("hull.stern.sheer", "\"80 mm\"")],
    };

    /// <summary>What must change for the limits of a key that others set to come before its range.</summary>
    private static readonly Dictionary<(string Path, int Bound), (string Path, string Value)[]> s_narrowing = new()
    {
        [("build.planking", 0)] = [("hull.length", "\"3 m\""), ("hull.beam", "\"160 mm\"")],
        [("build.mold_spacing", 0)] = [("hull.length", "\"2.8 m\"")],
        [("build.mold_spacing", 1)] = [("hull.length", "\"8 m\"")],
        [("build.mold_spacing", 2)] = [("build.mold_stock", "\"50 mm\"")],
        [("hull.stern.rake", 0)] = [("hull.stern.sheer", "\"2 m\"")],
    };

    public static IEnumerable<object[]> Ends => DesignSchema.Keys
        .Where(k => k.Kind is KeyKind.Length or KeyKind.Angle or KeyKind.Ratio or KeyKind.Lengths or KeyKind.Mass or KeyKind.ArealMass)
        .SelectMany(k => new object[][] { [k.Path, false], [k.Path, true] });

    public static IEnumerable<object[]> Bounds => DesignSchema.Keys.SelectMany(k => k.Bounds.Select((_, i) => new object[] { k.Path, i }));

    public static TheoryData<string> Paths => [.. DesignSchema.Keys.Select(k => k.Path)];

    [Theory]
    [MemberData(nameof(Ends))]
    public void A_value_at_the_end_of_a_range_is_taken_and_one_beyond_is_not(string path, bool upper)
    {
        var key = DesignSchema.ByPath[path];
        var end = upper ? key.Greatest : key.Least;

        // A place cannot be at the greatest length, for the hull cannot be longer.
        var inside = upper && key.Kind == KeyKind.Lengths ? 14.999 : end;
        Assert.Empty(Read(SampleOf(key).With(path, Written(key, inside)).With(Companions(path, upper))).Select(d => d.Headline));

        var beyond = Read(SampleOf(key).With(path, Written(key, end + (upper ? Step(key) : -Step(key)))).With(Companions(path, upper)));
        var fault = Assert.Single(beyond);
        Assert.Equal(path, fault.Key);
        Assert.Contains(upper ? " is above " : " is below ", fault.Problem, StringComparison.Ordinal);
        foreach (var right in Suggested(key, fault.Remedy))
            Assert.Empty(Read(SampleOf(key).With(Companions(path, upper)).With(path, right)).Select(d => d.Headline));
        Assert.Equal(upper ? -1 : 1, fault.Toward);
        Assert.Contains($"| {KeyRange.Show(key)}", RowOf(key), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Bounds))]
    public void A_value_at_a_limit_that_others_set_is_taken_unless_it_is_open_and_one_beyond_is_not(string path, int index)
    {
        var key = DesignSchema.ByPath[path];
        var bound = key.Bounds[index];
        var sample = SampleOf(key).With(s_narrowing.GetValueOrDefault((path, index), []));
        var limit = bound.Limit(p => sample.Number(p))!.Value;
        var outward = bound.IsUpper ? 1 : -1;

        Assert.Empty(Faults(limit - (outward * Step(key))));
        Assert.Equal(bound.Open, Faults(limit).Count > 0);
        var beyond = Assert.Single(Faults(limit + (outward * Step(key))));
        Assert.Equal((path, -outward), (beyond.Key, beyond.Toward));
        Assert.Contains(bound.Problem, beyond.Problem, StringComparison.Ordinal);
        Assert.Contains($"{bound.Side} {bound.Words}", RowOf(key), StringComparison.Ordinal);

        IReadOnlyList<Diagnostic> Faults(double value) => Read(sample.With(path, Written(key, value)));
    }

    [Theory]
    [MemberData(nameof(Bounds))]
    public void What_a_fault_says_would_be_right_is_right_in_every_notation(string path, int index)
    {
        var key = DesignSchema.ByPath[path];
        var bound = key.Bounds[index];
        var sample = SampleOf(key).With(s_narrowing.GetValueOrDefault((path, index), []));
        foreach (var (_, notation) in LengthNotations.ByName)
        {
            var limit = bound.Limit(p => sample.Number(p))!.Value;
            var wrong = key.Kind is KeyKind.Length or KeyKind.Lengths
                ? new Length(limit + ((bound.IsUpper ? 1 : -1) * 0.004)).ToText(notation)
                : KeyRange.Show(key, limit + ((bound.IsUpper ? 1 : -1) * 4 * Step(key)));
            var fault = Assert.Single(Read(sample.With(path, Quoted(key, wrong))));

            var said = fault.Remedy["give ".Length..].Replace(bound.Side + " ", "", StringComparison.Ordinal).Split(" (")[0].Split(", or")[0];

            // "less than" a value is right just under it: by one step of the notation.
            var right = bound.Open ? new Length(Length.Parse(said).Meters - ((bound.IsUpper ? 1 : -1) * notation.Step())).ToText(notation) : said;
            Assert.Empty(Read(sample.With(path, Quoted(key, right))).Select(d => d.Headline));
        }
    }

    [Theory]
    [MemberData(nameof(Paths))]
    public void A_key_left_out_is_missed_or_has_the_default_that_is_told(string path)
    {
        var key = DesignSchema.ByPath[path];
        var sample = WholeSampleOf(key);
        if (key.Dial == Dial.EntryFullness)
            sample = sample.With("hull.bow.entry_angle", null); // alone it is a target in place of the fullness
        var faults = Read(sample.With(path, null));

        if (key.Required)
        {
            Assert.Equal((path, "is missing"), Assert.Single(faults.Select(f => (f.Key, f.Problem))));
            Assert.Contains("| required", RowOf(key), StringComparison.Ordinal);
        }
        else if (key.InPlaceOf is { } other)
        {
            Assert.Equal((other, "is missing"), Assert.Single(faults.Select(f => (f.Key, f.Problem))));
            Assert.Contains($"`{key.Name}`", RowOf(DesignSchema.ByPath[other]), StringComparison.Ordinal);
        }
        else
        {
            Assert.Empty(faults);
            Assert.Contains($"| {key.Default} |", RowOf(key), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_defaults_told_are_those_the_design_gets()
    {
        var told = DesignSchema.Keys.Where(k => k.Kind == KeyKind.Length && k.Default is not null && char.IsAsciiDigit(k.Default[0])).ToDictionary(k => k.Name, k => Length.Parse(k.Default!).Meters);
        var build = DesignFile.Read(SampleDesigns.Transom, "a.toml").Design!.Build;

        var got = new Dictionary<string, double>(StringComparer.Ordinal)
        {
            ["sheathing"] = build.Sheathing,
            ["mold_spacing"] = build.MoldSpacing,
            ["mold_stock"] = build.MoldStock,
            ["strip_width"] = build.StripWidth,
            ["stem_siding"] = build.StemSiding,
            ["sheet_length"] = build.SheetLength,
            ["sheet_width"] = build.SheetWidth,
            ["sheet_margin"] = build.SheetMargin,
            ["part_spacing"] = build.PartSpacing,
            ["board_length"] = build.BoardLength,
            ["saw_kerf"] = build.SawKerf,
            ["stem_molding"] = build.StemMolding,
            ["joint_gap"] = build.JointGap,
            ["strongback_depth"] = build.StrongbackDepth,
            ["joint_bolt"] = build.JointBolt,
            ["joint_clearance"] = build.JointClearance,
            ["bulkhead_stock"] = build.BulkheadStock,
        };
        Assert.Equal(got.OrderBy(p => p.Key, StringComparer.Ordinal), told.OrderBy(p => p.Key, StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Paths))]
    public void A_key_of_one_kind_of_stern_is_refused_in_the_other(string path)
    {
        var key = DesignSchema.ByPath[path];
        var other = new EditedDesign(key.Stern is DesignSchema.Transom ? SampleDesigns.Pointed : SampleDesigns.Transom);
        var faults = Read(other.With(path, key.Path is "hull.stern.kind" ? null : key.Example));

        if (key.Stern is null)
            return;
        Assert.Equal((path, "leave it out"), Assert.Single(faults.Select(f => (f.Key, f.Remedy))));
        Assert.Contains($"({key.Stern} stern)", RowOf(key), StringComparison.Ordinal);
    }

    private static (string Path, string Value)[] Companions(string path, bool upper) => s_companions.GetValueOrDefault((path, upper), []);

    /// <summary>A design that gives a key, and of the others none that would limit it for no need.</summary>
    private static EditedDesign SampleOf(SchemaKey key)
    {
        var whole = WholeSampleOf(key);
        if (key is { Target: { } target, Dial: null })
            whole = whole.With(DesignSchema.ByDial[HullTargets.MoversOf(target)[0]].Path, null);
        return ((string[])["build.joints", "build.mold_at", "build.strongback_top"]).Where(p => !p.Equals(key.Path, StringComparison.Ordinal)).Aggregate(whole, (design, path) => design.With(path, null));
    }

    private static EditedDesign WholeSampleOf(SchemaKey key) => new((key.Stern is DesignSchema.Transom ? SampleDesigns.Transom : SampleDesigns.Pointed) + SampleDesigns.Materials);

    private static IReadOnlyList<Diagnostic> Read(EditedDesign sample) => DesignFile.Read(sample.Text, "a.toml").Diagnostics;

    /// <summary>The ends of the range a fault says to give, or a value just within where the end itself is excluded.</summary>
    private static IEnumerable<string> Suggested(SchemaKey key, string remedy)
    {
        var ends = remedy["give ".Length..].Split(", so ")[0].Replace(" up to ", " to ", StringComparison.Ordinal).Split(" to ");
        Assert.Equal(2, ends.Length);
        yield return Quoted(key, Within(ends[0], "more than ", 0.0001));
        yield return Quoted(key, Within(ends[1], "less than ", -0.0001));

        static string Within(string end, string open, double inward) =>
            end.StartsWith(open, StringComparison.Ordinal) ? new Length(Length.Parse(end[open.Length..]).Meters + inward).ToText(LengthNotation.Millimeters) : end;
    }

    private static string RowOf(SchemaKey key)
    {
        var page = File.ReadAllText(Repository.PathOf("templates", "README.md"));
        var head = key.Table.Length == 0 ? "## Head of the file" : $"## `[{key.Table}]`";
        return page[page.IndexOf(head, StringComparison.Ordinal)..].Split('\n').First(l => l.StartsWith($"| `{key.Name}` |", StringComparison.Ordinal));
    }

    /// <summary>A value exact enough that its last place is a thousandth of <see cref="Step"/>.</summary>
    private static string Written(SchemaKey key, double value)
    {
        var text = (key.Kind == KeyKind.Angle ? value * 180 / Math.PI : key.Kind == KeyKind.Ratio ? value : value * 1000).ToString("0.#########", CultureInfo.InvariantCulture);
        return Quoted(key, key.Kind switch { KeyKind.Angle => text + " deg", KeyKind.Ratio => text, KeyKind.Mass => value.ToString("0.#########", CultureInfo.InvariantCulture) + " kg", KeyKind.ArealMass => text + " g/m2", _ => text + " mm" });
    }

    private static string Quoted(SchemaKey key, string text)
    {
        var quoted = key.Kind == KeyKind.Ratio ? text : $"\"{text.Replace("\"", "\\\"", StringComparison.Ordinal)}\"";
        return key.Kind == KeyKind.Lengths ? $"[{string.Join(", ", Enumerable.Repeat("\"1 m\"", (key.Members ?? 1) - 1).Prepend(quoted))}]" : quoted;
    }

    private static double Step(SchemaKey key) => key.Kind switch
    {
        KeyKind.Angle => Math.PI / 180 * 0.01,
        KeyKind.Ratio => 0.0001,
        KeyKind.Mass => 0.1,
        KeyKind.ArealMass => 0.001,
        _ => 0.0001,
    };
}
