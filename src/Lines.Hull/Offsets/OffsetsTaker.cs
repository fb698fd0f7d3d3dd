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
        var stations = AtEnds(_lines.Grid.Stations);
        var hull = _lines.Hull;
        var waterlines = Grouped(_lines.Waterlines).Reverse().ToList();
        List<OffsetRow> heights =
        [
            .. Rows(_lines.Sheer.Tag, p => p.Z),
            .. Grouped(_lines.Buttocks).Reverse().SelectMany(b => Rows(b[0].Tag, p => p.Z)),
            .. Rows(_lines.Keel.Tag, p => p.Z),
        ];
        List<OffsetRow> breadths = [.. Rows(_lines.Sheer.Tag, p => p.Y), .. waterlines.SelectMany(w => Rows(w[0].Tag, p => p.Y))];
        List<OffsetRow> diagonals = [.. Grouped(_lines.Diagonals).Reverse().SelectMany(d => Rows(d[0].Tag, AlongDiagonal(d[0].Label)))];
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
            (_lines.Grid.Stations[^1].X - _lines.Grid.Stations[0].X) / LinesGrid.StationSpaces,
            _planking);

        IEnumerable<OffsetRow> Rows(LineTag tag, Func<Point3, double> value) => Tabled(tag.Kind, tag.Label).Select(line => new OffsetRow(
            tag.Kind,
            tag.Label,
            tag.Kind is LineKind.Sheer or LineKind.Keel ? null : tag.Position,
            tag.Kind == LineKind.Diagonal ? tag.Angle : null,
            [.. stations.Select(s => On(line, s.X) is { } p ? value(p) : (double?)null)])
        { Back = line.Back });
    }

    // What a batten needs beside the stations: where a buttock ends at sheer or transom, and where a line turns fast.
    private OffsetRow Between(OffsetRow row, List<Point2> outside, Func<Point3, double> value)
    {
        var line = Tabled(row.Kind, row.Label)[row.Back];
        List<Point2> ends = row.Kind is LineKind.Buttock or LineKind.Diagonal || row.Back > 0 ? [.. line.Ends.Select(e => Flat(e.Point))] : [];
        IEnumerable<OffsetPoint> points = [.. ends.Select(e => new OffsetPoint(e.X, e.Y)), .. PointsBetween.Of(line, [.. ends, .. outside], Flat)];
        return row with { Between = [.. points.OrderBy(p => p.X).SelectMany(p => Taken(p.X, p))] };

        Point2 Flat(Point3 p) => new(p.X, value(p));

        IEnumerable<OffsetPoint> Taken(double x, OffsetPoint point) =>
            _planking == 0 ? [point] : On(line, x) is { } p ? [new OffsetPoint(x, value(p))] : [];
    }

    private IReadOnlyList<TabledLine> Tabled(LineKind kind, string label) => TabledLine.Of(_lines.Parts(kind, label));

    private Func<Point3, double> AlongDiagonal(string label)
    {
        var axes = _lines.Parts(LineKind.Diagonal, label)[0].Axes;
        return p => axes.Flat(p).Y;
    }

    // Toward the ends, where lines turn up and run out, a table has quarter stations, and where the ends overhang the design waterline by
    // half a station space or more, stations at every half beyond it (common practice, no source).
    private List<StationMark> AtEnds(IReadOnlyList<StationMark> halves)
    {
        // A grid of one's own choice is kept as it is.
        if (halves.Count != LinesGrid.Halves + 1)
            return [.. halves];
        double first = halves[0].X, half = (halves[^1].X - first) / LinesGrid.Halves;
        List<double> places =
        [
            .. Enumerable.Range(1, (int)(first / half)).Select(k => -k / 2.0).Reverse(),
            .. Enumerable.Range(0, 4 * LinesGrid.StationSpaces + 1).Select(k => k / 4.0).Where(n => n % 0.5 == 0 || Math.Min(n, LinesGrid.StationSpaces - n) < EndHalves / 2.0),
            .. Enumerable.Range(1, (int)((_aftmost - halves[^1].X) / half)).Select(k => LinesGrid.StationSpaces + (k / 2.0)),
        ];
        return [.. places.Select(n => n % 0.5 == 0 && n >= 0 && n <= LinesGrid.StationSpaces ? halves[(int)(2 * n)] : new StationMark(LinesGrid.NumberOf(n), first + (2 * n * half)))];
    }

    // A line that comes in two parts is two lines of one tag, side by side.
    private static IEnumerable<List<HullLine>> Grouped(IEnumerable<HullLine> lines) => lines.GroupBy(l => l.Name, StringComparer.Ordinal).Select(g => g.ToList());

    // The point of a line at a station, on the outside or the inside.
    private Point3? On(TabledLine line, double x)
    {
        if (line.At(x) is not { } p)
            return null;
        if (_planking == 0)
            return p.Point;
        var across = Plane.AtX(x);
        var inside = _inside.On(across, line.Kind switch { LineKind.Sheer => Plane.AtZ(p.Point.Z), LineKind.Keel => s_center, _ => line.Plane!.Value }, p.U, p.V);
        // A flared side meets a buttock on the inside higher up, perhaps above the sheer, where there is no boat.
        return line.Kind is LineKind.Sheer or LineKind.Keel || inside?.Z <= _lines.Sheer.FirstCrossingWith(across)?.Point.Z + Near ? inside : null;
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
