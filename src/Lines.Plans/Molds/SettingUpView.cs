using Lines.Construction.Molds;
using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.LinesPlan;
using Lines.Plans.Paper;

namespace Lines.Plans.Molds;

/// <summary>The side view of the setting-up sheet: the molds upside down on the strongback, bow to the left, to scale.</summary>
internal sealed class SettingUpView
{
    private static readonly int[] s_scales = [4, 5, 6, 8, 10, 12, 15, 16, 18, 20, 22, 24, 25, 28, 30, 32, 36, 40, 45, 50, 60, 80, 100];

    private const double Figures = 2.2;
    private const double NameRow = 3;
    private const double JointRow = 8;
    private const double Leader = 5;
    private const double Gap = 4;
    private const double Beside = 5;

    /// <summary>From a joint's line to a mold's name that it would run through [mm].</summary>
    private const double FromJoint = 0.8;

    private readonly HullSurface _hull;
    private readonly MoldPlan _plan;
    private readonly LengthNotation _notation;
    private readonly double _perMeter;
    private Point2 _zero;

    /// <summary>Makes ready to draw.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="plan">The molds.</param>
    /// <param name="notation">How lengths are written.</param>
    /// <param name="scale">The view is 1 : this.</param>
    private SettingUpView(HullSurface hull, MoldPlan plan, LengthNotation notation, int scale)
    {
        (_hull, _plan, _notation, Scale) = (hull, plan, notation, scale);
        _perMeter = 1000.0 / Scale;
    }

    /// <summary>The views that go into a width, the largest first, down to two thirds of it, for a page that has little height left.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="plan">The molds.</param>
    /// <param name="notation">How lengths are written.</param>
    /// <param name="width">Room across [mm].</param>
    public static IReadOnlyList<SettingUpView> Within(HullSurface hull, MoldPlan plan, LengthNotation notation, double width)
    {
        const double smallest = 1.5;
        var needed = plan.Strongback.Length * 1000 / width;
        var largest = s_scales.FirstOrDefault(s => s >= needed, (int)Math.Ceiling(needed / 100) * 100);
        return [.. s_scales.Where(s => s > largest && s <= smallest * largest).Prepend(largest).Select(s => new SettingUpView(hull, plan, notation, s))];
    }

    /// <summary>The view is 1 : this.</summary>
    public int Scale { get; }

    /// <summary>Height the view takes, figures included [mm].</summary>
    public double Height => RoomAbove + ((Highest + _plan.Strongback.Depth) * _perMeter) + Leader + Distances.Max(d => StrokeLettering.Width(new Length(d).ToCell(_notation), Figures)) + Gap;

    /// <summary>Draws the view.</summary>
    /// <param name="marks">The page.</param>
    /// <param name="room">Where; its top is the view's.</param>
    public void Draw(PageMarks marks, Box2 room)
    {
        _zero = new Point2(room.Left + ((room.Width - (_plan.Strongback.Length * _perMeter)) / 2), room.Top - RoomAbove - (Highest * _perMeter));
        DrawStrongback(marks);
        foreach (var mold in _plan.Molds)
            DrawMold(marks, mold);
        DrawHull(marks);
        DrawJoints(marks);
        DrawNames(marks);
        DrawDistances(marks);
    }

    // To the top of the upper row of names, and some air.
    private double RoomAbove => (Places.Count > 0 ? JointRow : NameRow) + Figures + 1.8;

    private double Highest => _plan.Molds.Max(m => m.Heights.Keel);

    private IEnumerable<double> Distances =>
        [0, .. _plan.Molds.Where(m => m.Kind == MoldKind.Station).Select(m => m.Foot.Fore), _plan.Strongback.Length];

    private Point2 At(double distance, double height) => _zero + new Vector2(distance * _perMeter, height * _perMeter);

    private Point2 At(Point3 p) => At(_plan.Strongback.DistanceTo(p.X), _plan.Strongback.HeightOf(p.Z));

    private void DrawStrongback(PageMarks marks)
    {
        Point2 low = At(0, -_plan.Strongback.Depth), high = At(_plan.Strongback.Length, 0);
        var box = new Box2(low.X, low.Y, high.X, high.Y);
        marks.Box(SettingUpInks.Pale, box, filled: true);
        marks.Box(SettingUpInks.Heavy, box);
    }

    private void DrawMold(PageMarks marks, Mold mold)
    {
        switch (mold.Kind)
        {
            case MoldKind.Station:
                // The heavy line is the station face; the stock stands behind it.
                Point2 foot = At(mold.Foot.Fore, 0), top = At(mold.Foot.Fore, mold.Heights.Keel);
                var stock = mold.Face.StockSide() * mold.Stock * _perMeter;
                marks.Box(SettingUpInks.Stock, new Box2(Math.Min(foot.X, foot.X + stock), foot.Y, Math.Max(foot.X, foot.X + stock), top.Y), filled: true);
                marks.Line(SettingUpInks.Heavy, foot, top);
                break;
            case MoldKind.Transom:
                var bounds = mold.Outline.Bounds();
                Point2 sheer = At(mold.Frame.ToHull(new Point2(0, bounds.Bottom))), heel = At(mold.Frame.ToHull(new Point2(0, bounds.Top)));
                marks.Line(SettingUpInks.Heavy, sheer, heel);
                break;
            default:
                var outline = mold.Outline.Mapped(p => At(p.X, p.Y));
                marks.Add([new PathMark(SettingUpInks.Pale, outline, Filled: true), new PathMark(SettingUpInks.Heavy, outline)]);
                break;
        }
    }

    // Names stand in one row over the keel, off the lines of joints; an end's name beside that of its neighbor.
    private void DrawNames(PageMarks marks)
    {
        List<double> joints = [.. Places.SelectMany(p => p.Lines).Select(x => At(_plan.Strongback.DistanceTo(x), 0).X)];
        var stations = _plan.Molds.Where(m => m.Kind == MoldKind.Station).ToList();
        var row = At(0, Highest).Y + NameRow;
        foreach (var mold in _plan.Molds)
        {
            var (x, anchor) = mold.Kind switch
            {
                MoldKind.Station => (At(mold.Foot.Fore, 0).X, Anchor.Center),
                MoldKind.Stem => (At(stations[0].Foot.Fore, 0).X - Beside, Anchor.Right),
                MoldKind.Stern => (At(stations[^1].Foot.Fore, 0).X + Beside, Anchor.Left),
                _ => (At(mold.Foot.Fore, 0).X, Anchor.Left),
            };
            if (anchor == Anchor.Center)
                x = Aside(x, StrokeLettering.Width(mold.Name, Figures) / 2);
            marks.Text(SettingUpInks.Text, mold.Name, new Point2(x, row), Figures, anchor: anchor);
        }

        // The middle of a name moved off the nearest line that crosses it.
        double Aside(double middle, double half)
        {
            var nearest = joints.Select(j => middle - j).Append(double.PositiveInfinity).MinBy(Math.Abs);
            return Math.Abs(nearest) >= half + FromJoint ? middle : middle - nearest + ((nearest < 0 ? -1 : 1) * (half + FromJoint));
        }
    }

    private void DrawHull(PageMarks marks)
    {
        const int steps = 120;
        IEnumerable<double> rising = Enumerable.Range(0, steps + 1).Select(i => (double)i / steps);
        IEnumerable<Point2> profile =
        [
            .. rising.Select(t => At(_hull.Side.PointAt(0, 1 - t))), .. rising.Skip(1).Select(t => At(_hull.Side.PointAt(t, 0))),
            .. rising.Skip(1).Select(t => At(_hull.Side.PointAt(1, t))), .. rising.Skip(1).Select(t => At(_hull.Side.PointAt(1 - t, 1))),
        ];
        marks.Add([new PathMark(SettingUpInks.Hull, ArcPath.Through(profile))]);
        var level = _plan.Strongback.HeightOf(_hull.Draft);
        double fore = _plan.Strongback.DistanceTo(_hull.WaterlineFore), aft = _plan.Strongback.DistanceTo(_hull.WaterlineAft);
        marks.Line(SettingUpInks.Waterline, At(fore, level), At(aft, level));
        marks.Text(SettingUpInks.Text, "DWL", At(fore, level) + new Vector2(-2.5, 0), Figures, anchor: Anchor.MiddleRight);
    }

    // Joints by the scale of the picture, bulkheads elsewhere, and openings with both their ends; the notes tell where the last two are.
    private List<(string Name, double X, double[] Lines)> Places =>
    [
        .. _plan.Joints.Select((x, k) => (Invariant($"joint {k + 1}, {new Length(_plan.Strongback.DistanceTo(x)).ToText(_notation)}"), x, (double[])[x]))
            .Concat(_plan.Bulkheads.Where(b => b.Purpose is not null).Select(b => (b.Name, b.X, (double[])[b.X])))
            .Concat(_plan.Openings.Select(o => (o.Name, (o.From + o.To) / 2, (double[])[o.From, o.To])))
            .OrderBy(p => p.Item2),
    ];

    // Names of joints stand in a row over those of the molds, which the joints' lines leave out.
    private void DrawJoints(PageMarks marks)
    {
        List<string> names = [.. Places.Select(p => p.Name)];
        List<double> lines = [.. Places.Select(p => At(_plan.Strongback.DistanceTo(p.X), 0).X)];
        var places = SpreadLabels.Apart(lines, [.. names.Select(n => StrokeLettering.Width(n, Figures) + Gap)]);
        var keel = At(0, Highest).Y;
        for (var k = 0; k < names.Count; k++)
        {
            foreach (var x in Places[k].Lines.Select(x => At(_plan.Strongback.DistanceTo(x), 0).X))
                marks.Line(SettingUpInks.Joints, new Point2(x, _zero.Y), new Point2(x, keel + NameRow - 0.8));
            marks.Line(SettingUpInks.Fine, new Point2(lines[k], keel + NameRow + Figures + 0.6), new Point2(places[k], keel + JointRow - 1.1));
            marks.Text(SettingUpInks.Text, names[k], new Point2(places[k], keel + JointRow), Figures, anchor: Anchor.Center);
        }
    }

    private void DrawDistances(PageMarks marks)
    {
        var under = At(0, -_plan.Strongback.Depth).Y;
        var last = double.NegativeInfinity;
        foreach (var d in Distances)
            Distance(d);

        void Distance(double d)
        {
            // Where stations stand closer than a line of figures is high, the line of the later one is led aside.
            double x = At(d, 0).X, written = Math.Max(x, last + (1.4 * Figures));
            last = written;
            marks.Line(SettingUpInks.Fine, new Point2(x, under - 0.8), new Point2(x, under - 2.5));
            marks.Line(SettingUpInks.Fine, new Point2(x, under - 2.5), new Point2(written, under - 4));
            var text = new Length(d).ToCell(_notation);
            marks.Text(
                SettingUpInks.Text, text, new Point2(written + (Figures / 2), under - Leader - StrokeLettering.Width(text, Figures)), Figures, angle: Math.PI / 2);
        }
    }
}
