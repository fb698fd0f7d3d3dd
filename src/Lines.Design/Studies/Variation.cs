using System.Globalization;
using Lines.Design.Diagnostics;
using Lines.Design.Schema;
using Lines.Design.Text;

namespace Lines.Design.Studies;

/// <summary>A key of a design file that is varied over a range in even steps.</summary>
/// <param name="Key">The key.</param>
/// <param name="Values">Its values, SI, in the order they are tried.</param>
public sealed record Variation(SchemaKey Key, IReadOnlyList<double> Values)
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
        if (!DesignSchema.ByPath.TryGetValue(path, out var key))
            throw new FormatException($"\"{path}\" is not a key of a design file{(NearestName.Of(path, DesignSchema.ByPath.Keys) is { } near ? $"; did you mean {near}?" : "")}");
        if (key.Kind is not (KeyKind.Ratio or KeyKind.Length or KeyKind.Angle or KeyKind.Mass or KeyKind.Area))
            throw new FormatException($"{path} is no number that could be varied");
        double first = ValueOf(key, parts[0].Trim()), last = ValueOf(key, parts[1].Trim());
        if (!int.TryParse(parts[2].Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var count) || count is < 2 or > Most)
            throw new FormatException(Invariant($"{path}: \"{parts[2].Trim()}\" values cannot be tried; 2 to {Most} can"));
        return new Variation(key, [.. Enumerable.Range(0, count).Select(k => first + ((last - first) * k / (count - 1)))]);
    }

    /// <summary>The text of a design with other values of some keys, comments and layout kept.</summary>
    /// <param name="design">The text of a design.</param>
    /// <param name="values">Keys and their values, SI; a key that is left out of the design is added to its table.</param>
    public static string In(string design, IReadOnlyList<(SchemaKey Key, double Value)> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        var source = new SourceText(design, "design");
        var tree = TomlReader.Read(source, DesignSchema.Heads, new DiagnosticBag(source));
        List<string> lines = [.. source.Text.Split('\n')];
        var known = values.Select(v => (v.Key, v.Value, Entry: tree.Entries.FirstOrDefault(e => e.Path.Equals(v.Key.Path, StringComparison.Ordinal)))).ToList();

        // From the end of the file up, so that no place moves before its turn; what is added comes last.
        foreach (var (key, value, entry) in known.Where(k => k.Entry is not null).OrderByDescending(k => k.Entry!.Value.Place))
            TextEdit.Replace(lines, entry!.Value.Place, Written(key, value));
        foreach (var (key, value, _) in known.Where(k => k.Entry is null))
        {
            var head = lines.FindIndex(l => l.Trim().StartsWith($"[{key.Table}]", StringComparison.Ordinal));
            if (head < 0)
                lines.AddRange(["", $"[{key.Table}]", $"{key.Name} = {Written(key, value)}"]);
            else
                lines.Insert(head + 1, $"{key.Name} = {Written(key, value)}");
        }

        return string.Join('\n', lines);
    }

    private static double ValueOf(SchemaKey key, string text)
    {
        try
        {
            var value = ValueReader.Number(key, text);
            return KeyRange.Holds(key, value) ? value : throw new FormatException($"{key.Path}: {text} is out of its range, {KeyRange.Show(key)}");
        }
        catch (FormatException fault) when (!fault.Message.StartsWith(key.Path, StringComparison.Ordinal))
        {
            throw new FormatException($"{key.Path}: \"{text}\" is no such value; it is written like {key.Example}", fault);
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
