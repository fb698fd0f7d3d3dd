using Lines.Drawing.Model;
using Lines.Hull.Propulsion;
using Lines.Hull.Resistance;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Charts;
using Lines.Plans.Figures;
using Lines.Plans.LinesPlan;
using Lines.Plans.Paper;
using Lines.Plans.Report;

namespace Lines.Plans.Resistance;

/// <summary>What a boat takes and what her crew gives, against speed: watts with the bands of people above, the parts of the drag below.</summary>
/// <remarks><b>Frame.</b> The sheet, millimeters, y up; speed to the right.</remarks>
public static class DragSheet
{
    private const double Margin = 12.7, Left = 20, Right = 46;

    /// <summary>Heights of the two charts and of what stands above each [mm].</summary>
    private const double Watts = 74, Parts = 56, Head = 22, Between = 26, Foot = 37;

    /// <summary>Speeds drawn, and the power the upper chart ends at [W].</summary>
    private const int Drawn = 60;
    private const double MostWatts = 400;

    private static readonly Layer s_band = new("people", new Ink(0.05, null, 0.85), 9);
    private static readonly Layer s_power = new("crew-power", new Ink(0.5));
    private static readonly (string Name, Func<DragAtSpeed, double> Of, Layer Layer)[] s_parts =
    [
        ("total", d => d.Total, new("drag-total", new Ink(0.5))),
        ("friction", d => d.Friction, new("drag-friction", new Ink(0.25))),
        ("form", d => d.Form, new("drag-form", new Ink(0.25, [4, 1.2]))),
        ("waves", d => d.Wave, new("drag-waves", new Ink(0.25, [1.6, 1]))),
        ("interference", d => d.Interference, new("drag-interference", new Ink(0.25, [6, 1.2, 1.2, 1.2]))),
        ("transom", d => d.Transom, new("drag-transom", new Ink(0.25, [6, 1, 0.6, 1]))),
        ("air", d => d.Air, new("drag-air", new Ink(0.25, [0.6, 1]))),
        ("appendages", d => d.Appendages, new("drag-appendages", new Ink(0.25, [2.5, 0.8]))),
    ];

    /// <summary>The sheet.</summary>
    /// <param name="title">Title of the design.</param>
    /// <param name="drag">The estimate.</param>
    /// <param name="crew">The crew.</param>
    /// <param name="width">Width of the sheet [mm].</param>
    /// <param name="outriggers">Whether to caution about outriggers.</param>
    /// <param name="lies">How the boat lies in the water, in words.</param>
    public static Sheet Of(string title, DragEstimate drag, CrewBook crew, double width, bool outriggers, string lies)
    {
        ArgumentNullException.ThrowIfNull(drag);
        ArgumentNullException.ThrowIfNull(crew);
        double height = Margin + Head + Watts + Between + Parts + Foot, room = width - (2 * Margin), fastest = UsualSpeeds.Fastest(drag.Length);
        var marks = new PageMarks();
        DragAtSpeed[] found = [.. Enumerable.Range(2, Drawn - 1).Select(k => drag.At(fastest * k / Drawn))];
        marks.Text(PlanInks.Titles, $"{title}: watts and drag against speed", new Point2(Margin, height - Margin - 3), 4, room);
        marks.Text(PlanInks.Lettering, FigureText.Capital(crew.Crew) + $". Calm deep water, {lies}; estimates.", new Point2(Margin, height - Margin - 8.5), 2, room);
        var upper = new Box2(Margin + Left, height - Margin - Head - Watts, width - Margin - Right, height - Margin - Head);
        var lower = new Box2(upper.Left, upper.Bottom - Between - Parts, upper.Right, upper.Bottom - Between);
        Power(marks, found, crew.Power, Over(upper, fastest / Standards.Knot, crew.Power.Crew == 1 ? "watts" : "watts, each of two", 0, MostWatts));
        var unit = FigureText.UnitOf(Quantity.Drag, crew.Notation);
        Drags(marks, found, drag.Hulls > 1, Over(lower, fastest / Standards.Knot, $"drag, {unit.Name}", Least(found) / unit.Size, found.Max(d => d.Total) / unit.Size), unit.Size);
        string[] notes = [DragBook.Range, CrewBook.Worth[0], .. outriggers ? [Cautions.Outriggers] : Array.Empty<string>(), Cautions.Figures];
        for (var k = 0; k < notes.Length; k++)
            marks.Text(PlanInks.Lettering, notes[k], new Point2(Margin, Margin + (3.5 * (notes.Length - 1 - k))), 2, room);
        return new Sheet($"{title}, watts and drag", width, height, marks.All);
    }

    // A band reaches from what an hour takes to what eight hours take; the names stand to its right.
    private static void Power(PageMarks marks, DragAtSpeed[] found, CrewPower power, ChartFrame chart)
    {
        foreach (var person in Stamina.All)
        {
            double low = person.Points[^1].Watts, high = person.WattsFor(3600)!.Value;
            Box2 band = new(chart.Box.Left, chart.At(0, low).Y, chart.Box.Right, chart.At(0, high).Y);
            marks.Box(s_band, band, filled: true);
            marks.Text(PlanInks.Lettering, Invariant($"{person.Name}: one hour, {high:0} W"), new Point2(chart.Box.Right + 2, band.Top), 2, Right - 2, Anchor.MiddleLeft);
            marks.Text(PlanInks.Lettering, Invariant($"{person.Name}: eight hours, {low:0} W"), new Point2(chart.Box.Right + 2, band.Bottom - (person == Stamina.Athlete ? 2.2 : 0)), 2, Right - 2, Anchor.MiddleLeft);
        }

        var spent = Stamina.HealthyAdult.Points[0].Watts;
        marks.Text(PlanInks.Lettering, Invariant($"{Stamina.HealthyAdult.Name}: ten minutes, {spent:0} W"), new Point2(chart.Box.Right + 2, chart.At(0, spent).Y + 1.6), 2, Right - 2, Anchor.MiddleLeft);
        chart.Draw(marks);
        Curve(marks, chart, s_power, found.Select(d => (d.Speed / Standards.Knot, power.WattsEach(d))));
    }

    private static void Drags(PageMarks marks, DragAtSpeed[] found, bool several, ChartFrame chart, double unit)
    {
        chart.Draw(marks);
        var ends = s_parts.Where(p => p.Name is "interference" ? several : p.Name is not ("transom" or "appendages") || found.Any(d => p.Of(d) != 0))
            .Select(p => (p.Name, p.Of, p.Layer, chart.At(0, p.Of(found[^1]) / unit).Y)).OrderBy(p => p.Y).ToList();
        var below = double.NegativeInfinity;
        foreach (var (name, of, layer, y) in ends)
        {
            Curve(marks, chart, layer, found.Select(d => (d.Speed / Standards.Knot, of(d) / unit)));
            var at = below = Math.Max(y, below + 3.2);
            marks.Line(layer, new Point2(chart.Box.Right + 2, at), new Point2(chart.Box.Right + 14, at));
            marks.Text(PlanInks.Lettering, name, new Point2(chart.Box.Right + 16, at), 2, Right - 16, Anchor.MiddleLeft);
        }
    }

    // What is drawn below nothing; less than a line's breadth below needs no room of its own.
    private static double Least(DragAtSpeed[] found)
    {
        var least = found.Min(d => Math.Min(d.Interference, Math.Min(d.Air, d.Total)));
        return least > -0.02 * found.Max(d => d.Total) ? 0 : least;
    }

    /// <summary>A chart over knots, the axis up from zero or below it.</summary>
    private static ChartFrame Over(Box2 box, double knots, string name, double least, double most) =>
        new(box, ChartAxis.Of("speed, knots", [knots], 9, fromZero: true), ChartAxis.Of(name, [least, most], 6, fromZero: true));

    /// <summary>A curve as far as the chart reaches up.</summary>
    private static void Curve(PageMarks marks, ChartFrame chart, Layer layer, IEnumerable<(double Knots, double Value)> points)
    {
        List<Point2> inside = [];
        (double Knots, double Value)? before = null;
        foreach (var p in points)
        {
            if (p.Value > chart.Up.To)
            {
                if (before is var (knots, value))
                    inside.Add(chart.At(knots + ((p.Knots - knots) * (chart.Up.To - value) / (p.Value - value)), chart.Up.To));
                break;
            }

            inside.Add(chart.At(p.Knots, p.Value));
            before = p;
        }

        marks.Path(layer, inside);
    }
}
