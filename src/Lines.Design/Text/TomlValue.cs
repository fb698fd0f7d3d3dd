namespace Lines.Design.Text;

/// <summary>What a value of a design file is, in the words of its messages.</summary>
internal enum TomlKind
{
    /// <summary>Text in quotes.</summary>
    Text,

    /// <summary>A whole or broken number.</summary>
    Number,

    /// <summary>true or false.</summary>
    Flag,

    /// <summary>A list in brackets.</summary>
    List,

    /// <summary>A date or time.</summary>
    Date,
}

/// <summary>A value as it stands in the file.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Raw">As written.</param>
/// <param name="Text">The text of a text; empty otherwise.</param>
/// <param name="Number">The number of a number; NaN otherwise.</param>
/// <param name="Items">The members of a list.</param>
/// <param name="Place">Where it stands.</param>
internal sealed record TomlValue(TomlKind Kind, string Raw, string Text, double Number, IReadOnlyList<TomlValue> Items, Place Place);

/// <summary>A key with its value.</summary>
/// <param name="Path">The key with its tables, joined by points.</param>
/// <param name="KeyPlace">Where the key stands.</param>
/// <param name="Value">Its value.</param>
internal sealed record TomlEntry(string Path, Place KeyPlace, TomlValue Value);

/// <summary>A table of a design file.</summary>
/// <param name="Path">Its name with the tables it is in.</param>
/// <param name="Place">Where its name stands.</param>
/// <param name="Repeated">Whether it is written in double brackets.</param>
internal sealed record TomlTable(string Path, Place Place, bool Repeated);

/// <summary>A file taken apart, in the order it is read.</summary>
/// <param name="Tables">The tables that have a head, or stand in braces.</param>
/// <param name="Entries">The keys with values.</param>
/// <param name="Broken">The keys with their tables, from the top of the file, of the lines that were not understood.</param>
internal sealed record TomlTree(IReadOnlyList<TomlTable> Tables, IReadOnlyList<TomlEntry> Entries, IReadOnlySet<string> Broken)
{
    /// <summary>The tables that may stand several times, each time they do; their paths begin anew within.</summary>
    public IReadOnlyList<TomlElement> Elements { get; init; } = [];
}

/// <summary>One table in double brackets, with the tables in it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Place">Where that stands.</param>
/// <param name="Tree">What it holds.</param>
internal sealed record TomlElement(string Name, Place Place, TomlTree Tree);
