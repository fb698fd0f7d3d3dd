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
        var stations = WithQuarters(_lines.Grid.Stations);
        var hull = _lines.Hull;
        var waterlines = Grouped(_lines.Waterlines).Reverse().ToList();
        List<OffsetRow> heights =
        [
            Row(_lines.Sheer.Tag, s => OnSheer(s)?.Z),
            .. Grouped(_lines.Buttocks).Reverse().Select(b => Row(b[0].Tag, s => On(b, s, b[0].Plane!.Value)?.Z)),
            Row(_lines.Keel.Tag, s => OnKeel(s)?.Z),
        ];
        List<OffsetRow> breadths =
        [
            Row(_lines.Sheer.Tag, s => OnSheer(s)?.Y),
            .. waterlines.Select(w => Row(w[0].Tag, s => On(w, s, w[0].Plane!.Value)?.Y)),
        ];
        List<OffsetRow> diagonals =
            [.. Grouped(_lines.Diagonals).Reverse().Select(d => Row(d[0].Tag, s => On(d, s, d[0].Plane!.Value) is { } p ? d[0].Axes.Flat(p).Y : null))];
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

        OffsetRow Row(LineTag tag, Func<StationMark, double?> value) => new(
            tag.Kind,
            tag.Label,
            tag.Kind is LineKind.Sheer or LineKind.Keel ? null : tag.Position,
            tag.Kind == LineKind.Diagonal ? tag.Angle : null,
            [.. stations.Select(value)]);
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

    private Point3? On(List<HullLine> parts, StationMark station, Plane plane)
    {
        var across = Plane.AtX(station.X);
        foreach (var part in parts)
        {
            if (part.FirstCrossingWith(across) is not { } p)
                continue;
            if (_planking == 0)
                return p.Point;
            // A flared side meets a buttock on the inside higher up, perhaps above the sheer, where there is no boat.
            var inside = _inside.On(across, plane, p.U, p.V);
            return inside?.Z <= _lines.Sheer.FirstCrossingWith(across)?.Point.Z + Near ? inside : null;
        }

        return null;
    }

    private Point3? OnSheer(StationMark station)
    {
        var across = Plane.AtX(station.X);
        if (_lines.Sheer.FirstCrossingWith(across) is not { } p)
            return null;
        return _planking == 0 ? p.Point : _inside.On(across, Plane.AtZ(p.Point.Z), p.U, p.V);
    }

    private Point3? OnKeel(StationMark station)
    {
        var across = Plane.AtX(station.X);
        if (_lines.Keel.FirstCrossingWith(across) is not { } p)
            return null;
        return _planking == 0 ? p.Point : _inside.On(across, s_center, p.U, p.V);
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
