using System.Globalization;
using System.Text;
using Lines.Design.Diagnostics;
using Lines.Design.Schema;
using Lines.Design.Text;
using Lines.Kernel.Units;

namespace Lines.Design.Studies;

/// <summary>What to make of a design: its main dimensions, and a name.</summary>
public sealed record StretchWish
{
    /// <summary>Length as it is to stand in the file; null keeps it. Everything along the hull follows in proportion.</summary>
    public string? Length { get; init; }

    /// <summary>Beam; null keeps it. Everything across follows in proportion.</summary>
    public string? Beam { get; init; }

    /// <summary>Depth; null keeps it. Every height follows in proportion.</summary>
    public string? Depth { get; init; }

    /// <summary>Draft; null lets it follow the depth. Nothing follows it.</summary>
    public string? Draft { get; init; }

    /// <summary>Title; null keeps it.</summary>
    public string? Title { get; init; }

    /// <summary>Remarks for the head of the file, a line each, without their #; null keeps those there are.</summary>
    public IReadOnlyList<string>? Header { get; init; }

    /// <summary>Notation of every length in the file, those given here too; null keeps each in the notation it is written in.</summary>
    public LengthNotation? Notation { get; init; }
}

/// <summary>Makes a design of other dimensions from one there is, comments and layout kept.</summary>
/// <remarks>
/// <b>Method.</b> x, y and z are each stretched by one factor. That keeps a fair hull fair and every fullness what it was; angles follow
/// their tangents. Outriggers, loads and bulkheads follow with the main hull. What the builder decides (planking, mold spacing, stock), masses of loads and the
/// sail plan's area and height stay.
/// <b>Accuracy.</b> Lengths that follow are rounded to 1 mm or the notation's step, angles to 0.1 degrees, a displacement to 0.1 kg or lb. Where the step would change a length
/// by more than a part in 50, as it would a thin planking in 1/32 in, it is written in decimals of an inch, to 0.001.
/// </remarks>
public static class Stretching
{
    private const double Millimeter = 0.001;

    /// <summary>A length is not changed by more than this part of it for being written in a notation [1].</summary>
    private const double CoarsestStep = 0.02;

    /// <summary>The text of the stretched design.</summary>
    /// <param name="design">The text of a sound design.</param>
    /// <param name="wish">What to make of it.</param>
    /// <returns>The text; whether it is still a sound design is for its reader to say.</returns>
    /// <exception cref="ArgumentException"><paramref name="design"/> is not sound.</exception>
    public static string Stretch(string design, StretchWish wish)
    {
        ArgumentNullException.ThrowIfNull(wish);
        var source = new SourceText(design, "design");
        var faults = new DiagnosticBag(source);
        var tree = TomlReader.Read(source, DesignSchema.Heads, faults);
        var values = SchemaReader.Read(tree, faults);
        if (!faults.IsEmpty)
            throw new ArgumentException($"not a sound design: {faults.Sorted()[0].Headline}", nameof(design));

        var main = values.Main;
        var factors = new Factors(
            Ratio(main, "hull.length", wish.Length), Ratio(main, "hull.beam", wish.Beam), Ratio(main, "hull.depth", wish.Depth));
        var lines = source.Text.Split('\n');
        var comments = new SortedDictionary<int, (int Was, int Is)>();
        var all = tree.Entries.Select(e => (Entry: e, Values: main)).Concat(tree.Elements.Zip(values.Repeated).SelectMany(p => p.First.Tree.Entries.Select(e => (Entry: e, Values: p.Second))));
        foreach (var (entry, form) in all.OrderByDescending(e => e.Entry.Value.Place))
        {
            var place = entry.Value.Place;
            var was = CommentOf(lines, place, place.Length);
            var text = NewText(entry, form, wish, factors);
            if (text is not null)
                TextEdit.Replace(lines, place, text);
            if (was is { } before)
                comments[place.Line - 1] = (before, CommentOf(lines, place, text?.Length ?? place.Length)!.Value);
        }

        Align(lines, comments);

        return string.Join('\n', wish.Header is { } header ? [.. header.Select(h => "# " + h), .. lines.SkipWhile(l => l.StartsWith('#'))] : lines);
    }

    private static string? NewText(TomlEntry entry, DesignValues values, StretchWish wish, Factors factors)
    {
        if (!values.Form.ByPath.TryGetValue(entry.Path, out var key) || values.Find(entry.Path) is not { } value)
            return null;
        if (Wished(entry.Path, values.Form, wish) is { } wished)
            return Quoted(key.Kind == KeyKind.Text ? wished : Converted(wished, key, wish.Notation));
        var notation = wish.Notation ?? value.Notation;
        var rewritten = key.Kind switch
        {
            KeyKind.Length => value.Notation != notation,
            KeyKind.Mass or KeyKind.Area or KeyKind.ArealMass => IsMetric(value.Notation) != IsMetric(notation),
            KeyKind.Lengths or KeyKind.Position => value.Items.Any(i => i.Notation != (wish.Notation ?? i.Notation)),
            _ => false,
        };
        if (factors.Keep(key.Stretch) && !rewritten)
            return null;
        return key.Kind switch
        {
            KeyKind.Position => $"[{string.Join(", ", value.Items.Select((item, axis) => Quoted(Shown(factors.OfAxis(axis) * item.Number, wish.Notation ?? item.Notation))))}]",
            KeyKind.Lengths => $"[{string.Join(", ", value.Items.Select(i => Quoted(Shown(factors.Length(key.Stretch, i.Number), wish.Notation ?? i.Notation))))}]",
            KeyKind.Mass or KeyKind.Area or KeyKind.ArealMass => Quoted(KeyRange.Show(key, factors.Length(key.Stretch, value.Number), notation)),
            KeyKind.Angle => Quoted(new Angle(Math.Round(factors.Angle(key.Stretch, value.Number) * (1800 / Math.PI)) * (Math.PI / 1800)).ToText()),
            _ => Quoted(Shown(factors.Length(key.Stretch, value.Number), notation)),
        };
    }

    /// <summary>What is wished of a key of the file itself; null where nothing is.</summary>
    private static string? Wished(string path, SchemaForm form, StretchWish wish) => form.IsRepeated ? null : path switch
    {
        "title" => wish.Title,
        "hull.length" => wish.Length,
        "hull.beam" => wish.Beam,
        "hull.depth" => wish.Depth,
        "hull.draft" => wish.Draft,
        _ => null,
    };

    private static bool IsMetric(LengthNotation notation) => notation == LengthNotation.Millimeters;

    /// <summary>The factor a wish means; 1 where it is out of the range of its key, which is told of it alone then.</summary>
    private static double Ratio(DesignValues values, string key, string? wished) =>
        wished is not null && Length.TryParse(wished, out var length, out _) && KeyRange.Holds(DesignSchema.ByPath[key], length.Meters)
            ? length.Meters / (values.NumberOrNone(key) ?? throw new ArgumentException($"{key} is left out of the design for a target, so there is nothing to stretch to {wished}", nameof(wished)))
            : 1;

    /// <summary>A length given as text in a notation; what is in it already, and what its key does not take, stays as it was given.</summary>
    private static string Converted(string given, SchemaKey key, LengthNotation? notation) =>
        notation is { } wanted && Length.TryParse(given, out var length, out var written, out _) && written != wanted && KeyRange.Holds(key, length.Meters)
            ? wanted == LengthNotation.Millimeters ? KeyRange.Show(key, length.Meters) : Shown(length.Meters, wanted)
            : given;

    private static string Shown(double meters, LengthNotation notation)
    {
        if (notation != LengthNotation.Millimeters)
        {
            var shown = new Length(meters).ToText(notation);
            if (Math.Abs(Length.Parse(shown).Meters - meters) > Math.Abs(meters) * CoarsestStep)
                return new Length(meters).Inches.ToString("0.0##", CultureInfo.InvariantCulture) + " in";

            // Marks for feet and inches would have to be escaped within the quotes of the file; less than a foot is written in inches.
            if (shown.TrimStart('-').StartsWith("0' ", StringComparison.Ordinal))
                return new Length(meters).ToText(LengthNotation.Inches);
            return shown.Replace("'", " ft", StringComparison.Ordinal).Replace("\"", " in", StringComparison.Ordinal);
        }

        var rounded = Math.Round(meters / Millimeter, MidpointRounding.AwayFromZero) * Millimeter;
        return Math.Abs(rounded) >= 1
            ? rounded.ToString("0.00#", CultureInfo.InvariantCulture) + " m"
            : new Length(rounded).ToText(LengthNotation.Millimeters);
    }

    private static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (var c in text)
        {
            if (c is '"' or '\\')
                quoted.Append('\\').Append(c);
            else if (char.IsControl(c))
                quoted.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:X4}");
            else
                quoted.Append(c);
        }

        return quoted.Append('"').ToString();
    }

    /// <summary>Where the comment behind a value begins; null where there is none.</summary>
    private static int? CommentOf(string[] lines, Place place, int length)
    {
        var (line, end) = (lines[place.Line - 1], place.Column - 1 + length);
        return end <= line.Length && line[end..].TrimStart(' ') is ['#', ..] comment ? line.Length - comment.Length : null;
    }

    /// <summary>Where one of the comments of lines that follow each other had to move, sets all in one column, that of the furthest.</summary>
    /// <param name="lines">The lines.</param>
    /// <param name="comments">Where the comment of a line was, and is.</param>
    private static void Align(string[] lines, SortedDictionary<int, (int Was, int Is)> comments)
    {
        var block = new List<KeyValuePair<int, (int Was, int Is)>>();
        foreach (var comment in comments)
        {
            if (block.Count > 0 && comment.Key != block[^1].Key + 1)
                Set();
            block.Add(comment);
        }

        Set();

        void Set()
        {
            var furthest = block.Exists(b => b.Value.Is != b.Value.Was) ? block.Max(b => b.Value.Is) : 0;
            foreach (var (line, (_, column)) in block)
                lines[line] = lines[line].Insert(column, new string(' ', Math.Max(0, furthest - column)));
            block.Clear();
        }
    }

    /// <summary>The three factors of a stretch.</summary>
    private readonly record struct Factors(double Along, double Across, double Up)
    {
        public bool Keep(Stretch stretch) => stretch switch
        {
            Schema.Stretch.None => true,
            Schema.Stretch.Everywhere => Along == 1 && Across == 1 && Up == 1,
            _ => Factor(stretch) == 1,
        };

        /// <summary>The factor along x, y or z.</summary>
        public double OfAxis(int axis) => axis == 0 ? Along : axis == 1 ? Across : Up;

        public double Length(Stretch stretch, double value) => value * Factor(stretch);

        public double Angle(Stretch stretch, double value) => Math.Atan(Math.Tan(value) * Factor(stretch));

        private double Factor(Stretch stretch) => stretch switch
        {
            Schema.Stretch.Along => Along,
            Schema.Stretch.Across => Across,
            Schema.Stretch.Up => Up,
            Schema.Stretch.UpOverAcross => Up / Across,
            Schema.Stretch.AcrossOverUp => Across / Up,
            Schema.Stretch.AcrossOverAlong => Across / Along,
            Schema.Stretch.AlongOverUp => Along / Up,
            Schema.Stretch.Volume => Along * Across * Up,
            _ => 1,
        };
    }
}
