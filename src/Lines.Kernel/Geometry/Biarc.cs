namespace Lines.Kernel.Geometry;

/// <summary>A place in a plane with the direction in which a curve passes it.</summary>
/// <param name="Point">The place.</param>
/// <param name="Direction">Direction of travel, of any length but zero.</param>
public readonly record struct DirectedPoint(Point2 Point, Vector2 Direction);

/// <summary>Two arcs that join two directed points and share their tangent where they meet.</summary>
/// <param name="First">The arc that leaves the first point along its direction.</param>
/// <param name="Second">The arc that reaches the second point along its direction.</param>
public readonly record struct Biarc(ArcSegment First, ArcSegment Second)
{
    /// <summary>The biarc whose two arcs have tangent legs of one length.</summary>
    /// <remarks>
    /// <para><b>Method.</b> With unit directions a and b, chord c and leg d, the arcs meet tangentially halfway between the ends of
    /// the legs when |c - d (a + b)| = 2 d, a quadratic in d; its positive root bends the least.</para>
    /// <para><b>Accuracy.</b> Rounding only: end directions and the common tangent are met exactly.</para>
    /// </remarks>
    /// <param name="from">First point; its direction need not be of length one.</param>
    /// <param name="to">Second point.</param>
    /// <returns>The biarc, or null where the points coincide or no arcs of less than a half turn join them.</returns>
    public static Biarc? Between(DirectedPoint from, DirectedPoint to)
    {
        Vector2 a = from.Direction.Unit(), b = to.Direction.Unit(), chord = to.Point - from.Point;
        var square = chord.Dot(chord);
        if (!(square > 0))
            return null;
        double along = chord.Dot(a + b), bend = 2 * (1 - a.Dot(b));
        // The root of bend d² + 2 along d - square = 0 written so that bend = 0 needs no case of its own.
        var denominator = along + Math.Sqrt((along * along) + (bend * square));
        if (!(denominator > 0))
            return null;
        var leg = square / denominator;
        var meeting = from.Point + (0.5 * (chord + (leg * (a - b))));
        Vector2 first = meeting - from.Point, second = to.Point - meeting;
        if (!(first.Dot(a) > 0 && second.Dot(b) > 0))
            return null;
        return new Biarc(
            new ArcSegment(from.Point, meeting, QuarterTangent(a, first)),
            new ArcSegment(meeting, to.Point, QuarterTangent(second, b)));
    }

    // The chord of an arc makes half the turn with either end's tangent.
    private static double QuarterTangent(Vector2 before, Vector2 after) =>
        Math.Tan(Math.Atan2(before.Cross(after), before.Dot(after)) / 2);
}
