using Lines.Hull.Sections;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Offsets;

/// <summary>Lays the lines of one hull down again from its table of offsets.</summary>
internal sealed class OffsetsRefitter(HullLines lines, TableOfOffsets table, double step)
{
    private const int PlacesPerSpan = 8;
    private const double Clear = 0.09; // a crossing nearer to a tabled point only repeats it, less exactly [m]

    private List<Crossed>? _exact;
    private List<Crossed>? _rounded;

    /// <summary>Every line of the table, judged.</summary>
    public List<RefittedLine> Judged() =>
        [.. table.Heights.Select(Height), .. table.HalfBreadths.Select(HalfBreadth), .. table.Diagonals.Select(Diagonal)];

    private RefittedLine HalfBreadth(OffsetRow row) => Judge(row, "half-breadth", p => p.Y, BreadthPoints(row));

    private RefittedLine Diagonal(OffsetRow row)
    {
        var axes = Parts(row)[0].Axes;
        return Judge(row, "along the diagonal", p => axes.Flat(p).Y, AtStations(row));
    }

    private RefittedLine Height(OffsetRow row)
    {
        var points = AtStations(row);
        if (row.Kind == LineKind.Keel)
        {
            points.Add(new Point2(table.Forefoot.AftOfFore, table.Forefoot.Height));
            points.Add(new Point2(table.Length - table.Heel.ForwardOfAft, table.Heel.Height));
        }
        else if (row.Kind == LineKind.Sheer)
        {
            points.AddRange(SheerEnds());
        }

        return Judge(row, "height", p => p.Z, points);
    }

    private IEnumerable<Point2> SheerEnds()
    {
        if (table.Ends[0] is { AftOfFore: { } fore, ForwardOfAft: { } aft } sheer)
            return [new(fore, sheer.Fore), new(table.Length - aft, sheer.Aft)];
        return [];
    }

    private List<Point2> AtStations(OffsetRow row)
    {
        var points = new List<Point2>();
        for (var k = 0; k < table.Stations.Count; k++)
        {
            if (row.Values[k] is { } v)
                points.Add(new Point2(table.Stations[k].X, v));
        }

        return points;
    }

    private List<Point2> BreadthPoints(OffsetRow row)
    {
        var points = AtStations(row);
        var end = table.Ends.First(e => string.Equals(e.Label, row.Label, StringComparison.Ordinal));
        var onTransom = table.Transom.FirstOrDefault(t => string.Equals(t.Label, row.Label, StringComparison.Ordinal));
        if (end.AftOfFore is { } fore)
            points.Add(new Point2(fore, 0));
        if (end.ForwardOfAft is { } aft)
            points.Add(new Point2(table.Length - aft, onTransom?.HalfBreadth ?? 0));
        return points;
    }

    // Where the refitted waterlines and sheer cross a buttock, with the heights they have there; none close to a tabled point.
    private IEnumerable<Point2> Crossings(List<Point2> tabled, double halfBreadth, bool rounded)
    {
        var crossed = rounded ? _rounded ??= AllCrossed(rounded) : _exact ??= AllCrossed(rounded);
        return crossed.SelectMany(line => line.Breadth.AbscissasAt(halfBreadth).Select(x => new Point2(x, line.Height(x))))
            .Where(c => tabled.TrueForAll(t => t.DistanceTo(c) > Clear));
    }

    // Waterlines and sheer refitted in plan: what every buttock crosses.
    private List<Crossed> AllCrossed(bool rounded)
    {
        var sheerHeight = Laid(Taken([.. AtStations(table.Heights[0]), .. SheerEnds()], rounded));
        var crossed = new List<Crossed>();
        foreach (var row in table.HalfBreadths)
        {
            if (Laid(Taken(BreadthPoints(row), rounded)) is { } breadth)
                crossed.Add(new Crossed(breadth, row.Position is { } height ? _ => height : x => sheerHeight!.At(x)));
        }

        return crossed;
    }

    // Points as the table gives them.
    private IEnumerable<Point2> Taken(IEnumerable<Point2> points, bool rounded) =>
        rounded ? points.Select(p => new Point2(Rounded(p.X), Rounded(p.Y))) : points;

    private static RefitBatten? Laid(IEnumerable<Point2> points)
    {
        var apart = new List<Point2>();
        foreach (var p in points.OrderBy(p => p.X))
        {
            // Two points as good as one: the first is kept.
            if (apart.Count == 0 || p.DistanceTo(apart[^1]) > RefitBatten.Apart)
                apart.Add(p);
        }

        return apart.Count < 4 ? null : new RefitBatten(apart);
    }

    private RefitBatten? Laid(OffsetRow row, List<Point2> points, bool rounded) => row.Kind == LineKind.Buttock
        ? Laid([.. Taken(points, rounded), .. Crossings(points, row.Position!.Value, rounded)])
        : Laid(Taken(points, rounded));

    private RefittedLine Judge(OffsetRow row, string what, Func<Point3, double> value, List<Point2> points)
    {
        var name = $"{row.Label}, {what}";
        var at = points.Count == 0 ? 0 : points.Max(p => Math.Abs(p.Y - Rounded(p.Y)));
        var crossed = row.Kind == LineKind.Buttock;
        var exact = Laid(row, points, rounded: false);
        var refit = Laid(row, points, rounded: true);
        if (exact is null || refit is null)
            return new RefittedLine(row.Kind, name, at, 0, 0, 0);
        var parts = Parts(row);
        double between = 0, where = refit.Points[0].X, moved = 0;
        for (var k = 1; k < refit.Points.Count; k++)
        {
            for (var place = 1; place < PlacesPerSpan; place++)
            {
                var x = refit.Points[k - 1].X + ((refit.Points[k].X - refit.Points[k - 1].X) * place / PlacesPerSpan);
                if ((crossed && (x < points[0].X || x > points[^1].X)) || On(parts, x) is not { } p)
                    continue;
                moved = Math.Max(moved, refit.DistanceTo(new Point2(x, exact.At(x))));
                var gap = refit.DistanceTo(new Point2(x, value(p)));
                if (gap > between)
                    (between, where) = (gap, x);
            }
        }

        return new RefittedLine(row.Kind, name, at, between, where, moved);
    }

    private List<HullLine> Parts(OffsetRow row) =>
        [.. lines.All.Where(l => l.Kind == row.Kind && string.Equals(l.Label, row.Label, StringComparison.Ordinal))];

    private static Point3? On(List<HullLine> parts, double x)
    {
        foreach (var part in parts)
        {
            if (part.FirstCrossingWith(Plane.AtX(x)) is { } p)
                return p.Point;
        }

        return null;
    }

    private double Rounded(double value) => step * Math.Round(value / step, MidpointRounding.AwayFromZero);

    private sealed record Crossed(RefitBatten Breadth, Func<double, double> Height);
}
