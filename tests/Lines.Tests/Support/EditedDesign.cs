using System.Globalization;
using Lines.Kernel.Units;

namespace Lines.Tests.Support;

/// <summary>A design file whose values can be changed by their keys.</summary>
internal sealed class EditedDesign(string text)
{
    public string Text { get; } = text;

    /// <summary>The design with a value set or, where it is null, its key taken out; a key that is not there is added.</summary>
    public EditedDesign With(string path, string? value)
    {
        var dot = path.LastIndexOf('.');
        var (table, name) = dot < 0 ? ("", path) : (path[..dot], path[(dot + 1)..]);
        var lines = Text.Split('\n').ToList();
        var head = table.Length == 0 ? -1 : lines.IndexOf($"[{table}]");
        var end = lines.FindIndex(head + 1, l => l.StartsWith('['));
        var at = lines.FindIndex(head + 1, (end < 0 ? lines.Count : end) - head - 1, l => IsOf(l, name));
        if (at >= 0)
            lines.RemoveAt(at);
        if (value is not null)
            lines.Insert(head + 1, $"{name} = {value}");
        return new EditedDesign(string.Join('\n', lines));
    }

    /// <summary>The design with several values set.</summary>
    public EditedDesign With(IEnumerable<(string Path, string Value)> changes) => changes.Aggregate(this, (design, change) => design.With(change.Path, change.Value));

    /// <summary>The number of a key, SI; null where the design has none.</summary>
    public double? Number(string path)
    {
        var dot = path.LastIndexOf('.');
        var inside = false;
        foreach (var line in Text.Split('\n'))
        {
            if (line.StartsWith('['))
                inside = line.Equals($"[{path[..dot]}]", StringComparison.Ordinal);
            if (!inside || !IsOf(line, path[(dot + 1)..]))
                continue;
            var value = line.Split('=')[1].Trim() is ['"', .. var inner, '"'] ? inner.Replace("\\\"", "\"", StringComparison.Ordinal) : line.Split('=')[1].Trim().Replace("\\\"", "\"", StringComparison.Ordinal);
            return value switch { "true" => 1, "false" => 0, _ => Length.TryParse(value, out var l, out _) ? l.Meters : double.Parse(value, CultureInfo.InvariantCulture) };
        }

        return null;
    }

    private static bool IsOf(string line, string name) => line.Split('=')[0].TrimEnd().Equals(name, StringComparison.Ordinal);
}
