using Lines.Construction.Molds;
using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Paper;

namespace Lines.Plans.Molds;

/// <summary>A mold as it is printed: what a saw wants of it beyond what a router does.</summary>
internal static class PaperDrawing
{
    /// <summary>Greatest width of a label's line on paper [mm]: it goes on one page of any printer.</summary>
    private const double Label = 140;

    private const double OnCenterline = 1e-6;

    /// <summary>The marks of a mold in its own frame [mm].</summary>
    /// <param name="title">Title of the design.</param>
    /// <param name="whole">The mold.</param>
    /// <param name="notation">How lengths are written.</param>
    /// <param name="settings">What is asked of the patterns.</param>
    public static IReadOnlyList<Mark> Of(string title, Mold whole, LengthNotation notation, PrintSettings settings)
    {
        var mold = settings.Halves && HalfMold.Exists(whole) ? HalfMold.Of(whole) : whole;
        var marks = MoldDrawing.Of(title, mold, notation, Label).SelectMany(m => mold.IsHalf && m is PathMark path && path.Layer == MoldInks.Cut ? Folded(path) : [m]).ToList();
        if (settings.Guard is { } distance)
            marks.AddRange(Guard(whole, mold.IsHalf, distance));
        return [.. marks, .. WitnessFigures.Of(marks, mold, notation)];
    }

    // The edge of a half along the centerline is folded, the rest cut.
    private static IEnumerable<Mark> Folded(PathMark outline)
    {
        var segments = outline.Path.Segments();
        var fold = segments.MaxBy(s => Math.Abs(s.From.X) < OnCenterline && Math.Abs(s.To.X) < OnCenterline ? s.Length : 0);
        var at = segments.ToList().IndexOf(fold);
        var rest = segments.Skip(at + 1).Concat(segments.Take(at)).ToList();
        yield return new PathMark(MoldInks.Cut, new ArcPath([.. rest.Select(s => new ArcVertex(s.From, s.Bulge)), new ArcVertex(rest[^1].To, 0)], false));
        yield return new PathMark(MoldInks.Fold, ArcPath.Line(fold.From, fold.To), Name: "FOLD OR TURN OVER HERE");
    }

    private static IEnumerable<Mark> Guard(Mold whole, bool isHalf, double distance)
    {
        var side = new Box2(isHalf ? 0 : double.NegativeInfinity, double.NegativeInfinity, double.PositiveInfinity, double.PositiveInfinity);
        return OuterParallel.Of(MoldDrawing.Millimeters(whole.Outline), distance).SelectMany(p => p.Inside(side)).Select(p => new PathMark(MoldInks.Guard, p));
    }
}
