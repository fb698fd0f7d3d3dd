using Lines.Hull.Form;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Offsets;

/// <summary>Takes off the offsets of one hull, to the outside or the inside of the planking.</summary>
internal sealed class OffsetsTaker
{
    /// <summary>Heights this close are one: a nanometer, as lines are cut.</summary>
    private const double Near = 1e-9;

    /// <summary>Half station spaces at either end that are halved once more.</summary>
    private const int EndHalves = 5;

    /// <summary>Stations of the standard grid, 0 to 10 with halves.</summary>
    private const int StandardHalves = 21;

    private static readonly Plane s_center = Plane.AtY(0);

    private readonly HullLines _lines;
    private readonly double _planking;
    private readonly InsideSolver _inside;
    private readonly double _aftmost;

    public OffsetsTaker(HullLines lines, double planking)
    {
        ArgumentNullException.ThrowIfNull(lines);
        _lines = lines;
        _planking = planking;
        _inside = new InsideSolver(lines.Hull, planking);
        _aftmost = lines.Stern.Nodes.Max(n => n.Point.X);
    }

    public TableOfOffsets Table()
    {
        // Where the outside needs points between the stations the inside has its own.
        var table = AtStations();
        var outside = _planking == 0 ? table : new OffsetsTaker(_lines, 0).AtStations();
        return table with
        {
            Heights = [.. table.Heights.Zip(outside.Heights, (r, o) => Between(r, TabledPoints.OfHeights(outside, o), p => p.Z))],
            HalfBreadths = [.. table.HalfBreadths.Zip(outside.HalfBreadths, (r, o) => Between(r, TabledPoints.OfHalfBreadths(outside, o), p => p.Y))],
            Diagonals = [.. table.Diagonals.Zip(outside.Diagonals, (r, o) => Between(r, TabledPoints.AlongRow(outside, o), AlongDiagonal(r.Label)))],
        };
    }

    private TableOfOffsets AtStations()
    {
        var stations = WithQuarters(_lines.Grid.Stations);
        var hull = _lines.Hull;
        var waterlines = Grouped(_lines.Waterlines).Reverse().ToList();
        List<OffsetRow> heights =
        [
            Row(_lines.Sheer.Tag, p => p.Z),
            .. Grouped(_lines.Buttocks).Reverse().Select(b => Row(b[0].Tag, p => p.Z)),
            Row(_lines.Keel.Tag, p => p.Z),
        ];
        List<OffsetRow> breadths = [Row(_lines.Sheer.Tag, p => p.Y), .. waterlines.Select(w => Row(w[0].Tag, p => p.Y))];
        List<OffsetRow> diagonals = [.. Grouped(_lines.Diagonals).Reverse().Select(d => Row(d[0].Tag, AlongDiagonal(d[0].Label)))];
        List<EndOffset> ends = [SheerEnds(), .. waterlines.Select(Ends)];
        var transom = hull.Transom is { } plane ? Transom(waterlines, plane) : [];
        return new TableOfOffsets(
            stations,
            heights,
            breadths,
            diagonals,
            ends,
            Corner(hull.Side.PointAt(0, 0)),
            Corner(hull.Side.PointAt(1, 0)),
            transom,
            (hull.Dials.Stern as TransomStern)?.Rake,
            _aftmost,
            (stations[^1].X - stations[0].X) / 10,
            _planking);

        OffsetRow Row(LineTag tag, Func<Point3, double> value) => new(
            tag.Kind,
            tag.Label,
            tag.Kind is LineKind.Sheer or LineKind.Keel ? null : tag.Position,
            tag.Kind == LineKind.Diagonal ? tag.Angle : null,
            [.. stations.Select(s => On(tag.Kind, tag.Label, s.X) is { } p ? value(p) : (double?)null)]);
    }

    // What a batten needs beside the stations: where a buttock ends at sheer or transom, and where a line turns fast.
    private OffsetRow Between(OffsetRow row, List<Point2> outside, Func<Point3, double> value)
    {
        var parts = _lines.Parts(row.Kind, row.Label);
        List<Point2> ends = row.Kind == LineKind.Buttock ? [.. parts.SelectMany(p => new[] { p.Start.Point, p.End.Point }).Select(Flat)] : [];
        IEnumerable<OffsetPoint> points = [.. ends.Select(e => new OffsetPoint(e.X, e.Y)), .. PointsBetween.Of(parts, [.. ends, .. outside], Flat)];
        return row with { Between = [.. points.OrderBy(p => p.X).SelectMany(p => Taken(p.X, p))] };

        Point2 Flat(Point3 p) => new(p.X, value(p));

        IEnumerable<OffsetPoint> Taken(double x, OffsetPoint point) =>
            _planking == 0 ? [point] : On(row.Kind, row.Label, x) is { } p ? [new OffsetPoint(x, value(p))] : [];
    }

    private Func<Point3, double> AlongDiagonal(string label)
    {
        var axes = _lines.Parts(LineKind.Diagonal, label)[0].Axes;
        return p => axes.Flat(p).Y;
    }

    // Toward the ends, where lines turn up and run out, a table has quarter stations (common practice, no source).
    private static IReadOnlyList<StationMark> WithQuarters(IReadOnlyList<StationMark> halves)
    {
        // A grid of one's own choice is kept as it is.
        if (halves.Count != StandardHalves)
            return halves;
        var stations = new List<StationMark>(halves.Count + (2 * EndHalves));
        for (var k = 0; k < halves.Count; k++)
        {
            stations.Add(halves[k]);
            if (k < EndHalves || (k >= halves.Count - 1 - EndHalves && k < halves.Count - 1))
                stations.Add(new StationMark(Quarter(k), (halves[k].X + halves[k + 1].X) / 2));
        }

        return stations;

        static string Quarter(int halves) => (halves / 2, halves % 2) switch
        {
            (0, 0) => "1/4",
            (0, _) => "3/4",
            (var whole, 0) => Invariant($"{whole} 1/4"),
            (var whole, _) => Invariant($"{whole} 3/4"),
        };
    }

    // A line that comes in two parts is two lines of one tag, side by side.
    private static IEnumerable<List<HullLine>> Grouped(IEnumerable<HullLine> lines) => lines.GroupBy(l => l.Name, StringComparer.Ordinal).Select(g => g.ToList());

    // The point of a line at a station, on the outside or the inside.
    private Point3? On(LineKind kind, string label, double x)
    {
        var parts = _lines.Parts(kind, label);
        if (PointsBetween.At(parts, x) is not { } p)
            return null;
        if (_planking == 0)
            return p.Point;
        var across = Plane.AtX(x);
        var inside = _inside.On(across, kind switch { LineKind.Sheer => Plane.AtZ(p.Point.Z), LineKind.Keel => s_center, _ => parts[0].Plane!.Value }, p.U, p.V);
        // A flared side meets a buttock on the inside higher up, perhaps above the sheer, where there is no boat.
        return kind is LineKind.Sheer or LineKind.Keel || inside?.Z <= _lines.Sheer.FirstCrossingWith(across)?.Point.Z + Near ? inside : null;
    }

    private EndOffset SheerEnds() => Ends("sheer", _lines.Sheer.Start, _lines.Sheer.Start.Point.Z, _lines.Sheer.End, _lines.Sheer.End.Point.Z);

    private EndOffset Ends(List<HullLine> parts) => Ends(parts[0].Label, parts[0].Start, parts[0].Position, parts[^1].End, parts[0].Position);

    private EndOffset Ends(string label, LinePoint fore, double foreHeight, LinePoint aft, double aftHeight)
    {
        double? bow = fore.Point.X, stern = aft.Point.X;
        if (_planking > 0)
        {
            bow = _inside.On(Plane.AtZ(foreHeight), s_center, fore.U, fore.V)?.X;
            // A transom is a plane: planking does not move it.
            if (_lines.Hull.Transom is null || aft.U < 1)
                stern = _inside.On(Plane.AtZ(aftHeight), s_center, aft.U, aft.V)?.X;
        }

        return new EndOffset(label, foreHeight, bow, aftHeight, _aftmost - stern);
    }

    private List<TransomOffset> Transom(List<List<HullLine>> waterlines, Plane plane)
    {
        var axes = Cut.TransomAxes(_lines.Hull);
        var rows = new List<TransomOffset> { At("sheer", _lines.Sheer.End) };
        foreach (var waterline in waterlines)
        {
            if (_lines.Stern.FirstCrossingWith(waterline[0].Plane!.Value) is { } p)
                rows.Add(At(waterline[0].Label, p));
        }

        return rows;

        TransomOffset At(string label, LinePoint p)
        {
            var inside = _planking == 0 ? p.Point : _inside.On(plane, Plane.AtZ(p.Point.Z), p.U, p.V);
            return new TransomOffset(label, p.Point.Z, axes.Flat(p.Point).Y, inside?.Y);
        }
    }

    private ProfileCorner Corner(Point3 p) => new(p.X, _aftmost - p.X, p.Z);
}
