using Lines.Design.Diagnostics;
using Lines.Design.Text;

namespace Lines.Design.Schema;

/// <summary>Holds a file against the table of keys: unknown, misplaced, missing and unsound ones are reported.</summary>
internal sealed class SchemaReader
{
    private readonly TomlTree _tree;
    private readonly DiagnosticBag _faults;
    private readonly DesignValues _values = new();
    private readonly HashSet<string> _meant = new(StringComparer.Ordinal);
    private readonly HashSet<string> _strangeTables = new(StringComparer.Ordinal);

    private SchemaReader(TomlTree tree, DiagnosticBag faults)
    {
        _tree = tree;
        _faults = faults;
    }

    /// <summary>The sound values of a file; faults go into the bag.</summary>
    public static DesignValues Read(TomlTree tree, DiagnosticBag faults)
    {
        var reader = new SchemaReader(tree, faults);
        reader.ReadTables();
        reader.ReadEntries();
        reader.CheckStern();
        if (tree.Whole)
            reader.ReportMissing();
        return reader._values;
    }

    private void ReadTables()
    {
        foreach (var table in _tree.Tables)
        {
            if (IsLater(table.Path, out var root))
                ReportLater(table.Place, root);
            else if (DesignSchema.ByPath.TryGetValue(table.Path, out var key))
                ReportTableForKey(table, key);
            else if (!DesignSchema.Tables.Any(t => t.Path.Equals(table.Path, StringComparison.Ordinal)))
                ReportUnknownTable(table);
            else if (table.Repeated)
                _faults.Add(table.Place, table.Path, "is in double brackets", $"write [{table.Path}]: a vessel has one");

            // A table that is no good is still where its keys would stand: its faults are told once, at its head.
            _values.PutTable(table.Path, table.Place);
        }
    }

    private void ReportTableForKey(TomlTable table, SchemaKey key)
    {
        _faults.Add(table.Place, table.Path, "is a table here", $"it is a key with a value, like {key.Name} = {key.Example}");
        _values.PutKey(table.Path, table.Place);
        _strangeTables.Add(table.Path);
    }

    private void ReportUnknownTable(TomlTable table)
    {
        if (IsInStrangeTable(table.Path) || !_strangeTables.Add(table.Path))
            return;
        if (_faults.IsFull)
        {
            _faults.Add(table.Place, table.Path, "is not a table of a design file", "see the list of tables");
            return;
        }

        var known = DesignSchema.TableNames.ToList();
        var near = NearestName.Of(table.Path, known)
            ?? known.Find(k => k.EndsWith("." + table.Path, StringComparison.Ordinal))
            ?? known.Find(k => NearestName.Of(table.Path[(table.Path.LastIndexOf('.') + 1)..], [k[(k.LastIndexOf('.') + 1)..]]) is not null);
        if (near is not null)
            _meant.Add(near);
        _faults.Add(
            table.Place,
            table.Path,
            "is not a table of a design file",
            near is null ? $"the tables are {string.Join(", ", known)}" : $"did you mean [{near}]?");
    }

    private void ReadEntries()
    {
        var reader = new ValueReader(_faults);
        foreach (var entry in _tree.Entries)
        {
            if (IsLater(entry.Path, out var root) && !IsKeyElsewhere(entry.Path))
            {
                ReportLater(entry.KeyPlace, root);
                continue;
            }

            if (DesignSchema.ByPath.TryGetValue(entry.Path, out var key))
            {
                _values.PutKey(entry.Path, entry.KeyPlace);
                if (reader.Read(key, entry.Value) is { } value)
                    _values.Put(entry.Path, value);
                continue;
            }

            if (DesignSchema.Tables.Any(t => t.Path.Equals(entry.Path, StringComparison.Ordinal)))
            {
                _meant.Add(entry.Path);
                _faults.Add(entry.Value.Place, entry.Path, $"{SourceText.Shown(entry.Value.Raw)} is a value here", $"it is a table: write [{entry.Path}] and its keys below");
            }
            else if (!IsInStrangeTable(entry.Path))
            {
                ReportUnknownKey(entry);
            }
        }

        _values.Beyond = reader.Beyond;
    }

    /// <summary>Whether a table this stands in was reported already.</summary>
    private bool IsInStrangeTable(string path)
    {
        for (var dot = path.LastIndexOf('.'); dot > 0; dot = path.LastIndexOf('.', dot - 1))
        {
            if (_strangeTables.Contains(path[..dot]))
                return true;
        }

        return false;
    }

    private void ReportUnknownKey(TomlEntry entry)
    {
        if (_faults.IsFull)
        {
            _faults.Add(entry.KeyPlace, entry.Path, "is not a key of a design file", "see the list of keys");
            return;
        }

        var dot = entry.Path.LastIndexOf('.');
        var (table, name) = dot < 0 ? ("", entry.Path) : (entry.Path[..dot], entry.Path[(dot + 1)..]);
        var here = DesignSchema.Keys.Where(k => k.Table.Equals(table, StringComparison.Ordinal)).ToList();
        var near = NearestName.Of(name, here.Select(k => k.Name))
            ?? here.Find(k => k.Also.Contains(name.ToLowerInvariant().Replace('-', '_'), StringComparer.Ordinal))?.Name;
        string remedy;
        if (near is not null)
        {
            _meant.Add(table.Length == 0 ? near : $"{table}.{near}");
            remedy = $"did you mean {near}?";
        }
        else if (DesignSchema.Keys.FirstOrDefault(k => k.Name.Equals(name, StringComparison.Ordinal)) is { } elsewhere)
        {
            _meant.Add(elsewhere.Path);
            remedy = $"it belongs in {(elsewhere.Table.Length == 0 ? "the head of the file" : $"[{elsewhere.Table}]")}";
        }
        else if (here.Count > 0)
        {
            remedy = $"the keys here are {string.Join(", ", here.Select(k => k.Name))}";
        }
        else
        {
            remedy = $"the tables are {string.Join(", ", DesignSchema.TableNames)}";
        }

        _faults.Add(entry.KeyPlace, entry.Path, "is not a key of a design file", remedy);
    }

    /// <summary>Keys of the other kind of stern, and which of rocker and immersion gives the foot of a transom.</summary>
    private void CheckStern()
    {
        if (_values.Stern is not { } kind)
            return;
        foreach (var key in DesignSchema.Keys.Where(k => !k.IsOf(kind) && _values.IsGiven(k.Path)))
        {
            var follows = key.Path.Equals("hull.stern.heel", StringComparison.Ordinal) ? ": where a transom meets the keel follows from its rake, breadth and foot" : "";
            _faults.Add(_values.PlaceOf(key.Path), key.Path, $"belongs to a {key.Stern} stern, and this one is a {kind} stern{follows}", "leave it out");
        }

        foreach (var key in DesignSchema.Keys.Where(k => k.InPlaceOf is not null && k.IsOf(kind) && _values.IsGiven(k.Path) && _values.IsGiven(k.InPlaceOf)))
            _faults.Add(_values.PlaceOf(key.Path), key.Path, $"stands in place of {NameOf(key.InPlaceOf!)}, which is given too", "keep one of the two");
    }

    private void ReportMissing()
    {
        if (_tree.Tables.Count + _tree.Entries.Count == 0)
        {
            _faults.Add(Place.Start, "file", "holds no table and no key", "start a design with: lines new FILE --from TEMPLATE");
            return;
        }

        var kind = _values.Stern;
        var balance = TargetBalance.Check(_values, IsMeant, _faults);
        foreach (var table in DesignSchema.Tables)
        {
            var missing = DesignSchema.Keys
                .Where(k => k.Table.Equals(table.Path, StringComparison.Ordinal) && IsRequired(k, kind) && !balance.Excused.Contains(k))
                .Where(k => !_values.IsGiven(k.Path) && !_meant.Contains(k.Path))
                .ToList();
            if (missing.Count == 0 || _meant.Contains(table.Path))
                continue;
            var names = string.Join(", ", missing.Select(k => k.Name));
            if (!_values.HasTable(table.Path) && !_values.IsAnyGivenIn(table.Path))
            {
                _faults.Add(_values.PlaceOf(table.Path + "."), table.Path, "is missing", $"add [{table.Path}] with {names}");
                continue;
            }

            foreach (var key in missing)
                _faults.Add(_values.PlaceOf(key.Path), key.Path, "is missing", $"add a line like {key.Name} = {key.Example}{Otherwise(key, kind)}{balance.Otherwise(key)}");
        }
    }

    /// <summary>Whether a fault told already most likely means a key.</summary>
    private bool IsMeant(SchemaKey key) => _meant.Contains(key.Path) || _meant.Contains(key.Table);

    private static string Otherwise(SchemaKey key, string? kind) =>
        Substitute(key, kind) is { } other && kind is not null ? $", or {other.Name} in its place" : "";

    private bool IsRequired(SchemaKey key, string? kind) =>
        key.Required
        && (key.Stern is null || (kind is not null && key.IsOf(kind)))
        && !(Substitute(key, kind) is { } other && _values.IsGiven(other.Path));

    /// <summary>The key that may stand in place of one.</summary>
    private static SchemaKey? Substitute(SchemaKey key, string? kind) =>
        DesignSchema.Keys.FirstOrDefault(k => key.Path.Equals(k.InPlaceOf, StringComparison.Ordinal) && k.IsOf(kind));

    private static string NameOf(string path) => DesignSchema.ByPath[path].Name;

    /// <summary>Whether a name in the head of the file is a key of some table: it was misplaced, then.</summary>
    private static bool IsKeyElsewhere(string path) => DesignSchema.Keys.Any(k => k.Name.Equals(path, StringComparison.Ordinal));

    private static bool IsLater(string path, out string root)
    {
        root = DesignSchema.Later.FirstOrDefault(
            l => path.Equals(l, StringComparison.Ordinal) || path.StartsWith(l + ".", StringComparison.Ordinal), "");
        return root.Length > 0;
    }

    private void ReportLater(Place place, string root)
    {
        if (_strangeTables.Add(root))
            _faults.Add(place, root, "is not yet understood by this version", "leave it out for now");
    }
}
