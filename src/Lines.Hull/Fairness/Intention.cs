using Lines.Hull.Form;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Fairness;

/// <summary>What a line is meant to do: which way it bulges, and where it may do otherwise.</summary>
/// <remarks>
/// <para>A boat whose waterlines and sections all bulge outward on convex end profiles bulges in every plane, so by default no
/// line may curve inward anywhere. Three things are meant:</para>
/// <list type="bullet">
/// <item>Where hollow lines are asked for, every lengthwise line may be hollow within a quarter of the hull's length from either
/// end, and so may the sections that stand there.</item>
/// <item>A buttock may reverse above the design waterline in the outer quarters of its length: there it runs up through
/// flaring topsides toward a rising sheer, and an S is the shape that gives. Below the water a reversed buttock is a fault.</item>
/// <item>The sheer in profile sags between ends that are higher than its middle, and arches between ends that are lower. With one
/// end higher and one lower it must reverse somewhere, and may.</item>
/// </list>
/// </remarks>
/// <param name="Name">Name of the line in this view.</param>
/// <param name="Axes">The axes in which it is judged.</param>
/// <param name="OutwardSign">Sign of the curvature in those axes where the line bulges as meant.</param>
/// <param name="HollowLimit">How deep an unasked hollow may be [m].</param>
/// <param name="TurnsAnywhere">Whether it may turn sharply anywhere, as sections and end profiles do.</param>
/// <param name="Asks">Whether a hollow at a place was asked for.</param>
internal sealed record Intention(
    string Name, FlatAxes Axes, int OutwardSign, double HollowLimit, bool TurnsAnywhere, Func<Point3, bool> Asks)
{
    private const double EndQuarter = 0.25;

    /// <summary>What a line is meant to do in its own axes.</summary>
    public static Intention Of(HullLine line, HullSurface hull)
    {
        var dials = hull.Dials;
        var underWater = line.Kind == LineKind.Waterline && line.Position < hull.Draft;
        return new Intention(
            line.Kind == LineKind.Sheer ? "sheer in plan" : line.Name,
            line.Axes,
            line.Tag.OutwardSign,
            underWater ? Limits.HollowUnderWater(dials.Length) : Limits.Hollow,
            line.Kind is LineKind.Station or LineKind.Stem or LineKind.Stern,
            p => (dials.Hollow && NearEnd(p.X, 0, dials.Length)) || (line.Kind == LineKind.Buttock && InTopsides(p)));

        bool InTopsides(Point3 p) => p.Z > hull.Draft && NearEnd(p.X, line.Start.Point.X, line.End.Point.X);
    }

    /// <summary>What the sheer is meant to do in profile.</summary>
    public static Intention OfSheerProfile(HullSurface hull)
    {
        var dials = hull.Dials;
        double fore = dials.Bow.Sheer - dials.Depth, aft = dials.Stern.Sheer - dials.Depth;
        var mixed = fore * aft < 0;
        return new Intention(
            "sheer in profile",
            FlatAxes.Profile,
            fore + aft < 0 ? -1 : 1,
            Limits.Hollow,
            false,
            p => mixed || (dials.Hollow && NearEnd(p.X, 0, dials.Length)));
    }

    private static bool NearEnd(double x, double from, double to) =>
        Math.Min(Math.Abs(x - from), Math.Abs(x - to)) <= EndQuarter * Math.Abs(to - from);
}
