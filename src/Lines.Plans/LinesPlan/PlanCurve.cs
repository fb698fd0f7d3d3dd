using Lines.Drawing.Model;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;

namespace Lines.Plans.LinesPlan;

/// <summary>A line of the hull as it lies on the paper.</summary>
/// <param name="Layer">Its ink.</param>
/// <param name="Points">Its polyline [mm].</param>
/// <param name="Label">What is written on it; nothing where it stays unlabelled.</param>
internal sealed record PlanCurve(Layer Layer, IReadOnlyList<Point2> Points, string Label = "")
{
    /// <summary>Greatest distance of a drawn chord from the line [mm on paper].</summary>
    public const double ChordTolerance = 0.01;

    /// <summary>A line of the hull put on paper.</summary>
    /// <param name="layer">Its ink.</param>
    /// <param name="line">The line.</param>
    /// <param name="perMetre">Millimetres on paper to a metre.</param>
    /// <param name="onPaper">From the hull frame to the paper.</param>
    /// <param name="label">What is written on it.</param>
    public static PlanCurve Of(Layer layer, HullLine line, double perMetre, Func<Point3, Point2> onPaper, string label = "") =>
        new(layer, [.. line.ToPolyline(ChordTolerance / perMetre).Select(p => onPaper(p.Point))], label);

    /// <summary>Length along the polyline [mm].</summary>
    public double Length => Enumerable.Range(1, Points.Count - 1).Sum(i => Points[i].DistanceTo(Points[i - 1]));

    /// <summary>The place and the direction at a distance along the polyline.</summary>
    public (Point2 At, Vector2 Direction) PlaceAt(double along)
    {
        for (var i = 1; ; i++)
        {
            var step = Points[i].DistanceTo(Points[i - 1]);
            if (along <= step || i == Points.Count - 1)
            {
                var direction = (Points[i] - Points[i - 1]).Unit();
                return (Points[i - 1] + (along * direction), direction);
            }

            along -= step;
        }
    }

    /// <summary>The polyline between two distances along it.</summary>
    public IReadOnlyList<Point2> Piece(double from, double to)
    {
        var points = new List<Point2> { PlaceAt(from).At };
        var along = 0.0;
        for (var i = 1; i < Points.Count; i++)
        {
            along += Points[i].DistanceTo(Points[i - 1]);
            if (along > from && along < to)
                points.Add(Points[i]);
        }

        points.Add(PlaceAt(to).At);
        return points;
    }
}
