using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Plans.Paper;

namespace Lines.Plans.LinesPlan;

/// <summary>Teeth square to a line whose lengths show its curvature, and the curve along their tips.</summary>
/// <remarks>
/// <para><b>Sign.</b> Teeth stand on the side the line bulges to; a hollow shows as teeth on the other side.</para>
/// <para><b>Method.</b> Teeth every few millimetres on paper. Their scale is the largest of 1, 2, 5 and their tens at which nine teeth
/// in ten are no longer than the room for them; longer ones, at a stem, are cut off at the room.</para>
/// </remarks>
internal sealed class CurvatureComb
{
    private const double Spacing = 3;

    private readonly List<(Point2 Foot, Vector2 Outward, double Curvature)> _teeth = [];
    private readonly double _room;

    /// <summary>Measures a line.</summary>
    /// <param name="line">The line.</param>
    /// <param name="axes">The axes in which its curvature is taken.</param>
    /// <param name="perMetre">Millimetres on paper to a metre.</param>
    /// <param name="onPaper">From the hull frame to the paper.</param>
    /// <param name="room">Greatest length of a tooth [mm].</param>
    /// <param name="outward">+1 or -1: sign of the curvature in those axes where the line bulges out.</param>
    public CurvatureComb(HullLine line, FlatAxes axes, double perMetre, Func<Point3, Point2> onPaper, double room, int outward)
    {
        _room = room;
        var count = Math.Max(8, (int)(line.ChordLength * perMetre / Spacing));
        for (var i = 0; i <= count; i++)
        {
            // The ends themselves may be corners of the skin where a line has no curvature.
            var t = Math.Clamp((double)i / count, 0.002, 0.998);
            var place = line.At(t);
            var curvature = outward * line.CurvatureAt(t, axes);
            var direction = line.DirectionAt(t);
            var foot = onPaper(place.Point);
            var ahead = onPaper(place.Point + (1e-4 * direction)) - foot;
            if (!double.IsFinite(curvature) || !(ahead.Length > 0))
                continue;
            _teeth.Add((foot, ahead.Unit().TurnedLeft, curvature));
        }

        var sizes = _teeth.Select(t => Math.Abs(t.Curvature)).Order().ToList();
        var usual = sizes.Count == 0 ? 0 : sizes[(int)(0.9 * (sizes.Count - 1))];
        PerTooth = usual > 0 ? Rounded(usual / room) : 1;
    }

    /// <summary>Curvature shown by one millimetre of tooth [1/m per mm].</summary>
    public double PerTooth { get; }

    /// <summary>Draws the comb on the side where the unit vector given points.</summary>
    /// <param name="marks">The sheet.</param>
    /// <param name="side">Direction on paper in which a bulge is shown; only its sign along the line's normal counts.</param>
    public void Draw(PageMarks marks, Vector2 side)
    {
        var tips = new List<Point2>();
        foreach (var (foot, left, curvature) in _teeth)
        {
            var outward = left.Dot(side) < 0 ? -left : left;
            var tip = foot + (Math.Clamp(curvature / PerTooth, -_room, _room) * outward);
            if (tip.DistanceTo(foot) > 0.01)
                marks.Line(PlanInks.Combs, foot, tip);
            tips.Add(tip);
        }

        if (tips.Count > 1)
            marks.Path(PlanInks.Combs, tips);
    }

    private static double Rounded(double value)
    {
        var ten = Math.Pow(10, Math.Floor(Math.Log10(value) + 1e-9));
        return new[] { 1.0, 2, 5, 10 }.Select(m => m * ten).First(m => m >= value * (1 - 1e-9));
    }
}
