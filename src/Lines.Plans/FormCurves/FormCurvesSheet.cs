using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Figures;
using Lines.Plans.LinesPlan;
using Lines.Plans.Paper;
using Lines.Plans.Report;

namespace Lines.Plans.FormCurves;

/// <summary>The curves of form: draft upward, every curve to a scale of its own that stands at its end.</summary>
/// <remarks>
/// <para><b>Frame.</b> The sheet, millimeters, y up. Squares of the grid are 10 mm wide.</para>
/// <para><b>Method.</b> Between the drafts computed a curve is the cubic spline through them. A curve that leaves its panel, as the
/// metacenters do at small drafts, is cut off at the edge.</para>
/// </remarks>
internal sealed class FormCurvesSheet
{
    private const double Margin = 12.7;
    private const double Square = 10;
    private const double Gap = 8;
    private const double LabelColumn = 18;
    private const double Head = 15;
    private const double Labels = 56;
    private const double Foot = 24;
    private const double Capital = 2.4;

    /// <summary>Drafts below this part of the design draft do not rule a scale.</summary>
    private const double Ruling = 0.5;

    private readonly PageMarks _marks = new();
    private readonly FormCurvesBook _book;
    private readonly PaperSize _paper;
    private readonly double[] _drafts;
    private readonly double _bottom;
    private readonly double _perMeter;
    private readonly int _scale;

    private FormCurvesSheet(FormCurvesBook book, PaperSize paper)
    {
        (_book, _paper) = (book, paper);
        _drafts = [.. book.Row("draft").Select(f => f.Value!.Value)];
        _bottom = Margin + Foot;
        var room = paper.Width - Margin - Head - Labels - _bottom;
        _scale = PlanLayout.Scales.First(s => _drafts[^1] * 1000 / s <= room);
        _perMeter = 1000.0 / _scale;
    }

    /// <summary>Draws the curves.</summary>
    /// <param name="book">The figures.</param>
    /// <param name="paper">The paper, laid on its longer side.</param>
    public static Sheet Of(FormCurvesBook book, PaperSize paper)
    {
        var sheet = new FormCurvesSheet(book, paper);
        sheet.Draw();
        return new Sheet($"{book.Title}, curves of form", paper.Height, paper.Width, sheet._marks.All);
    }

    private double Top => Y(_drafts[^1]);

    private double Y(double draft) => _bottom + (draft * _perMeter);

    private void Draw()
    {
        double width = _paper.Height - (2 * Margin), left = Margin + LabelColumn, right = left;
        var title = new Point2(Margin, _paper.Width - Margin - 5);
        _marks.Text(PlanInks.Titles, $"{_book.Title}: curves of form", title, 4.5, width);
        _marks.Text(
            PlanInks.Lettering, Invariant($"{FormCurvesBook.WhatItIs} Drafts 1:{_scale} on {_paper.Name} paper; a square is {new Length(0.010).ToSize(_book.Notation)} wide."), title + new Vector2(0, -6.5), Capital, width);
        var ends = new List<CurveEnd>();
        foreach (var panel in FormCurve.Panels)
        {
            ends.AddRange(Panel(panel, new Box2(right, _bottom, right + (panel.Squares * Square), Top)));
            right += (panel.Squares * Square) + Gap;
        }

        DraftLines(left, right - Gap);
        Write(ends);
        _marks.Text(PlanInks.Lettering, Cautions.Figures, new Point2(Margin, Margin), Capital, width);
    }

    // Level lines at the drafts, under all panels alike, each with its draft at the left.
    private void DraftLines(double left, double right)
    {
        var places = SpreadLabels.Apart([.. _drafts.Select(Y)], 3.4);
        for (var k = 0; k < _drafts.Length; k++)
        {
            var y = Y(_drafts[k]);
            var design = k == _book.Design;
            _marks.Line(design ? PlanInks.DesignWaterline : PlanInks.Grid, new Point2(left, y), new Point2(right, y));
            _marks.Path(PlanInks.Grid, [new Point2(left, y), new Point2(left - 1.5, places[k]), new Point2(left - 2, places[k])]);
            _marks.Text(design ? PlanInks.Titles : PlanInks.Lettering, new Length(_drafts[k]).ToCell(_book.Notation), new Point2(left - 2.8, places[k]), Capital, anchor: Anchor.MiddleRight);
        }

        var unit = _book.Notation is LengthNotation.Millimeters or LengthNotation.Inches ? ", " + FigureText.UnitOf(Quantity.Length, _book.Notation).Name : "";
        _marks.Text(PlanInks.Lettering, "draft" + unit, new Point2(left - 2.8, _bottom - 1), Capital, anchor: Anchor.MiddleRight);
    }

    private List<CurveEnd> Panel(FormPanel panel, Box2 box)
    {
        for (var k = 0; k <= panel.Squares; k++)
            _marks.Line(PlanInks.Grid, new Point2(box.Left + (k * Square), box.Bottom), new Point2(box.Left + (k * Square), box.Top));
        _marks.Line(PlanInks.Datum, new Point2(box.Left, box.Bottom), new Point2(box.Right, box.Bottom));
        _marks.Text(PlanInks.Titles, panel.Title, new Point2(box.Center.X, box.Bottom - 13), 2.8, box.Width + Gap - 2, Anchor.Center);
        var ends = new List<CurveEnd>();
        foreach (var curve in panel.Curves)
        {
            var with = panel.Numbered ? panel.Curves.SelectMany(c => Values(c.Key)).ToList() : Ruled(curve.With);
            var quantity = _book.Row(curve.Key)[0].Quantity;
            var scale = FormScale.Of(with, panel.Squares, !panel.Numbered || quantity == Quantity.Ratio);
            if (panel.Numbered && curve == panel.Curves[0])
                Numbers(panel, box, scale, quantity);
            else if (!panel.Numbered && curve == panel.Curves[0])
                _marks.Text(PlanInks.Lettering, "0", new Point2(box.Left, box.Bottom - 4.8), Capital, anchor: Anchor.Center);
            var line = Curve([.. Values(curve.Key).Zip(_drafts, (v, d) => new Point2(box.Left + ((v - scale.Zero) / scale.PerSquare * Square), Y(d)))], box);
            _marks.Path(curve.Ink, line);
            ends.Add(new CurveEnd(line[^1], curve, Told(curve, scale, quantity)));
        }

        return ends;
    }

    private void Numbers(FormPanel panel, Box2 box, FormScale scale, Quantity quantity)
    {
        for (var k = 0; k <= panel.Squares; k++)
            _marks.Text(PlanInks.Lettering, Told(scale.Zero + (k * scale.PerSquare)), new Point2(box.Left + (k * Square), box.Bottom - 4.8), Capital, anchor: Anchor.Center);
        if (FigureText.UnitOf(quantity, _book.Notation).Name is { Length: > 0 } unit)
            _marks.Text(PlanInks.Lettering, unit, new Point2(box.Center.X, box.Bottom - 8.4), Capital, anchor: Anchor.Center);
    }

    // The worth of a square, as it is written at the end of a curve.
    private string Told(FormCurve curve, FormScale scale, Quantity quantity)
    {
        var told = $"1 square = {Told(scale.PerSquare)} {FigureText.UnitOf(quantity, _book.Notation).Name}".TrimEnd();
        if (curve.Also.Length == 0)
            return told;
        var also = FigureText.UnitOf(_book.Row(curve.Also)[^1].Quantity, _book.Notation);
        return told + Invariant($", {scale.PerSquare * Values(curve.Also)[^1] / Values(curve.Key)[^1]:0.###} {also.Name}");
    }

    private static string Told(double value) => Invariant($"{Math.Round(value, 6):0.######}");

    private List<double> Values(string key) => [.. _book.Row(key).Select(f => f.Value!.Value / FigureText.UnitOf(f.Quantity, _book.Notation).Size)];

    private List<double> Ruled(string key) => [.. Values(key).Where((_, k) => _drafts[k] >= Ruling * _drafts[_book.Design])];

    // The spline through the points, from where it comes into the panel.
    private static List<Point2> Curve(IReadOnlyList<Point2> points, Box2 box)
    {
        var line = SmoothLine.Through(points);
        var inside = line.FindLastIndex(p => p.X > box.Right) + 1;
        if (inside == 0 || inside == line.Count)
            return line[(inside % line.Count)..];
        Point2 a = line[inside - 1], b = line[inside];
        return [a + ((box.Right - a.X) / (b.X - a.X) * (b - a)), .. line[inside..]];
    }

    // Names upright above the panels, each led to the end of its curve, the scale as a second line.
    private void Write(List<CurveEnd> ends)
    {
        const double Pitch = 8.5, Leader = 8;
        var places = SpreadLabels.Apart([.. ends.Select(e => e.At.X)], Pitch);
        for (var k = 0; k < ends.Count; k++)
        {
            var end = ends[k];
            Point2 foot = new(places[k], Top + Leader);
            _marks.Path(PlanInks.Fine, [end.At, new Point2(end.At.X, Top + 1.5), new Point2(foot.X, foot.Y - 1.5), foot]);
            _marks.Path(end.Curve.Ink, [foot, foot + new Vector2(0, Labels - Leader - 3)]);
            _marks.Text(PlanInks.Lettering, end.Curve.Name, foot + new Vector2(-1, 0.5), Capital, Labels - Leader - 4, angle: Math.PI / 2);
            _marks.Text(PlanInks.Lettering, end.Scale, foot + new Vector2(3.1, 0.5), 2.1, Labels - Leader - 4, angle: Math.PI / 2);
        }
    }

    /// <summary>Where a curve ends and what is written there.</summary>
    private sealed record CurveEnd(Point2 At, FormCurve Curve, string Scale);
}
