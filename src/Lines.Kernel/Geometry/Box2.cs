using System.Runtime.InteropServices;

namespace Lines.Kernel.Geometry;

/// <summary>An upright rectangle, its edges included.</summary>
/// <param name="Left">Least abscissa.</param>
/// <param name="Bottom">Least ordinate.</param>
/// <param name="Right">Greatest abscissa.</param>
/// <param name="Top">Greatest ordinate.</param>
public readonly record struct Box2(double Left, double Bottom, double Right, double Top)
{
    /// <summary>The box that holds nothing; joining it to another gives the other.</summary>
    public static Box2 Nothing => new(double.PositiveInfinity, double.PositiveInfinity, double.NegativeInfinity, double.NegativeInfinity);

    /// <summary>Extent along the abscissa.</summary>
    public double Width => Right - Left;

    /// <summary>Extent along the ordinate.</summary>
    public double Height => Top - Bottom;

    /// <summary>The middle.</summary>
    public Point2 Center => new((Left + Right) / 2, (Bottom + Top) / 2);

    /// <summary>Whether it holds nothing at all, not even a point.</summary>
    public bool IsNothing => !(Left <= Right && Bottom <= Top);

    /// <summary>The corners, counter-clockwise from the lower left.</summary>
    public IReadOnlyList<Point2> Corners => [new(Left, Bottom), new(Right, Bottom), new(Right, Top), new(Left, Top)];

    /// <summary>The outline as a closed path, counter-clockwise.</summary>
    public ArcPath Outline => ArcPath.Through(Corners, closed: true);

    /// <summary>The smallest box around points.</summary>
    /// <exception cref="ArgumentException">There are no points.</exception>
    public static Box2 Around(IEnumerable<Point2> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        var box = Nothing;
        foreach (var p in points)
            box = box.With(p);
        return !box.IsNothing ? box : throw new ArgumentException("no points", nameof(points));
    }

    /// <summary>The box widened to hold a point.</summary>
    public Box2 With(Point2 p) => new(Math.Min(Left, p.X), Math.Min(Bottom, p.Y), Math.Max(Right, p.X), Math.Max(Top, p.Y));

    /// <summary>The smallest box around two.</summary>
    public Box2 With(Box2 other) =>
        new(Math.Min(Left, other.Left), Math.Min(Bottom, other.Bottom), Math.Max(Right, other.Right), Math.Max(Top, other.Top));

    /// <summary>The box with every side moved out by a distance (inward when negative).</summary>
    public Box2 Grown(double by) => new(Left - by, Bottom - by, Right + by, Top + by);

    /// <summary>The box moved.</summary>
    public Box2 Moved(Vector2 by) => new(Left + by.X, Bottom + by.Y, Right + by.X, Top + by.Y);

    /// <summary>Whether a point is inside or on an edge.</summary>
    public bool Holds(Point2 p) => p.X >= Left && p.X <= Right && p.Y >= Bottom && p.Y <= Top;

    /// <summary>Whether another box is inside, edges may touch.</summary>
    public bool Holds(Box2 b) => b.Left >= Left && b.Right <= Right && b.Bottom >= Bottom && b.Top <= Top;

    /// <summary>Whether two boxes have a point in common, be it on their edges.</summary>
    public bool Touches(Box2 b) => b.Left <= Right && b.Right >= Left && b.Bottom <= Top && b.Top >= Bottom;

    /// <summary>Whether it has a point in common with any of some boxes.</summary>
    public bool TouchesAny(List<Box2> boxes)
    {
        foreach (ref readonly var box in CollectionsMarshal.AsSpan(boxes))
        {
            if (Touches(box))
                return true;
        }

        return false;
    }

    /// <summary>Whether two boxes share an area.</summary>
    public bool Overlaps(Box2 other) => Left < other.Right && other.Left < Right && Bottom < other.Top && other.Bottom < Top;
}
