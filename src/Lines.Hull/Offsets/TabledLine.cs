using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Kernel.Numerics;

namespace Lines.Hull.Offsets;

/// <summary>What one row of a table of offsets shows of a line: as much of it as has one point at a station.</summary>
/// <remarks>
/// <para><b>Method.</b> A line is parted where it turns back along x, as a buttock does under a sheer narrower than the side below it. The
/// longest stretch makes a row, with those that lie before or abaft it; every other stretch makes a row of its own.</para>
/// </remarks>
internal sealed class TabledLine
{
    /// <summary>A stretch that turns back is shown from this length on [m], a hand's breadth; shorter ones waterlines and stations show better.</summary>
    public const double ShortestBack = 0.1;

    private const double Hook = 0.004;

    private readonly List<Stretch> _stretches;

    private TabledLine(HullLine line, List<Stretch> stretches, int back)
    {
        _stretches = stretches;
        Kind = line.Kind;
        Plane = line.Plane;
        Back = back;
    }

    /// <summary>What the line is.</summary>
    public LineKind Kind { get; }

    /// <summary>The plane that cut the line; null for edges of the skin.</summary>
    public Plane? Plane { get; }

    /// <summary>0 for the row of the line itself, then 1 and on for the stretches that turn back.</summary>
    public int Back { get; }

    /// <summary>The ends of the stretches, those where the line turns back among them.</summary>
    public IEnumerable<LinePoint> Ends => _stretches.SelectMany(s => new[] { s.Line.At(s.From), s.Line.At(s.To) });

    /// <summary>The rows of a line, its own first.</summary>
    /// <param name="parts">The line, bow first; more than one where the grid's plane cuts the skin in several.</param>
    public static IReadOnlyList<TabledLine> Of(IReadOnlyList<HullLine> parts)
    {
        var own = new List<Stretch>();
        var rows = new List<TabledLine> { new(parts[0], own, 0) };
        foreach (var stretch in parts.SelectMany(Stretches).OrderByDescending(s => s.Aft - s.Fore))
        {
            if (own.TrueForAll(s => stretch.Aft <= s.Fore || stretch.Fore >= s.Aft))
                own.Add(stretch);
            else if (stretch.Length >= ShortestBack)
                rows.Add(new TabledLine(parts[0], [stretch], rows.Count));
        }

        return rows;
    }

    /// <summary>The point of the line at a station; null where it does not come there.</summary>
    public LinePoint? At(double x)
    {
        foreach (var stretch in _stretches)
        {
            if (stretch.At(x) is { } p)
                return p;
        }

        return null;
    }

    /// <summary>The point halfway along the line between two stations; null where it does not go from one to the other.</summary>
    public Point3? Halfway(double from, double to)
    {
        foreach (var stretch in _stretches)
        {
            if (stretch.Place(from) is { } a && stretch.Place(to) is { } b)
                return stretch.Line.At((a + b) / 2).Point;
        }

        return null;
    }

    private static List<Stretch> Stretches(HullLine line)
    {
        // Along a plumb edge rounding alone turns x about: a direction this near plumb has no sense.
        const double plumb = 1e-6;
        var turns = new List<double> { 0 };
        double sense = 0, last = 0;
        foreach (var t in line.Nodes.Select(n => n.T))
        {
            var x = line.DirectionAt(t).X;
            if (Math.Abs(x) < plumb)
                continue;
            var before = sense;
            if (x * before < 0)
                turns.Add(Root.FirstWhere(at => line.DirectionAt(at).X * before < 0, last, t));
            (sense, last) = (x, t);
        }

        // A hook at an end, shorter than a pencil marks, is no stretch of its own.
        turns.RemoveAll(t => t > 0 && Math.Min(t, 1 - t) * line.ChordLength < Hook);
        turns.Add(1);
        return [.. turns.Skip(1).Select((t, k) => new Stretch(line, turns[k], t))];
    }

    /// <summary>Part of a line along which x goes one way.</summary>
    private sealed class Stretch(HullLine line, double from, double to)
    {
        private readonly LinePoint _start = line.At(from), _end = line.At(to);

        public HullLine Line => line;

        public double From => from;

        public double To => to;

        public double Fore => Math.Min(_start.Point.X, _end.Point.X);

        public double Aft => Math.Max(_start.Point.X, _end.Point.X);

        public double Length => (to - from) * line.ChordLength;

        public LinePoint? At(double x)
        {
            foreach (var p in line.CrossingsWith(Kernel.Geometry.Plane.AtX(x)))
            {
                if (p.T >= from && p.T <= to)
                    return p;
            }

            return null;
        }

        // An end is in the table with its own x, which a cut may miss by a rounding.
        public double? Place(double x)
        {
            const double same = 1e-9;
            if (Math.Abs(_start.Point.X - x) < same)
                return from;
            return Math.Abs(_end.Point.X - x) < same ? to : At(x)?.T;
        }
    }
}
