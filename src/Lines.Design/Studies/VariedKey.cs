using System.Globalization;
using Lines.Design.Schema;
using Lines.Design.Text;

namespace Lines.Design.Studies;

/// <summary>A key of a design file that a study varies: of the file itself, or of one of its outriggers.</summary>
/// <param name="Path">The key as it is asked for: <c>hull.beam</c>, <c>outrigger.spacing</c> where there is one outrigger, <c>outrigger-2.hull.beam</c> of several.</param>
/// <param name="Key">The key, its path that of its form.</param>
/// <param name="Outrigger">The number of the outrigger in the file, from 1; 0 where the only one is meant, null for a key of the file itself.</param>
public sealed record VariedKey(string Path, SchemaKey Key, int? Outrigger)
{
    /// <summary>Reads a key.</summary>
    /// <param name="path">The key with its tables.</param>
    /// <exception cref="FormatException">There is no such key; the message says what was most likely meant.</exception>
    public static VariedKey Parse(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        var dot = path.IndexOf('.', StringComparison.Ordinal);
        var head = dot > 0 ? path[..dot] : "";
        var number = NumberOf(head);
        var inner = number is null ? path : path[(dot + 1)..];
        if ((number is null ? DesignSchema.Vessel : DesignSchema.Outrigger).ByPath.TryGetValue(inner, out var key))
            return new VariedKey(path, key, number);
        var known = DesignSchema.Vessel.ByPath.Keys.Concat(DesignSchema.Outrigger.ByPath.Keys.Select(k => $"{(number is null ? DesignSchema.Outrigger.Name : head)}.{k}"));
        throw new FormatException($"\"{path}\" is not a key of a design file{(NearestName.Of(path, known) is { } near ? $"; did you mean {near}?" : "")}");
    }

    /// <summary>Why a design has no such key; null where it has.</summary>
    /// <param name="outriggers">How many outriggers the file has.</param>
    public string? Missing(int outriggers) => Outrigger switch
    {
        null => null,
        0 when outriggers > 1 => Invariant($"{Path}: the file has {outriggers} outriggers; {DesignSchema.Outrigger.Name}-1.{Key.Path} is the first one's"),
        { } number when number > outriggers || outriggers == 0 => $"{Path}: the file has {outriggers switch { 0 => "no outrigger", 1 => "one outrigger", _ => Invariant($"{outriggers} outriggers") }}",
        _ => null,
    };

    /// <summary>What of a file it stands in: the tables and keys of its form, and the form's head.</summary>
    internal (SchemaForm Form, TomlTree Tree, int HeadLine) In(TomlTree file)
    {
        if (Outrigger is not { } number)
            return (DesignSchema.Vessel, file, 0);
        var element = file.Elements.Where(e => e.Name.Equals(DesignSchema.Outrigger.Name, StringComparison.Ordinal)).ElementAt(Math.Max(0, number - 1));
        return (DesignSchema.Outrigger, element.Tree, element.Place.Line);
    }

    private static int? NumberOf(string head)
    {
        var name = DesignSchema.Outrigger.Name;
        if (head.Equals(name, StringComparison.Ordinal))
            return 0;
        return head.StartsWith(name + "-", StringComparison.Ordinal) && int.TryParse(head[(name.Length + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number > 0 ? number : null;
    }
}
