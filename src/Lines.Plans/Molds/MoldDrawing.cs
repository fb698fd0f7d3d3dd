using Lines.Construction.Molds;
using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;

namespace Lines.Plans.Molds;

/// <summary>All marks of one mold at full size, in its own frame [mm]: outline, lines, holes and lettering.</summary>
internal static class MoldDrawing
{
    private const double ScrewBand = 26;
    private const double Name = 4;

    /// <summary>The marks of a mold.</summary>
    /// <param name="title">Title of the design.</param>
    /// <param name="mold">The mold.</param>
    /// <param name="notation">How lengths are written.</param>
    public static IReadOnlyList<Mark> Of(string title, Mold mold, LengthNotation notation)
    {
        var outline = new PartOutline(Millimetres(mold.Outline));
        var lines = mold.Marks.Select(m => m with { Path = Millimetres(m.Path) }).ToList();
        var sheer = lines.Where(m => m.Kind == MoldMarkKind.Sheer).Min(m => m.Path.Vertices[0].Point.Y);
        var (low, high) = Band(mold, outline, lines, sheer);
        var bounds = outline.Path.Bounds();
        var centre = mold.StarboardRight is null ? CentreOfFoot(outline, low, high, bounds) : 0;
        var label = LabelBlock.Of(outline, MoldLabels.Of(title, mold, notation), centre, low, high);

        var marks = new List<Mark> { new PathMark(MoldInks.Cut, outline.Path) };
        foreach (var line in lines)
            marks.AddRange(Pieces(line, label.Low, label.High).Select(p => new PathMark(MoldInks.Mark, p)));
        foreach (var hole in mold.Holes)
            marks.Add(new PathMark(MoldInks.Drill, ArcPath.Circle(new Point2(1000 * hole.At.X, 1000 * hole.At.Y), 500 * hole.Diameter)));
        marks.AddRange(label.Marks);
        marks.AddRange(lines.SelectMany(l => Names(mold, outline, l)));
        marks.AddRange(mold.StarboardRight is { } right ? Sides(outline, sheer, right) : TowardBow(outline, bounds, low));
        return marks;
    }

    /// <summary>A path of metres in millimetres.</summary>
    public static ArcPath Millimetres(ArcPath path) => path.Mapped(p => new Point2(1000 * p.X, 1000 * p.Y));

    // The label stands between the strongback's screws and the sheer; a transom's between its top and the waterline nearest to it.
    private static (double Low, double High) Band(Mold mold, PartOutline outline, List<MoldMark> lines, double sheer)
    {
        if (mold.Kind != MoldKind.Transom)
            return (ScrewBand, sheer - (mold.Kind == MoldKind.Station ? 14 : 5));
        var levels = lines.Where(m => m.Kind is MoldMarkKind.Waterline or MoldMarkKind.DesignWaterline).Select(m => m.Path.Vertices[0].Point.Y);
        var bounds = outline.Path.Bounds();
        return (bounds.Bottom + 5, Math.Min(levels.DefaultIfEmpty(bounds.Top).Min() - 5, bounds.Bottom + 130));
    }

    private static double CentreOfFoot(PartOutline outline, double low, double high, Box2 bounds)
    {
        var room = outline.Room(low, high, (bounds.Left + bounds.Right) / 2);
        return (room.Left + room.Right) / 2;
    }

    // The centreline stops short of the label; level lines run through.
    private static IEnumerable<ArcPath> Pieces(MoldMark line, double low, double high)
    {
        if (line.Kind != MoldMarkKind.Centreline)
            return [line.Path];
        Point2 a = line.Path.Vertices[0].Point, b = line.Path.Vertices[1].Point;
        var (bottom, top) = a.Y < b.Y ? (a, b) : (b, a);
        return [ArcPath.Line(bottom, bottom with { Y = Math.Max(bottom.Y, low - 3) }), ArcPath.Line(top with { Y = high + 3 }, top)];
    }

    private static IEnumerable<TextMark> Names(Mold mold, PartOutline outline, MoldMark line)
    {
        Point2 a = line.Path.Vertices[0].Point, b = line.Path.Vertices[1].Point;
        (double, double) anywhere = (double.NegativeInfinity, double.PositiveInfinity);
        switch (line.Kind)
        {
            case MoldMarkKind.Centreline:
                var top = Math.Max(a.Y, b.Y);
                return Some(outline.Fitted(new TextMark(MoldInks.Text, line.Name, new Point2(2, top - 24), Name), anywhere));
            case MoldMarkKind.Sheer:
                var inward = Math.Sign(b.X - a.X);
                return Some(outline.Fitted(
                    new TextMark(MoldInks.Text, line.Name, new Point2(a.X + (inward * 4), a.Y + 1.5), Name, inward > 0 ? Anchor.Left : Anchor.Right),
                    mold.StarboardRight is null ? anywhere : inward > 0 ? (double.NegativeInfinity, -1) : (1, double.PositiveInfinity)));
            default:
                // Named at both ends, clear of the centreline; a profile's at the inner edge only.
                if (mold.StarboardRight is null)
                {
                    var right = b.X > a.X;
                    return Some(outline.Fitted(
                        new TextMark(MoldInks.Text, line.Name, new Point2(b.X + (right ? -5 : 5), b.Y + 1.5), Name, right ? Anchor.Right : Anchor.Left), anywhere));
                }

                return Some(outline.Fitted(new TextMark(MoldInks.Text, line.Name, new Point2(Math.Min(a.X, b.X) + 8, a.Y + 1.5), Name), (double.NegativeInfinity, -2)))
                    .Concat(Some(outline.Fitted(
                        new TextMark(MoldInks.Text, line.Name, new Point2(Math.Max(a.X, b.X) - 8, a.Y + 1.5), Name, Anchor.Right), (2, double.PositiveInfinity))));
        }
    }

    private static IEnumerable<Mark> Sides(PartOutline outline, double sheer, bool starboardRight)
    {
        const double height = 6;
        var y = sheer - 4 - height;
        var room = outline.Room(y, y + height, 0);
        string left = starboardRight ? "PORT" : "STARBOARD", right = starboardRight ? "STARBOARD" : "PORT";
        return Some(outline.Fitted(new TextMark(MoldInks.Text, left, new Point2(room.Left + 1, y), height), (double.NegativeInfinity, -2)))
            .Concat(Some(outline.Fitted(new TextMark(MoldInks.Text, right, new Point2(room.Right - 1, y), height, Anchor.Right), (2, double.PositiveInfinity))));
    }

    // A profile is drawn bow to the left: an arrow says so beside its foot screws.
    private static IEnumerable<Mark> TowardBow(PartOutline outline, Box2 bounds, double low)
    {
        var y = low - 14;
        var room = outline.Room(y - 3, y + 3, (bounds.Left + bounds.Right) / 2);
        const string text = "BOW";
        const double height = 5;
        double middle = (room.Left + room.Right) / 2, tip = middle - (StrokeLettering.Width(text, height) / 2) - 24;
        yield return new PathMark(MoldInks.Mark, ArcPath.Line(new Point2(tip + 20, y), new Point2(tip, y)));
        yield return new PathMark(MoldInks.Mark, ArcPath.Through([new Point2(tip + 6, y + 2.5), new Point2(tip, y), new Point2(tip + 6, y - 2.5)]));
        yield return new TextMark(MoldInks.Text, text, new Point2(tip + 24, y), height, Anchor.MiddleLeft);
    }

    private static IEnumerable<TextMark> Some(TextMark? mark) => mark is null ? [] : [mark];
}
