using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Plans.Paper;

namespace Lines.Plans.LinesPlan;

/// <summary>The body plan: fore body to the right of the centerline, after body to the left.</summary>
internal sealed class BodyPlanView
{
    /// <summary>A diagonal's label moves so far [mm] rather than stand on a line of the grid.</summary>
    private const double OnGrid = 30;

    /// <summary>Least height of the numbers of half stations [mm on paper].</summary>
    private const double LeastLetters = 1.4;

    /// <summary>Distance of the middle of a diagonal's label from other diagonals [mm].</summary>
    private const double FromDiagonal = 2;

    /// <summary>Cost of a label that stands no nearer to its own diagonal than to another [mm of distance].</summary>
    private const double Ambiguous = 8;

    private readonly PageMarks _marks;
    private readonly PlanLayout _layout;
    private readonly HullLines _lines;
    private readonly PlanFigures _figures;
    private readonly LabeledCurves _curves = new();

    /// <summary>Makes ready to draw.</summary>
    public BodyPlanView(PageMarks marks, PlanLayout layout, HullLines lines, PlanFigures figures) =>
        (_marks, _layout, _lines, _figures) = (marks, layout, lines, figures);

    private double K => _layout.BodyPerMeter;

    private double HalfWidth => _layout.Extents.HalfBeam * K;

    /// <summary>How far the level lines of the grid reach from the centerline [mm].</summary>
    private double Reach => HalfWidth + 7;

    private double Top => _layout.Body.Y + (_layout.Extents.Top * K);

    /// <summary>Draws the view.</summary>
    public void Draw()
    {
        DrawGrid();
        AddDiagonals();
        DrawSections();
        _curves.Draw(_marks);
        DrawDimensions();
        _marks.Text(PlanInks.Titles, "Body plan", new Point2(_layout.Body.X, Top + 8), 2.8, anchor: Anchor.Center);
    }

    private Point2 At(double side, Point3 p) => new(_layout.Body.X + (side * p.Y * K), _layout.Body.Y + (p.Z * K));

    private void DrawGrid()
    {
        Point2 origin = _layout.Body;
        foreach (var z in _lines.Grid.Waterlines)
        {
            var y = origin.Y + (z * K);
            Point2 left = new(origin.X - Reach, y), right = new(origin.X + Reach, y);
            _marks.Line(z == _lines.Hull.Draft ? PlanInks.DesignWaterline : PlanInks.Grid, left, right);
            _curves.Avoid(left, right);
        }

        var waterlines = _lines.Waterlines.DistinctBy(w => w.Position).ToList();
        var places = SpreadLabels.Apart([.. waterlines.Select(w => origin.Y + (w.Position * K))], 2.5);
        for (var i = 0; i < waterlines.Count; i++)
        {
            var y = origin.Y + (waterlines[i].Position * K);
            _marks.Path(PlanInks.Grid, [new Point2(origin.X + Reach, y), new Point2(origin.X + Reach + 2, places[i])]);
            _marks.Text(PlanInks.Lettering, waterlines[i].Label, new Point2(origin.X + Reach + 2.8, places[i]), 1.8, anchor: Anchor.MiddleLeft);
        }

        // Upright lines end below the sheer, where the station numbers stand.
        var leastSheer = origin.Y + (_lines.Sheer.Nodes.Min(n => n.Point.Z) * K);
        foreach (var b in _lines.Buttocks.DistinctBy(b => b.Position))
        {
            foreach (var side in new[] { -1, 1 })
            {
                var x = origin.X + (side * b.Position * K);
                Point2 low = new(x, origin.Y - 1.5), high = new(x, leastSheer);
                _marks.Line(PlanInks.Grid, low, high);
                _curves.Avoid(low, high);
                _marks.Text(PlanInks.Lettering, b.Label, new Point2(x, origin.Y - 4), 1.8, anchor: Anchor.Center);
            }
        }

        _marks.Line(PlanInks.Datum, new Point2(origin.X - Reach, origin.Y), new Point2(origin.X + Reach, origin.Y));
        _marks.Line(PlanInks.Datum, new Point2(origin.X, origin.Y - 5), new Point2(origin.X, Top + 5));
    }

    private void AddDiagonals()
    {
        var taken = new List<Point2>();
        List<(HullLine Line, ArcSegment Drawn)> diagonals =
        [
            .. _lines.Diagonals.DistinctBy(d => d.Label, StringComparer.Ordinal).SelectMany(_ => (int[])[-1, 1], (d, side) =>
            {
                var reach = d.Nodes.Max(n => d.Axes.Flat(n.Point).Y) + (2.5 / K);
                var end = new Point3(0, reach * Math.Cos(d.Tag.Angle), d.Position - (reach * Math.Sin(d.Tag.Angle)));
                return (d, new ArcSegment(At(side, new Point3(0, 0, d.Position)), At(side, end), 0));
            }),
        ];
        for (var k = 0; k < diagonals.Count; k++)
        {
            // The label stands beyond the end, on the line drawn out to it or beside; off the grid where there is room, never on another label or diagonal.
            var (d, drawn) = diagonals[k];
            var (start, to) = (drawn.From, drawn.To);
            var way = (to - start).Unit();
            List<ArcSegment> others = [.. diagonals.Where((_, i) => i != k).Select(o => o.Drawn)];
            var places =
                from aside in (double[])[0, 2, -2, 3, -3, 4, -4]
                from along in Enumerable.Range(0, 25)
                let beyond = (Math.Abs(aside) < 3 ? 2.4 : 0) + (0.5 * along)
                let p = to + (beyond * way) + (aside * way.TurnedLeft)
                let end = aside == 0 ? p - (2.4 * way) : to
                let own = new ArcSegment(start, end, 0)
                let fromOthers = others.Min(o => o.DistanceTo(p))
                where IsFree(p, taken) && fromOthers > FromDiagonal && taken.TrueForAll(t => own.DistanceTo(t) > FromDiagonal)
                orderby beyond + (2 * Math.Abs(aside)) + (IsOffGrid(p) ? 0 : OnGrid) + (fromOthers > own.DistanceTo(p) + 0.5 ? 0 : Ambiguous)
                select (At: p, End: end);
            var label = places.Take(1).ToList();
            if (label.Count > 0)
                diagonals[k] = (d, new ArcSegment(start, label[0].End, 0));
            _curves.Add(new PlanCurve(PlanInks.Diagonals, [start, diagonals[k].Drawn.To], label.Count == 0 ? d.Label : ""));
            foreach (var (at, _) in label)
            {
                taken.Add(at);
                _marks.Text(PlanInks.Lettering, d.Label, at, 1.8, anchor: Anchor.Middle);
            }
        }
    }

    // Whether a label's middle is off other labels, above the base line and short of the labels at the side.
    private bool IsFree(Point2 p, List<Point2> taken) =>
        p.Y > _layout.Body.Y + 1.4 && Math.Abs(p.X - _layout.Body.X) < Reach - 2 && taken.TrueForAll(t => t.DistanceTo(p) > 5);

    private bool IsOffGrid(Point2 p) =>
        _lines.Grid.Waterlines.All(z => Math.Abs(_layout.Body.Y + (z * K) - p.Y) > 1.4)
        && _lines.Grid.Buttocks.All(y => Math.Abs(Math.Abs(p.X - _layout.Body.X) - (y * K)) > 2.4);

    private void DrawSections()
    {
        var hull = _lines.Hull;
        var shown = _lines.Stations.Where(s => !IsHalf(s) || s.Label is "1/2" or "9 1/2").ToList();
        // The station nearest the widest place closes both halves.
        var middle = shown.Where(s => !IsHalf(s)).MinBy(s => Math.Abs(s.Position - hull.WidestX));
        foreach (var side in new[] { -1, 1 })
        {
            // The sheer as it is seen from ahead and from astern.
            List<Point2> sheer = [.. _lines.Sheer.ToPolyline(PlanCurve.ChordTolerance / K)
                .Where(p => side > 0 ? p.Point.X <= hull.WidestX : p.Point.X >= hull.WidestX).Select(p => At(side, p.Point))];
            _marks.Path(PlanInks.Outline, sheer);
            DrawSections([.. shown.Where(s => s == middle || (side > 0 ? s.Position <= hull.WidestX : s.Position >= hull.WidestX))], side, sheer);
        }

        if (hull.Transom is not null)
            _marks.Path(PlanInks.Outline, PlanCurve.Of(PlanInks.Outline, _lines.Stern, K, p => At(-1, p)).Points);
        if (hull.Transom is not null && hull.Deck is { } deck)
            _marks.Path(PlanInks.Outline, [.. DeckLines.EndOf(deck).Select(p => At(-1, p))]);
    }

    private static bool IsHalf(HullLine station) => station.Label.Contains('/', StringComparison.Ordinal);

    private void DrawSections(IReadOnlyList<HullLine> sections, int side, List<Point2> sheer)
    {
        var deck = DeckLines.Of(_lines.Hull);
        List<List<Point2>> arcs = [.. sections.Select(s => deck is null ? [] : deck.ArcAt(s.Position).Select(p => At(side, p)).ToList())];
        var tops = sections.Select(s => At(side, s.End.Point)).ToList();
        var heights = sections.Select(s => IsHalf(s) ? Math.Max(1.5, LeastLetters / _layout.Reduction) : 2).ToList();
        var numbers = SpreadLabels.Apart(
            [.. tops.Select((t, i) => Placed(t.X + (side * 0.6), StrokeLettering.Width(sections[i].Label, heights[i]) / 2))], [.. sections.Select((s, i) => StrokeLettering.Width(s.Label, heights[i]) + 2.4)]);
        for (var i = 0; i < sections.Count; i++)
        {
            var curve = PlanCurve.Of(IsHalf(sections[i]) ? PlanInks.HalfSections : PlanInks.Sections, sections[i], K, p => At(side, p));
            _curves.Add(curve);
            if (arcs[i].Count > 1)
                _marks.Path(IsHalf(sections[i]) ? PlanInks.HalfSections : PlanInks.Deck, arcs[i]);
            _marks.Text(PlanInks.Lettering, sections[i].Label, new Point2(numbers[i], HighestOver(numbers[i], StrokeLettering.Width(sections[i].Label, heights[i]) / 2) + 1.3), heights[i], anchor: Anchor.Center);
        }

        // Over a deck a number stays on its own side of the centerline, where the arcs of the other end begin.
        double Placed(double x, double half) => deck is null ? x : _layout.Body.X + (side * Math.Max(side * (x - _layout.Body.X), half + 0.8));

        // The greatest height of the sheer, and of a deck, under a number, which may stand aside of its section; beyond the sheer's ends that of the end.
        double HighestOver(double x, double half) => arcs.Where(a => a.Count > 1 && a.Min(p => p.X) <= x + half && a.Max(p => p.X) >= x - half).Append(sheer).Max(l => HighestOf(l, x, half));

        double HighestOf(List<Point2> line, double x, double half)
        {
            var (least, greatest) = (line.Min(p => p.X), line.Max(p => p.X));
            return new[] { x - half, x + half }.Select(e => HeightAt(line, Math.Clamp(e, least, greatest)))
                .Concat(line.Where(p => Math.Abs(p.X - x) < half).Select(p => p.Y)).Max();
        }

        double HeightAt(List<Point2> line, double x)
        {
            var (a, b) = line.Zip(line.Skip(1)).First(s => (s.First.X - x) * (s.Second.X - x) <= 0);
            return a.X == b.X ? Math.Max(a.Y, b.Y) : a.Y + ((x - a.X) / (b.X - a.X) * (b.Y - a.Y));
        }
    }

    private void DrawDimensions()
    {
        Point2 origin = _layout.Body;
        var half = _figures["beam"].Value!.Value / 2 * K;
        DimensionLine.Level(
            _marks, new Point2(origin.X - half, origin.Y - 4), new Point2(origin.X + half, origin.Y - 4), origin.Y - 9, $"beam {_figures.Length("beam")}");
        DimensionLine.Upright(
            _marks, new Point2(origin.X - Reach, origin.Y), new Point2(origin.X - Reach, origin.Y + (_lines.Hull.Draft * K)),
            origin.X - Reach - 5, $"draft {_figures.Length("draft")}");
    }
}
