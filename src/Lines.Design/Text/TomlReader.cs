using Lines.Design.Diagnostics;
using Tomlyn.Syntax;

namespace Lines.Design.Text;

/// <summary>Takes a TOML text apart into tables, keys and values with their places.</summary>
/// <remarks>
/// The syntax is left to a general TOML parser; names used twice are found here, where both places can be told.
/// </remarks>
internal sealed class TomlReader
{
    /// <summary>No name is longer; what is longer is not looked at [characters].</summary>
    private const int LongestKey = 120;

    private readonly DiagnosticBag _faults;
    private readonly TomlScope _file = new("", Place.Start);
    private readonly List<TomlScope> _elements = [];
    private readonly Dictionary<string, TomlScope?> _open;
    private readonly List<(string Path, int Line)> _headed = [];
    private readonly HashSet<int> _brokenLines = [];

    private TomlReader(IEnumerable<string> repeated, DiagnosticBag faults)
    {
        _faults = faults;
        _open = repeated.ToDictionary(r => r, _ => (TomlScope?)null, StringComparer.Ordinal);
    }

    /// <summary>Takes the text apart; faults go into the bag.</summary>
    /// <param name="source">The text.</param>
    /// <param name="heads">The names of the tables there are, with the head line of each; those in double brackets may stand several times.</param>
    /// <param name="faults">The bag.</param>
    public static TomlTree Read(SourceText source, IReadOnlyDictionary<string, string> heads, DiagnosticBag faults)
    {
        var reader = new TomlReader(heads.Where(h => h.Value.StartsWith("[[", StringComparison.Ordinal)).Select(h => h.Key), faults);
        var (document, broken) = SyntaxMender.Parse(source, heads);
        reader._brokenLines.UnionWith(broken.Select(b => b.Place.Line));
        reader.Walk(document);
        var unread = reader.ReportSyntax(broken);
        return new TomlTree(reader._file.Tables, reader._file.Entries, unread)
        {
            Elements = [.. reader._elements.Select(e => new TomlElement(e.Name, e.Place, new TomlTree(e.Tables, e.Entries, unread)))],
        };
    }

    /// <summary>Reports the broken lines, each key with the table it stands in.</summary>
    /// <returns>Their paths.</returns>
    private HashSet<string> ReportSyntax(IReadOnlyList<BrokenLine> broken)
    {
        var paths = new HashSet<string>(StringComparer.Ordinal);
        foreach (var line in broken)
        {
            var index = _headed.FindLastIndex(t => t.Line < line.Place.Line);
            var inside = index < 0 || line.IsWhole ? "" : _headed[index].Path + ".";
            paths.Add(inside + line.Key);
            _faults.Add(line.Place, inside + line.Key, line.Problem, line.Remedy);
        }

        return paths;
    }

    private void Walk(DocumentSyntax document)
    {
        foreach (var pair in document.KeyValues)
            Take(_file, "", pair);
        foreach (var table in document.Tables)
        {
            if (table.Name is null)
                continue;
            var path = PathOf(table.Name);
            var place = PlaceOf(table.Name);
            var repeated = table is TableArraySyntax;
            if (path.Length == 0 || IsTooLong(path, place))
                continue;
            _headed.Add((path, place.Line));
            if (repeated && _open.ContainsKey(path))
            {
                _elements.Add(new TomlScope(path, place));
                _open[path] = _elements[^1];
                foreach (var pair in table.Items)
                    Take(_elements[^1], "", pair);
                continue;
            }

            var (scope, inner) = ScopeOf(path);
            Take(scope, inner, place, repeated, table.Items.OfType<KeyValueSyntax>());
        }
    }

    /// <summary>The last table in double brackets that a table stands in, and its path within; the file itself where there is none.</summary>
    private (TomlScope Scope, string Path) ScopeOf(string path)
    {
        var dot = path.IndexOf('.', StringComparison.Ordinal);
        return dot > 0 && _open.GetValueOrDefault(path[..dot]) is { } scope ? (scope, path[(dot + 1)..]) : (_file, path);
    }

    private void Take(TomlScope scope, string path, Place place, bool repeated, IEnumerable<KeyValueSyntax> items)
    {
        scope.Tables.Add(new TomlTable(path, place, repeated));
        if (repeated)
            scope.Strange.Add(path);
        if (scope.IsInStrange(path))
            return;
        if (scope.Values.TryGetValue(path, out var before))
            _faults.Add(place, scope.Shown(path), Invariant($"is a table here and a value at line {before.Line}"), "keep one of the two");
        else if (!scope.Heads.TryAdd(path, place))
            _faults.Add(place, scope.Shown(path), Invariant($"is a table already at line {scope.Heads[path].Line}"), "put its keys together in one");
        foreach (var pair in items)
            Take(scope, path, pair);
    }

    private void Take(TomlScope scope, string table, KeyValueSyntax pair)
    {
        if (pair.Key is null || pair.Value is null || _brokenLines.Contains(pair.Key.Span.Start.Line + 1))
            return;
        var name = PathOf(pair.Key);
        if (name.Length == 0)
            return;
        var path = table.Length == 0 ? name : $"{table}.{name}";
        var place = PlaceOf(pair.Key);
        if (IsTooLong(path, place))
            return;
        if (scope.Values.TryGetValue(path, out var before))
        {
            _faults.Add(place, scope.Shown(path), Invariant($"is given already at line {before.Line}"), "keep one of the two");
            return;
        }

        if (pair.Value is InlineTableSyntax inline)
        {
            scope.Tables.Add(new TomlTable(path, place, Repeated: false));
            foreach (var item in inline.Items)
            {
                if (item.KeyValue is not null)
                    Take(scope, path, item.KeyValue);
            }

            return;
        }

        if (scope.Heads.ContainsKey(path))
            _faults.Add(place, scope.Shown(path), "is a table elsewhere in the file and a value here", "keep one of the two");
        scope.Values.Add(path, place);
        scope.Entries.Add(new TomlEntry(path, place, ValueOf(pair.Value)));
    }

    private bool IsTooLong(string path, Place place)
    {
        if (path.Length <= LongestKey)
            return false;
        _faults.Add(place, path, Invariant($"is a name of {path.Length} characters"), "no key of a design file is near as long");
        return true;
    }

    private TomlValue ValueOf(ValueSyntax value)
    {
        var place = PlaceOf(value);
        var raw = value.ToString()?.Trim() ?? "";

        // What follows on the line, a comment say, hangs on the value's last token.
        if (value.Span.Start.Line == value.Span.End.Line)
            raw = raw[..Math.Min(raw.Length, place.Length)];
        return value switch
        {
            StringValueSyntax text => new TomlValue(TomlKind.Text, raw, text.Value ?? "", double.NaN, [], place),
            IntegerValueSyntax whole => new TomlValue(TomlKind.Number, raw, "", whole.Value, [], place),
            FloatValueSyntax broken => new TomlValue(TomlKind.Number, raw, "", broken.Value, [], place),
            BooleanValueSyntax flag => new TomlValue(TomlKind.Flag, raw, "", flag.Value ? 1 : 0, [], place),
            ArraySyntax list => new TomlValue(
                TomlKind.List, raw, "", double.NaN, [.. list.Items.Select(i => i.Value).OfType<ValueSyntax>().Select(ValueOf)], place),
            _ => new TomlValue(TomlKind.Date, raw, "", double.NaN, [], place),
        };
    }

    private static string PathOf(KeySyntax key)
    {
        var parts = new List<string> { NameOf(key.Key) };
        foreach (var dotted in key.DotKeys)
            parts.Add(NameOf(dotted.Key));
        return string.Join('.', parts);
    }

    private static string NameOf(BareKeyOrStringValueSyntax? name) => name switch
    {
        StringValueSyntax quoted => quoted.Value ?? "",
        null => "",
        _ => name.ToString()?.Trim() ?? "",
    };

    private static Place PlaceOf(SyntaxNode node)
    {
        var (start, end) = (node.Span.Start, node.Span.End);
        var length = end.Line == start.Line ? end.Column - start.Column + 1 : 1;
        return new Place(start.Line + 1, start.Column + 1, Math.Max(1, length));
    }
}
