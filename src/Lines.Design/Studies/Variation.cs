using System.Globalization;
using Lines.Design.Diagnostics;
using Lines.Design.Schema;
using Lines.Design.Text;

namespace Lines.Design.Studies;

/// <summary>A key of a design file that is varied over a range in even steps.</summary>
/// <param name="Key">The key.</param>
/// <param name="Values">Its values, SI, in the order they are tried.</param>
public sealed record Variation(VariedKey Key, IReadOnlyList<double> Values)
{
    /// <summary>Most values of one key.</summary>
    public const int Most = 10_000;

    /// <summary>Reads <c>hull.bow.entry_fullness=0.55:0.75:21</c>: key, first value, last value, how many.</summary>
    /// <param name="text">The text.</param>
    /// <exception cref="FormatException">It is none; the message says what would do.</exception>
    public static Variation Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var cut = text.IndexOf('=', StringComparison.Ordinal);
        string[] parts = cut < 0 ? [] : text[(cut + 1)..].Split(':');
        if (parts.Length != 3)
            throw new FormatException($"\"{text}\" is no range; it is written key=first:last:count, as hull.bow.entry_fullness=0.55:0.75:21");
        var path = text[..cut].Trim();
        var varied = VariedKey.Parse(path);
        var key = varied.Key;
        if (key.Kind is not (KeyKind.Ratio or KeyKind.Length or KeyKind.Angle or KeyKind.Mass or KeyKind.Area))
            throw new FormatException($"{path} is no number that could be varied");
        double first = ValueOf(varied, parts[0].Trim()), last = ValueOf(varied, parts[1].Trim());
        if (!int.TryParse(parts[2].Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var count) || count is < 2 or > Most)
            throw new FormatException(Invariant($"{path}: \"{parts[2].Trim()}\" values cannot be tried; 2 to {Most} can"));
        return new Variation(varied, [.. Enumerable.Range(0, count).Select(k => first + ((last - first) * k / (count - 1)))]);
    }

    /// <summary>The text of a design with other values of some keys, comments and layout kept.</summary>
    /// <param name="design">The text of a design.</param>
    /// <param name="values">Keys and their values, SI; a key that is left out of the design is added to its table.</param>
    /// <exception cref="ArgumentException">The design has no outrigger of that number.</exception>
    public static string In(string design, IReadOnlyList<(VariedKey Key, double Value)> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        var source = new SourceText(design, "design");
        var tree = TomlReader.Read(source, DesignSchema.Heads, new DiagnosticBag(source));
        List<string> lines = [.. source.Text.Split('\n')];
        var added = new List<(int After, int Order, string[] Lines)>();
        foreach (var (varied, value) in values)
        {
            var outriggers = tree.Elements.Count(e => e.Name.Equals(DesignSchema.Outrigger.Name, StringComparison.Ordinal));
            if (varied.Missing(outriggers) is { } missing)
                throw new ArgumentException(missing, nameof(values));
            var (key, (form, inside, head)) = (varied.Key, varied.In(tree));
            if (inside.Entries.FirstOrDefault(e => e.Path.Equals(key.Path, StringComparison.Ordinal)) is { } entry)
                TextEdit.Replace(lines, entry.Value.Place, Written(key, value));
            else
                added.Add(Added(key, $"{key.Name} = {Written(key, value)}", form, inside, head, lines.Count, added.Count));
        }

        // From the end of the file up, so that no line moves before its turn.
        foreach (var (after, _, text) in added.OrderByDescending(a => a.After).ThenByDescending(a => a.Order))
            lines.InsertRange(after, text);
        return string.Join('\n', lines);
    }

    // Below the head of its table; where that is missing, a table of its own below all of its form.
    private static (int After, int Order, string[] Lines) Added(SchemaKey key, string line, SchemaForm form, TomlTree inside, int head, int end, int order)
    {
        var table = inside.Tables.FirstOrDefault(t => t.Path.Equals(key.Table, StringComparison.Ordinal));
        var after = table?.Place.Line ?? (form.IsRepeated && key.Table.Length == 0 ? head : 0);
        if (after > 0)
            return (after, order, [line]);
        var last = form.IsRepeated ? inside.Entries.Select(e => e.Value.Place.Line).Concat(inside.Tables.Select(t => t.Place.Line)).Append(head).Max() : end;
        return (last, order, ["", form.Head(key.Table), line]);
    }

    private static double ValueOf(VariedKey varied, string text)
    {
        var key = varied.Key;
        try
        {
            var value = ValueReader.Number(key, text);
            return KeyRange.Holds(key, value) ? value : throw new FormatException($"{varied.Path}: {text} is out of its range, {KeyRange.Show(key)}");
        }
        catch (FormatException fault) when (!fault.Message.StartsWith(varied.Path, StringComparison.Ordinal))
        {
            throw new FormatException($"{varied.Path}: \"{text}\" is no such value; it is written like {key.Example}", fault);
        }
    }

    // Twelve digits: what a step leaves beyond them is rounding.
    private static string Written(SchemaKey key, double value)
    {
        string To(double number) => number.ToString("G12", CultureInfo.InvariantCulture);
        return key.Kind switch
        {
            KeyKind.Length => $"\"{To(1000 * value)} mm\"",
            KeyKind.Angle => $"\"{To(value * 180 / Math.PI)} deg\"",
            KeyKind.Mass => $"\"{To(value)} kg\"",
            KeyKind.Area => $"\"{To(value)} m2\"",
            _ => To(value),
        };
    }
}
