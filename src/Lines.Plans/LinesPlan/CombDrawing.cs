using Lines.Hull.Fairness;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Plans.Paper;

namespace Lines.Plans.LinesPlan;

/// <summary>A curvature comb on paper: teeth square to a line, and the curve along their tips.</summary>
/// <remarks>
/// <para><b>Sign.</b> Teeth stand on the side asked for where the line bulges; a hollow shows as teeth on the other side.</para>
/// <para><b>Method.</b> Teeth every few millimeters. Their scale is the largest of 1, 2, 5 and their tens at which nine teeth
/// in ten are no longer than the room for them; longer ones, at a stem, are cut off at the room.</para>
/// </remarks>
internal sealed class CombDrawing
{
    private const double Spacing = 3;

    private readonly IReadOnlyList<CombTooth> _teeth;
    private readonly double _room;

    /// <summary>Measures a line.</summary>
    /// <param name="line">The line.</param>
    /// <param name="perMeter">Millimeters on paper to a meter.</param>
    /// <param name="room">Greatest length of a tooth [mm].</param>
    public CombDrawing(HullLine line, double perMeter, double room)
    {
        _room = room;
        Name = line.Name;
        _teeth = [.. CurvatureComb.Of(line, Math.Max(8, (int)(line.ChordLength * perMeter / Spacing))).Where(t => double.IsFinite(t.Curvature))];
        var sizes = _teeth.Select(t => Math.Abs(t.Curvature)).Order().ToList();
        var usual = sizes.Count == 0 ? 0 : sizes[(int)(0.9 * (sizes.Count - 1))];
        PerTooth = RoundNumber.AtLeast(usual / room);
    }

    /// <summary>Name of the line.</summary>
    public string Name { get; }

    /// <summary>Curvature shown by one millimeter of tooth [1/m per mm].</summary>
    public double PerTooth { get; }

    /// <summary>Draws the comb.</summary>
    /// <param name="marks">The sheet.</param>
    /// <param name="onPaper">From the line's flat axes [m] to the paper.</param>
    /// <param name="up">Whether a bulge is shown by teeth that point up the sheet; down otherwise.</param>
    public void Draw(PageMarks marks, Func<Point2, Point2> onPaper, bool up)
    {
        var tips = new List<Point2>();
        foreach (var tooth in _teeth)
        {
            var foot = onPaper(tooth.Foot);
            var normal = (onPaper(tooth.Foot + tooth.Normal) - foot).Unit();
            if (normal.Y < 0 == up)
                normal = -normal;
            var tip = foot + (Math.Clamp(tooth.Curvature / PerTooth, -_room, _room) * normal);
            if (tip.DistanceTo(foot) > 0.01)
                marks.Line(PlanInks.Combs, foot, tip);
            tips.Add(tip);
        }

        marks.Path(PlanInks.Combs, tips);
    }
}
