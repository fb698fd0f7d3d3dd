using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using Lines.Plans.Molds;

namespace Lines.Plans.Nesting;

/// <summary>Names of the parts on the picture of a cutting sheet.</summary>
/// <remarks>
/// <para><b>Method.</b> A name stands as near to the middle of the one on the part as it lies inside, and as large as that lets it, but to be read with the page as it lies,
/// however the part is turned. In a part too narrow for that it is read from the right; beside one too narrow for either it stands on the nearest
/// blank ground, with a leader to the part, and across the part only where the page has no such ground.</para>
/// <para><b>Accuracy.</b> No letter is nearer to an outline than 0.45 mm.</para>
/// </remarks>
/// <param name="outlines">All parts of the picture.</param>
/// <param name="room">Where a name beside its part may stand.</param>
internal sealed class SheetNames(IReadOnlyList<PartOutline> outlines, Box2 room)
{
    private const double Largest = 3;
    private const double Least = 1.5;
    private const double Larger = 1.5;
    private const double Shrink = 0.85;
    private const double FromEdge = 0.45;
    private const int Levels = 60;

    /// <summary>Places beside a part are tried as far apart [mm].</summary>
    private const double Step = 1;

    private readonly List<Box2> _beside = [];

    /// <summary>The name of a part, and a leader where it stands beside it.</summary>
    /// <param name="outline">The part.</param>
    /// <param name="name">Its name where the part has it.</param>
    public IEnumerable<Mark> Of(PartOutline outline, TextMark name)
    {
        var middle = name.At + (name.Height / 2 * new Vector2(-Math.Sin(name.Angle), Math.Cos(name.Angle)));
        var heights = new List<double> { Math.Max(Math.Min(Largest, Larger * name.Height), Least) };
        while (heights[^1] > Least)
            heights.Add(Math.Max(Least, heights[^1] * Shrink));
        return heights.Select(h => Inside(outline, name, middle, h, 0)).Concat(heights.Select(h => Inside(outline, name, middle, h, Math.PI / 2))).FirstOrDefault(t => t is not null) is { } inside
            ? [inside] : Beside(outline, name, middle);
    }

    // In the middle of the one on the part, or at the level nearest to that with room.
    private static TextMark? Inside(PartOutline outline, TextMark name, Point2 middle, double height, double angle)
    {
        var width = StrokeLettering.Width(name.Text, height);
        var (across, up) = angle == 0 ? (width / 2, height / 2) : (height / 2, width / 2);
        var bounds = outline.Path.Bounds();
        var places = Enumerable.Range(1, Levels - 1).Select(i => bounds.Bottom + (bounds.Height * i / Levels)).OrderBy(y => Math.Abs(y - middle.Y))
            .Select(y => (Y: y, Room: outline.WidestRoom(y - up, y + up))).Select(p => (p.Y, p.Room.Left, p.Room.Right));
        var own = outline.Room(middle.Y - up, middle.Y + up, middle.X);
        if (middle.X - own.Left >= across && own.Right - middle.X >= across && IsClear(middle))
            return Placed(middle);
        foreach (var (y, left, right) in places)
        {
            if (right - left >= 2 * across && new Point2(Math.Clamp(middle.X, left + across, right - across), y) is var at && IsClear(at))
                return Placed(at);
        }

        return null;

        bool IsClear(Point2 at) => outline.IsClearOf(new Box2(at.X - across, at.Y - up, at.X + across, at.Y + up).Grown(FromEdge));

        TextMark Placed(Point2 at) => Around(name, at, height, angle);
    }

    private IEnumerable<Mark> Beside(PartOutline outline, TextMark name, Point2 middle)
    {
        var half = new Vector2(StrokeLettering.Width(name.Text, Least) / 2, Least / 2);
        var within = new Box2(room.Left + half.X, room.Bottom + half.Y, room.Right - half.X, room.Top - half.Y);
        var places = Enumerable.Range(0, (int)(within.Width / Step) + 1).SelectMany(i => Enumerable.Range(0, (int)(within.Height / Step) + 1), (i, k) => new Point2(within.Left + (i * Step), within.Bottom + (k * Step)));
        foreach (var at in places.OrderBy(p => p.DistanceTo(middle)))
        {
            var box = new Box2(at.X - half.X, at.Y - half.Y, at.X + half.X, at.Y + half.Y);
            if (box.Grown(FromEdge).TouchesAny(_beside) || outlines.Any(o => !o.IsClearOf(box.Grown(FromEdge)) || o.Path.Contains(at)))
                continue;
            _beside.Add(box);
            var inside = outline.WidestRoom(middle.Y, middle.Y).Middle is var x && outline.Path.Contains(new Point2(x, middle.Y)) ? new Point2(x, middle.Y) : middle;
            return [Around(name, at, Least, 0), new PathMark(SettingUpInks.Fine, ArcPath.Line(new Point2(Math.Clamp(inside.X, box.Left, box.Right), Math.Clamp(inside.Y, box.Bottom, box.Top)), inside))];
        }

        return [Around(name, middle, Least, 0)];
    }

    private static TextMark Around(TextMark name, Point2 at, double height, double angle) =>
        name with { Layer = SettingUpInks.Text, At = at - (height / 2 * new Vector2(-Math.Sin(angle), Math.Cos(angle))), Height = height, Angle = angle, Anchor = Anchor.Center };
}
