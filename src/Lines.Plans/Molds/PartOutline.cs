using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Molds;

/// <summary>A part's outline [mm] asked where lettering finds room.</summary>
internal sealed class PartOutline
{
    // Chords for finding room only; nothing is cut to them.
    private const double ChordTolerance = 0.05;
    private const double UsualClearance = 3;
    private const double Above = 1;
    private const double LeastHeight = 2.2;

    private readonly IReadOnlyList<IReadOnlyList<Point2>> _rings;
    private readonly double _clearance;
    private readonly Lazy<IReadOnlyList<ArcSegment>> _segments;

    /// <summary>Reads an outline.</summary>
    /// <param name="outline">The outline [mm].</param>
    /// <param name="clearance">How far lettering keeps from it to either side [mm].</param>
    /// <param name="holes">Holes that leave no room for lettering [mm].</param>
    public PartOutline(ArcPath outline, double clearance = UsualClearance, IEnumerable<ArcPath>? holes = null)
    {
        (Path, _rings, _clearance) = (outline, [.. (holes ?? []).Prepend(outline).Select(p => p.Flattened(ChordTolerance))], clearance);
        _segments = new(() => outline.Segments());
    }

    /// <summary>The outline.</summary>
    public ArcPath Path { get; }

    /// <summary>The room across between two levels around an upright line.</summary>
    /// <returns>Left and right limits with clearance taken off; empty (right not beyond left) where the line is outside.</returns>
    public (double Left, double Right) Room(double low, double high, double x)
    {
        double left = double.NegativeInfinity, right = double.PositiveInfinity;
        for (var k = 0; k <= 4; k++)
        {
            var y = low + ((high - low) * k / 4);
            double l = double.NegativeInfinity, r = double.PositiveInfinity;
            foreach (var ring in _rings)
            {
                for (var i = 1; i < ring.Count; i++)
                {
                    Point2 a = ring[i - 1], b = ring[i];
                    if ((a.Y > y) == (b.Y > y))
                        continue;
                    var at = a.X + ((y - a.Y) / (b.Y - a.Y) * (b.X - a.X));
                    if (at <= x)
                        l = Math.Max(l, at);
                    else
                        r = Math.Min(r, at);
                }
            }

            if (!double.IsFinite(l) || !double.IsFinite(r))
                return (x, x);
            (left, right) = (Math.Max(left, l + _clearance), Math.Min(right, r - _clearance));
        }

        return (left, right);
    }

    /// <summary>The widest room across between two levels, wherever along the part it is.</summary>
    public (double Left, double Right, double Middle) WidestRoom(double low, double high)
    {
        const int places = 24;
        var bounds = Path.Bounds();
        var (left, right) = Enumerable.Range(1, places - 1)
            .Select(i => Room(low, high, bounds.Left + (bounds.Width * i / places))).MaxBy(r => r.Right - r.Left);
        return (left, right, (left + right) / 2);
    }

    /// <summary>Whether no edge of the part enters a box.</summary>
    public bool IsClearOf(Box2 box)
    {
        foreach (var segment in _segments.Value)
        {
            if (segment.Enters(box))
                return false;
        }

        return true;
    }

    /// <summary>Lettering shrunk until its own room takes it.</summary>
    /// <param name="mark">The lettering as wanted, level.</param>
    /// <param name="within">Limits across beyond the outline's own.</param>
    /// <returns>The lettering, or null where even the smallest finds no room.</returns>
    public TextMark? Fitted(TextMark mark, (double Left, double Right) within)
    {
        for (var height = mark.Height; height >= LeastHeight; height *= 0.92)
        {
            var width = StrokeLettering.Width(mark.Text, height);
            var left = mark.Anchor switch
            {
                Anchor.Left => mark.At.X,
                Anchor.Right => mark.At.X - width,
                _ => mark.At.X - (width / 2),
            };
            var room = Room(mark.At.Y, mark.At.Y + height + Above, left + (width / 2));
            if (left >= Math.Max(room.Left, within.Left) && left + width <= Math.Min(room.Right, within.Right))
                return mark with { Height = height };
        }

        return null;
    }
}
