using Lines.Hull.Form;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;

namespace Lines.Hull.Fairness;

/// <summary>What a line is meant to do: which way it bulges, and where it may do otherwise.</summary>
/// <remarks>
/// <para>A boat whose waterlines and sections all bulge outward on convex end profiles bulges in every plane, so by default no
/// line may curve inward anywhere. Three things are meant:</para>
/// <list type="bullet">
/// <item>Where hollow lines are asked for, every lengthwise line may be hollow within 0.4 of the hull's length, and of its
/// own, from either end, and so may the sections that stand there.</item>
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
/// <param name="TurnZone">Part of its length from either end within which it may turn sharply.</param>
/// <param name="Meant">Why a hollow at a place is meant, as the end of a sentence; null where it is not.</param>
internal sealed record Intention(
    string Name, FlatAxes Axes, int OutwardSign, double HollowLimit, double TurnZone, Func<Point3, string?> Meant)
{
    private const double HollowPart = 0.4;
    private const double TopsidePart = 0.25;
    private const string HollowEnds = "where hollow lines were asked for";

    /// <summary>Whether a hollow at a place is meant.</summary>
    public bool Asks(Point3 p) => Meant(p) is not null;

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
            line.Kind switch
            {
                LineKind.Station or LineKind.Stem or LineKind.Stern => BattenTest.Anywhere,
                LineKind.Buttock => BattenTest.ButtockZone,
                _ => BattenTest.EndZone,
            },
            p => dials.Hollow && (NearEnd(p.X, 0, dials.Length, HollowPart) || OwnEnd(p)) ? HollowEnds
                : line.Kind == LineKind.Buttock && InTopsides(p) ? "above the water, as in topsides it may"
                : null);

        // A low waterline ends far from the hull's ends: its own are meant.
        bool OwnEnd(Point3 p) => line.Kind != LineKind.Station && NearEnd(p.X, line.Start.Point.X, line.End.Point.X, HollowPart);

        bool InTopsides(Point3 p) => p.Z > hull.Draft && NearEnd(p.X, line.Start.Point.X, line.End.Point.X, TopsidePart);
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
            BattenTest.EndZone,
            p => mixed ? "as it must with one end higher and one lower than its middle"
                : dials.Hollow && NearEnd(p.X, 0, dials.Length, HollowPart) ? HollowEnds
                : null);
    }

    private static bool NearEnd(double x, double from, double to, double part) =>
        Math.Min(Math.Abs(x - from), Math.Abs(x - to)) <= part * Math.Abs(to - from);
}
