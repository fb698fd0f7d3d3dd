using Lines.Design.Text;
using Lines.Kernel.Units;

namespace Lines.Design.Schema;

/// <summary>A checked value of one key.</summary>
/// <param name="Raw">As written in the file.</param>
/// <param name="Place">Where the value stands.</param>
/// <param name="Text">Text of a text or choice.</param>
/// <param name="Number">Number, SI; 1 and 0 for true and false.</param>
/// <param name="Items">Members of a list, in rising order where they are places along the hull.</param>
internal sealed record KeyValue(string Raw, Place Place, string Text, double Number, IReadOnlyList<KeyValue> Items)
{
    /// <summary>The numbers of the members of a list, SI.</summary>
    public IReadOnlyList<double> Numbers => [.. Items.Select(i => i.Number)];

    /// <summary>The notation a length is written in, so that an answer can be given in the same.</summary>
    public LengthNotation Notation { get; init; }
}

/// <summary>The checked values of a file and the places of its tables.</summary>
internal sealed class DesignValues
{
    private readonly Dictionary<string, KeyValue> _values = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Place> _keys = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Place> _tables = new(StringComparer.Ordinal);

    /// <summary>No values yet.</summary>
    /// <param name="form">The keys they are of.</param>
    /// <param name="head">Where the form begins in the file.</param>
    public DesignValues(SchemaForm form, Place head) => (Form, Head) = (form, head);

    /// <summary>The same values, to which others may be added.</summary>
    public DesignValues(DesignValues values)
        : this(values.Form, values.Head)
    {
        _values = new(values._values, StringComparer.Ordinal);
        _keys = new(values._keys, StringComparer.Ordinal);
        _tables = new(values._tables, StringComparer.Ordinal);
    }

    /// <summary>The keys the values are of.</summary>
    public SchemaForm Form { get; }

    /// <summary>Where the form begins in the file: its double brackets, or the beginning.</summary>
    public Place Head { get; }

    /// <summary>Values outside the range of their key; they are not among the sound ones.</summary>
    public IReadOnlyList<(SchemaKey Key, KeyValue Value)> Beyond { get; set; } = [];

    /// <summary>Notes where a key stands, whatever its value is worth.</summary>
    public void PutKey(string path, Place place) => _keys.TryAdd(path, place);

    public bool IsGiven(string path) => _keys.ContainsKey(path);

    public bool IsAnyGivenIn(string table) => _keys.Keys.Any(k => k.StartsWith(table + ".", StringComparison.Ordinal));

    public void Put(string path, KeyValue value) => _values[path] = value;

    public void PutTable(string path, Place place) => _tables.TryAdd(path, place);

    /// <summary>The kind of stern; null where the file gives none that is known.</summary>
    public string? Stern => Find("hull.stern.kind")?.Text;

    public bool Has(string path) => _values.ContainsKey(path);

    public bool HasTable(string path) => path.Length == 0 || _tables.ContainsKey(path);

    public KeyValue? Find(string path) => _values.GetValueOrDefault(path);

    public double Number(string path) => _values[path].Number;

    public double? NumberOrNone(string path) => Find(path)?.Number;

    public double NumberOr(string path, double otherwise) => Find(path)?.Number ?? otherwise;

    /// <summary>The notation most lengths of the file are written in; millimeters where two are as frequent.</summary>
    /// <remarks>Where any length is in feet, those in inches are the ones too short for them and count as that.</remarks>
    public LengthNotation Notation
    {
        get
        {
            var written = Form.Keys.Where(k => k.Kind is KeyKind.Length or KeyKind.Lengths or KeyKind.Position).Select(k => Find(k.Path)).OfType<KeyValue>()
                .SelectMany(v => v.Items.Count > 0 ? v.Items : [v]).Select(v => v.Notation).ToList();
            var feet = MostFrequent(written.Where(n => n is LengthNotation.FeetInches or LengthNotation.FeetInchesEighths));
            return MostFrequent(written.Select(n => n == LengthNotation.Inches ? feet ?? n : n)) ?? LengthNotation.Millimeters;

            static LengthNotation? MostFrequent(IEnumerable<LengthNotation> notations) =>
                notations.GroupBy(n => n).OrderByDescending(g => g.Count()).ThenBy(g => g.Key).Select(g => (LengthNotation?)g.Key).FirstOrDefault();
        }
    }

    /// <summary>Where a fault of a key is shown: its value, or its key, or the head of its table, or the beginning of its form.</summary>
    public Place PlaceOf(string path)
    {
        if (Find(path) is { } value)
            return value.Place;
        if (_keys.TryGetValue(path, out var key))
            return key;
        for (var dot = path.LastIndexOf('.'); dot > 0; dot = path.LastIndexOf('.', dot - 1))
        {
            if (_tables.TryGetValue(path[..dot], out var place))
                return place;
        }

        return Head;
    }
}
