using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using Lines.Plans.Paper;

namespace Lines.Plans.LinesPlan;

/// <summary>Draws the curves of one view, each broken where its label stands on it.</summary>
/// <remarks><b>Method.</b> For every label, places along the curve are tried; the one whose text keeps clearest of the other curves,
/// of the grid and of the labels already written is taken, level places first. Text may stand on a grid line where it must, never
/// on a curve; where no place is clear of the curves, the curve is drawn whole and its label put in a row beside the view, at the end
/// of a leader with a dot on the curve, or left out where no such row is given.</remarks>
internal sealed class LabeledCurves
{
    private const double Height = 1.8;
    private const double Step = 2.5;

    /// <summary>Clear distance from the middle line of a text beyond which more does not help [mm].</summary>
    private const double Enough = 2.4;

    /// <summary>Least distance of that middle line from a curve [mm]: half the height and a little air.</summary>
    private const double LeastFromCurve = 1.4;

    /// <summary>Least distance of the middle lines of two texts [mm].</summary>
    private const double LeastFromLabel = 2.7;

    private readonly List<PlanCurve> _curves = [];
    private readonly List<(Point2 From, Point2 To)> _grid = [];
    private readonly List<(Point2 From, Point2 To)> _labels = [];

    /// <summary>Adds a curve to the view.</summary>
    public void Add(PlanCurve curve) => _curves.Add(curve);

    /// <summary>Adds a line of the grid, on which labels should not stand.</summary>
    public void Avoid(Point2 from, Point2 to) => _grid.Add((from, to));

    /// <summary>Draws everything added.</summary>
    /// <param name="marks">The sheet.</param>
    /// <param name="leaderRow">Ordinate of the row for labels that find no place on their curve; null for none.</param>
    /// <param name="leaderPlaces">Abscissas at which leaders may rise, best first.</param>
    public void Draw(PageMarks marks, double? leaderRow = null, IReadOnlyList<double>? leaderPlaces = null)
    {
        var homeless = new List<PlanCurve>();
        var coarse = _curves.Select(Coarse).ToList();
        for (var i = 0; i < _curves.Count; i++)
        {
            var curve = _curves[i];
            var half = (StrokeLettering.Width(curve.Label, Height) / 2) + 0.9;
            var others = coarse.Where((_, j) => j != i).SelectMany(c => c).ToList();
            if (curve.Label.Length == 0 || BestPlace(curve, half, others) is not { } along)
            {
                marks.Path(curve.Layer, curve.Points);
                if (curve.Label.Length > 0)
                    homeless.Add(curve);
                continue;
            }

            var (at, direction) = curve.PlaceAt(along);
            if (direction.X < 0)
                direction = -direction;
            marks.Path(curve.Layer, curve.Piece(0, along - half));
            marks.Path(curve.Layer, curve.Piece(along + half, curve.Length));
            marks.Text(PlanInks.Lettering, curve.Label, at, Height, anchor: Anchor.Middle, angle: Math.Atan2(direction.Y, direction.X));
            _labels.Add((at - (half * direction), at + (half * direction)));
        }

        if (leaderRow is { } row)
            DrawLeaders(marks, homeless, row, [.. leaderPlaces ?? []]);
    }

    private void DrawLeaders(PageMarks marks, List<PlanCurve> curves, double row, List<double> places)
    {
        foreach (var curve in curves)
        {
            foreach (var x in places)
            {
                if (curve.AtX(x) is not { } foot || Clear(foot, new Point2(x, row), _labels) < Height)
                    continue;
                marks.Add([new PathMark(PlanInks.Fine, ArcPath.Circle(foot, 0.35), Filled: true)]);
                marks.Line(PlanInks.Fine, foot, new Point2(x, row));
                marks.Text(PlanInks.Lettering, curve.Label, new Point2(x, row > foot.Y ? row + 0.8 : row - 0.8 - Height), Height, anchor: Anchor.Center);
                places.Remove(x);
                break;
            }
        }
    }

    private double? BestPlace(PlanCurve curve, double half, List<(Point2 From, Point2 To)> others)
    {
        double? best = null;
        var bestScore = double.NegativeInfinity;
        var length = curve.Length;
        var end = Math.Max(0.06 * length, half + 1);
        for (var along = end; along <= length - end; along += Step)
        {
            var (at, direction) = curve.PlaceAt(along);
            Point2 from = at - (half * direction), to = at + (half * direction);
            var fromCurves = Clear(from, to, others);
            if (fromCurves < LeastFromCurve || Clear(from, to, _labels, LeastFromLabel) < LeastFromLabel)
                continue;
            var score = Math.Min(fromCurves, (2 * Clear(from, to, _grid)) - Enough) - (0.6 * Math.Abs(direction.Y)) - (0.1 * Math.Abs((along / length) - 0.5));
            if (score > bestScore)
                (best, bestScore) = (along, score);
        }

        return best;
    }

    // Least distance of a text's middle line, at seven of its points, from lines; no more than is enough.
    private static double Clear(Point2 from, Point2 to, List<(Point2 From, Point2 To)> lines, double enough = Enough)
    {
        var least = enough;
        foreach (var (a, b) in lines)
        {
            if (Math.Min(a.X, b.X) > Math.Max(from.X, to.X) + least || Math.Max(a.X, b.X) < Math.Min(from.X, to.X) - least
                || Math.Min(a.Y, b.Y) > Math.Max(from.Y, to.Y) + least || Math.Max(a.Y, b.Y) < Math.Min(from.Y, to.Y) - least)
                continue;
            var line = new ArcSegment(a, b, 0);
            for (var k = 0; k <= 6; k++)
                least = Math.Min(least, line.DistanceTo(from + (k / 6.0 * (to - from))));
        }

        return least;
    }

    // Every few points are plenty to keep lettering clear of a curve.
    private static List<(Point2 From, Point2 To)> Coarse(PlanCurve curve)
    {
        var every = Math.Max(1, curve.Points.Count / 60);
        var points = curve.Points.Where((_, i) => i % every == 0 || i == curve.Points.Count - 1).ToList();
        return [.. Enumerable.Range(1, points.Count - 1).Select(i => (points[i - 1], points[i]))];
    }
}
