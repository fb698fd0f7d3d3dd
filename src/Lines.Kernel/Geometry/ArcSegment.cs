namespace Lines.Kernel.Geometry;

/// <summary>One straight line or circular arc of an <see cref="ArcPath"/>.</summary>
/// <remarks><b>Sign.</b> As <see cref="ArcPath"/>: the bulge is positive where the arc turns left.</remarks>
/// <param name="From">First point.</param>
/// <param name="To">Last point.</param>
/// <param name="Bulge">Tangent of a quarter of the turned angle; 0 is a straight line.</param>
public readonly record struct ArcSegment(Point2 From, Point2 To, double Bulge)
{
    /// <summary>Whether the segment is a straight line.</summary>
    public bool IsLine => Bulge == 0;

    /// <summary>Angle turned from the first point to the last [rad], positive to the left.</summary>
    public double Turn => 4 * Math.Atan(Bulge);

    /// <summary>Radius; infinite for a straight line.</summary>
    public double Radius => IsLine ? double.PositiveInfinity : From.DistanceTo(To) * (1 + (Bulge * Bulge)) / (4 * Math.Abs(Bulge));

    /// <summary>Length along the segment.</summary>
    public double Length => IsLine ? From.DistanceTo(To) : Radius * Math.Abs(Turn);

    /// <summary>Centre of the arc.</summary>
    /// <exception cref="InvalidOperationException">The segment is a straight line.</exception>
    public Point2 Centre
    {
        get
        {
            if (IsLine)
                throw new InvalidOperationException("a straight line has no centre");
            var chord = To - From;
            return From + (0.5 * chord) + ((1 - (Bulge * Bulge)) / (4 * Bulge) * chord.TurnedLeft);
        }
    }

    /// <summary>Unit direction at the first point.</summary>
    public Vector2 StartDirection => Turned((To - From).Unit(), -Turn / 2);

    /// <summary>Unit direction at the last point.</summary>
    public Vector2 EndDirection => Turned((To - From).Unit(), Turn / 2);

    /// <summary>Point at a fraction of the length, 0 to 1.</summary>
    public Point2 PointAt(double fraction)
    {
        if (IsLine)
            return From + (fraction * (To - From));
        var centre = Centre;
        return centre + Turned(From - centre, fraction * Turn);
    }

    /// <summary>Distance of a point from the segment, its ends included.</summary>
    public double DistanceTo(Point2 p)
    {
        if (IsLine)
        {
            var chord = To - From;
            var square = chord.Dot(chord);
            var along = square > 0 ? Math.Clamp((p - From).Dot(chord) / square, 0, 1) : 0;
            return p.DistanceTo(From + (along * chord));
        }

        var centre = Centre;
        Vector2 first = From - centre, here = p - centre;
        var angle = Math.Sign(Bulge) * Math.Atan2(first.Cross(here), first.Dot(here));
        if (angle < 0)
            angle += 2 * Math.PI;
        return angle <= Math.Abs(Turn)
            ? Math.Abs(here.Length - Radius)
            : Math.Min(p.DistanceTo(From), p.DistanceTo(To));
    }

    /// <summary>A vector turned by an angle [rad], positive to the left.</summary>
    internal static Vector2 Turned(Vector2 v, double angle)
    {
        var (sin, cos) = Math.SinCos(angle);
        return new Vector2((cos * v.X) - (sin * v.Y), (sin * v.X) + (cos * v.Y));
    }
}
