using Lines.Construction.Molds;
using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;

namespace Lines.Plans.Molds;

/// <summary>A hole of a mold at full size [mm], with what it is for and how wide.</summary>
internal static class MoldHoleDrawing
{
    private const string Clamp = "CLAMP HOLE";
    private const double Inside = 2.6;
    private const double Beside = 3;
    private const double Gap = 2;

    /// <summary>A hole at full size [mm].</summary>
    public static (Point2 At, double Radius) Circle(MoldHole hole) => (new Point2(1000 * hole.At.X, 1000 * hole.At.Y), 500 * hole.Diameter);

    /// <summary>How wide a hole is: drills come in whole 32nds of an inch or in millimeters.</summary>
    public static string Size(MoldHole hole, LengthNotation notation) => new Length(hole.Diameter).ToSize(notation, brief: true);

    /// <summary>The circle and its lettering: in a clamp hole, beside a screw's.</summary>
    /// <param name="outline">The part.</param>
    /// <param name="hole">The hole [m].</param>
    /// <param name="center">Abscissa toward which a screw's lettering runs where there is room [mm].</param>
    /// <param name="notation">How lengths are written.</param>
    public static IEnumerable<Mark> Of(PartOutline outline, MoldHole hole, double center, LengthNotation notation)
    {
        var (at, radius) = Circle(hole);
        var isClamp = hole.Kind == MoldHoleKind.Clamp;
        var size = Size(hole, notation);
        var name = $"{(isClamp ? Clamp : "SCREW")} {size}";
        yield return new PathMark(isClamp ? MoldInks.Holes : MoldInks.Drill, ArcPath.Circle(at, radius), Name: name);
        if (isClamp)
        {
            yield return new TextMark(MoldInks.Text, Clamp, at + new Vector2(0, 0.5 * Inside), Inside, Anchor.Center);
            yield return new TextMark(MoldInks.Text, size, at - new Vector2(0, 1.5 * Inside), Inside, Anchor.Center);
            yield break;
        }

        int[] sides = at.X <= center ? [1, -1] : [-1, 1];
        var text = sides.Select(side => outline.Fitted(
            new TextMark(MoldInks.Text, name, at + new Vector2(side * (radius + Gap), -Beside / 2), Beside, side > 0 ? Anchor.Left : Anchor.Right),
            (double.NegativeInfinity, double.PositiveInfinity))).FirstOrDefault(t => t is not null);
        if (text is not null)
            yield return text;
    }
}
