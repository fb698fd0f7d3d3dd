using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>The one square that shows whether a file came out full size: beside every part for the router, on the first page on paper.</summary>
public static class TestSquare
{
    /// <summary>Length of its sides [mm].</summary>
    public const double Side = 100;

    /// <summary>Its size as it is written; 3 15/16 in is 100.01 mm, nearer than a rule is read.</summary>
    public const string Size = "100 mm (3 15/16 in)";

    /// <summary>The square around a middle.</summary>
    public static Box2 Around(Point2 middle) => new Box2(middle.X, middle.Y, middle.X, middle.Y).Grown(Side / 2);
}
