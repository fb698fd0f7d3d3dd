using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using Lines.Plans.Paper;

namespace Lines.Plans.LinesPlan;

/// <summary>Draws the curves of one view, each broken where its label stands on it.</summary>
/// <remarks><b>Method.</b> For every label, places along the curve are tried; the one whose text keeps clearest of the other curves,
/// of the grid and of the labels already written is taken, level places first. Where even the best place has no room, the curve
/// is drawn whole and its label left to the table.</remarks>
internal sealed class LabelledCurves
{
    private const double Height = 1.8;
    private const double Step = 2;
    private const double Enough = 2.2;
    private const double Least = 1.15;

    private readonly List<PlanCurve> _curves = [];
    private readonly List<ArcPath> _obstacles = [];

    /// <summary>Adds a curve to the view.</summary>
    public void Add(PlanCurve curve) => _curves.Add(curve);

    /// <summary>Adds a straight line that labels must not stand on.</summary>
    public void Avoid(Point2 from, Point2 to) => _obstacles.Add(ArcPath.Line(from, to));

    /// <summary>Draws everything added.</summary>
    public void Draw(PageMarks marks)
    {
        var coarse = _curves.Select(Coarse).ToList();
        for (var i = 0; i < _curves.Count; i++)
        {
            var curve = _curves[i];
            var others = coarse.Where((_, j) => j != i).Concat(_obstacles).ToList();
            var half = (StrokeLettering.Width(curve.Label, Height) / 2) + 0.9;
            if (curve.Label.Length == 0 || BestPlace(curve, half, others) is not { } along)
            {
                marks.Path(curve.Layer, curve.Points);
                continue;
            }

            var (at, direction) = curve.PlaceAt(along);
            if (direction.X < 0)
                direction = -direction;
            marks.Path(curve.Layer, curve.Piece(0, along - half));
            marks.Path(curve.Layer, curve.Piece(along + half, curve.Length));
            marks.Text(PlanInks.Lettering, curve.Label, at, Height, anchor: Anchor.Middle, angle: Math.Atan2(direction.Y, direction.X));
            _obstacles.Add(ArcPath.Line(at - (half * direction), at + (half * direction)));
        }
    }

    private static double? BestPlace(PlanCurve curve, double half, List<ArcPath> others)
    {
        double? best = null;
        var bestScore = 0.0;
        var length = curve.Length;
        for (var along = Math.Max(0.06 * length, half + 1); along <= length - Math.Max(0.06 * length, half + 1); along += Step)
        {
            var (at, direction) = curve.PlaceAt(along);
            var clear = Enumerable.Range(-2, 5).Min(k => others.Min(o => o.DistanceTo(at + (k * half / 2 * direction))));
            if (clear < Least)
                continue;
            var score = Math.Min(clear, Enough) - (0.4 * Math.Abs(direction.Y)) - (0.1 * Math.Abs((along / length) - 0.5));
            if (best is null || score > bestScore)
                (best, bestScore) = (along, score);
        }

        return best;
    }

    // Every few points are plenty to keep lettering clear of a curve.
    private static ArcPath Coarse(PlanCurve curve)
    {
        var every = Math.Max(1, curve.Points.Count / 40);
        return ArcPath.Through(curve.Points.Where((_, i) => i % every == 0 || i == curve.Points.Count - 1));
    }
}
