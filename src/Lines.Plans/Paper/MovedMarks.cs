using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>Marks moved, shrunk and turned.</summary>
internal static class MovedMarks
{
    /// <summary>A mark shrunk or grown about the origin and then shifted.</summary>
    public static Mark Of(Mark mark, Vector2 by, double scale = 1) => mark switch
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
