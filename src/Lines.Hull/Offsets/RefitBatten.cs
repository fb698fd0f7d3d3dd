using Lines.Kernel.Geometry;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Offsets;

/// <summary>A batten through points of a table: the curve of least bending energy that leaves its ends as the cubic through the four points there.</summary>
/// <param name="points">Points by rising abscissa, at least <see cref="FewestPoints"/>, no two the same.</param>
internal sealed class RefitBatten(IReadOnlyList<Point2> points)
{
    /// <summary>Points of a batten are further apart than this [m].</summary>
    public const double Closest = 0.001;

    /// <summary>Points a batten is laid through at least: its directions at the ends take four.</summary>
    public const int FewestPoints = 4;

    /// <summary>Steps of rounding that points of a batten are apart.</summary>
    public const double StepsApart = 8;

    private readonly CubicInterpolant _batten = new(points, Direction([.. points.Take(4)]), -Direction([.. points.Reverse().Take(4)]));

    /// <summary>The points.</summary>
    public IReadOnlyList<Point2> Points => points;

    /// <summary>The batten through points in any order, of those nearer than <see cref="Closest"/>, as they are rounded, or than
    /// <see cref="StepsApart"/> steps one: the rounding alone would tip the batten between them.</summary>
    /// <param name="points">The points.</param>
    /// <param name="step">Step to which they are rounded [m].</param>
    /// <returns>The batten; null where fewer than four points are apart.</returns>
    public static RefitBatten? Through(IReadOnlyList<Point2> points, double step) =>
        Apart(points, Math.Max(Closest + (2 * step), StepsApart * step)) is { Count: >= FewestPoints } apart ? new RefitBatten(apart) : null;

    /// <summary>The batten through points as a table rounded to a step has them.</summary>
    public static RefitBatten? ThroughRounded(IReadOnlyList<Point2> points, double step) =>
        Through([.. points.Select(p => new Point2(Rounded(p.X, step), Rounded(p.Y, step)))], step);

    /// <summary>A value rounded to a step, halves away from zero.</summary>
    public static double Rounded(double value, double step) => step * Math.Round(value / step, MidpointRounding.AwayFromZero);

    /// <summary>Points by rising abscissa, of those nearer than a distance the first; the last of all is kept.</summary>
    public static List<Point2> Apart(IReadOnlyList<Point2> points, double least)
    {
        var apart = new List<Point2>();
        var sorted = points.OrderBy(p => p.X).ToList();
        foreach (var p in sorted)
        {
            if (apart.Count == 0 || (p.DistanceTo(apart[^1]) > least && (p == sorted[^1] || p.DistanceTo(sorted[^1]) > least)))
                apart.Add(p);
        }

        return apart;
    }

    /// <summary>Ordinate at an abscissa between the ends.</summary>
    public double At(double x) => _batten.PointAt(Where(x)).Y;

    /// <summary>Distance of a point from the batten, square to it.</summary>
    public double DistanceTo(Point2 p) => Math.Abs(_batten.DistanceTo(p, Where(p.X)).Distance);

    // Chord length at which the batten has an abscissa.
    private double Where(double x)
    {
        if (x <= points[0].X)
            return 0;
        if (x >= points[^1].X)
            return _batten.Lengths[^1];
        int low = 0, high = points.Count - 1;
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = points[middle].X <= x ? (middle, high) : (low, middle);
        }

        return Root.Between(s => (_batten.PointAt(s).X - x, _batten.FirstAt(s).X), _batten.Lengths[low], _batten.Lengths[high]);
    }

    // Direction at its start of the cubic through four points over their chord length.
    private static Vector2 Direction(Point2[] four)
    {
        var s = new double[4];
        for (var k = 1; k < 4; k++)
            s[k] = s[k - 1] + four[k].DistanceTo(four[k - 1]);
        Vector2 sum = default;
        for (var i = 1; i < 4; i++)
        {
            // Derivative at the start of the i-th Lagrange polynomial; that of the first makes their sum zero.
            var weight = 1 / s[i];
            for (var j = 1; j < 4; j++)
            {
                if (j != i)
                    weight *= -s[j] / (s[i] - s[j]);
            }

            sum += weight * (four[i] - four[0]);
        }

        return sum;
    }
}
