using Lines.Drawing.Model;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Plans.LinesPlan;
using Lines.Plans.Paper;

namespace Lines.Plans.Curvature;

/// <summary>One view of a curvature plate: grays, hatching, the lines of the boat over them.</summary>
/// <param name="marks">The sheet.</param>
/// <param name="lines">The lines of the hull.</param>
/// <param name="window">The part of the skin that is seen.</param>
/// <param name="perMeter">Millimeters on paper to a meter.</param>
/// <param name="onPaper">From the hull frame to the paper.</param>
internal sealed class CurvatureView(PageMarks marks, HullLines lines, SkinWindow window, double perMeter, Func<Point3, Point2> onPaper)
{
    /// <summary>Greatest distance of a drawn border from the true one [mm], beside what the grid itself costs.</summary>
    private const double Thinning = 0.03;

    /// <summary>Islands smaller than this cannot be seen [mm²].</summary>
    private const double Speck = 0.05;

    private const double HatchSpacing = 1.1;

    /// <summary>Draws the view.</summary>
    public void Draw(CurvatureScale scale)
    {
        Grays(scale);
        Hollows(scale);
        foreach (var station in lines.Stations.Where(s => !s.Label.Contains('/', StringComparison.Ordinal)))
        {
            var points = station.Nodes.Select(n => onPaper(n.Point)).OrderBy(p => p.Y).ToList();
            marks.Line(CurvatureInks.Stations, points[0], points[^1]);
        }

        if (lines.DesignWaterline is { } waterline)
            Line(PlanInks.DesignWaterline, waterline);
        foreach (var edge in new[] { lines.Sheer, lines.Keel, lines.Stem, lines.Stern })
            Line(PlanInks.Outline, edge);
    }

    // Borders of bands never cross: painted in order of size, each shows what lies just inside it.
    private void Grays(CurvatureScale scale)
    {
        var sizes = window.Values(p => Math.Abs(scale.Of(p)));
        var areas = new List<(int Band, IReadOnlyList<Point2> Border, double Size)>();
        for (var k = 0; k <= scale.Steps.Count; k++)
        {
            foreach (var loop in LevelLoops.Above(sizes, k == 0 ? 0 : scale.Steps[k - 1]))
            {
                var hole = Area(loop) < 0;
                var border = OnPaper(loop);
                areas.Add((hole ? k - 1 : k, border, Math.Abs(Area(border))));
            }
        }

        foreach (var (band, border, _) in areas.Where(a => a.Size > Speck).OrderByDescending(a => a.Size))
            marks.Area(CurvatureInks.Bands[band], Thinned.Loop(border, Thinning));
    }

    private void Hollows(CurvatureScale scale)
    {
        IReadOnlyList<IReadOnlyList<Point2>> borders =
        [
            .. LevelLoops.Above(window.Values(p => -scale.Of(p)), -CurvatureScale.Hollow).Select(OnPaper).Where(b => Math.Abs(Area(b)) > Speck)
                .Select(b => Thinned.Loop(b, Thinning)),
        ];
        Hatch(marks, borders);
    }

    /// <summary>Hatches a region and draws its borders.</summary>
    public static void Hatch(PageMarks marks, IReadOnlyList<IReadOnlyList<Point2>> borders)
    {
        foreach (var (from, to) in Hatching.Lines(borders, HatchSpacing, Math.PI / 4))
            marks.Line(CurvatureInks.Hatching, from, to);
        foreach (var border in borders)
            marks.Path(CurvatureInks.Hollow, [.. border, border[0]]);
    }

    private void Line(Layer layer, HullLine line) => marks.Path(layer, PlanCurve.Of(layer, line, perMeter, onPaper).Points);

    private List<Point2> OnPaper(IReadOnlyList<Point2> loop) => [.. loop.Select(p => Rounded(onPaper(window.PointAt(p))))];

    // To a hundredth of a millimeter: finer than any line is wide.
    private static Point2 Rounded(Point2 p) => new(Math.Round(p.X, 2), Math.Round(p.Y, 2));

    private static double Area(IReadOnlyList<Point2> polygon) => ArcPath.Through(polygon, closed: true).SignedArea();
}
