using Lines.Construction.Molds;
using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Paper;

namespace Lines.Plans.Molds;

/// <summary>Molds as full-size sheets: one for each, for the router and for paper, and one with all.</summary>
/// <remarks>
/// <para><b>Frame.</b> Millimeters at 1:1. Each mold is seen from its labeled face, standing on the strongback: keel up.</para>
/// <para><b>Accuracy.</b> Outlines are the mold's own lines and arcs, within <see cref="MoldShaping.FitTolerance"/> of the exact section.</para>
/// </remarks>
public static class MoldSheets
{
    private const double PaperMargin = 2;

    private const double Gap = 15;
    private const double RowWidth = 2440;
    private const double SquareClearance = 6;
    private const double SquareStep = 20;
    private const double OutlineStep = 5;

    /// <summary>Name of a mold's file without its ending: mold-01, stem, stern, transom, bulkhead-01-fore, bulkhead-03.</summary>
    public static string FileName(Mold mold)
    {
        ArgumentNullException.ThrowIfNull(mold);
        return mold.Kind switch
        {
            MoldKind.Station => Invariant($"mold-{mold.Number:D2}"),
            MoldKind.Bulkhead when mold.Purpose is not null => Invariant($"bulkhead-{mold.Number:D2}"),
            MoldKind.Bulkhead => Invariant($"bulkhead-{mold.Number:D2}-{(mold.IsForward ? "fore" : "aft")}"),
            MoldKind.Stem => "stem",
            MoldKind.Stern => "stern",
            _ => "transom",
        };
    }

    /// <summary>A mold for the router: as drawn, with a <see cref="TestSquare"/> on the layer "mark" beside it to check the scale.</summary>
    /// <param name="title">Title of the design.</param>
    /// <param name="mold">The mold.</param>
    /// <param name="notation">How lengths are written.</param>
    public static Sheet ForRouter(string title, Mold mold, LengthNotation notation)
    {
        ArgumentNullException.ThrowIfNull(mold);
        var marks = MoldDrawing.Of(title, mold, notation);
        return Trimmed(SheetTitle(title, mold), [.. marks, .. ScaleSquare(SquareBeside(mold))], Gap);
    }

    /// <summary>A mold for paper: trimmed to the part, without the square that the pages bring along themselves, its label narrow enough for one page, with
    /// figures to check it by once it is glued together.</summary>
    /// <param name="title">Title of the design.</param>
    /// <param name="mold">The mold.</param>
    /// <param name="notation">How lengths are written.</param>
    /// <param name="settings">Whether it is a half, and has a guard line; null for neither.</param>
    public static Sheet ForPaper(string title, Mold mold, LengthNotation notation, PrintSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(mold);
        return Trimmed(SheetTitle(title, mold), PaperDrawing.Of(title, mold, notation, settings ?? new(PaperSize.Letter)), PaperMargin);
    }

    /// <summary>All molds on one sheet, in rows, none nearer than 15 mm to another.</summary>
    /// <param name="title">Title of the design.</param>
    /// <param name="plan">The molds.</param>
    /// <param name="notation">How lengths are written.</param>
    public static Sheet All(string title, MoldPlan plan, LengthNotation notation)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var marks = new List<Mark>();
        double left = 0, bottom = 0, row = 0;
        IEnumerable<IReadOnlyList<Mark>> parts =
            [.. plan.Parts.Select(m => MoldDrawing.Of(title, m, notation)), [.. ScaleSquare(new Point2(0, 0))]];
        foreach (var part in parts)
        {
            var box = Bounds(part);
            if (left > 0 && left + box.Width > RowWidth)
                (left, bottom, row) = (0, bottom + row + Gap, 0);
            marks.AddRange(Moved(part, new Vector2(left - box.Left, bottom - box.Bottom)));
            (left, row) = (left + box.Width + Gap, Math.Max(row, box.Height));
        }

        return Trimmed($"{title}: all molds", marks, Gap);
    }

    private static string SheetTitle(string title, Mold mold) => $"{title}: {mold.Name}";

    private static Sheet Trimmed(string title, IReadOnlyList<Mark> marks, double margin)
    {
        var box = Bounds(marks).Grown(margin);
        return new Sheet(title, box.Width, box.Height, [.. Moved(marks, new Vector2(-box.Left, -box.Bottom))]);
    }

    // Lettering lies inside the parts, so the paths alone make the bounds.
    private static Box2 Bounds(IEnumerable<Mark> marks) =>
        marks.OfType<PathMark>().Select(m => m.Path.Bounds()).Aggregate((a, b) => a.With(b));

    private static IEnumerable<Mark> Moved(IEnumerable<Mark> marks, Vector2 by) => marks.Select(m => MovedMarks.Of(m, by));

    /// <summary>The square that shows whether a file came out full size.</summary>
    /// <param name="corner">Its lower left corner [mm].</param>
    internal static IEnumerable<Mark> ScaleSquare(Point2 corner)
    {
        var middle = corner + new Vector2(TestSquare.Side / 2, TestSquare.Side / 2);
        yield return new PathMark(MoldInks.Mark, TestSquare.Around(middle).Outline);
        yield return new TextMark(MoldInks.Text, "TEST SQUARE", middle + new Vector2(0, 10), 5, Anchor.Center);
        yield return new TextMark(MoldInks.Text, TestSquare.Size, middle + new Vector2(0, -2), 5, Anchor.Center);
        yield return new TextMark(MoldInks.Text, "MEASURE BEFORE CUTTING", middle + new Vector2(0, -13), 4, Anchor.Center);
    }

    // Beside the part inside its own bounds where a corner is free, otherwise to the right of it.
    private static Point2 SquareBeside(Mold mold)
    {
        var outline = MoldDrawing.Millimeters(mold.Outline);
        List<ArcPath> lines = [outline, .. mold.Marks.Where(m => m.Kind == MoldMarkKind.Apex).Select(m => MoldDrawing.Millimeters(m.Path))];
        var box = lines.Select(p => p.Bounds()).Aggregate((a, b) => a.With(b));
        var along = lines.SelectMany(p => p.Segments()).SelectMany(s => PointsAlong(s, OutlineStep)).ToList();
        for (var y = box.Bottom; y + TestSquare.Side <= box.Top; y += SquareStep)
        {
            for (var x = box.Left; x + TestSquare.Side <= box.Right; x += SquareStep)
            {
                var place = new Box2(x, y, x + TestSquare.Side, y + TestSquare.Side);
                var kept = place.Grown(SquareClearance + OutlineStep);
                if (!along.Exists(kept.Holds) && !outline.Contains(place.Center))
                    return new Point2(x, y);
            }
        }

        return new Point2(box.Right + Gap, box.Bottom);
    }

    /// <summary>Points along a segment, none farther than a step from the next; the last end is left out.</summary>
    internal static IEnumerable<Point2> PointsAlong(ArcSegment s, double step)
    {
        var pieces = (int)Math.Ceiling(s.Length / step);
        return Enumerable.Range(0, pieces).Select(i => s.PointAt((double)i / pieces));
    }
}
