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
    private readonly List<TomlTable> _tables = [];
    private readonly List<TomlEntry> _entries = [];
    private readonly Dictionary<string, Place> _values = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Place> _heads = new(StringComparer.Ordinal);
    private readonly HashSet<string> _repeated = new(StringComparer.Ordinal);
    private readonly HashSet<int> _brokenLines = [];

    private TomlReader(DiagnosticBag faults) => _faults = faults;

    /// <summary>Takes the text apart; faults go into the bag.</summary>
    /// <param name="source">The text.</param>
    /// <param name="tables">The names of the tables there are.</param>
    /// <param name="faults">The bag.</param>
    public static TomlTree Read(SourceText source, IReadOnlyCollection<string> tables, DiagnosticBag faults)
    {
        var reader = new TomlReader(faults);
        var (document, broken) = SyntaxMender.Parse(source, tables);
        reader._brokenLines.UnionWith(broken.Select(b => b.Place.Line));
        reader.Walk(document);
        reader.ReportSyntax(broken);
        return new TomlTree(reader._tables, reader._entries, broken.Count == 0);
    }

    /// <summary>Reports the broken lines, each key with the table it stands in.</summary>
    private void ReportSyntax(IReadOnlyList<BrokenLine> broken)
    {
        foreach (var line in broken)
        {
            var index = _tables.FindLastIndex(t => t.Place.Line < line.Place.Line && t.Headed);
            var inside = index < 0 || line.IsWhole ? "" : _tables[index].Path + ".";
            _faults.Add(line.Place, inside + line.Key, line.Problem, line.Remedy);
        }
    }

    private void Walk(DocumentSyntax document)
    {
        foreach (var pair in document.KeyValues)
            Take("", pair);
        foreach (var table in document.Tables)
        {
            if (table.Name is null)
                continue;
            var path = PathOf(table.Name);
            var place = PlaceOf(table.Name);
            var repeated = table is TableArraySyntax;
            if (path.Length == 0 || IsTooLong(path, place))
                continue;
            _tables.Add(new TomlTable(path, place, repeated, Headed: true));
            if (repeated)
                _repeated.Add(path);
            if (IsRepeated(path))
                continue;
            if (_values.TryGetValue(path, out var before))
                _faults.Add(place, path, Invariant($"is a table here and a value at line {before.Line}"), "keep one of the two");
            else if (!_heads.TryAdd(path, place))
                _faults.Add(place, path, Invariant($"is a table already at line {_heads[path].Line}"), "put its keys together in one");
            foreach (var pair in table.Items)
                Take(path, pair);
        }
    }

    /// <summary>Whether a table stands in double brackets, or in one that does; no key of this version has its place there.</summary>
    private bool IsRepeated(string path)
    {
        if (_repeated.Count == 0)
            return false;
        for (var end = path.Length; end > 0; end = path.LastIndexOf('.', end - 1))
        {
            if (_repeated.Contains(path[..end]))
                return true;
        }

        return false;
    }

    private void Take(string table, KeyValueSyntax pair)
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
        if (_values.TryGetValue(path, out var before))
        {
            _faults.Add(place, path, Invariant($"is given already at line {before.Line}"), "keep one of the two");
            return;
        }

        if (pair.Value is InlineTableSyntax inline)
        {
            _tables.Add(new TomlTable(path, place, Repeated: false, Headed: false));
            foreach (var item in inline.Items)
            {
                if (item.KeyValue is not null)
                    Take(path, item.KeyValue);
            }

            return;
        }

        if (_heads.ContainsKey(path))
            _faults.Add(place, path, "is a table elsewhere in the file and a value here", "keep one of the two");
        _values.Add(path, place);
        _entries.Add(new TomlEntry(path, place, ValueOf(pair.Value)));
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
