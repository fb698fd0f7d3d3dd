using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>One page of parts: its window onto the drawing, the seams with their register crosses, the foot.</summary>
/// <remarks>
/// <para><b>Frame.</b> The page, millimeters, y up, before the printer's correction.</para>
/// <para><b>Method.</b> Neighbors share a strip of the drawing; the seam runs along its middle. Right and upper seams are cut and
/// the page is laid over those neighbors, so that every foot stays readable until it is covered. On each seam stand two crosses
/// at the same place of the drawing on both pages, with the same letter. A seam to cut is ticked on the side that falls off. What a seam asks for is written in its strip
/// where no line of the part runs; where one runs all along it, the index and the kind of line say the same.</para>
/// </remarks>
internal sealed class TilePage
{
    private const double NoteHeight = 1.8;
    private const double NoteStep = 3;
    private const double LettersHeight = 2.5;

    /// <summary>Register letters keep clear of the seam and their cross by this [mm].</summary>
    private const double FromSeam = 0.6;

    // Notes stand beyond the ticks.
    private const double Beyond = 2.6;
    private const double TickStep = 4;
    private const double Tick = 1.4;

    // Where register letters are tried, away from the seam beyond their usual place and aside from the cross [mm], the shortest way first.
    private static readonly (double Away, double Aside)[] LetterSteps =
    [
        .. Enumerable.Range(-6, 46).SelectMany(away => Enumerable.Range(-10, 21), (away, aside) => (Away: away, Aside: aside))
            .OrderBy(s => (Math.Abs(s.Away) / 2.0) + Math.Abs(s.Aside)).Select(s => (0.75 * s.Away, 2.0 * s.Aside)),
    ];

    private readonly PageLayout _layout;
    private readonly PartPages _part;
    private readonly int _row;
    private readonly int _column;
    private readonly PageMarks _marks = new();
    private readonly List<Box2> _letters = [];

    private TilePage(PartPages part, int row, int column) => (_layout, _part, _row, _column) = (part.Grid.Layout, part, row, column);

    /// <summary>Draws one page.</summary>
    /// <param name="part">The part with its grid and page numbers.</param>
    /// <param name="row">Row of the tile, 0 at the top.</param>
    /// <param name="column">Column of the tile, 0 at the left.</param>
    /// <param name="pages">Number of pages in the whole set.</param>
    public static Sheet Of(PartPages part, int row, int column, int pages)
    {
        var page = new TilePage(part, row, column);
        var shown = page.DrawParts();
        page.DrawSeams();
        foreach (var one in shown)
            page._marks.Add(LineNames.Missing(one.Marks, page._marks.All, part.Grid.TurnOf(one.Part), page.OwnGround, IsFree));
        page._marks.Add(HoleNames.Missing(page._marks.All, part.Grid.Pieces.Where(HoleNames.IsHole).Select(h => new PartMark(MovedMarks.Of(h.Mark, page.Shift), h.Part)), page.OwnGround, part.Grid.TurnOf, IsFree));
        PageFoot.Draw(page._marks, part, row, column, pages);
        return page._layout.PageOf($"{part.Grid.Group.Title}, {PartPages.PlaceName(row, column)}", page._marks.All);

        bool IsFree(Box2 box) => part.Grid.IsFree(box.Moved(-page.Shift));
    }

    /// <summary>From the part's millimeters to the page's.</summary>
    private Vector2 Shift
    {
        get
        {
            var cell = _part.Grid.CellAt(_row, _column);
            return new Vector2(_layout.Cell.Left - cell.Left, _layout.Cell.Bottom - cell.Bottom);
        }
    }

    // Returns what the page shows of each part.
    private List<(int Part, IReadOnlyList<Mark> Marks)> DrawParts()
    {
        var window = _part.Grid.CellAt(_row, _column).Grown(PageLayout.Strip / 2);
        var parts = new List<(int Part, IReadOnlyList<Mark> Marks)>();
        foreach (var part in _part.Grid.Pieces.GroupBy(p => p.Part))
        {
            var shown = new List<Mark>();
            foreach (var piece in part)
            {
                if (_part.Grid.HomeOf(piece) is not { } home || home == (_row, _column))
                    shown.AddRange(piece.Inside(window).Select(m => MovedMarks.Of(m, Shift)));
            }

            _marks.Add(shown);
            parts.Add((part.Key, shown));
        }

        return parts;
    }

    private void DrawSeams()
    {
        Box2 cell = _layout.Cell;
        if (Neighbor(0, 1) is { } right)
            Upright(PageInks.Cut, cell.Right, Beyond, _part.CrossesRightOf(_row, _column), CutNotes(right));
        if (Neighbor(0, -1) is { } left)
            Upright(PageInks.Lap, cell.Left, -Beyond, _part.CrossesRightOf(_row, _column - 1), LapNotes(left));
        if (Neighbor(-1, 0) is { } above)
            Level(PageInks.Cut, cell.Top, Beyond, _part.CrossesBelow(_row - 1, _column), CutNotes(above));
        if (Neighbor(1, 0) is { } below)
            Level(PageInks.Lap, cell.Bottom, -Beyond, _part.CrossesBelow(_row, _column), LapNotes(below));
    }

    // The page within its seams; to the edge of its window where it has none.
    private Box2 OwnGround
    {
        get
        {
            Box2 cell = _layout.Cell, window = _layout.Window;
            return new Box2(
                Neighbor(0, -1) is null ? window.Left : cell.Left, Neighbor(1, 0) is null ? window.Bottom : cell.Bottom,
                Neighbor(0, 1) is null ? window.Right : cell.Right, Neighbor(-1, 0) is null ? window.Top : cell.Top);
        }
    }

    private static string[] CutNotes(int page) => [Invariant($"cut here, lay over page {page}"), Invariant($"over {page}")];

    private static string[] LapNotes(int page) => [Invariant($"page {page} laps up to this line"), Invariant($"{page} laps")];

    private int? Neighbor(int down, int right) =>
        _part.Grid.IsUsed(_row + down, _column + right) ? _part.PageOf(_row + down, _column + right) : null;

    // Letters stand on the page's own side of the seam, notes in the strip beyond it.
    private void Upright(Layer layer, double seam, double beyond, IReadOnlyList<(double Fraction, string Name)> crosses, string[] notes)
    {
        Box2 cell = _layout.Cell, window = _layout.Window;
        var inward = -Math.Sign(beyond);
        _marks.Path(layer, Edge(layer, new Point2(seam, window.Bottom), new Point2(seam, window.Top), new Vector2(Math.Sign(beyond), 0)));
        foreach (var (fraction, name) in crosses)
        {
            var at = new Point2(seam, cell.Bottom + (fraction * cell.Height));
            _marks.Cross(PageInks.Register, at, PartPages.CrossArm);
            Letters(name, at, new Vector2(inward, 0));
        }

        Note(notes, cell.Bottom, cell.Top, [.. crosses.Select(c => cell.Bottom + (c.Fraction * cell.Height))], y => new Point2(seam + beyond, y), Math.PI / 2);
    }

    private void Level(Layer layer, double seam, double beyond, IReadOnlyList<(double Fraction, string Name)> crosses, string[] notes)
    {
        Box2 cell = _layout.Cell, window = _layout.Window;
        var inward = -Math.Sign(beyond);
        _marks.Path(layer, Edge(layer, new Point2(window.Left, seam), new Point2(window.Right, seam), new Vector2(0, Math.Sign(beyond))));
        foreach (var (fraction, name) in crosses)
        {
            var at = new Point2(cell.Left + (fraction * cell.Width), seam);
            _marks.Cross(PageInks.Register, at, PartPages.CrossArm);
            Letters(name, at, new Vector2(0, inward));
        }

        Note(notes, cell.Left, cell.Right, [.. crosses.Select(c => cell.Left + (c.Fraction * cell.Width))], x => new Point2(x, seam + beyond), 0);
    }

    // A seam to cut goes out to the end of each slanting tick and back, one line of the pen.
    private static List<Point2> Edge(Layer layer, Point2 from, Point2 to, Vector2 outward)
    {
        List<Point2> points = [from];
        var along = (to - from).Unit();
        var count = layer == PageInks.Cut ? (int)((to - from).Length / TickStep) : 0;
        for (var i = 0; i < count; i++)
        {
            var foot = from + ((i + 0.5) * TickStep * along);
            points.AddRange([foot, foot + (Tick * (along + outward)), foot]);
        }

        points.Add(to);
        return points;
    }

    // Beside the end of the cross's arm; where a line of the part runs there, or letters stand, at the nearest free place around.
    private void Letters(string name, Point2 cross, Vector2 inward)
    {
        var half = new Vector2(StrokeLettering.Width(name, LettersHeight) / 2, LettersHeight / 2);
        var usual = PartPages.CrossArm + 1 + (inward.Y == 0 ? half.X : half.Y);
        // Nearer to the seam than the arm's end only beside the arm.
        var places = LetterSteps.Select(s => (Away: usual + s.Away, s.Aside))
            .Where(p => p.Away >= usual || (p.Away > (usual - PartPages.CrossArm - 1) + FromSeam && Math.Abs(p.Aside) > PartPages.CrossArm + (inward.Y == 0 ? half.Y : half.X) + FromSeam))
            .Select(p => cross + (p.Away * inward) + (p.Aside * inward.TurnedLeft));
        var at = places.Where(IsFree).Append(cross + (usual * inward)).First();
        _letters.Add(Around(at));
        _marks.Text(PageInks.Register, name, at, LettersHeight, anchor: Anchor.Middle);

        bool IsFree(Point2 p) => !Around(p).TouchesAny(_letters) && _part.Grid.IsFree(Around(p).Moved(-Shift));

        Box2 Around(Point2 p) => new(p.X - half.X - 0.6, p.Y - half.Y - 0.6, p.X + half.X + 0.6, p.Y + half.Y + 0.6);
    }

    // The first of the notes that finds a free place between the ends of the seam, nearest to its middle.
    private void Note(string[] notes, double from, double to, double[] crosses, Func<double, Point2> placeAt, double angle)
    {
        var middle = (from + to) / 2;
        foreach (var note in notes)
        {
            var half = (StrokeLettering.Width(note, NoteHeight) / 2) + 1;
            var reach = ((to - from) / 2) - half;
            foreach (var along in Enumerable.Range(0, (int)(2 * reach / NoteStep)).Select(k => middle + (NoteStep * (k % 2 == 0 ? -k / 2 : (k + 1) / 2))))
            {
                var at = placeAt(along);
                var (across, up) = angle == 0 ? (half, NoteHeight) : (NoteHeight, half);
                if (crosses.Any(c => Math.Abs(c - along) < half + PartPages.CrossArm)
                    || !_part.Grid.IsFree(new Box2(at.X - across, at.Y - up, at.X + across, at.Y + up).Moved(-Shift)))
                    continue;
                _marks.Text(PageInks.Note, note, at, NoteHeight, anchor: Anchor.Middle, angle: angle);
                return;
            }
        }
    }
}
