using Lines.Hull.Form;

namespace Lines.Design.Schema;

/// <summary>What a key takes.</summary>
public enum KeyKind
{
    /// <summary>A line of text.</summary>
    Text,

    /// <summary>true or false.</summary>
    Flag,

    /// <summary>One of a few words.</summary>
    Choice,

    /// <summary>A pure number.</summary>
    Ratio,

    /// <summary>A length with its unit.</summary>
    Length,

    /// <summary>An angle with its unit.</summary>
    Angle,

    /// <summary>A list of lengths.</summary>
    Lengths,

    /// <summary>A mass with its unit.</summary>
    Mass,

    /// <summary>An area with its unit.</summary>
    Area,

    /// <summary>A list of three lengths: aft, to starboard, up.</summary>
    Position,

    /// <summary>A list of texts.</summary>
    Names,

    /// <summary>A mass of an area with its unit, as of cloth.</summary>
    ArealMass,
}

/// <summary>How a key follows when a design is stretched: x by one factor, y by another, z by a third.</summary>
public enum Stretch
{
    /// <summary>It stays.</summary>
    None,

    /// <summary>A length along the hull.</summary>
    Along,

    /// <summary>A length across.</summary>
    Across,

    /// <summary>A height.</summary>
    Up,

    /// <summary>An angle whose tangent is height over breadth (deadrise, vee).</summary>
    UpOverAcross,

    /// <summary>An angle whose tangent is breadth over height (flare).</summary>
    AcrossOverUp,

    /// <summary>An angle whose tangent is breadth over length (entry, run).</summary>
    AcrossOverAlong,

    /// <summary>An angle whose tangent is length over height (rake).</summary>
    AlongOverUp,

    /// <summary>What grows as the volume does.</summary>
    Volume,

    /// <summary>A place: along, across and up.</summary>
    Everywhere,
}

/// <summary>One key of the design file: all that the reader, the documentation and the dials of a page need to know of it.</summary>
/// <param name="Path">The key with its tables: <c>hull.bow.entry_fullness</c>.</param>
/// <param name="Kind">What it takes.</param>
/// <param name="Doc">One line that says what it is.</param>
/// <param name="Example">A value as it would be written in the file.</param>
public sealed record SchemaKey(string Path, KeyKind Kind, string Doc, string Example)
{
    /// <summary>Whether a design must give it (for keys of one kind of stern: a stern of that kind must).</summary>
    public bool Required { get; init; }

    /// <summary>What holds where it is left out, in words; null for a required key.</summary>
    public string? Default { get; init; }

    /// <summary>Least value, SI; of a text the fewest characters.</summary>
    public double Least { get; init; } = double.NegativeInfinity;

    /// <summary>Greatest value, SI; of a text the most characters.</summary>
    public double Greatest { get; init; } = double.PositiveInfinity;

    /// <summary>Limits that follow from other keys.</summary>
    public IReadOnlyList<KeyBound> Bounds { get; init; } = [];

    /// <summary>How far apart the members of a list must be; null for what is no list.</summary>
    public KeyBound? Apart { get; init; }

    /// <summary>How many members a list has; null where that is free.</summary>
    public int? Members { get; init; }

    /// <summary>Other words people use for it, to guess from what they meant.</summary>
    public IReadOnlyList<string> Also { get; init; } = [];

    /// <summary>The key that may stand in its place, but not beside it; null for none.</summary>
    public string? InPlaceOf { get; init; }

    /// <summary>Ends of a dial on a page, SI, within the range; null for what is no dial.</summary>
    public (double Low, double High)? Slider { get; init; }

    /// <summary>The words a choice takes.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    /// <summary>The kind of stern it belongs to; null for any.</summary>
    public string? Stern { get; init; }

    /// <summary>How it follows when a design is stretched.</summary>
    public Stretch Stretch { get; init; }

    /// <summary>The dial of the hull it sets; null for none.</summary>
    public Dial? Dial { get; init; }

    /// <summary>What it asks of the finished hull in place of a dial; null for none.</summary>
    public Target? Target { get; init; }

    /// <summary>Whether a design with a stern of a kind may give it.</summary>
    /// <param name="stern">The kind of stern; null where it is not known.</param>
    public bool IsOf(string? stern) => Stern is null || stern is null || Stern.Equals(stern, StringComparison.Ordinal);

    /// <summary>Its table, empty for the head of the file.</summary>
    public string Table => Path.Contains('.', StringComparison.Ordinal) ? Path[..Path.LastIndexOf('.')] : "";

    /// <summary>Its name in its table.</summary>
    public string Name => Path[(Path.LastIndexOf('.') + 1)..];
}

/// <summary>One table of the design file.</summary>
/// <param name="Path">Its name.</param>
/// <param name="Doc">One line that says what it holds.</param>
public sealed record SchemaTable(string Path, string Doc)
{
    /// <summary>Whether a design may do without it, keys it requires and all.</summary>
    public bool MayBeMissing { get; init; }
}
