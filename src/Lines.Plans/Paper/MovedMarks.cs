using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Kernel.Polygons;

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

    /// <summary>A mark turned about the origin by quarters to the left and then shifted.</summary>
    public static Mark Turned(Mark mark, int quarters, Vector2 by) => mark switch
    {
        PathMark path => path with { Path = path.Path.Mapped(p => SheetStock.Turned(p, quarters) + by) },
        TextMark text => text with { At = SheetStock.Turned(text.At, quarters) + by, Angle = text.Angle + (quarters * Math.PI / 2) },
        _ => throw new ArgumentException($"a mark of kind {mark.GetType().Name} cannot be turned", nameof(mark)),
    };

    /// <summary>A sheet turned a quarter to the left, its lower left corner at the origin again.</summary>
    public static Sheet TurnedLeft(Sheet sheet)
    {
        return new Sheet(sheet.Title, sheet.Height, sheet.Width, [.. sheet.Marks.Select(m => Turned(m, 1, new Vector2(sheet.Height, 0)))]);
    }
}
