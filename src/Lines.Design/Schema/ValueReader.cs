using System.Globalization;
using Lines.Design.Diagnostics;
using Lines.Design.Text;
using Lines.Kernel.Units;

namespace Lines.Design.Schema;

/// <summary>Turns a value of the file into a checked value of its key, or says why it is none.</summary>
internal sealed class ValueReader(DiagnosticBag faults)
{
    private const int LongestList = 100;

    private readonly List<(SchemaKey Key, KeyValue Value)> _beyond = [];

    /// <summary>What was read and lies outside the range of its key: told when all is read, for other keys may narrow the range.</summary>
    public IReadOnlyList<(SchemaKey Key, KeyValue Value)> Beyond => _beyond;

    /// <summary>The checked value, or null after a fault was reported.</summary>
    public KeyValue? Read(SchemaKey key, TomlValue value) => key.Kind switch
    {
        KeyKind.Text => ReadText(key, value),
        KeyKind.Flag => ReadFlag(key, value),
        KeyKind.Choice => ReadChoice(key, value),
        KeyKind.Ratio => ReadRatio(key, value),
        KeyKind.Length => ReadLength(key, value),
        KeyKind.Angle => ReadAngle(key, value),
        KeyKind.Mass => ReadMass(key, value),
        KeyKind.Area => ReadArea(key, value),
        KeyKind.ArealMass => ReadArealMass(key, value),
        KeyKind.Position => ReadPosition(key, value),
        KeyKind.Names => ReadNames(key, value),
        _ => ReadLengths(key, value),
    };

    /// <summary>The number that a sound value shown in the notation of the file is read as, SI.</summary>
    /// <exception cref="FormatException">The text is no value of this kind of key.</exception>
    public static double Number(SchemaKey key, string text) => key.Kind switch
    {
        KeyKind.Length or KeyKind.Lengths when Length.TryParse(text, out var length, out _) => length.Meters,
        KeyKind.Angle when Angle.TryParse(text, out var angle, out _) => angle.Radians,
        KeyKind.Mass when Mass.TryParse(text, out var mass, out _, out _) => mass.Kilograms,
        KeyKind.Area when Area.TryParse(text, out var area, out _, out _) => area.SquareMeters,
        KeyKind.ArealMass when ArealMass.TryParse(text, out var mass, out _, out _) => mass.KilogramsPerSquareMeter,
        KeyKind.Ratio => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture),
        _ => throw new FormatException(Invariant($"{text} is no value of {key.Path}")),
    };

    private KeyValue? ReadText(SchemaKey key, TomlValue value)
    {
        if (value.Kind != TomlKind.Text)
            return Wrong(key, value, "a text in quotes");
        var text = value.Text.Trim();
        var problem = text.Length == 0 ? "is empty"
            : text.Any(char.IsControl) ? "has a line break or another control character"
            : text.Length > key.Greatest ? Invariant($"has {text.Length} characters")
            : null;
        if (problem is null)
            return One(value, 0) with { Text = text };
        faults.Add(value.Place, key.Path, problem, $"write one line of {KeyRange.Show(key)} characters");
        return null;
    }

    private KeyValue? ReadFlag(SchemaKey key, TomlValue value) => value.Kind switch
    {
        TomlKind.Flag => One(value, value.Number),
        TomlKind.Text when YesOrNo.Read(value.Text) is { } meant => Wrong(key, value, $"{meant}, without quotes"),
        _ => Wrong(key, value, "true or false, without quotes"),
    };

    private KeyValue? ReadChoice(SchemaKey key, TomlValue value)
    {
        var choices = string.Join(" or ", key.Choices.Select(c => $"\"{c}\""));
        if (value.Kind != TomlKind.Text)
            return Wrong(key, value, choices);
        if (key.Choices.Contains(value.Text, StringComparer.Ordinal))
            return One(value, 0) with { Text = value.Text };
        var near = NearestName.Of(value.Text, key.Choices);
        faults.Add(
            value.Place,
            key.Path,
            $"has the unknown word {SourceText.Shown(value.Raw)}",
            near is null ? $"write {choices}" : $"did you mean \"{near}\"? It takes {choices}");
        return null;
    }

    private KeyValue? ReadRatio(SchemaKey key, TomlValue value)
    {
        if (value.Kind == TomlKind.Number)
            return double.IsFinite(value.Number) ? InRange(key, One(value, value.Number)) : NotFinite(key, value);
        return value.Kind == TomlKind.Text && double.TryParse(value.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var meant) && KeyRange.Holds(key, meant)
            ? Wrong(key, value, $"{value.Text.Trim()} without quotes")
            : Wrong(key, value, $"a plain number from {KeyRange.Show(key)}, without quotes");
    }

    private KeyValue? ReadLength(SchemaKey key, TomlValue value)
    {
        if (value.Kind == TomlKind.Number && !double.IsFinite(value.Number))
            return NotFinite(key, value);
        if (value.Kind is not (TomlKind.Text or TomlKind.Number))
            return Wrong(key, value, $"a length in quotes, like {key.Example}");
        var text = value.Kind == TomlKind.Text ? value.Text : value.Raw;
        if (Length.TryParse(text, out var length, out var notation, out var fault))
            return InRange(key, One(value, length.Meters) with { Notation = notation });
        Report(key, value, fault!, BareLength(key, fault!, text));
        return null;
    }

    private KeyValue? ReadAngle(SchemaKey key, TomlValue value) => ReadQuantity(
        key, value, "an angle", ["deg"], text => (Angle.TryParse(text, out var angle, out var fault) ? angle.Radians : 0, false, fault));

    private KeyValue? ReadMass(SchemaKey key, TomlValue value) => ReadQuantity(
        key, value, "a mass", ["kg", "lb"], text => (Mass.TryParse(text, out var mass, out var inPounds, out var fault) ? mass.Kilograms : 0, inPounds, fault));

    private KeyValue? ReadArea(SchemaKey key, TomlValue value) => ReadQuantity(
        key, value, "an area", ["m2", "ft2"], text => (Area.TryParse(text, out var area, out var inFeet, out var fault) ? area.SquareMeters : 0, inFeet, fault));

    private KeyValue? ReadArealMass(SchemaKey key, TomlValue value) => ReadQuantity(
        key, value, "a weight of cloth", ["g/m2", "oz/yd2"], text => (ArealMass.TryParse(text, out var mass, out var inOunces, out var fault) ? mass.KilogramsPerSquareMeter : 0, inOunces, fault));

    /// <summary>A number with a unit, in quotes.</summary>
    /// <param name="key">The key.</param>
    /// <param name="value">Its value.</param>
    /// <param name="what">What it should be, with its article.</param>
    /// <param name="units">The units that a bare number could mean.</param>
    /// <param name="read">Reads a text: its SI value, whether it is in units of feet and pounds, and what is wrong with it.</param>
    private KeyValue? ReadQuantity(SchemaKey key, TomlValue value, string what, string[] units, Func<string, (double Number, bool Customary, UnitFault? Fault)> read)
    {
        if (value.Kind == TomlKind.Number && !double.IsFinite(value.Number))
            return NotFinite(key, value);
        if (value.Kind is not (TomlKind.Text or TomlKind.Number))
            return Wrong(key, value, $"{what} in quotes, like {key.Example}");
        var (number, customary, fault) = read(value.Kind == TomlKind.Text ? value.Text : value.Raw);
        if (fault is null)
            return InRange(key, One(value, number) with { Notation = customary ? LengthNotation.Inches : LengthNotation.Millimeters });
        var bare = SourceText.Shown(value.Raw.Trim('"', '\''));
        Report(key, value, fault, fault.Bare is null ? fault.Remedy : $"write {string.Join(" or ", units.Select(u => $"\"{bare} {u}\""))}{(units.Length > 1 ? ", whichever is meant" : "")}");
        return null;
    }

    /// <summary>Three lengths in their order.</summary>
    private KeyValue? ReadPosition(SchemaKey key, TomlValue value)
    {
        if (value.Kind != TomlKind.List)
            return Wrong(key, value, $"a list of three lengths, like {key.Example}");
        if (value.Items.Count != 3)
        {
            faults.Add(value.Place, key.Path, Invariant($"has {value.Items.Count} {(value.Items.Count == 1 ? "member" : "members")}"), $"give three, aft, to starboard and up, like {key.Example}");
            return null;
        }

        var read = value.Items.Select(item => ReadLength(key, item)).OfType<KeyValue>().ToList();
        return read.Count == 3 ? new KeyValue(value.Raw, value.Place, "", double.NaN, read) : null;
    }

    private KeyValue? ReadNames(SchemaKey key, TomlValue value)
    {
        if (value.Kind != TomlKind.List)
            return Wrong(key, value, $"a list of names, like {key.Example}");
        if (value.Items.Count is 0 or > LongestList)
        {
            faults.Add(value.Place, key.Path, value.Items.Count == 0 ? "names none" : Invariant($"has {value.Items.Count} members"), $"give 1 to {LongestList}, or leave the key out for {key.Default}");
            return null;
        }

        var read = value.Items.Select(item => ReadText(key, item)).OfType<KeyValue>().ToList();
        return read.Count == value.Items.Count ? new KeyValue(value.Raw, value.Place, "", double.NaN, read) : null;
    }

    private KeyValue? ReadLengths(SchemaKey key, TomlValue value)
    {
        if (value.Kind != TomlKind.List)
            return Wrong(key, value, $"a list of lengths, like {key.Example}");
        if (value.Items.Count > LongestList)
        {
            faults.Add(value.Place, key.Path, Invariant($"has {value.Items.Count} members"), Invariant($"give at most {LongestList}"));
            return null;
        }

        if (key.Members is { } wanted && value.Items.Count != wanted)
        {
            faults.Add(value.Place, key.Path, Invariant($"has {value.Items.Count} {(value.Items.Count == 1 ? "member" : "members")}"), Invariant($"give {wanted}, like {key.Example}"));
            return null;
        }

        // The sound members of a list are held against the limits even where others are faulty, so that all is told at once.
        var read = value.Items.Select(item => ReadLength(key, item)).OfType<KeyValue>().ToList();
        return read.Count == 0 && value.Items.Count > 0 ? null : new KeyValue(value.Raw, value.Place, "", double.NaN, key.Members is null ? [.. read.OrderBy(r => r.Number)] : read);
    }

    private KeyValue? InRange(SchemaKey key, KeyValue read)
    {
        if (KeyRange.Holds(key, read.Number))
            return read;
        _beyond.Add((key, read));
        return null;
    }

    /// <summary>For a number without unit: the units that would put it into the range of its key, in quotes as they must stand.</summary>
    private static string BareLength(SchemaKey key, UnitFault fault, string text)
    {
        if (fault.Bare is null)
            return fault.Remedy;
        string[] units = ["mm", "cm", "m", "in", "ft"];
        var number = text.Trim();
        var meant = units.Select(u => $"{number} {u}")
            .Where(t => Length.TryParse(t, out var l, out _) && KeyRange.Holds(key, l.Meters))
            .Select(t => $"\"{t}\"")
            .ToList();
        return meant.Count == 0
            ? $"give a length from {KeyRange.Show(key)}, like {key.Example}"
            : $"write {string.Join(" or ", meant)}{(meant.Count > 1 ? ", whichever is meant" : "")}";
    }

    private KeyValue? Wrong(SchemaKey key, TomlValue value, string wanted)
    {
        var what = value.Kind switch
        {
            TomlKind.Text => "is a text",
            TomlKind.Number => "is a bare number",
            TomlKind.Flag => "is a true-or-false value",
            TomlKind.List => "is a list",
            _ => "is a date or time",
        };
        faults.Add(value.Place, key.Path, $"{SourceText.Shown(value.Raw)} {what}", $"write {wanted}");
        return null;
    }

    private KeyValue? NotFinite(SchemaKey key, TomlValue value)
    {
        faults.Add(value.Place, key.Path, $"{SourceText.Shown(value.Raw)} is not a number anybody can build to", $"give {KeyRange.Show(key)}");
        return null;
    }

    private void Report(SchemaKey key, TomlValue value, UnitFault fault, string remedy) =>
        faults.Add(value.Place, key.Path, $"{SourceText.Shown(value.Raw)} {fault.Problem}", remedy);

    private static KeyValue One(TomlValue value, double number) => new(value.Raw, value.Place, "", number, []);
}
