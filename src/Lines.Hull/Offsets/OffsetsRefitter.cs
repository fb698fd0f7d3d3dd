using Lines.Hull.Sections;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Offsets;

/// <summary>Lays the lines of one hull down again from its table of offsets.</summary>
internal sealed class OffsetsRefitter(HullLines lines, TableOfOffsets table, double step)
{
    /// <summary>Every line of the table, judged.</summary>
    public List<RefittedLine> Judged() =>
    [
        .. table.Heights.Select(r => Judge(r, "height", p => p.Z, TabledPoints.OfHeights(table, r))),
        .. table.HalfBreadths.Select(r => Judge(r, "half-breadth", p => p.Y, TabledPoints.OfHalfBreadths(table, r))),
        .. table.Diagonals.Select(r => Judge(r, "along the diagonal", p => lines.Parts(r.Kind, r.Label)[0].Axes.Flat(p).Y, TabledPoints.AlongRow(table, r))),
    ];

    private RefittedLine Judge(OffsetRow row, string what, Func<Point3, double> value, List<Point2> points)
    {
        var name = $"{row.Name}, {what}";
        var at = points.Count == 0 ? 0 : points.Max(p => Math.Abs(p.Y - RefitBatten.Rounded(p.Y, step)));
        var exact = RefitBatten.Through(points, step);
        var refit = RefitBatten.ThroughRounded(points, step);
        if (exact is null || refit is null)
            return new RefittedLine(row.Kind, name, at, 0, 0, 0);
        var line = TabledLine.Of(lines.Parts(row.Kind, row.Label))[row.Back];
        double between = 0, where = refit.Points[0].X, moved = 0;
        for (var k = 1; k < refit.Points.Count; k++)
        {
            foreach (var x in PointsBetween.Places(refit.Points[k - 1].X, refit.Points[k].X))
            {
                if (line.At(x) is not { } p)
                    continue;
                moved = Math.Max(moved, refit.DistanceTo(new Point2(x, exact.At(x))));
                var gap = refit.DistanceTo(new Point2(x, value(p.Point)));
                if (gap > between)
                    (between, where) = (gap, x);
            }
        }

        return new RefittedLine(row.Kind, name, at, between, where, moved);
    }
}
