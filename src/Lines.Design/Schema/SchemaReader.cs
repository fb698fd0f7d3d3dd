using Lines.Design.Diagnostics;
using Lines.Design.Text;

namespace Lines.Design.Schema;

/// <summary>Holds a file, or one table in double brackets, against the table of keys: unknown, misplaced, missing and unsound ones are reported.</summary>
internal sealed class SchemaReader
{
    private readonly TomlTree _tree;
    private readonly SchemaForm _form;
    private readonly DiagnosticBag _faults;
    private readonly DesignValues _values;
    private readonly HashSet<string> _meant = new(StringComparer.Ordinal);
    private readonly HashSet<string> _strangeTables = new(StringComparer.Ordinal);

    private SchemaReader(TomlTree tree, SchemaForm form, Place head, DiagnosticBag faults)
    {
        _tree = tree;
        _form = form;
        _faults = faults.Within(form.Shown);
        _values = new DesignValues(form, head);
    }

    /// <summary>The sound values of a file; faults go into the bag.</summary>
    public static FileValues Read(TomlTree tree, DiagnosticBag faults) => new(
        Read(tree, DesignSchema.Vessel, Place.Start, faults),
        [.. tree.Elements.Select(e => Read(e.Tree, DesignSchema.Repeated.First(f => f.Name.Equals(e.Name, StringComparison.Ordinal)), e.Place, faults))]);

    private static DesignValues Read(TomlTree tree, SchemaForm form, Place head, DiagnosticBag faults)
    {
        var reader = new SchemaReader(tree, form, head, faults);
        reader.ReadTables();
        reader.ReadEntries();
        reader.CheckStern();
        // A broken line that names no key may have been meant for any.
        if (tree.Broken.All(b => DesignSchema.Find(b) is not null))
        {
            reader._meant.UnionWith(form.Keys.Select(k => k.Path).Where(p => tree.Broken.Contains(form.Shown(p))));
            reader.ReportMissing();
        }

        return reader._values;
    }

    private void ReadTables()
    {
        var repeated = new HashSet<string>(StringComparer.Ordinal);
        foreach (var table in _tree.Tables)
        {
            if (IsLater(table.Path, out var root))
                ReportLater(table.Place, root);
            else if (RepeatedOf(table.Path) is { } form)
                ReportSingle(table.Place, form, table.Path.Equals(form.Name, StringComparison.Ordinal) ? "is in single brackets" : $"stands under no {form.Head("")}");
            else if (_form.ByPath.TryGetValue(table.Path, out var key))
                ReportTableForKey(table, key);
            else if (!IsTable(table.Path))
                ReportUnknownTable(table);
            else if (table.Repeated && _meant.Add(table.Path))
                _faults.Add(table.Place, table.Path, "is in double brackets", $"write {_form.Head(table.Path)}: {(_form.IsRepeated ? "an " + _form.Name : "a vessel")} has one");

            // What stands in double brackets for single ones is not read, but it is not missing.
            if (table.Repeated)
                repeated.Add(table.Path);
            else if (IsIn(repeated, table.Path))
                _meant.Add(table.Path);

            // A table that is no good is still where its keys would stand: its faults are told once, at its head.
            _values.PutTable(table.Path, table.Place);
        }
    }

    private bool IsTable(string path) => _form.Tables.Any(t => t.Path.Equals(path, StringComparison.Ordinal));

    /// <summary>The form in double brackets that a path of the file itself begins with.</summary>
    private SchemaForm? RepeatedOf(string path) =>
        _form.IsRepeated ? null : DesignSchema.Repeated.FirstOrDefault(f => path.Equals(f.Name, StringComparison.Ordinal) || path.StartsWith(f.Name + ".", StringComparison.Ordinal));

    private void ReportSingle(Place place, SchemaForm form, string problem)
    {
        if (_strangeTables.Add(form.Name))
            _faults.Add(place, form.Name, problem, $"write {form.Head("")} on a line of its own above its keys: there may be several");
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

        var known = Names.ToList();
        var near = NearestName.Of(table.Path, known)
            ?? known.Find(k => k.EndsWith("." + table.Path, StringComparison.Ordinal))
            ?? known.Find(k => NearestName.Of(table.Path[(table.Path.LastIndexOf('.') + 1)..], [k[(k.LastIndexOf('.') + 1)..]]) is not null);
        if (near is not null)
            _meant.Add(near);
        _faults.Add(
            table.Place,
            table.Path,
            "is not a table of a design file",
            near is null ? TablesTold : $"did you mean {HeadOf(near)}?");
    }

    /// <summary>The names of tables that may stand here.</summary>
    private IEnumerable<string> Names => _form.IsRepeated ? _form.Tables.Select(t => t.Path).Where(p => p.Length > 0) : DesignSchema.Heads.Keys;

    private string TablesTold => Names.Any() ? $"the tables are {string.Join(", ", Names.Select(n => _form.IsRepeated ? _form.Shown(n) : n))}" : $"{_form.Head("")} has no tables in it";

    private string HeadOf(string table) => _form.IsRepeated ? _form.Head(table) : DesignSchema.Heads.GetValueOrDefault(table, $"[{table}]");

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

            if (_form.ByPath.TryGetValue(entry.Path, out var key))
            {
                _values.PutKey(entry.Path, entry.KeyPlace);
                if (reader.Read(key, entry.Value) is { } value)
                    _values.Put(entry.Path, value);
                continue;
            }

            if (RepeatedOf(entry.Path) is { } repeated)
            {
                ReportSingle(entry.KeyPlace, repeated, "is a key here");
            }
            else if (IsTable(entry.Path))
            {
                _meant.Add(entry.Path);
                _faults.Add(entry.Value.Place, entry.Path, $"{SourceText.Shown(entry.Value.Raw)} is a value here", $"it is a table: write {_form.Head(entry.Path)} and its keys below");
            }
            else if (!IsInStrangeTable(entry.Path))
            {
                ReportUnknownKey(entry);
            }
        }

        _values.Beyond = reader.Beyond;
    }

    /// <summary>Whether a table this stands in was reported already.</summary>
    private bool IsInStrangeTable(string path) => IsIn(_strangeTables, path);

    private static bool IsIn(HashSet<string> tables, string path)
    {
        for (var dot = path.LastIndexOf('.'); dot > 0; dot = path.LastIndexOf('.', dot - 1))
        {
            if (tables.Contains(path[..dot]))
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
        var here = _form.Keys.Where(k => k.Table.Equals(table, StringComparison.Ordinal)).ToList();
        var near = NearestName.Of(name, here.Select(k => k.Name))
            ?? here.Find(k => k.Also.Contains(name.ToLowerInvariant().Replace('-', '_'), StringComparer.Ordinal))?.Name;
        string remedy;
        if (near is not null)
        {
            _meant.Add(table.Length == 0 ? near : $"{table}.{near}");
            remedy = $"did you mean {near}?";
        }
        else if (Elsewhere(name) is var (form, elsewhere))
        {
            if (form == _form)
                _meant.Add(elsewhere.Path);
            remedy = $"it belongs in {(elsewhere.Table.Length == 0 && !form.IsRepeated ? "the head of the file" : form.Head(elsewhere.Table))}";
        }
        else if (here.Count > 0)
        {
            remedy = $"the keys here are {string.Join(", ", here.Select(k => k.Name))}";
        }
        else
        {
            remedy = TablesTold;
        }

        _faults.Add(entry.KeyPlace, entry.Path, "is not a key of a design file", remedy);
    }

    /// <summary>The key of a name in another table of this form, or else of another.</summary>
    private (SchemaForm Form, SchemaKey Key)? Elsewhere(string name) =>
        DesignSchema.Repeated.Prepend(DesignSchema.Vessel).Prepend(_form)
            .SelectMany(f => f.Keys.Where(k => k.Name.Equals(name, StringComparison.Ordinal)).Select(k => ((SchemaForm, SchemaKey)?)(f, k))).FirstOrDefault();

    /// <summary>Keys of the other kind of stern, and which of rocker and immersion gives the foot of a transom.</summary>
    private void CheckStern()
    {
        if (_values.Stern is not { } kind)
            return;
        foreach (var key in _form.Keys.Where(k => !k.IsOf(kind) && _values.IsGiven(k.Path)))
        {
            var follows = key.Path.Equals("hull.stern.heel", StringComparison.Ordinal) ? ": where a transom meets the keel follows from its rake, breadth and foot" : "";
            _faults.Add(_values.PlaceOf(key.Path), key.Path, $"belongs to a {key.Stern} stern, and this one is a {kind} stern{follows}", "leave it out");
        }

        foreach (var key in _form.Keys.Where(k => k.InPlaceOf is not null && k.IsOf(kind) && _values.IsGiven(k.Path) && _values.IsGiven(k.InPlaceOf)))
            _faults.Add(_values.PlaceOf(key.Path), key.Path, $"stands in place of {NameOf(key.InPlaceOf!)}, which is given too", "keep one of the two");
    }

    private void ReportMissing()
    {
        if (!_form.IsRepeated && _tree.Tables.Count + _tree.Entries.Count + _tree.Elements.Count == 0)
        {
            _faults.Add(Place.Start, "file", "holds no table and no key", "start a design with: lines new FILE --from TEMPLATE");
            return;
        }

        var kind = _values.Stern;
        var balance = _form.HasHull ? TargetBalance.Check(_values, IsMeant, _faults) : TargetBalance.None;
        foreach (var table in _form.Tables)
        {
            var missing = _form.Keys
                .Where(k => k.Table.Equals(table.Path, StringComparison.Ordinal) && IsRequired(k, kind) && !balance.Excused.Contains(k))
                .Where(k => !_values.IsGiven(k.Path) && !_meant.Contains(k.Path))
                .ToList();
            if (missing.Count == 0 || _meant.Contains(table.Path))
                continue;
            var names = string.Join(", ", missing.Select(k => k.Name));
            if (!_values.HasTable(table.Path) && !_values.IsAnyGivenIn(table.Path))
            {
                if (!table.MayBeMissing)
                    _faults.Add(_values.PlaceOf(table.Path + "."), table.Path, "is missing", $"add {_form.Head(table.Path)} with {names}");
                continue;
            }

            foreach (var key in missing)
                _faults.Add(_values.PlaceOf(key.Path), key.Path, "is missing", $"add a line like {key.Name} = {key.Example}{Otherwise(key, kind)}{balance.Otherwise(key)}");
        }
    }

    /// <summary>Whether a fault told already most likely means a key, or the table of one that a design must give.</summary>
    private bool IsMeant(SchemaKey key) => _meant.Contains(key.Path) || (key.Required && _meant.Contains(key.Table));

    private string Otherwise(SchemaKey key, string? kind) =>
        Substitute(key, kind) is { } other && kind is not null ? $", or {other.Name} in its place" : "";

    private bool IsRequired(SchemaKey key, string? kind) =>
        key.Required
        && (key.Stern is null || (kind is not null && key.IsOf(kind)))
        && !(Substitute(key, kind) is { } other && _values.IsGiven(other.Path));

    /// <summary>The key that may stand in place of one.</summary>
    private SchemaKey? Substitute(SchemaKey key, string? kind) =>
        _form.Keys.FirstOrDefault(k => key.Path.Equals(k.InPlaceOf, StringComparison.Ordinal) && k.IsOf(kind));

    private string NameOf(string path) => _form.ByPath[path].Name;

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
