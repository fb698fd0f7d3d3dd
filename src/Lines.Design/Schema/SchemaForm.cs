namespace Lines.Design.Schema;

/// <summary>The tables and keys that belong together: those of the file, or those of one table that may stand in it several times.</summary>
/// <remarks>Within a form paths are its own: <c>hull.beam</c> is the main hull's in the form of the file and a float's in that of an outrigger, so
/// all that is known of a hull's keys holds for both.</remarks>
/// <param name="Name">Name of the table in double brackets; empty for the file itself.</param>
/// <param name="Tables">Its tables; the one of empty path is what stands before the first, or right below the double brackets.</param>
/// <param name="Keys">Its keys, in the order they are written.</param>
public sealed record SchemaForm(string Name, IReadOnlyList<SchemaTable> Tables, IReadOnlyList<SchemaKey> Keys)
{
    /// <summary>The keys by path.</summary>
    public IReadOnlyDictionary<string, SchemaKey> ByPath { get; } = Keys.ToDictionary(k => k.Path, StringComparer.Ordinal);

    /// <summary>Whether it may stand several times in a file.</summary>
    public bool IsRepeated => Name.Length > 0;

    /// <summary>Whether it shapes a hull.</summary>
    public bool HasHull => ByPath.ContainsKey("hull.length");

    /// <summary>A path of the form as it stands in a file.</summary>
    /// <param name="path">The path of a table or key.</param>
    public string Shown(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return !IsRepeated ? path : path.Length == 0 ? Name : $"{Name}.{path}";
    }

    /// <summary>The head line of a table: <c>[hull]</c>, <c>[[outrigger]]</c>, <c>[outrigger.hull]</c>.</summary>
    /// <param name="table">Path of the table.</param>
    public string Head(string table)
    {
        ArgumentNullException.ThrowIfNull(table);
        return table.Length == 0 && IsRepeated ? $"[[{Name}]]" : $"[{Shown(table)}]";
    }
}
