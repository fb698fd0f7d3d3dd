using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Figures;
using Lines.Plans.LinesPlan;
using Lines.Plans.Paper;
using Lines.Plans.Report;

namespace Lines.Plans.Stability;

/// <summary>The righting arms of all load cases against heel: full while they count, dashed past downflooding or the end of the range.</summary>
/// <remarks><b>Frame.</b> The sheet, millimeters, y up; heel to the right, arms up.</remarks>
internal static class RightingArmsSheet
{
    /// <summary>Height of the drawing without its names [mm].</summary>
    private const double Chart = 118;

    private const double Margin = 12.7;
    private const double Left = 20;
    private const double Head = 24;
    private const double Row = 4.6;

    /// <summary>Points between two angles computed: the cubic through them with their own slopes looks smooth.</summary>
    private const int Chords = 8;

    private static readonly Layer s_full = new("arms", new Ink(0.45));
    private static readonly Layer s_dashed = new("arms-out-of-range", new Ink(0.25, [2.2, 1.4]));

    /// <summary>The drawing as a sheet of its own.</summary>
    /// <param name="book">The load cases.</param>
    /// <param name="width">Width of the sheet [mm].</param>
    public static Sheet Of(StabilityBook book, double width)
    {
        var sides = book.Sides.Where(s => s.Arms.Curve.Count > 1).ToList();
        double height = Head + Chart + 14 + (Row * (sides.Count + 2)) + Margin, room = width - (2 * Margin);
        var marks = new PageMarks();
        var box = new Box2(Margin + Left, height - Head - Chart, width - Margin, height - Head);
        marks.Text(PlanInks.Titles, $"{book.Title}: righting arms", new Point2(Margin, height - Margin - 3), 4, room);
        marks.Text(PlanInks.Lettering, "Free trim. Full lines count; dashed ones do not: water has come in at the cross, where sheer and openings are then taken as closed, or the arm has ended.", new Point2(Margin, height - Margin - 8.5), 2, room);
        if (sides.Count > 0)
            Draw(marks, book, sides.Select(s => (s.Name, s.Arms)).ToList(), box);
        if (book.HasOutriggers)
            marks.Text(PlanInks.Lettering, Cautions.Outriggers, new Point2(Margin, Margin + 3.5), 2, room);
        marks.Text(PlanInks.Lettering, Cautions.Figures, new Point2(Margin, Margin), 2, room);
        return new Sheet($"{book.Title}, righting arms", width, height, marks.All);
    }

    private static void Draw(PageMarks marks, StabilityBook book, List<(string Name, Hull.Hydrostatics.RightingArms Arms)> sides, Box2 box)
    {
        var unit = FigureText.UnitOf(Quantity.Length, book.Notation);
        double most = sides.Max(s => s.Arms.Curve.Max(a => a.Arm)) / unit.Size, least = Math.Min(0, sides.Min(s => s.Arms.Curve.Min(a => a.Arm)) / unit.Size);
        var step = RoundNumber.AtLeast((most - least) / 8);
        double top = step * Math.Ceiling(most / step), bottom = step * Math.Floor(least / step), perUnit = box.Height / (top - bottom);
        Point2 At(double heel, double arm) => new(box.Left + (heel / Math.PI * box.Width), box.Bottom + (((arm / unit.Size) - bottom) * perUnit));
        for (var k = 0; k <= Math.Round((top - bottom) / step); k++)
        {
            var value = bottom + (k * step);
            var y = box.Bottom + (k * step * perUnit);
            marks.Line(Math.Abs(value) < step / 2 ? PlanInks.Fine : PlanInks.Grid, new Point2(box.Left, y), new Point2(box.Right, y));
            marks.Text(PlanInks.Lettering, Invariant($"{Math.Round(value, 6):0.###}"), new Point2(box.Left - 2, y), 2, anchor: Anchor.MiddleRight);
        }

        marks.Text(PlanInks.Lettering, $"righting arm, {unit.Name}", new Point2(box.Left - 13, box.Center.Y), 2, anchor: Anchor.Center, angle: Math.PI / 2);
        for (var degrees = 0; degrees <= 180; degrees += 15)
        {
            var foot = At(degrees * Math.PI / 180, bottom * unit.Size);
            marks.Line(PlanInks.Grid, foot, foot with { Y = box.Top });
            marks.Text(PlanInks.Lettering, Invariant($"{degrees}"), foot + new Vector2(0, -4), 2, anchor: Anchor.Center);
        }

        marks.Text(PlanInks.Lettering, "heel, degrees", new Point2(box.Center.X, box.Bottom - 8), 2, anchor: Anchor.Center);
        for (var k = 0; k < sides.Count; k++)
        {
            Curve(marks, sides[k].Arms, At);
            var told = $"{Invariant($"{k + 1}")}  {sides[k].Name.Replace("|", ", ", StringComparison.Ordinal)}: {Told(book, sides[k].Arms)}";
            marks.Text(PlanInks.Lettering, told, new Point2(box.Left, box.Bottom - 14 - (Row * k)), 2.2, box.Width);
        }

        List<Point2> numbers = [];
        for (var k = 0; k < sides.Count; k++)
            numbers.Add(Number(marks, [.. sides.Select(s => s.Arms)], k, At, numbers));
    }

    // On the curve where it counts, else anywhere on it, off the numbers that stand, and of such places where the other curves are farthest off; returns where.
    private static Point2 Number(PageMarks marks, List<Hull.Hydrostatics.RightingArms> all, int index, Func<double, double, Point2> at, List<Point2> taken)
    {
        const double far = 6, apart = 5;
        var arms = all[index];
        var anywhere = Along(0, arms.Curve[^1].Heel);
        var places = arms.Range > 0 ? Along(arms.From!.Value, arms.Range) : anywhere;
        var place = (places.Any(p => Room(p) >= apart) ? places : [.. places, .. anywhere]).OrderByDescending(Room).ThenByDescending(p => p.Away).First().At;
        marks.Box(PageInks.Patch, new Box2(place.X - 1.5, place.Y - 1.8, place.X + 1.5, place.Y + 1.8), filled: true);
        marks.Text(PlanInks.Titles, Invariant($"{index + 1}"), place, 2.4, anchor: Anchor.Middle);
        return place;

        List<(Point2 At, double Away)> Along(double from, double range) => [.. Enumerable.Range(12, 43).Select(i => On(from + (range * i / 60)))];

        double Room((Point2 At, double Away) place) => taken.Select(t => Math.Min(apart, t.DistanceTo(place.At))).DefaultIfEmpty(apart).Min();

        (Point2 At, double Away) On(double heel)
        {
            var point = at(heel, DrawnAt(arms, heel)!.Value);
            return (point, all.Where(o => o != arms).Select(o => DrawnAt(o, heel) is { } other ? Math.Min(far, Math.Abs(at(heel, other).Y - point.Y)) : far).DefaultIfEmpty(far).Min());
        }
    }

    // The arm as it is drawn; null past the curve's end.
    private static double? DrawnAt(Hull.Hydrostatics.RightingArms arms, double heel)
    {
        for (var k = 1; k < arms.Curve.Count; k++)
        {
            if (arms.Curve[k].Heel >= heel)
                return Between(arms.Curve[k - 1], arms.Curve[k], (heel - arms.Curve[k - 1].Heel) / (arms.Curve[k].Heel - arms.Curve[k - 1].Heel));
        }

        return null;
    }

    // The cubic through two arms with their own slopes, at a part t of the way.
    private static double Between(Hull.Hydrostatics.RightingArm a, Hull.Hydrostatics.RightingArm b, double t)
    {
        double h = b.Heel - a.Heel, s = 1 - t;
        return (s * s * (1 + (2 * t)) * a.Arm) + (t * t * (3 - (2 * t)) * b.Arm) + (h * s * t * ((s * a.Slope) - (t * b.Slope)));
    }

    private static string Told(StabilityBook book, Hull.Hydrostatics.RightingArms arms)
    {
        static string Degrees(double heel) => Invariant($"{heel * 180 / Math.PI:0.0} deg");
        var end = arms.Downflooding is { } floods && floods <= arms.End ? $"water comes in at {Degrees(floods)}" : arms.Vanishing is { } ends ? $"arm ends at {Degrees(ends)}" : arms.Lost is { } lost ? $"stands on end beyond {Degrees(lost)}" : "arm lasts to 180 deg";
        return arms.Greatest is { } greatest
            ? $"range {Degrees(arms.Range)}, {end}, greatest arm {new Length(greatest.Arm).ToText(book.Notation)} at {Degrees(greatest.Heel)}"
            : $"no range: {end}";
    }

    // Two pieces: what counts, and the rest.
    private static void Curve(PageMarks marks, Hull.Hydrostatics.RightingArms arms, Func<double, double, Point2> at)
    {
        List<Point2> counts = [], rest = [];
        var end = arms.From is null ? 0 : arms.End;
        for (var k = 1; k < arms.Curve.Count; k++)
        {
            var (a, b) = (arms.Curve[k - 1], arms.Curve[k]);
            for (var i = k == 1 ? 0 : 1; i <= Chords; i++)
            {
                double t = (double)i / Chords, heel = a.Heel + (t * (b.Heel - a.Heel)), arm = Between(a, b, t);
                if (heel >= end && rest.Count == 0 && arms.At(end) is { } last)
                {
                    counts.Add(at(end, last.Arm));
                    rest.Add(at(end, last.Arm));
                }

                (heel < end ? counts : rest).Add(at(heel, arm));
            }
        }

        marks.Path(s_full, counts);
        marks.Path(s_dashed, rest);
        if (arms.Downflooding is { } floods && floods <= arms.End && rest.Count > 0)
            marks.Cross(PlanInks.Titles, rest[0], 1.6);
    }
}
