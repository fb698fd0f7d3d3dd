using Lines.Hull.Offsets;
using Lines.Hull.Sections;
using Lines.Kernel.Units;

namespace Lines.Plans.Offsets;

/// <summary>A table of offsets in words: what text, spreadsheet and paper all show.</summary>
/// <param name="Title">Title of the design.</param>
/// <param name="Notes">What the reader must know, one sentence or two a line.</param>
/// <param name="Tables">The tables, in reading order.</param>
public sealed record OffsetsBook(string Title, IReadOnlyList<string> Notes, IReadOnlyList<FigureTable> Tables)
{
    /// <summary>Writes the figures of a table in one notation.</summary>
    /// <param name="table">The table.</param>
    /// <param name="title">Title of the design.</param>
    /// <param name="notation">How lengths are shown.</param>
    public static OffsetsBook Of(TableOfOffsets table, string title, LengthNotation notation)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(title);
        var words = new OffsetsWords(table, notation);
        List<FigureTable> tables = [words.Heights(), words.HalfBreadths(), words.Diagonals(), .. words.Between(), words.Ends()];
        if (table.TransomRake is not null)
            tables.Add(words.Transom());
        return new OffsetsBook(title, words.Notes(), tables);
    }
}

/// <summary>One table of figures.</summary>
/// <param name="Title">What it holds.</param>
/// <param name="Columns">The columns; the first names the rows.</param>
/// <param name="Rows">The cells, one for each column; empty where there is nothing to show.</param>
public sealed record FigureTable(string Title, IReadOnlyList<FigureColumn> Columns, IReadOnlyList<IReadOnlyList<string>> Rows);

/// <summary>The head of a column.</summary>
/// <param name="Name">First line: the line's label.</param>
/// <param name="Place">Second line: where it stands; may be empty.</param>
public readonly record struct FigureColumn(string Name, string Place)
{
    /// <summary>Whether it holds words, which may run over several lines, rather than figures.</summary>
    public bool IsWords { get; init; }
}

/// <summary>Turns the values of a table into cells.</summary>
internal sealed class OffsetsWords(TableOfOffsets table, LengthNotation notation)
{
    /// <summary>Rows of a table of points at most: as many as stand on a page of Letter paper laid on its side.</summary>
    private const int MostRows = 36;

    public IReadOnlyList<string> Notes()
    {
        var inside = table.Planking > 0;
        var planking = inside
            ? $"To the inside of planking, {new Length(table.Planking).ToSize(notation)} deducted square to the surface."
            : "To the outside of planking.";
        var blank = inside
            ? "Keel, stem and sternpost are where both insides meet; a blank: no such point."
            : "A blank: no such point.";
        return
        [
            $"{planking} {Unit()}",
            $"Stations 0 to 10 divide the design waterline of {Text(10 * table.StationSpacing)} into ten equal spaces, 0 forward; x is aft of the hull's foremost point.",
            "Heights are above the base line, half-breadths from the centerplane, diagonals along the diagonal from the centerplane.",
            .. Overhangs(),
            "Between the stations stand the ends of buttocks and diagonals, and points where a line turns fast or stations lie far apart.",
            .. Back(),
            "The figures are to the design: lay the lines down full size and fair them before cutting. " + blank,
        ];
    }

    private IEnumerable<string> Overhangs() => table.Stations[^1].X - table.Stations[0].X > 10.1 * table.StationSpacing
        ? ["Stations with a minus lie forward of the design waterline, those above 10 abaft it, where the ends overhang it."]
        : [];

    private IEnumerable<string> Back() => table.Heights.Concat(table.HalfBreadths).Concat(table.Diagonals).FirstOrDefault(r => r.Back > 0) is { } row
        ? [$"A line marked back, such as {row.Name}, is the part of its line that turns back along x and comes to a station once more."]
        : [];

    public FigureTable Heights() => ByStation("Heights", table.Heights, withPlace: true);

    public FigureTable HalfBreadths() => ByStation("Half-breadths", table.HalfBreadths, withPlace: false);

    public FigureTable Diagonals() => ByStation("Diagonals", table.Diagonals, withPlace: false);

    /// <summary>The points between the stations, two columns for each line that has any; a long table goes on in the next.</summary>
    public IEnumerable<FigureTable> Between() =>
    [
        .. Between("Heights between stations", "height", table.Heights),
        .. Between("Half-breadths between stations", "half-breadth", table.HalfBreadths),
        .. Between("Diagonals between stations", "offset", table.Diagonals),
    ];

    public FigureTable Ends()
    {
        List<IReadOnlyList<string>> rows = [.. table.Ends.Select(e => (IReadOnlyList<string>)[e.Label, Cell(e.Fore), Cell(e.AftOfFore), Cell(e.Aft), Cell(e.ForwardOfAft)])];
        rows.Add(["forefoot", Cell(table.Forefoot.Height), Cell(table.Forefoot.AftOfFore), "", ""]);
        rows.Add([table.TransomRake is null ? "heel" : "transom foot", "", "", Cell(table.Heel.Height), Cell(table.Heel.ForwardOfAft)]);
        return new FigureTable(
            "Profile of the ends",
            [new("", ""), new("height", "forward"), new("aft of", "fore end"), new("height", "aft"), new("forward of", "after end")],
            rows);
    }

    public FigureTable Transom() => new(
        $"Transom, on its own plane, raked {new Angle(table.TransomRake!.Value).ToText()}",
        [new("", ""), new("height", ""), new("up plane", "from foot"), new("half-breadth", "")],
        [.. table.Transom.Select(t => (IReadOnlyList<string>)[t.Label, Cell(t.Height), Cell(t.UpPlane), Cell(t.HalfBreadth)])]);

    private IEnumerable<FigureTable> Between(string title, string what, IReadOnlyList<OffsetRow> lines)
    {
        List<OffsetRow> shown = [.. lines.Where(l => l.Between.Count > 0)];
        var count = shown.Count == 0 ? 0 : shown.Max(l => l.Between.Count);
        for (var first = 0; first < count; first += MostRows)
        {
            yield return new FigureTable(
                first == 0 ? title : title + ", continued",
                [new("point", ""), .. shown.SelectMany(l => new FigureColumn[] { new(l.Name, "x"), new(l.Name, what) })],
                [.. Enumerable.Range(first, Math.Min(MostRows, count - first)).Select(k => (IReadOnlyList<string>)[Invariant($"{k + 1}"), .. shown.SelectMany(l => Point(l, k))])]);
        }

        string[] Point(OffsetRow line, int k) => k < line.Between.Count ? [Cell(line.Between[k].X), Cell(line.Between[k].Value)] : ["", ""];
    }

    private FigureTable ByStation(string title, IReadOnlyList<OffsetRow> lines, bool withPlace)
    {
        List<FigureColumn> columns = [new("station", "")];
        if (withPlace)
            columns.Add(new("x", ""));
        columns.AddRange(lines.Select(l => new FigureColumn(l.Name, Place(l))));
        var rows = new List<IReadOnlyList<string>>();
        for (var i = 0; i < table.Stations.Count; i++)
        {
            List<string> row = [table.Stations[i].Number];
            if (withPlace)
                row.Add(Cell(table.Stations[i].X));
            row.AddRange(lines.Select(l => Cell(l.Values[i])));
            rows.Add(row);
        }

        return new FigureTable(title, columns, rows);
    }

    private string Place(OffsetRow line) => line.Kind switch
    {
        LineKind.Diagonal => $"{Cell(line.Position)}, {new Angle(line.Angle!.Value).ToText()}",
        _ => Cell(line.Position),
    };

    private string Unit() => notation switch
    {
        LengthNotation.Millimeters => "Millimeters.",
        LengthNotation.Inches => "Inches and fractions to 1/32.",
        LengthNotation.FeetInches => "Feet, inches and fractions to 1/32.",
        _ => "Feet-inches-eighths; a + is a sixteenth more.",
    };

    private string Text(double meters) => new Length(meters).ToText(notation);

    private string Cell(double? meters) => meters is { } value ? new Length(value).ToCell(notation) : "";
}
