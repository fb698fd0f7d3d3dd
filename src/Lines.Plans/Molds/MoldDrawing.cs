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
    private const double WaterlineName = 5;
    private const double LeastName = 2.2;
    private const double BevelFigure = 3.5;
    private const double FromHole = 1;

    /// <summary>A name that is in the way of another, or of a hole, is moved along its line by steps of this [mm].</summary>
    private const double NameStep = 4;

    /// <summary>From the top of a bulkhead or transom, where its sides are named, to its label [mm].</summary>
    private const double AboveTop = 14;

    /// <summary>The marks of a mold.</summary>
    /// <param name="title">Title of the design.</param>
    /// <param name="mold">The mold.</param>
    /// <param name="notation">How lengths are written.</param>
    /// <param name="widestLabel">Greatest width of a line of the label [mm].</param>
    public static IReadOnlyList<Mark> Of(string title, Mold mold, LengthNotation notation, double widestLabel = double.PositiveInfinity)
    {
        var outline = new PartOutline(Millimeters(mold.Outline));
        var lines = mold.Marks.Select(m => m with { Path = Millimeters(m.Path) }).ToList();
        var bounds = outline.Path.Bounds();
        var sheer = lines.Where(m => m.Kind == MoldMarkKind.Sheer).Select(m => m.Path.Vertices[0].Point.Y).DefaultIfEmpty(bounds.Bottom + AboveTop).Min();
        var told = MoldLabels.Of(title, mold, notation);
        var (low, high) = Band(mold, outline, lines, sheer, LabelBlock.LeastOf(told));
        var holes = mold.Holes.Select(h => MoldHoleDrawing.Circle(h)).ToList();

        // The holes of a profile mold follow its edge into the room of its label.
        var ground = mold.StarboardRight is null ? new PartOutline(outline.Path, holes: holes.Select(h => ArcPath.Circle(h.At, h.Radius))) : outline;
        var center = mold.StarboardRight is null || mold.IsHalf ? ground.WidestRoom(low, high).Middle : 0;
        var label = LabelBlock.Of(ground, told, center, low, high, Math.Min(widestLabel, BetweenBolts(mold)), mold.IsHalf);

        var marks = new List<Mark> { new PathMark(MoldInks.Cut, outline.Path) };
        foreach (var line in lines)
            marks.AddRange(Pieces(line, label.Low, label.High, holes).Select(p => new PathMark(line.Kind == MoldMarkKind.Apex ? MoldInks.InnerStem : MoldInks.Mark, p, Name: line.Name)));
        marks.AddRange(MoldHoleDrawing.Of(outline, mold.Holes, center, mold.StarboardRight is not null, notation));
        marks.AddRange(label.Marks);
        List<Box2> drilled = [.. holes.Select(h => Around(h.At, h.Radius))];
        List<Box2> named = [.. drilled];
        foreach (var line in lines)
        {
            List<TextMark> names = [.. Names(mold, outline, line, lines, label.High, named)];
            named.AddRange(names.Select(Around));
            marks.AddRange(names);
        }

        List<Box2> taken = [.. drilled, .. marks.OfType<TextMark>().Select(Around)];
        if (mold.Kind is MoldKind.Stem or MoldKind.Stern)
            marks.AddRange(Bevels(mold, outline, lines, taken));
        marks.AddRange(OpeningNames(outline, lines, taken));
        if (!mold.IsHalf)
            marks.AddRange(mold.StarboardRight is { } right ? Sides(outline, sheer, right, [.. drilled, .. marks.OfType<TextMark>().Select(Around)]) : TowardBow(outline, low));
        return marks;
    }

    /// <summary>A path of meters in millimeters.</summary>
    public static ArcPath Millimeters(ArcPath path) => path.Mapped(p => new Point2(1000 * p.X, 1000 * p.Y));

    // The label stands between the strongback's screws and the sheer; that of a transom or bulkhead between its top and the waterline nearest to it, or,
    // where that is too little, where two waterlines leave most room.
    private static (double Low, double High) Band(Mold mold, PartOutline outline, List<MoldMark> lines, double sheer, double least)
    {
        if (mold.Kind is not (MoldKind.Transom or MoldKind.Bulkhead))
            return (ScrewBand, sheer - (mold.Kind == MoldKind.Station ? 14 : 5));
        var bounds = outline.Path.Bounds();
        var opening = mold.Holes.Where(h => h.Kind == MoldHoleKind.Opening).Select(MoldHoleDrawing.Circle).Select(c => c.At.Y - c.Radius).DefaultIfEmpty(bounds.Top).Min();
        double[] stops = [.. lines.Where(m => m.Kind is MoldMarkKind.Waterline or MoldMarkKind.DesignWaterline).Select(m => m.Path.Vertices[0].Point.Y).Where(y => y < opening).Append(opening).Order()];
        var first = (Low: bounds.Bottom + AboveTop, High: Math.Min(stops[0], bounds.Bottom + 135) - 5);
        return first.High - first.Low >= least ? first : stops.Zip(stops.Skip(1), (from, to) => (Low: from + 5, High: to - 5)).Append(first).MaxBy(g => g.High - g.Low);
    }

    // The label keeps between the bolts of both sides.
    private static double BetweenBolts(Mold mold) => mold.Holes.Where(h => h.Kind == MoldHoleKind.Bolt && h.At.X > 0).Select(MoldHoleDrawing.Circle)
        .Select(c => 2 * (c.At.X - c.Radius - 3)).DefaultIfEmpty(double.PositiveInfinity).Min();

    // The centerline stops short of the label; straight lines leave out the holes.
    private static IEnumerable<ArcPath> Pieces(MoldMark line, double low, double high, IEnumerable<(Point2 At, double Radius)> holes)
    {
        if (line.Kind == MoldMarkKind.Apex)
            return [line.Path];
        Point2 a = line.Path.Vertices[0].Point, b = line.Path.Vertices[1].Point;
        if (line.Kind != MoldMarkKind.Centerline)
            return Between(a, b, holes);
        var (bottom, top) = a.Y < b.Y ? (a, b) : (b, a);
        var from = top with { Y = high + 3 };
        return [ArcPath.Line(bottom, bottom with { Y = Math.Max(bottom.Y, low - 3) }), .. Between(from, top, holes.Where(h => h.At.Y - h.Radius > from.Y))];
    }

    // Holes stand well inside the part, so both ends of a line are outside them.
    private static IEnumerable<ArcPath> Between(Point2 from, Point2 to, IEnumerable<(Point2 At, double Radius)> holes)
    {
        var along = (to - from).Unit();
        foreach (var (at, radius) in holes.OrderBy(h => (h.At - from).Dot(along)))
        {
            double middle = (at - from).Dot(along), aside = along.Cross(at - from);
            if (Math.Abs(aside) >= radius || middle <= 0 || middle >= (to - from).Dot(along))
                continue;
            var foot = from + (middle * along);
            var half = Math.Sqrt((radius * radius) - (aside * aside)) * along;
            yield return ArcPath.Line(from, foot - half);
            from = foot + half;
        }

        yield return ArcPath.Line(from, to);
    }

    private static IEnumerable<TextMark> Names(Mold mold, PartOutline outline, MoldMark line, List<MoldMark> lines, double aboveLabel, List<Box2> taken)
    {
        Point2 a = line.Path.Vertices[0].Point, b = line.Path.Vertices[1].Point;
        (double, double) anywhere = (double.NegativeInfinity, double.PositiveInfinity);
        switch (line.Kind)
        {
            case MoldMarkKind.Centerline:
                return Some(AlongCenterline(outline, line.Name, mold.Kind == MoldKind.Station ? 8 : aboveLabel + 8, taken));
            case MoldMarkKind.Sheer:
                // Where the side leans in above the mark, the name begins where the room over its own height does.
                var inward = Math.Sign(b.X - a.X);
                var over = outline.Room(a.Y + 1.5, a.Y + 2.5 + Name, mold.StarboardRight is null ? b.X : 0);
                var from = inward > 0 ? Math.Max(a.X + 4, over.Left) : Math.Min(a.X - 4, over.Right);
                return Some(outline.Fitted(
                    new TextMark(MoldInks.Text, line.Name, new Point2(from, a.Y + 1.5), Name, inward > 0 ? Anchor.Left : Anchor.Right),
                    mold.StarboardRight is null ? anywhere : inward > 0 ? (double.NegativeInfinity, -1) : (1, double.PositiveInfinity)));
            case MoldMarkKind.Station:
                return Some(outline.Fitted(new TextMark(MoldInks.Text, line.Name, a + new Vector2(2, 2), WaterlineName), anywhere));
            case MoldMarkKind.Apex or MoldMarkKind.Opening:
                return [];
            default:
                return mold.StarboardRight is null
                    ? Some(AtInnerEdge(outline, line.Name, b, b.X > a.X, taken))
                    : AtBothEdges(outline, line.Name, a.Y, mold.IsHalf, [.. taken, .. Levels(lines.Where(l => l != line))], taken);
        }
    }

    // What lettering by another line than its own would stand on.
    private static IEnumerable<Box2> Levels(IEnumerable<MoldMark> lines) =>
        lines.Where(l => l.Kind is MoldMarkKind.Waterline or MoldMarkKind.DesignWaterline or MoldMarkKind.Sheer).Select(l => Box2.Around(l.Path.Vertices.Select(v => v.Point)));

    // At a level or the nearest over it where no hole is, on either side of the line.
    private static TextMark? AlongCenterline(PartOutline outline, string name, double low, List<Box2> taken)
    {
        const double aside = 2;
        const double step = 2;
        var top = outline.Path.Bounds().Top;
        return Enumerable.Range(0, (int)Math.Max(1, (top - low) / step)).Select(k => low + (step * k))
            .SelectMany(y => new[] { new TextMark(MoldInks.Text, name, new Point2(aside, y), Name), new TextMark(MoldInks.Text, name, new Point2(-aside, y), Name, Anchor.Right) })
            .Select(t => outline.Fitted(t, (double.NegativeInfinity, double.PositiveInfinity))).OfType<TextMark>()
            .FirstOrDefault(t => !taken.Exists(Around(t).Grown(FromHole).Overlaps));
    }

    // The angle between the planking and a profile mold's face, on the edge's end of every line there or under it; left out where neither has room.
    private static IEnumerable<TextMark> Bevels(Mold mold, PartOutline outline, List<MoldMark> lines, List<Box2> taken)
    {
        foreach (var bevel in mold.Bevels!.Places)
        {
            if (lines.Find(l => Same(l.Name, bevel.Name)) is not { } line)
                continue;
            Point2 edge = line.Path.Vertices[0].Point, inner = line.Path.Vertices[1].Point;
            var inward = Math.Sign(inner.X - edge.X);
            var figure = new[] { 1.5, -1.5 - BevelFigure }
                .Select(up => outline.Fitted(
                    new TextMark(MoldInks.Text, Invariant($"{bevel.FromSide * 180 / Math.PI:F0}°"), edge + new Vector2(4 * inward, up), BevelFigure, inward > 0 ? Anchor.Left : Anchor.Right),
                    (double.NegativeInfinity, double.PositiveInfinity)))
                .OfType<TextMark>().FirstOrDefault(t => !taken.Exists(Around(t).Grown(1).Overlaps));
            if (figure is not null)
            {
                taken.Add(Around(figure));
                yield return figure;
            }
        }
    }

    // Beside the mark that stands further right, or else the other, as near to its lower end as lettering and level lines leave room.
    private static IEnumerable<TextMark> OpeningNames(PartOutline outline, List<MoldMark> lines, List<Box2> taken)
    {
        List<Box2> level = [.. lines.Where(l => l.Kind is not (MoldMarkKind.Opening or MoldMarkKind.Apex)).Select(l => Box2.Around(l.Path.Vertices.Select(v => v.Point)))];
        foreach (var opening in lines.Where(l => l.Kind == MoldMarkKind.Opening).GroupBy(l => l.Name, StringComparer.Ordinal))
        {
            var places = opening.OrderByDescending(l => l.Path.Vertices[0].Point.X).SelectMany(Beside);
            if (places.Select(t => outline.Fitted(t, (double.NegativeInfinity, double.PositiveInfinity))).OfType<TextMark>().FirstOrDefault(IsFree) is { } name)
            {
                taken.Add(Around(name));
                yield return name;
            }
        }

        bool IsFree(TextMark t) => !taken.Exists(Around(t).Grown(1).Overlaps) && !level.Exists(Around(t).Grown(0.5).Touches);
    }

    private static IEnumerable<TextMark> Beside(MoldMark upright)
    {
        var ends = Box2.Around(upright.Path.Vertices.Select(v => v.Point));
        for (var y = ends.Bottom + 2; y + Name < ends.Top; y++)
        {
            yield return new TextMark(MoldInks.Text, upright.Name, new Point2(ends.Left + 2, y), Name);
            yield return new TextMark(MoldInks.Text, upright.Name, new Point2(ends.Left - 2, y), Name, Anchor.Right);
        }
    }

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.Ordinal);

    private static Box2 Around(Point2 at, double radius) => new(at.X - radius, at.Y - radius, at.X + radius, at.Y + radius);

    // Of level lettering, with the strokes that go below its base line.
    private static Box2 Around(TextMark text)
    {
        var width = StrokeLettering.Width(text.Text, text.Height);
        var left = text.Anchor is Anchor.Left or Anchor.MiddleLeft ? text.At.X : text.Anchor is Anchor.Right or Anchor.MiddleRight ? text.At.X - width : text.At.X - (width / 2);
        var bottom = text.Anchor is Anchor.MiddleLeft or Anchor.MiddleRight ? text.At.Y - (text.Height / 2) : text.At.Y;
        return new Box2(left, bottom - (text.Height / 3), left + width, bottom + text.Height);
    }

    // On its line, or under it where the edge of the part is close above; further along it where a hole or other lettering is there.
    private static TextMark? AtInnerEdge(PartOutline outline, string name, Point2 end, bool right, List<Box2> taken)
    {
        const double fromEnd = 5;
        const int places = 16; // over the widest hole
        return Enumerable.Range(0, places).Select(At).FirstOrDefault(t => t is not null);

        TextMark? At(int steps) => new[] { 1.5, -1.5 - WaterlineName }
            .Select(up => outline.Fitted(
                new TextMark(MoldInks.Text, name, end + new Vector2((right ? -1 : 1) * (fromEnd + (steps * NameStep)), up), WaterlineName, right ? Anchor.Right : Anchor.Left),
                (double.NegativeInfinity, double.PositiveInfinity)))
            .OfType<TextMark>().Where(t => !taken.Exists(Around(t).Grown(FromHole).Overlaps)).MaxBy(t => t.Height);
    }

    // The part narrows above its waterlines, so a name starts where the room over its own height does; near the keel it stands under the line, and off a hole.
    // Where another line or its name is close, it is smaller or further in; it stands on a line only where there is no other room.
    private static TextMark[] AtBothEdges(PartOutline outline, string name, double line, bool isHalf, List<Box2> keptFree, List<Box2> taken)
    {
        return new[] { keptFree, taken }.Select(First).FirstOrDefault(n => n is not null) ?? [];

        TextMark[]? First(List<Box2> free)
        {
            for (var inward = 0.0; Moved(inward, free) is { } names; inward += NameStep)
            {
                if (names.Length > 0)
                    return names;
            }

            return null;
        }

        // None where something is in the way, null where the part has no room.
        TextMark[]? Moved(double inward, List<Box2> free)
        {
            var hasRoom = false;
            foreach (var isAbove in new[] { true, false })
            {
                for (var height = WaterlineName; height >= LeastName; height *= 0.92)
                {
                    var y = isAbove ? line + 1.5 : line - 1.5 - height;
                    var room = outline.Room(y, y + height + 1, 0);
                    var (left, right) = (room.Left + inward, room.Right - inward);
                    var width = StrokeLettering.Width(name, height);
                    if (isHalf ? right - width < room.Left : left + width > -2)
                        continue;
                    hasRoom = true;
                    TextMark[] names = [new(MoldInks.Text, name, new Point2(left, y), height), new(MoldInks.Text, name, new Point2(right, y), height, Anchor.Right)];
                    if (isHalf)
                        names = names[1..];
                    if (!Array.Exists(names, n => free.Exists(Around(n).Grown(FromHole).Overlaps)))
                        return names;
                }
            }

            return hasRoom ? [] : null;
        }
    }

    // Under the sheer; where the edge rises toward the centerline, as under a deck, or other lettering is there, at the nearest level without either, or smaller.
    private static List<TextMark> Sides(PartOutline outline, double sheer, bool starboardRight, List<Box2> taken)
    {
        const double step = 0.5;
        const int steps = 40;
        const double fromEdge = 0.5;
        double[] heights = [6, 5, 4, 3, LeastName];
        string left = starboardRight ? "PORT" : "STARBOARD", right = starboardRight ? "STARBOARD" : "PORT";
        var places = heights.SelectMany(h => Enumerable.Range(-steps, (2 * steps) + 1).OrderBy(Math.Abs).Select(k => At(sheer - 4 - h + (k * step), h)));
        return places.FirstOrDefault(p => p.Count == 2 && p.TrueForAll(IsFree)) ?? At(sheer - 4 - heights[0], heights[0]);

        List<TextMark> At(double y, double height)
        {
            var room = outline.Room(y, y + height, 0);
            List<TextMark> sides =
            [
                .. Some(outline.Fitted(new TextMark(MoldInks.Text, left, new Point2(room.Left + 1, y), height), (double.NegativeInfinity, -2))),
                .. Some(outline.Fitted(new TextMark(MoldInks.Text, right, new Point2(room.Right - 1, y), height, Anchor.Right), (2, double.PositiveInfinity))),
            ];
            return [.. sides.Select(s => s with { Height = sides.Min(t => t.Height) })];
        }

        // Capitals have nothing under their base line.
        bool IsFree(TextMark t) => Around(t) with { Bottom = t.At.Y } is var box && !taken.Exists(box.Grown(fromEdge).Overlaps) && outline.IsClearOf(box.Grown(fromEdge));
    }

    // A profile is drawn bow to the left: an arrow says so beside its foot screws.
    private static IEnumerable<Mark> TowardBow(PartOutline outline, double low)
    {
        var y = low - 14;
        const string text = "BOW";
        const double height = 5;
        double middle = outline.WidestRoom(y - 3, y + 3).Middle, tip = middle - (StrokeLettering.Width(text, height) / 2) - 24;
        yield return new PathMark(MoldInks.Mark, ArcPath.Line(new Point2(tip + 20, y), new Point2(tip, y)));
        yield return new PathMark(MoldInks.Mark, ArcPath.Through([new Point2(tip + 6, y + 2.5), new Point2(tip, y), new Point2(tip + 6, y - 2.5)]));
        yield return new TextMark(MoldInks.Text, text, new Point2(tip + 24, y), height, Anchor.MiddleLeft);
    }

    private static IEnumerable<TextMark> Some(TextMark? mark) => mark is null ? [] : [mark];
}
