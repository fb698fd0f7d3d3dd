using Lines.Kernel.Geometry;

namespace Lines.Kernel.Splines;

/// <summary>The curve of least bending energy through points of a plane: a cubic spline over the chord lengths.</summary>
/// <remarks>
/// <para><b>Method.</b> Of all curves r(s) through the points at the cumulative chord lengths s, with the end directions given if
/// any, the cubic spline makes ∫ |r″|² ds least (Holladay's theorem). Second derivatives follow from one tridiagonal system,
/// solved for both coordinates by elimination; it is diagonally dominant, so no pivoting is needed.</para>
/// <para><b>Accuracy.</b> Rounding only. Through points of a smooth curve, with its own end directions, it departs from the curve
/// by O(h⁴) for points h apart.</para>
/// </remarks>
public sealed class CubicInterpolant
{
    private readonly Point2[] _points;
    private readonly double[] _s;
    private readonly Vector2[] _bend; // r″ at the points

    /// <summary>Lays the curve through points.</summary>
    /// <param name="points">Points in order, at least two, no two neighbors equal.</param>
    /// <param name="startDirection">Direction in which it leaves the first point, any length but zero; null leaves that end free (r″ = 0).</param>
    /// <param name="endDirection">Direction in which it arrives at the last point; null leaves that end free.</param>
    /// <exception cref="ArgumentException">Fewer than two points, or neighbors that coincide.</exception>
    public CubicInterpolant(IReadOnlyList<Point2> points, Vector2? startDirection = null, Vector2? endDirection = null)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Count < 2)
            throw new ArgumentException(Invariant($"{points.Count} points are too few for a curve"), nameof(points));
        _points = [.. points];
        _s = new double[_points.Length];
        for (var i = 1; i < _s.Length; i++)
        {
            _s[i] = _s[i - 1] + _points[i].DistanceTo(_points[i - 1]);
            if (!(_s[i] > _s[i - 1]))
                throw new ArgumentException(Invariant($"points {i - 1} and {i} coincide or are not numbers"), nameof(points));
        }

        _bend = SecondDerivatives(startDirection?.Unit(), endDirection?.Unit());
    }

    /// <summary>Cumulative chord lengths at the points, from 0.</summary>
    public IReadOnlyList<double> Lengths => _s;

    /// <summary>Point at a chord length; outside the points the end pieces are continued.</summary>
    /// <param name="s">Chord length [unit of the points].</param>
    public Point2 PointAt(double s) => PointOn(Place(s));

    private Point2 PointOn((int K, double H, double A, double B) place)
    {
        var (k, h, a, b) = place;
        double ca = ((a * a * a) - a) * h * h / 6, cb = ((b * b * b) - b) * h * h / 6;
        return new Point2(
            (a * _points[k].X) + (b * _points[k + 1].X) + (ca * _bend[k].X) + (cb * _bend[k + 1].X),
            (a * _points[k].Y) + (b * _points[k + 1].Y) + (ca * _bend[k].Y) + (cb * _bend[k + 1].Y));
    }

    /// <summary>First derivative by the chord length.</summary>
    /// <param name="s">Chord length [unit of the points].</param>
    public Vector2 FirstAt(double s) => FirstOn(Place(s));

    private Vector2 FirstOn((int K, double H, double A, double B) place)
    {
        var (k, h, a, b) = place;
        return ((1 / h) * (_points[k + 1] - _points[k])) + (h / 6 * (((1 - (3 * a * a)) * _bend[k]) + (((3 * b * b) - 1) * _bend[k + 1])));
    }

    /// <summary>Second derivative by the chord length: continuous and linear between the points.</summary>
    /// <param name="s">Chord length [unit of the points].</param>
    public Vector2 SecondAt(double s) => SecondOn(Place(s));

    private Vector2 SecondOn((int K, double H, double A, double B) place)
    {
        var (k, _, a, b) = place;
        return (a * _bend[k]) + (b * _bend[k + 1]);
    }

    /// <summary>Distance of a point from the curve, by dropping a perpendicular from near a given chord length.</summary>
    /// <remarks><b>Method.</b> Newton's method for (r − p) · r′ = 0, kept within the curve's ends; for points near the curve.
    /// <b>Accuracy.</b> The foot is found to 1e-12 of the curve's length, or the ends of a step that no longer shortens.</remarks>
    /// <param name="p">The point.</param>
    /// <param name="near">A chord length near the foot of the perpendicular.</param>
    /// <returns>The distance [unit of the points], positive to the left of the curve; and the chord length of the foot.</returns>
    public (double Distance, double Foot) DistanceTo(Point2 p, double near)
    {
        var s = Math.Clamp(near, 0, _s[^1]);
        var place = Place(s);
        var gap = p - PointOn(place);
        while (true)
        {
            var first = FirstOn(place);
            var next = Math.Clamp(s + (gap.Dot(first) / (first.Dot(first) - gap.Dot(SecondOn(place)))), 0, _s[^1]);
            var nextPlace = Place(next);
            var nextGap = p - PointOn(nextPlace);
            if (!(nextGap.Length < gap.Length) || Math.Abs(next - s) <= 1e-12 * _s[^1])
                return (Math.Sign(first.Cross(gap)) * gap.Length, s);
            (s, place, gap) = (next, nextPlace, nextGap);
        }
    }

    private (int K, double H, double A, double B) Place(double s)
    {
        int low = 0, high = _s.Length - 1;
        while (high - low > 1)
        {
            var mid = (low + high) / 2;
            if (s < _s[mid])
                high = mid;
            else
                low = mid;
        }

        var h = _s[low + 1] - _s[low];
        var b = (s - _s[low]) / h;
        return (low, h, 1 - b, b);
    }

    private Vector2[] SecondDerivatives(Vector2? start, Vector2? end)
    {
        var n = _points.Length;
        var diagonal = new double[n];
        var above = new double[n];
        var right = new Vector2[n];
        for (var i = 0; i < n; i++)
        {
            // Row i: below * m[i-1] + diagonal * m[i] + above * m[i+1] = right.
            double below = 0;
            if (i == 0)
            {
                var h = _s[1];
                (diagonal[0], above[0], right[0]) = start is { } d
                    ? (h / 3, h / 6, ((1 / h) * (_points[1] - _points[0])) - d)
                    : (1.0, 0.0, default);
            }
            else if (i == n - 1)
            {
                var h = _s[i] - _s[i - 1];
                (below, diagonal[i], right[i]) = end is { } d
                    ? (h / 6, h / 3, d - ((1 / h) * (_points[i] - _points[i - 1])))
                    : (0.0, 1.0, default);
            }
            else
            {
                double h0 = _s[i] - _s[i - 1], h1 = _s[i + 1] - _s[i];
                (below, diagonal[i], above[i]) = (h0 / 6, (h0 + h1) / 3, h1 / 6);
                right[i] = ((1 / h1) * (_points[i + 1] - _points[i])) - ((1 / h0) * (_points[i] - _points[i - 1]));
            }

            if (i > 0)
            {
                var factor = below / diagonal[i - 1];
                diagonal[i] -= factor * above[i - 1];
                right[i] -= factor * right[i - 1];
            }
        }

        var bend = new Vector2[n];
        for (var i = n - 1; i >= 0; i--)
            bend[i] = (1 / diagonal[i]) * (i == n - 1 ? right[i] : right[i] - (above[i] * bend[i + 1]));
        return bend;
    }
}
