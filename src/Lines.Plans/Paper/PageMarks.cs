using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>The marks one page adds up: a list with the few deeds every page needs.</summary>
internal sealed class PageMarks
{
    private readonly List<Mark> _marks = [];

    /// <summary>What has been drawn so far.</summary>
    public IReadOnlyList<Mark> All => _marks;

    /// <summary>Adds marks made elsewhere.</summary>
    public void Add(IEnumerable<Mark> marks) => _marks.AddRange(marks);

    /// <summary>A straight line.</summary>
    public void Line(Layer layer, Point2 from, Point2 to) => _marks.Add(new PathMark(layer, ArcPath.Line(from, to)));

    /// <summary>A polyline; nothing for fewer than two points.</summary>
    public void Path(Layer layer, IReadOnlyList<Point2> points)
    {
        if (points.Count > 1)
            _marks.Add(new PathMark(layer, ArcPath.Through(points)));
    }

    /// <summary>A filled polygon.</summary>
    public void Area(Layer layer, IReadOnlyList<Point2> corners) => _marks.Add(new PathMark(layer, ArcPath.Through(corners, closed: true), Filled: true));

    /// <summary>A rectangle, stroked or filled.</summary>
    public void Box(Layer layer, Box2 box, bool filled = false) => _marks.Add(new PathMark(layer, box.Outline, filled));

    /// <summary>An upright cross.</summary>
    public void Cross(Layer layer, Point2 at, double arm)
    {
        Line(layer, at + new Vector2(-arm, 0), at + new Vector2(arm, 0));
        Line(layer, at + new Vector2(0, -arm), at + new Vector2(0, arm));
    }

    /// <summary>The height at which none of a block's lines is wider than the room for them [mm].</summary>
    /// <param name="texts">The lines.</param>
    /// <param name="height">Height of the capitals where there is room [mm].</param>
    /// <param name="room">Greatest width [mm].</param>
    public static double HeightFor(IEnumerable<string> texts, double height, double room) =>
        Math.Min(height, texts.Min(t => height * room / StrokeLettering.Width(t, height)));

    /// <summary>A line of lettering, made smaller where it would be wider than the room for it.</summary>
    /// <param name="layer">The layer.</param>
    /// <param name="text">The text.</param>
    /// <param name="at">The anchor point [mm].</param>
    /// <param name="height">Height of the capitals [mm] where there is room.</param>
    /// <param name="room">Greatest width [mm].</param>
    /// <param name="anchor">Which part of the text stands at the anchor point.</param>
    /// <param name="angle">Direction of the base line [rad].</param>
    public void Text(
        Layer layer, string text, Point2 at, double height, double room = double.PositiveInfinity, Anchor anchor = Anchor.Left, double angle = 0)
    {
        var width = StrokeLettering.Width(text, height);
        _marks.Add(new TextMark(layer, text, at, width > room ? height * room / width : height, anchor, angle));
    }
}
