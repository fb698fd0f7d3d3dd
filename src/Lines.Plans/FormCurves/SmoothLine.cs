using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Plans.FormCurves;

/// <summary>The smooth line that a draughtsman's spline draws through points.</summary>
internal static class SmoothLine
{
    /// <summary>Chords between two points: on curves of this size they keep within a hundredth of a millimeter.</summary>
    private const int Chords = 10;

    /// <summary>The line as a polyline; the points are on it.</summary>
    /// <param name="points">Points in order [mm], at least two, no two neighbors equal.</param>
    public static List<Point2> Through(IReadOnlyList<Point2> points)
    {
        var spline = new CubicInterpolant(points);
        var lengths = spline.Lengths;
        return
        [
            .. Enumerable.Range(1, lengths.Count - 1).SelectMany(i => Enumerable.Range(0, Chords).Select(k => spline.PointAt(lengths[i - 1] + ((lengths[i] - lengths[i - 1]) * k / Chords)))),
            points[^1],
        ];
    }
}
