using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Plans.Paper;

namespace Lines.Plans.LinesPlan;

/// <summary>The views along the boat: profile, half-breadths above the centerline, diagonals laid flat below it.</summary>
internal sealed class LengthwiseViews
{
    private const double Room = 8;
    private const double LabelHeight = 1.8;

    private readonly PageMarks _marks;
    private readonly PlanLayout _layout;
    private readonly HullLines _lines;
    private readonly PlanFigures _figures;
    private readonly IReadOnlyList<double> _joints;

    /// <summary>Makes ready to draw.</summary>
    public LengthwiseViews(PageMarks marks, PlanLayout layout, HullLines lines, PlanFigures figures, IReadOnlyList<double> joints) =>
        (_marks, _layout, _lines, _figures, _joints) = (marks, layout, lines, figures, joints);

    /// <summary>The curvature combs drawn: keel, sheer in plan, design waterline.</summary>
    public IReadOnlyList<CombDrawing> Combs { get; private set; } = [];

    /// <summary>Width of the widest label that the views have at their left [mm].</summary>
    public static double WidestLabel(HullLines lines, PlanFigures figures) =>
        Distinct(lines.Waterlines).Concat(Distinct(lines.Buttocks)).Max(l => StrokeLettering.Width(SideLabel(l, figures), LabelHeight));

    /// <summary>Draws the three views.</summary>
    public void Draw()
    {
        DrawCombs();
        DrawProfile();
        DrawHalfBreadths();
        DrawDiagonals();
    }

    private static IEnumerable<HullLine> Distinct(IEnumerable<HullLine> lines) => lines.DistinctBy(l => l.Position);

    private static string SideLabel(HullLine line, PlanFigures figures) => $"{line.Label}  {figures.Cell(line.Position)}";

    private double X(double x) => _layout.Bow - (x * _layout.PerMeter);

    private Point2 Profile(Point3 p) => new(X(p.X), _layout.BaseLine + (p.Z * _layout.PerMeter));

    private Point2 Plan(Point3 p) => new(X(p.X), _layout.Centerline + (p.Y * _layout.PerMeter));

    private IEnumerable<StationMark> WholeStations => _lines.Grid.Stations.Where(s => !s.Number.Contains('/', StringComparison.Ordinal));

    private void DrawCombs()
    {
        double k = _layout.PerMeter;
        var keel = new CombDrawing(_lines.Keel, k, Room);
        var sheer = new CombDrawing(_lines.Sheer, k, Room);
        keel.Draw(_marks, p => new Point2(X(p.X), _layout.BaseLine + (p.Y * k)), up: false);
        sheer.Draw(_marks, InPlan, up: true);
        Combs = [keel, sheer];
        if (_lines.DesignWaterline is not { } line)
            return;
        // Its teeth stand inward, where there is room, a bulge as long as the others'.
        var waterline = new CombDrawing(line, k, Room);
        waterline.Draw(_marks, InPlan, up: false);
        Combs = [.. Combs, waterline];

        Point2 InPlan(Point2 p) => new(X(p.X), _layout.Centerline + (p.Y * k));
    }

    private void DrawProfile()
    {
        double left = _layout.GridLeft, right = _layout.GridRight, baseLine = _layout.BaseLine, k = _layout.PerMeter;
        var curves = new LabeledCurves();
        foreach (var s in WholeStations)
        {
            Point2 low = new(X(s.X), baseLine - 11), high = new(X(s.X), baseLine + (_layout.Extents.Top * k) + 2);
            _marks.Line(PlanInks.Grid, low, high);
            curves.Avoid(low, high);
            _marks.Text(PlanInks.Lettering, s.Number, low + new Vector2(0, -2.4), 2, anchor: Anchor.Center);
        }

        DrawJoints(curves, baseLine, baseLine + (_layout.Extents.Top * k) + 2);
        NameJoints(baseLine + (_layout.Extents.Top * k) + 2);
        foreach (var z in _lines.Grid.Waterlines)
        {
            Point2 a = new(left, baseLine + (z * k)), b = new(right, baseLine + (z * k));
            _marks.Line(z == _lines.Hull.Draft ? PlanInks.DesignWaterline : PlanInks.Grid, a, b);
            curves.Avoid(a, b);
        }

        _marks.Line(PlanInks.Datum, new Point2(left, baseLine), new Point2(right, baseLine));
        SideLabels(
            [(baseLine, "base line"), .. Distinct(_lines.Waterlines).Select(w => (baseLine + (w.Position * k), SideLabel(w, _figures)))]);
        foreach (var b in _lines.Buttocks)
            curves.Add(PlanCurve.Of(PlanInks.Buttocks, b, k, Profile, b.Label));
        foreach (var line in new[] { _lines.Sheer, _lines.Keel, _lines.Stem, _lines.Stern })
            curves.Add(PlanCurve.Of(PlanInks.Outline, line, k, Profile));
        if (DeckLines.Of(_lines.Hull) is { } deck)
            curves.Add(new PlanCurve(PlanInks.Deck, [.. deck.Ridge.Select(Profile)], "deck at centerline"));
        curves.Draw(_marks);
        Title("Profile", baseLine + (_layout.Extents.Top * k) + 3);
        DrawProfileDimensions();
    }

    private void DrawJoints(LabeledCurves curves, double low, double high)
    {
        foreach (var x in _joints)
        {
            Point2 from = new(X(x), low), to = new(X(x), high);
            _marks.Line(PlanInks.Joints, from, to);
            curves.Avoid(from, to);
        }
    }

    // In a row over their lines, led aside where two are close.
    private void NameJoints(double top)
    {
        List<string> names = [.. _joints.Select((x, i) => Invariant($"joint {i + 1}  {_figures.Length(x)}"))];
        var places = SpreadLabels.Apart([.. _joints.Select(X)], [.. names.Select(n => StrokeLettering.Width(n, LabelHeight) + 3)]);
        for (var i = 0; i < names.Count; i++)
        {
            _marks.Line(PlanInks.Fine, new Point2(X(_joints[i]), top), new Point2(places[i], top + 1.2));
            _marks.Text(PlanInks.Lettering, names[i], new Point2(places[i], top + 2.2), LabelHeight, anchor: Anchor.Center);
        }
    }

    private void DrawProfileDimensions()
    {
        var hull = _lines.Hull;
        double k = _layout.PerMeter, baseLine = _layout.BaseLine;
        double stem = _lines.Stem.Start.Point.Z, stern = _lines.Sheer.End.Point.Z;
        Point2 At(double x, double z) => Profile(new Point3(x, 0, z));
        var y = baseLine + (_layout.Extents.Top * k) + 9;
        DimensionLine.Level(_marks, At(_layout.Extents.Length, stern), At(_lines.Stem.Start.Point.X, stem), y, $"length overall {_figures.Length("length")}");
        DimensionLine.Level(
            _marks, At(hull.WaterlineAft, 0) + new Vector2(0, -15), At(hull.WaterlineFore, 0) + new Vector2(0, -15), baseLine - 19,
            $"design waterline {_figures.Length("waterline_length")}, in ten equal spaces of {_figures.Length("station_spacing")}");
        DimensionLine.Upright(_marks, At(0, 0), At(0, stem), _layout.Bow + 8, _figures.Length("sheer_bow"));
    }

    private void DrawHalfBreadths()
    {
        double left = _layout.GridLeft, right = _layout.GridRight, center = _layout.Centerline, k = _layout.PerMeter;
        var curves = new LabeledCurves();
        foreach (var s in WholeStations)
        {
            Point2 low = new(X(s.X), center - (_layout.Extents.Diagonal * k) - 3), high = new(X(s.X), center + (_layout.Extents.HalfBeam * k) + 3);
            _marks.Line(PlanInks.Grid, low, high);
            curves.Avoid(low, high);
            _marks.Text(PlanInks.Lettering, s.Number, low + new Vector2(0, -2.8), 2, anchor: Anchor.Center);
        }

        DrawJoints(curves, center, center + (_layout.Extents.HalfBeam * k) + 3);
        foreach (var y in _lines.Grid.Buttocks)
        {
            Point2 a = new(left, center + (y * k)), b = new(right, center + (y * k));
            _marks.Line(PlanInks.Grid, a, b);
            curves.Avoid(a, b);
        }

        _marks.Line(PlanInks.Datum, new Point2(left, center), new Point2(right, center));
        SideLabels([(center, "centerline"), .. Distinct(_lines.Buttocks).Select(b => (center + (b.Position * k), SideLabel(b, _figures)))]);
        foreach (var w in _lines.Waterlines)
            curves.Add(PlanCurve.Of(w.Position == _lines.Hull.Draft ? PlanInks.DesignWaterline : PlanInks.Waterlines, w, k, Plan, w.Label));
        curves.Add(PlanCurve.Of(PlanInks.Outline, _lines.Sheer, k, Plan));
        if (_lines.Hull.Transom is not null)
            curves.Add(PlanCurve.Of(PlanInks.Outline, _lines.Stern, k, Plan));
        curves.Draw(_marks, center + (_layout.Extents.HalfBeam * k) + Room + 1.5, LeaderPlaces());
        Title("Half-breadths", center + (_layout.Extents.HalfBeam * k) + 3);
    }

    // Leaders stand midway between stations, from the second interval aft.
    private List<double> LeaderPlaces()
    {
        var whole = WholeStations.ToList();
        return [.. Enumerable.Range(2, 7).Select(i => (X(whole[i - 1].X) + X(whole[i].X)) / 2)];
    }

    private void DrawDiagonals()
    {
        var curves = new LabeledCurves();
        double low = _layout.Centerline - (_layout.Extents.Diagonal * _layout.PerMeter) - 3;
        foreach (var s in WholeStations)
            curves.Avoid(new Point2(X(s.X), low), new Point2(X(s.X), _layout.Centerline));
        foreach (var d in _lines.Diagonals)
            curves.Add(PlanCurve.Of(PlanInks.Diagonals, d, _layout.PerMeter, p => new Point2(X(p.X), _layout.Centerline - (d.Axes.Flat(p).Y * _layout.PerMeter)), d.Label));
        curves.Draw(_marks, low, LeaderPlaces());
        Title("Diagonals", _layout.Centerline - 9);
    }

    private void Title(string text, double y) => _marks.Text(PlanInks.Titles, text, new Point2(_layout.Foot.Left, y), 2.8);

    // Labels of level lines in a column at the left, moved apart where the lines are close, each with a leader to its line.
    private void SideLabels(IReadOnlyList<(double Y, string Text)> labels)
    {
        var left = _layout.GridLeft;
        var places = SpreadLabels.Apart([.. labels.Select(l => l.Y)], LabelHeight + 0.7);
        for (var i = 0; i < labels.Count; i++)
        {
            _marks.Path(PlanInks.Grid, [new Point2(left, labels[i].Y), new Point2(left - 3, places[i]), new Point2(left - 4, places[i])]);
            _marks.Text(PlanInks.Lettering, labels[i].Text, new Point2(left - PlanLayout.LabelsOff, places[i]), LabelHeight, anchor: Anchor.MiddleRight);
        }
    }
}
