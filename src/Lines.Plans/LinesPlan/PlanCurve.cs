using Lines.Drawing.Model;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;

namespace Lines.Plans.LinesPlan;

/// <summary>A line of the hull as it lies on the paper.</summary>
internal sealed class PlanCurve
{
    /// <summary>Greatest distance of a drawn chord from the line [mm on paper].</summary>
    public const double ChordTolerance = 0.01;

    private readonly double[] _along;

    /// <summary>Makes a curve of its polyline.</summary>
    /// <param name="layer">Its ink.</param>
    /// <param name="points">Its polyline [mm], at least two points.</param>
    /// <param name="label">What is written on it; nothing where it stays unlabeled.</param>
    public PlanCurve(Layer layer, IReadOnlyList<Point2> points, string label = "")
    {
        Layer = layer;
        Points = points;
        Label = label;
        _along = new double[points.Count];
        for (var i = 1; i < points.Count; i++)
            _along[i] = _along[i - 1] + points[i].DistanceTo(points[i - 1]);
    }

    /// <summary>Its ink.</summary>
    public Layer Layer { get; }

    /// <summary>Its polyline [mm].</summary>
    public IReadOnlyList<Point2> Points { get; }

    /// <summary>What is written on it.</summary>
    public string Label { get; }

    /// <summary>Length along the polyline [mm].</summary>
    public double Length => _along[^1];

    /// <summary>A line of the hull put on paper.</summary>
    /// <param name="layer">Its ink.</param>
    /// <param name="line">The line.</param>
    /// <param name="perMeter">Millimeters on paper to a meter.</param>
    /// <param name="onPaper">From the hull frame to the paper.</param>
    /// <param name="label">What is written on it.</param>
    public static PlanCurve Of(Layer layer, HullLine line, double perMeter, Func<Point3, Point2> onPaper, string label = "") =>
        new(layer, [.. line.ToPolyline(ChordTolerance / perMeter).Select(p => onPaper(p.Point))], label);

    /// <summary>The place and the direction at a distance along the polyline.</summary>
    public (Point2 At, Vector2 Direction) PlaceAt(double along)
    {
        var i = Array.BinarySearch(_along, along);
        i = Math.Clamp(i < 0 ? ~i : i, 1, Points.Count - 1);
        var direction = (Points[i] - Points[i - 1]).Unit();
        return (Points[i - 1] + ((along - _along[i - 1]) * direction), direction);
    }

    /// <summary>The first place on the polyline at an abscissa; null where it does not come there.</summary>
    public Point2? AtX(double x)
    {
        for (var i = 1; i < Points.Count; i++)
        {
            Point2 a = Points[i - 1], b = Points[i];
            if (a.X != b.X && (a.X - x) * (b.X - x) <= 0)
                return a + ((x - a.X) / (b.X - a.X) * (b - a));
        }

        return null;
    }

    /// <summary>The polyline between two distances along it.</summary>
    public IReadOnlyList<Point2> Piece(double from, double to) =>
        [PlaceAt(from).At, .. Points.Where((_, i) => _along[i] > from && _along[i] < to), PlaceAt(to).At];
}
