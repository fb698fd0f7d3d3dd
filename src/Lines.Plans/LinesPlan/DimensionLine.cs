using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using Lines.Plans.Paper;

namespace Lines.Plans.LinesPlan;

/// <summary>A dimension: a line between two arrowheads with its figure in a gap, and extension lines to what it measures.</summary>
internal static class DimensionLine
{
    private const double Height = 2;
    private const double Arrow = 2.2;

    /// <summary>A level dimension.</summary>
    /// <param name="marks">The sheet.</param>
    /// <param name="from">Left end of what is measured [mm].</param>
    /// <param name="to">Right end of what is measured [mm].</param>
    /// <param name="y">Ordinate of the dimension line [mm].</param>
    /// <param name="text">The figure.</param>
    public static void Level(PageMarks marks, Point2 from, Point2 to, double y, string text)
    {
        Extension(from, y);
        Extension(to, y);
        Point2 a = new(from.X, y), b = new(to.X, y);
        Draw(marks, a, b, text, 0);

        void Extension(Point2 p, double to)
        {
            var up = Math.Sign(to - p.Y);
            marks.Line(PlanInks.Dimensions, new Point2(p.X, p.Y + (up * 1)), new Point2(p.X, to + (up * 1.2)));
        }
    }

    /// <summary>An upright dimension.</summary>
    public static void Upright(PageMarks marks, Point2 low, Point2 high, double x, string text)
    {
        foreach (var p in new[] { low, high })
        {
            var side = Math.Sign(x - p.X);
            marks.Line(PlanInks.Dimensions, new Point2(p.X + (side * 1), p.Y), new Point2(x + (side * 1.2), p.Y));
        }

        Draw(marks, new Point2(x, low.Y), new Point2(x, high.Y), text, Math.PI / 2);
    }

    private static void Draw(PageMarks marks, Point2 a, Point2 b, string text, double angle)
    {
        var along = (b - a).Unit();
        var length = a.DistanceTo(b);
        var half = (StrokeLettering.Width(text, Height) / 2) + 1;
        var middle = a + (length / 2 * along);
        if (length < (2 * half) + (3 * Arrow))
        {
            // Too short for the figure inside: arrows from outside, figure beyond the far end.
            marks.Line(PlanInks.Dimensions, a - (2 * Arrow * along), b + (2 * Arrow * along));
            Head(marks, a, -along);
            Head(marks, b, along);
            marks.Text(PlanInks.Lettering, text, b + (((2 * Arrow) + 1) * along), Height, anchor: Anchor.MiddleLeft, angle: angle);
            return;
        }

        marks.Line(PlanInks.Dimensions, a, middle - (half * along));
        marks.Line(PlanInks.Dimensions, middle + (half * along), b);
        Head(marks, a, along);
        Head(marks, b, -along);
        marks.Text(PlanInks.Lettering, text, middle, Height, anchor: Anchor.Middle, angle: angle);
    }

    // A slim filled head with its tip at a point; the shaft goes the way it is told.
    private static void Head(PageMarks marks, Point2 tip, Vector2 shaft)
    {
        var side = 0.14 * Arrow * shaft.TurnedLeft;
        var back = tip + (Arrow * shaft);
        marks.Area(PlanInks.Dimensions, [tip, back + side, back - side]);
    }
}
