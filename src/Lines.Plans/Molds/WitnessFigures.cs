using Lines.Construction.Molds;
using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Paper;

namespace Lines.Plans.Molds;

/// <summary>The figures by which a paper pattern is checked with a ruler once it is glued together: paper moves when it is pasted.</summary>
/// <remarks>
/// <para><b>Frame.</b> The mold's own millimeters.</para>
/// <para><b>Method.</b> Every level line tells its length from edge to edge (from the centerline, on a half) and its height over the lowest edge, the foot
/// of a mold; so does the sheer; the top tells its height. D to D is a diagonal from the left end of the foot to the right end of the level line that makes it longest.
/// A figure stands by its line, at the first place where it touches nothing, or lower with its name, on a half in a list over the foot, away from other lines it might be taken to
/// belong to and out of the label; only where there is no such room does it stand among those, and on a part too narrow for breadth and height
/// in one line each has one of its own. It is never smaller than can be read.</para>
/// <para><b>Accuracy.</b> Taken from the outline and shown to the step of the notation.</para>
/// </remarks>
internal sealed class WitnessFigures
{
    private const double OnEdge = 0.02;
    private const double FromLine = 1.3;
    private const double Clearance = 1;
    private const double Step = 4;
    private const double Reach = 70;

    /// <summary>A figure nearer to a level line [mm] is taken for its.</summary>
    private const double Apart = 5;

    /// <summary>A level line nearer to the top [mm] leaves no room for its figure beside the names there.</summary>
    private const double UnderTop = 25;

    private static readonly double[] s_heights = [3.2, 2.7, 2.2];

    private readonly ArcPath _outline;
    private readonly Mold _mold;
    private readonly LengthNotation _notation;
    private readonly PartLines _lines;
    private readonly List<Box2> _taken;
    private readonly List<Box2> _others;
    private readonly List<Mark> _figures = [];
    private readonly double _foot;

    private WitnessFigures(IReadOnlyList<Mark> drawn, Mold mold, LengthNotation notation)
    {
        (_mold, _notation, _outline) = (mold, notation, MoldDrawing.Millimeters(mold.Outline));
        List<PartMark> marks = [.. drawn.Select(m => new PartMark(m))];
        _lines = new PartLines(marks);
        _taken = [.. mold.Holes.Select(MoldHoleDrawing.Circle).Select(c => new Box2(c.At.X, c.At.Y, c.At.X, c.At.Y).Grown(c.Radius))];
        _foot = _outline.Bounds().Bottom;
        var label = drawn.OfType<TextMark>().Where(t => t.Anchor == Anchor.Center).Select(t => new PartMark(t).Bounds).Where(b => !_taken.Exists(b.Touches)).Aggregate(Box2.Nothing, (a, b) => a.With(b));
        _others = [.. mold.Marks.Where(m => IsLevel(m) || m.Kind == MoldMarkKind.Sheer).Select(m => MoldDrawing.Millimeters(m.Path).Bounds().Grown(Apart)), label];
    }

    /// <summary>The figures of a mold.</summary>
    /// <param name="drawn">What is drawn on it already.</param>
    /// <param name="mold">The mold.</param>
    /// <param name="notation">How lengths are written.</param>
    public static IReadOnlyList<Mark> Of(IReadOnlyList<Mark> drawn, Mold mold, LengthNotation notation)
    {
        var figures = new WitnessFigures(drawn, mold, notation);
        figures.AddDiagonal();
        figures.AddSheer();
        figures.AddTop();
        foreach (var line in mold.Marks.Where(m => IsLevel(m) && figures.HasRoomOver(m)))
            figures.AddLevel(line.Name, MoldDrawing.Millimeters(line.Path).Segments()[0]);
        return figures._figures;
    }

    private bool HasRoomOver(MoldMark line) => _mold.StarboardRight is null || MoldDrawing.Millimeters(line.Path).Bounds().Top < _outline.Bounds().Top - UnderTop;

    private static bool IsLevel(MoldMark mark) => mark.Kind is MoldMarkKind.Waterline or MoldMarkKind.DesignWaterline;

    private string Shown(double mm) => Length.FromMillimeters(mm).ToText(_notation);

    private string Up(double y) => $"{Shown(y - _foot)} UP";

    private string Across(double mm) => _mold.IsHalf ? $"{Shown(mm)} FROM CL" : $"{Shown(mm)} ACROSS";

    private void AddLevel(string name, ArcSegment line)
    {
        var isWhole = IsOnEdge(line.From) && IsOnEdge(line.To);
        AddAlong(line.From, line.To, name, isWhole ? [Across(line.Length), Up(line.From.Y)] : [Up(line.From.Y)]);
    }

    // Between the marks of both edges; beside the one of a profile or a half.
    private void AddSheer()
    {
        var marks = _mold.Marks.Where(m => m.Kind == MoldMarkKind.Sheer).Select(m => MoldDrawing.Millimeters(m.Path).Segments()[0]).ToList();
        if (marks.Count == 0)
            return;
        var (left, right) = (marks.Min(m => Math.Min(m.From.X, m.To.X)), marks.Max(m => Math.Max(m.From.X, m.To.X)));
        var y = marks[0].From.Y;
        if (_mold.StarboardRight is null)
            AddAlong(new Point2(left, y), new Point2(right + Reach, y), "", [$"SHEER: {Up(y)}"]);
        else
            AddAlong(new Point2(_mold.IsHalf ? 0 : left, y), new Point2(right, y), "", [$"SHEER: {Across(_mold.IsHalf ? right : right - left)}", Up(y)]);
    }

    private void AddTop()
    {
        if (_mold.StarboardRight is null)
            return;
        var top = _outline.Bounds().Top;
        var text = $"TOP: {Up(top)}";
        _ = Add(text, Places, _others) || Add(text, Places);

        IEnumerable<Point2> Places((double Width, double Height) size) => Below(top, size);
    }

    private void AddDiagonal()
    {
        var from = _outline.Vertices.Select(v => v.Point).Where(p => p.Y < _foot + OnEdge).MinBy(p => p.X);
        var ends = _mold.Marks.Where(IsLevel).Select(m => MoldDrawing.Millimeters(m.Path).Segments()[0])
            .Select(s => s.From.X > s.To.X ? s.From : s.To).Where(IsOnEdge).ToList();
        if (ends.Count == 0)
            return;
        var to = ends.MaxBy(e => e.DistanceTo(from));
        Add("D", size => Around(to, size));
        Add($"D TO D {Shown(from.DistanceTo(to))}", size => Around(from, size));
    }

    private bool IsOnEdge(Point2 p) => _outline.DistanceTo(p) < OnEdge;

    // Breadth and height in one figure; on a part too narrow for that in any of its places, each in one of its own.
    private void AddAlong(Point2 from, Point2 to, string name, IReadOnlyList<string> figures)
    {
        if (IsAlong(from, to, name, string.Join(", ", figures), clear: true))
            return;
        var named = name.Length > 0 ? name : "SHEER";
        foreach (var figure in figures)
        {
            var under = figure.StartsWith(named, StringComparison.Ordinal) ? "" : named;
            _ = (figures.Count > 1 && IsAlong(from, to, under, figure, clear: true)) || IsAlong(from, to, under, figure, clear: false);
        }
    }

    // Over the line from its middle outward, then under it; where there is no room, lower on the part with the line's name, clear of other lines if asked.
    private bool IsAlong(Point2 from, Point2 to, string name, string text, bool clear)
    {
        double left = Math.Min(from.X, to.X), right = Math.Max(from.X, to.X);
        return Add(text, size =>
        {
            var middle = (left + right - size.Width) / 2;
            var xs = Enumerable.Range(0, (int)Math.Max(0, (right - left - size.Width) / Step)).Select(k => middle + (Step * (k % 2 == 0 ? -k / 2 : (k + 1) / 2)));
            return new[] { from.Y + FromLine, from.Y - FromLine - size.Height }.SelectMany(y => xs.Select(x => new Point2(x, y)));
        }) || Add(name.Length > 0 ? $"{name}: {text}" : text, size => _mold.IsHalf ? Below(from.Y, size).Reverse() : Below(from.Y, size), clear ? _others : null);
    }

    // On either side of the centerline or middle, from a level downward.
    private IEnumerable<Point2> Below(double level, (double Width, double Height) size)
    {
        const double aside = 2;
        var middle = _mold.StarboardRight is null ? _outline.Bounds().Center.X : 0;
        for (var y = level - Step - size.Height; y > _foot; y -= Step)
        {
            yield return new Point2(middle + aside, y);
            yield return new Point2(middle - aside - size.Width, y);
        }
    }

    // Places around a point, the nearest first.
    private static IEnumerable<Point2> Around(Point2 p, (double Width, double Height) size)
    {
        const int places = 12;
        return Enumerable.Range(-places, (2 * places) + 1).SelectMany(i => Enumerable.Range(-places, (2 * places) + 1).Select(k => new Vector2(2 * i, 2 * k)))
            .OrderBy(v => v.Length).Select(v => p + v - new Vector2(size.Width / 2, size.Height / 2));
    }

    private bool Add(string text, Func<(double Width, double Height), IEnumerable<Point2>> places, IReadOnlyList<Box2>? keptFree = null)
    {
        foreach (var height in s_heights)
        {
            var width = StrokeLettering.Width(text, height);
            foreach (var at in places((width, height)))
            {
                var box = new Box2(at.X, at.Y, at.X + width, at.Y + height).Grown(Clearance);
                // A figure right beside a name is read as one number with it: "WL 7" and "537.9".
                if (_taken.Exists((box with { Left = box.Left - (height / 2), Right = box.Right + (height / 2) }).Touches) || (keptFree is not null && keptFree.Any(box.Touches)) || !_lines.AreClearOf(box) || !_outline.Contains(box.Center))
                    continue;
                _taken.Add(box);
                _figures.Add(new TextMark(MoldInks.Text, text, at, height));
                return true;
            }
        }

        return false;
    }
}
