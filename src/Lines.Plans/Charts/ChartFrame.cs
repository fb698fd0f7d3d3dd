using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Plans.LinesPlan;
using Lines.Plans.Paper;

namespace Lines.Plans.Charts;

/// <summary>The ruled frame of a chart and where values lie in it.</summary>
/// <remarks><b>Frame.</b> The sheet, millimeters, y up.</remarks>
/// <param name="Box">The ruled part; numbers stand below and to the left of it.</param>
/// <param name="Across">What is measured to the right.</param>
/// <param name="Up">What is measured up.</param>
internal sealed record ChartFrame(Box2 Box, ChartAxis Across, ChartAxis Up)
{
    /// <summary>Room for numbers and titles left of the box and below it [mm].</summary>
    public const double Left = 19, Foot = 12;

    /// <summary>The place of a pair of values.</summary>
    public Point2 At(double across, double up) => new(Box.Left + (Across.Part(across) * Box.Width), Box.Bottom + (Up.Part(up) * Box.Height));

    /// <summary>Draws lines, numbers and titles.</summary>
    public void Draw(PageMarks marks)
    {
        foreach (var value in Across.Lines)
        {
            var foot = At(value, Up.From);
            marks.Line(PlanInks.Grid, foot, foot with { Y = Box.Top });
            marks.Text(PlanInks.Lettering, Across.Told(value), foot + new Vector2(0, -4.6), 2.4, anchor: Anchor.Center);
        }

        foreach (var value in Up.Lines)
        {
            var foot = At(Across.From, value);
            marks.Line(value == Up.From ? PlanInks.Fine : PlanInks.Grid, foot, foot with { X = Box.Right });
            marks.Text(PlanInks.Lettering, Up.Told(value), foot + new Vector2(-2, 0), 2.4, anchor: Anchor.MiddleRight);
        }

        marks.Text(PlanInks.Lettering, Across.Title, new Point2(Box.Center.X, Box.Bottom - 8.5), 2.4, Box.Width, Anchor.Center);
        marks.Text(PlanInks.Lettering, Up.Title, new Point2(Box.Left - 14, Box.Center.Y), 2.4, Box.Height, Anchor.Center, Math.PI / 2);
    }
}
