using Lines.Drawing.Model;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Charts;
using Lines.Plans.Figures;
using Lines.Plans.LinesPlan;
using Lines.Plans.Paper;
using Lines.Plans.Report;

namespace Lines.Plans.Comparison;

/// <summary>Designs laid over each other: profile, half-breadths, sections, and their drag in one chart.</summary>
/// <remarks><b>Frame.</b> The sheet, millimeters, y up; bows to the right, foremost points on one upright, base lines on one level.</remarks>
internal sealed class ComparisonSheet
{
    private const double Margin = 12.7;
    private const double Row = 4.6;
    private const double Gap = 9;

    private readonly PageMarks _marks = new();
    private readonly ComparisonBook _book;
    private readonly IReadOnlyList<HullLines> _lines;
    private readonly IReadOnlyList<PlanExtents> _extents;
    private readonly double _width, _height, _perMeter, _bow;

    private ComparisonSheet(ComparisonBook book, PaperSize paper)
    {
        _book = book;
        (_width, _height) = (paper.Height, paper.Width);
        _lines = [.. book.Designs.AsParallel().AsOrdered().Select(d => HullLines.Of(d.Vessel.Main))];
        _extents = [.. _lines.Select(PlanExtents.Of)];
        double room = _width - (2 * Margin), high = (_height - (2 * Margin) - Head - (3 * Gap)) * 0.55;
        _perMeter = 1000.0 / PlanLayout.Scales.First(s => _extents.Max(e => e.Length) * 1000 / s <= room && (Top + Half) * 1000 / s <= high);
        _bow = _width - Margin - ((room - (_extents.Max(e => e.Length) * _perMeter)) / 2);
    }

    private double Top => _extents.Max(e => e.Top) + Math.Max(0, -_extents.Min(e => e.Bottom));

    private double Half => _extents.Max(e => e.HalfBeam);

    private double Head => 16 + (Row * (_book.Designs.Count + 1));

    /// <summary>Draws the sheet.</summary>
    /// <param name="book">The designs.</param>
    /// <param name="paper">The paper, laid on its longer side.</param>
    public static Sheet Of(ComparisonBook book, PaperSize paper)
    {
        var sheet = new ComparisonSheet(book, paper);
        sheet.Draw();
        return new Sheet("Designs compared", sheet._width, sheet._height, sheet._marks.All);
    }

    private void Draw()
    {
        var y = DrawHead();
        var baseLine = y - Gap - (Top * _perMeter);
        _marks.Line(PlanInks.Datum, new Point2(Margin, baseLine), new Point2(_width - Margin, baseLine));
        Title("Profile", baseLine + (Top * _perMeter) + 2);
        Each((lines, ink) =>
        {
            foreach (var line in (HullLine[])[lines.Sheer, lines.Keel, lines.Stem, lines.Stern])
                Curve(ink, line, p => new Point2(X(p.X), baseLine + (p.Z * _perMeter)));
        });
        var center = baseLine - Gap - (Half * _perMeter);
        _marks.Line(PlanInks.Datum, new Point2(Margin, center), new Point2(_width - Margin, center));
        Title("Half-breadths: sheer, waterline compared at, half its draft", center + (Half * _perMeter) + 2);
        Each((lines, ink) =>
        {
            foreach (var line in InPlan(lines))
                Curve(ink, line, p => new Point2(X(p.X), center + (p.Y * _perMeter)));
        });
        var foot = new Box2(Margin, Margin + 12, _width - Margin, center - Gap);
        DrawSections(foot with { Right = foot.Left + (foot.Width * 0.4) });
        DrawDrag(foot with { Left = foot.Left + (foot.Width * 0.45) + ChartFrame.Left });
        string[] notes = [string.Join("  ", _book.Crossings.Take(3).Select(c => c.Sentence)), .. _book.Designs.Any(d => d.Vessel.Outriggers.Count > 0) ? new[] { "Main hulls alone are drawn; drag is that of all hulls. " + Cautions.Outriggers } : [], Cautions.Figures];
        for (var k = 0; k < notes.Length; k++)
            _marks.Text(PlanInks.Lettering, notes[k], new Point2(Margin, Margin + (3.6 * (notes.Length - 1 - k))), 2, _width - (2 * Margin));
    }

    private double DrawHead()
    {
        var y = _height - Margin - 5;
        _marks.Text(PlanInks.Titles, "Designs compared", new Point2(Margin, y), 4.5);
        y -= 7;
        _marks.Text(PlanInks.Lettering, Invariant($"{_book.At} Lines 1:{1000 / _perMeter:0}, each design's own stations."), new Point2(Margin, y), 2, _width - (2 * Margin));
        for (var k = 0; k < _book.Designs.Count; k++)
        {
            y -= Row;
            _marks.Line(DesignInks.Of(k), new Point2(Margin, y + 1), new Point2(Margin + 24, y + 1));
            _marks.Text(PlanInks.Lettering, $"{DragCrossings.Letter(k)}  {_book.Designs[k].Title}", new Point2(Margin + 27, y), 2.4, _width - (2 * Margin) - 27);
        }

        return y;
    }

    private void DrawSections(Box2 room)
    {
        double wide = 2 * Half, k = 1000.0 / PlanLayout.Scales.First(s => wide * 1000 / s <= room.Width && Top * 1000 / s <= room.Height - 8);
        Point2 origin = new(room.Center.X, room.Bottom + (Math.Max(0, -_extents.Min(e => e.Bottom)) * k) + 2);
        _marks.Line(PlanInks.Datum, new Point2(origin.X - (Half * k) - 3, origin.Y), new Point2(origin.X + (Half * k) + 3, origin.Y));
        _marks.Line(PlanInks.Datum, origin + new Vector2(0, -2), new Point2(origin.X, origin.Y + (Top * k) + 2));
        Title(Invariant($"Sections, stations 0 to 10, 1:{1000 / k:0}; fore body to the right"), room.Top - 3);
        Each((lines, ink) =>
        {
            foreach (var station in lines.Stations.Where(s => Whole(lines, s.Position) is not null))
            {
                var number = Whole(lines, station.Position)!.Value;
                foreach (var side in number == 5 ? (int[])[-1, 1] : [number < 5 ? 1 : -1])
                    _marks.Path(ink, [.. station.ToPolyline(PlanCurve.ChordTolerance / k).Select(p => new Point2(origin.X + (side * p.Point.Y * k), origin.Y + (p.Point.Z * k)))]);
            }
        });
    }

    private void DrawDrag(Box2 room)
    {
        var unit = FigureText.UnitOf(Quantity.Drag, _book.Settings.Notation);
        double from = _book.Speeds[0], to = _book.Speeds[^1];
        var speeds = Enumerable.Range(0, 121).Select(i => from + ((to - from) * i / 120)).ToArray();
        if (!(to > from))
            speeds = [from];
        var drags = _book.Drags.Select(d => speeds.Select(v => d.At(v).Total / unit.Size).ToArray()).ToList();
        var box = room with { Bottom = room.Bottom + ChartFrame.Foot, Top = room.Top - 7, Right = room.Right - 6 };
        var frame = new ChartFrame(
            box,
            ChartAxis.Of("speed, kn", [.. speeds.Select(v => v / Standards.Knot)], 10, fromZero: false),
            ChartAxis.Of($"drag, {unit.Name}: an estimate", [.. drags.SelectMany(d => d)], 6, fromZero: true));
        frame.Draw(_marks);
        _marks.Text(PlanInks.Titles, "Drag; a cross where two change places", new Point2(box.Left, room.Top - 3), 2.8, box.Width);
        var below = double.NegativeInfinity;
        foreach (var k in Enumerable.Range(0, drags.Count).OrderBy(k => drags[k][^1]))
        {
            var curve = speeds.Zip(drags[k], (v, d) => frame.At(v / Standards.Knot, d)).ToList();
            _marks.Path(DesignInks.Of(k), curve);
            below = Math.Max(curve[^1].Y, below + 3.2);
            _marks.Text(PlanInks.Titles, DragCrossings.Letter(k), new Point2(curve[^1].X + 1.5, below), 2.2, anchor: Anchor.MiddleLeft);
        }

        foreach (var crossing in _book.Crossings)
        {
            foreach (var speed in crossing.Speeds)
                _marks.Cross(PlanInks.Titles, frame.At(speed / Standards.Knot, _book.Drags[crossing.First].At(speed).Total / unit.Size), 1.8);
        }
    }

    private static IEnumerable<HullLine> InPlan(HullLines lines) =>
        [lines.Sheer, .. lines.Waterlines.Where(w => w.Position == lines.Hull.Draft || w.Position == lines.Hull.Draft / 2), .. lines.Hull.Transom is null ? Array.Empty<HullLine>() : [lines.Stern]];

    // The number of a whole station; null of a half one.
    private static int? Whole(HullLines lines, double x) =>
        int.TryParse(lines.Grid.Stations.FirstOrDefault(s => s.X == x).Number, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var number) ? number : null;

    private double X(double x) => _bow - (x * _perMeter);

    private void Each(Action<HullLines, Layer> draw)
    {
        for (var k = 0; k < _lines.Count; k++)
            draw(_lines[k], DesignInks.Of(k));
    }

    private void Curve(Layer ink, HullLine line, Func<Point3, Point2> onPaper) => _marks.Path(ink, PlanCurve.Of(ink, line, _perMeter, onPaper).Points);

    private void Title(string text, double y) => _marks.Text(PlanInks.Titles, text, new Point2(Margin, y), 2.8);
}
