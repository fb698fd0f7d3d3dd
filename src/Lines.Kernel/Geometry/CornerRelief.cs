namespace Lines.Kernel.Geometry;

/// <summary>Inside corners cut out round, so that a round tool leaves nothing standing in them.</summary>
/// <remarks>
/// <para><b>Sign.</b> The path is closed and counter-clockwise: inside is on its left, and an inside corner turns right.</para>
/// <para><b>Method.</b> A tool of radius r that follows the outside of the path stops short of an inside corner. Moved along the bisector of
/// the corner until its circle runs through the corner itself, it cuts both sides back to 2 r cos θ from it, θ the half angle between
/// them; the path follows that circle. Only corners of two straight lines between 30 and 150 degrees apart are cut out: those of notches and slots.
/// A half circle cut into a straight side that is narrower than the tool becomes one about the same middle that the tool goes into.</para>
/// <para><b>Accuracy.</b> Rounding only: the corner lies on the arc in its place.</para>
/// </remarks>
public static class CornerRelief
{
    private const double Degree = Math.PI / 180;
    private const double LeastAngle = 30 * Degree;
    private const double GreatestAngle = 150 * Degree;

    /// <summary>Radius of a widened notch over that of the tool: one just as wide holds it fast.</summary>
    private const double Easy = 1.05;

    private const double Straight = 1e-6;

    /// <summary>Cuts out the inside corners of a path.</summary>
    /// <param name="path">The path.</param>
    /// <param name="radius">Radius of the tool, same unit as the path, positive.</param>
    /// <param name="tight">Inside corners left as they are because their sides are too short for the tool.</param>
    /// <returns>The path with its inside corners cut out.</returns>
    /// <exception cref="ArgumentException">The path is open.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The radius is not positive.</exception>
    public static ArcPath Of(ArcPath path, double radius, out IReadOnlyList<Point2> tight)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (!path.Closed)
            throw new ArgumentException("only a closed path has an inside", nameof(path));
        if (!(radius > 0 && double.IsFinite(radius)))
            throw new ArgumentOutOfRangeException(nameof(radius), radius, "the tool's radius must be positive");
        path = Widened(path, Easy * radius);
        var segments = path.Segments();
        var reach = new double[segments.Count];
        for (var i = 0; i < segments.Count; i++)
            reach[i] = ReachAt(segments[(i + segments.Count - 1) % segments.Count], segments[i], radius);
        var left = new List<Point2>();
        var vertices = new List<ArcVertex>();
        for (var i = 0; i < segments.Count; i++)
        {
            ArcSegment before = segments[(i + segments.Count - 1) % segments.Count], after = segments[i];
            if (reach[i] == 0)
            {
                vertices.Add(new ArcVertex(after.From, after.Bulge));
            }
            else if (reach[i] + reach[(i + segments.Count - 1) % segments.Count] > before.Length || reach[i] + reach[(i + 1) % segments.Count] > after.Length)
            {
                left.Add(after.From);
                vertices.Add(new ArcVertex(after.From, after.Bulge));
            }
            else
            {
                // The circle lies to the right of the path, which runs clockwise round it through 2π - 4θ.
                var cosine = reach[i] / (2 * radius);
                vertices.Add(new ArcVertex(after.From - (reach[i] * before.EndDirection), -cosine / Math.Sqrt(1 - (cosine * cosine))));
                vertices.Add(new ArcVertex(after.From + (reach[i] * after.StartDirection), 0));
            }
        }

        tight = left;
        return new ArcPath(vertices, true);
    }

    // Half circles into a straight side that are too narrow.
    private static ArcPath Widened(ArcPath path, double radius)
    {
        var segments = path.Segments();
        var vertices = path.Vertices.ToArray();
        for (var i = 0; i < segments.Count; i++)
        {
            ArcSegment before = segments[(i + segments.Count - 1) % segments.Count], notch = segments[i], after = segments[(i + 1) % segments.Count];
            var along = before.EndDirection;
            if (Math.Abs(notch.Bulge + 1) > Straight || notch.Radius >= radius || !before.IsLine || !after.IsLine || Math.Abs(along.Cross(after.StartDirection)) > Straight
                || Math.Min(before.Length, after.Length) <= radius - notch.Radius)
                continue;
            var more = (radius - notch.Radius) * along;
            vertices[i] = vertices[i] with { Point = notch.From - more };
            vertices[(i + 1) % vertices.Length] = vertices[(i + 1) % vertices.Length] with { Point = notch.To + more };
        }

        return new ArcPath(vertices, true);
    }

    // How far the sides are cut back; 0 where the corner stays.
    private static double ReachAt(ArcSegment before, ArcSegment after, double radius)
    {
        if (!before.IsLine || !after.IsLine)
            return 0;
        Vector2 a = before.EndDirection, b = after.StartDirection;
        var between = Math.PI + Math.Atan2(a.Cross(b), a.Dot(b));
        return between is > LeastAngle and < GreatestAngle ? 2 * radius * Math.Cos(between / 2) : 0;
    }
}
