namespace Lines.Design.Text;

/// <summary>What has been read of the file itself, or of one table in double brackets.</summary>
/// <param name="name">Name of the table in double brackets; empty for the file.</param>
/// <param name="place">Where it begins.</param>
internal sealed class TomlScope(string name, Place place)
{
    /// <summary>Name of the table in double brackets; empty for the file.</summary>
    public string Name => name;

    /// <summary>Where it begins.</summary>
    public Place Place => place;

    /// <summary>The tables, by their path within.</summary>
    public List<TomlTable> Tables { get; } = [];

    /// <summary>The keys with values.</summary>
    public List<TomlEntry> Entries { get; } = [];

    /// <summary>Where each key with a value stands.</summary>
    public Dictionary<string, Place> Values { get; } = new(StringComparer.Ordinal);

    /// <summary>Where each table with a head stands.</summary>
    public Dictionary<string, Place> Heads { get; } = new(StringComparer.Ordinal);

    /// <summary>Tables in double brackets that stand only once in a design, if at all.</summary>
    public HashSet<string> Strange { get; } = new(StringComparer.Ordinal);

    /// <summary>A path within as it stands in the file.</summary>
    public string Shown(string path) => name.Length == 0 ? path : $"{name}.{path}";

    /// <summary>Whether a table is one of those, or in one; no key has its place there.</summary>
    public bool IsInStrange(string path)
    {
        if (Strange.Count == 0)
            return false;
        for (var end = path.Length; end > 0; end = path.LastIndexOf('.', end - 1))
        {
            if (Strange.Contains(path[..end]))
                return true;
        }

        return false;
    }
}
