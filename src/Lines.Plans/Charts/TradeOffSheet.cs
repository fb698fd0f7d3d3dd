using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Plans.LinesPlan;
using Lines.Plans.Paper;
using Lines.Plans.Report;

namespace Lines.Plans.Charts;

/// <summary>A variant of a sweep on a chart.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Across">Its figure to the right.</param>
/// <param name="Up">Its figure up.</param>
/// <param name="IsFair">Whether it is fair.</param>
public readonly record struct TradeOff(int Number, double Across, double Up, bool IsFair);

/// <summary>What one figure costs in another over the variants of a sweep: a dot for each, and a line through those that no other beats in both.</summary>
/// <remarks><b>Frame.</b> The sheet, millimeters, y up.</remarks>
public static class TradeOffSheet
{
    private const double Margin = 12.7, Height = 200, Dot = 0.7;

    private static readonly Layer s_fair = new("variants", new Ink(0.35));
    private static readonly Layer s_unfair = new("variants-not-fair", new Ink(0.13));
    private static readonly Layer s_front = new("none-better", new Ink(0.25, [2, 1]));

    /// <summary>The sheet; null where no variant has both figures.</summary>
    /// <param name="title">Title of the design.</param>
    /// <param name="across">Name of the figure to the right.</param>
    /// <param name="up">Name of the figure up.</param>
    /// <param name="variants">The variants.</param>
    /// <param name="afloat">At what the variants float, a sentence.</param>
    /// <param name="width">Width of the sheet [mm].</param>
    public static Sheet? Of(string title, string across, string up, IReadOnlyList<TradeOff> variants, string afloat, double width)
    {
        ArgumentNullException.ThrowIfNull(variants);
        if (variants.Count == 0)
            return null;
        var marks = new PageMarks();
        double room = width - (2 * Margin), top = Height - Margin - 19;
        marks.Text(PlanInks.Titles, $"{title}: {up} against {across}", new Point2(Margin, Height - Margin - 3), 4, room);
        marks.Text(PlanInks.Lettering, "A variant a dot, an open one where it is not fair; the dashed line joins those that none is under in both. Numbers are those of the table.", new Point2(Margin, Height - Margin - 8.5), 2, room);
        marks.Text(PlanInks.Lettering, afloat, new Point2(Margin, Height - Margin - 12), 2, room);
        var chart = new ChartFrame(
            new Box2(Margin + ChartFrame.Left, Margin + 12 + ChartFrame.Foot, width - Margin, top),
            ChartAxis.Of(across, [.. variants.Select(v => v.Across)], 8, fromZero: false),
            ChartAxis.Of(up, [.. variants.Select(v => v.Up)], 6, fromZero: false));
        chart.Draw(marks);
        var front = Front(variants);
        marks.Path(s_front, [.. front.Select(v => chart.At(v.Across, v.Up))]);
        foreach (var v in variants)
        {
            var at = chart.At(v.Across, v.Up);
            if (v.IsFair)
                marks.Area(s_fair, Circle(at));
            else
                marks.Path(s_unfair, [.. Circle(at), Circle(at)[0]]);
        }

        // Every number that finds room: the ends of the dashed line first.
        List<Point2> lettered = [];
        foreach (var v in front.Concat(variants))
        {
            var at = chart.At(v.Across, v.Up) + new Vector2(-1, 1.2);
            if (lettered.Exists(p => Math.Abs(p.X - at.X) < 7 && Math.Abs(p.Y - at.Y) < 3))
                continue;
            lettered.Add(at);
            marks.Text(PlanInks.Lettering, Invariant($"{v.Number}"), at, 1.8, anchor: Anchor.Right);
        }

        marks.Text(PlanInks.Lettering, Cautions.Figures, new Point2(Margin, Margin), 2, room);
        return new Sheet($"{title}, {up} against {across}", width, Height, marks.All);
    }

    /// <summary>The variants that no other is under in both figures, from the left.</summary>
    /// <param name="variants">The variants.</param>
    public static IReadOnlyList<TradeOff> Front(IReadOnlyList<TradeOff> variants)
    {
        var front = new List<TradeOff>();
        foreach (var v in variants.OrderBy(v => v.Across).ThenBy(v => v.Up).ThenBy(v => v.Number))
        {
            if (front.Count == 0 || v.Up < front[^1].Up)
                front.Add(v);
        }

        return front;
    }

    private static Point2[] Circle(Point2 at) => [.. Enumerable.Range(0, 12).Select(k => at + (Dot * new Vector2(Math.Cos(Math.PI * k / 6), Math.Sin(Math.PI * k / 6))))];
}
