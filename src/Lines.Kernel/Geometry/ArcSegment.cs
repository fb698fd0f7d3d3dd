namespace Lines.Kernel.Geometry;

/// <summary>One straight line or circular arc of an <see cref="ArcPath"/>.</summary>
/// <remarks><b>Sign.</b> As <see cref="ArcPath"/>: the bulge is positive where the arc turns left.</remarks>
/// <param name="From">First point.</param>
/// <param name="To">Last point.</param>
/// <param name="Bulge">Tangent of a quarter of the turned angle; 0 is a straight line.</param>
public readonly record struct ArcSegment(Point2 From, Point2 To, double Bulge)
{
    /// <summary>Below this bulge an arc is taken for a line: it rises by less than 5e-9 of its chord, and its far center would cost as many digits.</summary>
    private const double FlattestBulge = 1e-8;

    /// <summary>Whether the segment is a straight line.</summary>
    public bool IsLine => Math.Abs(Bulge) < FlattestBulge;

    /// <summary>Angle turned from the first point to the last [rad], positive to the left.</summary>
    public double Turn => 4 * Math.Atan(Bulge);

    /// <summary>Radius; infinite for a straight line.</summary>
    public double Radius => IsLine ? double.PositiveInfinity : From.DistanceTo(To) * (1 + (Bulge * Bulge)) / (4 * Math.Abs(Bulge));

    /// <summary>Length along the segment.</summary>
    public double Length => IsLine ? From.DistanceTo(To) : Radius * Math.Abs(Turn);

    /// <summary>Center of the arc.</summary>
    /// <exception cref="InvalidOperationException">The segment is a straight line.</exception>
    public Point2 Center
    {
        get
        {
            if (IsLine)
                throw new InvalidOperationException("a straight line has no center");
            var chord = To - From;
            return From + (0.5 * chord) + ((1 - (Bulge * Bulge)) / (4 * Bulge) * chord.TurnedLeft);
        }
    }

    /// <summary>Unit direction at the first point.</summary>
    public Vector2 StartDirection => HalfTurned((To - From).Unit(), -1);

    /// <summary>Unit direction at the last point.</summary>
    public Vector2 EndDirection => HalfTurned((To - From).Unit(), 1);

    /// <summary>Point at a fraction of the length, 0 to 1; the ends are exactly the ends.</summary>
    /// <remarks><b>Method.</b> From the chord, not from the center, so that a nearly straight arc keeps its accuracy.</remarks>
    public Point2 PointAt(double fraction)
    {
        if (fraction == 1)
            return To;
        if (IsLine)
            return From + (fraction * (To - From));
        return Swept(fraction).Point;
    }

    /// <summary>Point of an arc at a fraction of the length, and its derivative by that fraction.</summary>
    internal (Point2 Point, Vector2 Slope) Swept(double fraction)
    {
        var half = Turn / 2;
        var chord = To - From;
        var (sine, cosine) = HalfTurn;
        var (sin, cos) = Math.SinCos(half * fraction);
        // The chord turned back by the half turn not yet swept points from the first point to the place.
        var toPlace = chord.Turned((sin * cosine) - (cos * sine), (cos * cosine) + (sin * sine));
        return (From + (sin / sine * toPlace), half / sine * toPlace.Turned(sin, cos));
    }

    /// <summary>The piece between two fractions of the length; a piece of an arc is the same circle.</summary>
    public ArcSegment Between(double from, double to) =>
        from == 0 && to == 1 ? this : new(PointAt(from), PointAt(to), IsLine ? 0 : Math.Tan(Turn * (to - from) / 4));

    /// <summary>The smallest upright rectangle that holds the segment.</summary>
    public Box2 Bounds()
    {
        var box = new Box2(Math.Min(From.X, To.X), Math.Min(From.Y, To.Y), Math.Max(From.X, To.X), Math.Max(From.Y, To.Y));
        if (IsLine || From == To || (RunsOneWay(true) && RunsOneWay(false)))
            return box;
        var first = Math.Atan2(StartDirection.Y, StartDirection.X);
        double low = Math.Min(first, first + Turn), high = Math.Max(first, first + Turn);
        for (var quarter = (int)Math.Ceiling(low / (Math.PI / 2)); quarter * Math.PI / 2 <= high; quarter++)
            box = box.With(PointAt(((quarter * Math.PI / 2) - first) / Turn));
        return box;
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

        var center = Center;
        Vector2 first = From - center, here = p - center;
        var angle = Math.Sign(Bulge) * Math.Atan2(first.Cross(here), first.Dot(here));
        if (angle < 0)
            angle += 2 * Math.PI;
        return angle <= Math.Abs(Turn)
            ? Math.Abs(here.Length - Radius)
            : Math.Min(p.DistanceTo(From), p.DistanceTo(To));
    }

    /// <summary>Whether one coordinate of the segment only rises or only falls on the way, told without its angle; a turn over half a circle is not told.</summary>
    /// <param name="upright">Whether of the abscissa, where it meets upright lines; else of the ordinate.</param>
    internal bool RunsOneWay(bool upright)
    {
        if (Math.Abs(Bulge) > 1)
            return false;
        var chord = To - From;
        Vector2 first = HalfTurned(chord, -1), last = HalfTurned(chord, 1);
        return upright ? first.X * last.X >= 0 : first.Y * last.Y >= 0;
    }

    // Sine and cosine of half the turn, which is twice the angle whose tangent is the bulge.
    private (double Sin, double Cos) HalfTurn => (2 * Bulge / (1 + (Bulge * Bulge)), (1 - (Bulge * Bulge)) / (1 + (Bulge * Bulge)));

    private Vector2 HalfTurned(Vector2 v, int sign)
    {
        var (sin, cos) = HalfTurn;
        return v.Turned(sign * sin, cos);
    }
}
