using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>Marks of a sheet measured, moved and cut off at the edges of a window.</summary>
internal static class Marks
{
    /// <summary>Greatest distance of a filled area's chords from its arcs [mm]; stroked arcs stay arcs.</summary>
    private const double FillTolerance = 0.002;

    /// <summary>The strokes of a mark: a path is its own stroke, lettering those of its alphabet.</summary>
    public static IEnumerable<ArcPath> Strokes(Mark mark) => mark switch
    {
        PathMark path => [path.Path],
        TextMark text => StrokeLettering.Strokes(text),
        _ => throw new ArgumentException($"a mark of kind {mark.GetType().Name} cannot be tiled", nameof(mark)),
    };

    /// <summary>The smallest box around the middles of a mark's lines.</summary>
    public static Box2 Bounds(Mark mark) => Strokes(mark).Aggregate(Box2.Nothing, (box, s) => box.With(s.Bounds()));

    /// <summary>Points along a mark, no further apart than a step.</summary>
    public static IEnumerable<Point2> Samples(Mark mark, double step) =>
        from stroke in Strokes(mark)
        from segment in stroke.Segments()
        let pieces = Math.Max(1, (int)Math.Ceiling(segment.Length / step))
        from i in Enumerable.Range(0, pieces + 1)
        select segment.PointAt((double)i / pieces);

    /// <summary>The part of a mark inside a box: lines and arcs cut at its edges, lettering kept whole or cut stroke by stroke.</summary>
    public static IEnumerable<Mark> Inside(Mark mark, Box2 box)
    {
        switch (mark)
        {
            case PathMark { Filled: true } area:
                var inside = area.Path.AreaInside(box, FillTolerance);
                return inside.Vertices.Count > 0 && area.Path.Bounds().Touches(box) ? [area with { Path = inside }] : [];
            case TextMark text when box.Holds(Bounds(text)):
                return [text];
            default:
                return Strokes(mark).SelectMany(s => s.Inside(box)).Select(s => new PathMark(mark.Layer, s));
        }
    }

    /// <summary>A mark shrunk or grown about the origin and then shifted.</summary>
    public static Mark Moved(Mark mark, Vector2 by, double scale = 1) => mark switch
    {
        PathMark path => path with { Path = path.Path.Mapped(p => new Point2((scale * p.X) + by.X, (scale * p.Y) + by.Y)) },
        TextMark text => text with { At = new Point2((scale * text.At.X) + by.X, (scale * text.At.Y) + by.Y), Height = scale * text.Height },
        _ => throw new ArgumentException($"a mark of kind {mark.GetType().Name} cannot be moved", nameof(mark)),
    };

    /// <summary>A sheet turned a quarter to the left, its lower left corner at the origin again.</summary>
    public static Sheet TurnedLeft(Sheet sheet)
    {
        Point2 Turned(Point2 p) => new(sheet.Height - p.Y, p.X);
        return new Sheet(sheet.Title, sheet.Height, sheet.Width, [.. sheet.Marks.Select(m => m switch
        {
            PathMark path => (Mark)(path with { Path = path.Path.Mapped(Turned) }),
            TextMark text => text with { At = Turned(text.At), Angle = text.Angle + (Math.PI / 2) },
            _ => throw new ArgumentException($"a mark of kind {m.GetType().Name} cannot be turned", nameof(sheet)),
        })]);
    }
}
