using System.Globalization;
using System.Text;

namespace Lines.Plans.Exchange;

/// <summary>The fixed 80-column records of an IGES file: start, global, directory, parameters, terminate.</summary>
internal sealed class IgesRecords
{
    private const int Columns = 72, ParameterColumns = 64;

    private readonly List<string> _directory = [];
    private readonly List<string> _parameters = [];

    /// <summary>Adds an entity: two directory records and as many of parameters as it takes.</summary>
    /// <param name="label">Its name, at most 8 characters.</param>
    /// <param name="parameters">Its parameters, the entity type first.</param>
    public void Add(string label, IEnumerable<string> parameters)
    {
        var items = parameters.ToList();
        var (entity, first) = (_directory.Count + 1, _parameters.Count + 1);
        foreach (var line in Lines(items, ParameterColumns))
            _parameters.Add(Invariant($"{line.PadRight(ParameterColumns)} {entity,7}"));

        // Structure, font, level, view, matrix and label display are those of the reader; the status is visible and independent.
        _directory.Add(Fields(items[0], Invariant($"{first}"), "0", "0", "0", "0", "0", "0") + "00000000");
        _directory.Add(Fields(items[0], "0", "0", Invariant($"{_parameters.Count + 1 - first}"), "0", "", "", label) + "       0");
    }

    /// <summary>The whole file, lines ended by a line feed.</summary>
    /// <param name="start">What people are to read at its head.</param>
    /// <param name="global">The parameters of the global section.</param>
    public string Write(IEnumerable<string> start, IReadOnlyList<string> global)
    {
        var text = new StringBuilder();
        int starts = Section(text, 'S', start.SelectMany(s => s.Chunk(Columns).Select(c => new string(c))));
        int globals = Section(text, 'G', Lines(global, Columns));
        int entities = Section(text, 'D', _directory), parameters = Section(text, 'P', _parameters);
        Section(text, 'T', [Invariant($"S{starts,7}G{globals,7}D{entities,7}P{parameters,7}")]);
        return text.ToString();
    }

    /// <summary>A real number of double precision: shortest text that reads back the same, with a point, and D before an exponent.</summary>
    public static string Real(double value)
    {
        var text = StepEntities.Real(value);
        return text.Replace('E', 'D');
    }

    /// <summary>A text as the format counts it: its length, H, then its characters. What is not printable ASCII becomes a question mark,
    /// as the format has no other letters.</summary>
    public static string Text(string text)
    {
        var plain = string.Concat(text.EnumerateRunes().Select(r => r.Value is >= 0x20 and < 0x7f ? (char)r.Value : '?'));
        return string.Create(CultureInfo.InvariantCulture, $"{plain.Length}H{plain}");
    }

    private static string Fields(params string[] fields) => string.Concat(fields.Select(f => f.PadLeft(8)));

    private static int Section(StringBuilder text, char letter, IEnumerable<string> lines)
    {
        var count = 0;
        foreach (var line in lines)
            text.Append(line.PadRight(Columns)).Append(CultureInfo.InvariantCulture, $"{letter}{++count,7}\n");
        return count;
    }

    /// <summary>Parameters in lines, a comma after each and a semicolon after the last; only a text too long for a line is broken.</summary>
    private static IEnumerable<string> Lines(IReadOnlyList<string> items, int columns)
    {
        var line = "";
        for (var k = 0; k < items.Count; k++)
        {
            var item = items[k] + (k + 1 < items.Count ? ',' : ';');
            if (line.Length + item.Length > columns && line.Length > 0)
            {
                yield return line;
                line = "";
            }

            for (; item.Length > columns; item = item[columns..])
                yield return item[..columns];
            line += item;
        }

        yield return line;
    }
}
