using System.Globalization;

namespace Lines.Tests.Support.Dxf;

/// <summary>One group of a DXF file: code and value.</summary>
internal readonly record struct DxfGroup(int Code, string Value)
{
    /// <summary>The value as a real number.</summary>
    public double Real => double.Parse(Value, NumberStyles.Float, CultureInfo.InvariantCulture);

    /// <summary>The value as a whole number.</summary>
    public int Whole => int.Parse(Value, NumberStyles.AllowLeadingSign | NumberStyles.AllowLeadingWhite, CultureInfo.InvariantCulture);
}

/// <summary>What starts at a group 0 and ends before the next.</summary>
internal sealed record DxfItem(string Type, IReadOnlyList<DxfGroup> Groups)
{
    /// <summary>First value of a code, or null.</summary>
    public string? Text(int code) => Groups.Where(g => g.Code == code).Select(g => g.Value).FirstOrDefault();

    /// <summary>All values of a code.</summary>
    public IEnumerable<string> All(int code) => Groups.Where(g => g.Code == code).Select(g => g.Value);

    /// <summary>The handle: group 105 in dimension styles, 5 elsewhere.</summary>
    public string? Handle => Text(string.Equals(Type, "DIMSTYLE", StringComparison.Ordinal) ? 105 : 5);

    /// <summary>The subclass markers in order.</summary>
    public string Markers => string.Join(' ', All(100));
}

/// <summary>A DXF file as groups and sections, read strictly.</summary>
internal sealed class DxfGroups
{
    private DxfGroups(IReadOnlyList<DxfItem> items) => Items = items;

    /// <summary>Everything that starts at a group 0, in order.</summary>
    public IReadOnlyList<DxfItem> Items { get; }

    /// <summary>Reads a file's text.</summary>
    /// <exception cref="FormatException">A code is no number, or a value is missing.</exception>
    public static DxfGroups Read(string text)
    {
        var lines = text.Split('\n');
        if (lines[^1].Length > 0)
            throw new FormatException("the last line has no end");
        if (lines.Length % 2 == 0)
            throw new FormatException("a group lacks its value");
        var items = new List<DxfItem>();
        var groups = new List<DxfGroup>();
        for (var i = 0; i + 1 < lines.Length; i += 2)
        {
            var group = new DxfGroup(int.Parse(lines[i], NumberStyles.AllowLeadingWhite, CultureInfo.InvariantCulture), lines[i + 1]);
            if (group.Code == 0)
                items.Add(new DxfItem(group.Value, groups = []));
            else
                groups.Add(group);
        }

        return new DxfGroups(items);
    }

    /// <summary>The items of one section, its own first.</summary>
    public IReadOnlyList<DxfItem> Section(string name) =>
        [.. Items.SkipWhile(i => !(i.Type is "SECTION" && string.Equals(i.Text(2), name, StringComparison.Ordinal))).TakeWhile(i => i.Type is not "ENDSEC")];

    /// <summary>The items of one table, its own first.</summary>
    public IReadOnlyList<DxfItem> Table(string name) =>
        [.. Section("TABLES").SkipWhile(i => !(i.Type is "TABLE" && string.Equals(i.Text(2), name, StringComparison.Ordinal))).TakeWhile(i => i.Type is not "ENDTAB")];

    /// <summary>The value of a variable of the header, or null.</summary>
    public string? Variable(string name) =>
        Section("HEADER")[0].Groups.SkipWhile(g => !(g.Code == 9 && string.Equals(g.Value, name, StringComparison.Ordinal))).Skip(1).Select(g => g.Value).FirstOrDefault();
}
