using Lines.Drawing.Model;
using Lines.Hull.Loading;
using Lines.Hull.Strength;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Charts;
using Lines.Plans.Figures;
using Lines.Plans.LinesPlan;
using Lines.Plans.Paper;
using Lines.Plans.Report;

namespace Lines.Plans.Stability;

/// <summary>Weight and buoyancy, shear and bending moment along the main hull, of the case that bends it most.</summary>
/// <remarks><b>Frame.</b> The sheet, millimeters, y up; the bow to the right as on the lines plan.</remarks>
internal sealed class BendingSheet
{
    private const double Margin = 12.7;
    private const double Left = 20;
    private const double Head = 31;
    private const double Panel = 40;
    private const double Gap = 9;
    private const double Foot = 22;

    private static readonly Dictionary<WaveForm, Layer> s_inks = new()
    {
        [WaveForm.Still] = new Layer("bending-still", new Ink(0.5)),
        [WaveForm.Hogging] = new Layer("bending-crest", new Ink(0.3, [5, 1.2])),
        [WaveForm.Sagging] = new Layer("bending-trough", new Ink(0.3, [1.6, 1])),
    };

    private readonly PageMarks _marks = new();
    private readonly StabilityBook _book;
    private readonly LoadCaseStudy _study;
    private readonly double _right;
    private readonly double _perMeter;
    private readonly double _fore;

    private BendingSheet(StabilityBook book, LoadCaseStudy study, double width)
    {
        (_book, _study, _right) = (book, study, width - Margin - 2);
        var points = study.Bending[0].Points;
        (_fore, _perMeter) = (points[0].X, (width - (2 * Margin) - Left - 4) / (points[^1].X - points[0].X));
    }

    /// <summary>The drawing; null where no case floats.</summary>
    /// <param name="book">The load cases.</param>
    /// <param name="width">Width of the sheet [mm].</param>
    public static Sheet? Of(StabilityBook book, double width)
    {
        if (book.Studies.Where(s => s.Bending.Count > 0).MaxBy(s => s.Bending.Max(b => Math.Abs(b.Worst.Moment))) is not { } worst)
            return null;
        const double Height = Head + (3 * Panel) + (2 * Gap) + Foot + Margin;
        var sheet = new BendingSheet(book, worst, width);
        sheet.Draw(Height, width - (2 * Margin));
        return new Sheet($"{book.Title}, along the hull", width, Height, sheet._marks.All);
    }

    private void Draw(double height, double room)
    {
        _marks.Text(PlanInks.Titles, $"{_book.Title}: along the hull, {LoadCaseFigures.BentIn(_study)}, the case that bends her most", new Point2(Margin, height - Margin - 3), 4, room);
        _marks.Text(PlanInks.Lettering, StabilityBook.Strength, new Point2(Margin, height - Margin - 8.5), 2, room);
        var force = FigureText.UnitOf(Quantity.Force, _book.Notation);
        (double Size, string Name) perLength = _book.Notation == LengthNotation.Millimeters ? (1.0, "N/m") : (force.Size / Length.Foot, "lbf/ft");
        var moment = FigureText.UnitOf(Quantity.Moment, _book.Notation);
        var top = height - Head;
        Graph(top, $"buoyancy; thin: weight of the boat, {perLength.Name}", perLength.Size, p => p.Buoyancy, p => p.Weight);
        Graph(top - Panel - Gap, $"shear, {force.Name}", force.Size, p => p.Shear, null);
        Graph(top - (2 * (Panel + Gap)), $"bending moment, {moment.Name}; up: the middle sags", moment.Size, p => p.Moment, null);
        Along(top, top - (3 * Panel) - (2 * Gap));
        var x = Margin + Left;
        foreach (var bending in _study.Bending)
        {
            _marks.Path(s_inks[bending.Wave], [new Point2(x, Margin + 12), new Point2(x + 14, Margin + 12)]);
            _marks.Text(PlanInks.Lettering, LoadCaseFigures.WaterOf(bending), new Point2(x + 16, Margin + 11), 2.2);
            x += 62;
        }

        _marks.Text(PlanInks.Lettering, "Loads are points: shear steps at each. Dashed uprights are joints.", new Point2(Margin, Margin + 4), 2, room);
        _marks.Text(PlanInks.Lettering, Cautions.Figures, new Point2(Margin, Margin), 2, room);
    }

    // Round distances from the bow, through all graphs.
    private void Along(double top, double bottom)
    {
        var (unit, name) = _book.Notation == LengthNotation.Millimeters ? (1.0, "m") : (Length.Foot, "ft");
        var aft = _study.Bending[0].Points[^1].X;
        var axis = ChartAxis.Of("", [_fore / unit, aft / unit], 8, fromZero: true);
        double At(double x) => _right - (((x * unit) - _fore) * _perMeter);
        foreach (var x in axis.Lines.Where(l => (l * unit) >= _fore - 1e-9 && (l * unit) <= aft + 1e-9))
        {
            _marks.Line(PlanInks.Grid, new Point2(At(x), bottom), new Point2(At(x), top));
            _marks.Text(PlanInks.Lettering, axis.Told(x), new Point2(At(x), bottom - 3.2), 2, anchor: Anchor.Center);
        }

        _marks.Text(PlanInks.Lettering, name + " from bow", new Point2(At(aft / unit) - 2, bottom - 3.2), 2, anchor: Anchor.MiddleRight);
    }

    private void Graph(double top, string title, double unit, Func<BendingPoint, double> value, Func<BendingPoint, double>? thin)
    {
        var all = _study.Bending.SelectMany(b => b.Points).SelectMany(p => thin is null ? new[] { value(p) } : [value(p), thin(p)]).ToList();
        double most = Math.Max(0, all.Max() / unit), least = Math.Min(0, all.Min() / unit), step = RoundNumber.AtLeast((most - least) / 4);
        double low = step * Math.Floor(least / step), perUnit = Panel / ((step * Math.Ceiling(most / step)) - low);
        double bottom = top - Panel, left = _right - ((_study.Bending[0].Points[^1].X - _fore) * _perMeter);
        Point2 At(double x, double v) => new(_right - ((x - _fore) * _perMeter), bottom + (((v / unit) - low) * perUnit));
        for (var v = low; bottom + ((v - low) * perUnit) <= top + 1e-6; v += step)
        {
            var y = bottom + ((v - low) * perUnit);
            _marks.Line(Math.Abs(v) < step / 2 ? PlanInks.Fine : PlanInks.Grid, new Point2(left, y), new Point2(_right, y));
            _marks.Text(PlanInks.Lettering, Invariant($"{Math.Round(v, 6):0.###}"), new Point2(left - 2, y), 2, anchor: Anchor.MiddleRight);
        }

        _marks.Text(PlanInks.Lettering, title, new Point2(left, top + 1.8), 2.2);
        foreach (var joint in _study.Bending[0].Joints)
            _marks.Line(PlanInks.Joints, At(joint.X, low * unit), At(joint.X, low * unit) with { Y = top });
        if (thin is not null)
            _marks.Path(PlanInks.Fine, [.. _study.Bending[0].Points.Select(p => At(p.X, thin(p)))]);
        foreach (var bending in _study.Bending)
            _marks.Path(s_inks[bending.Wave], [.. bending.Points.Select(p => At(p.X, value(p)))]);
    }
}
