using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>One mark of a part with its strokes measured once, ready to be cut off at the edges of many windows.</summary>
internal sealed class PartMark
{
    /// <summary>Greatest distance of a filled area's chords from its arcs [mm]; stroked arcs stay arcs.</summary>
    private const double FillTolerance = 0.002;

    private readonly Lazy<IReadOnlyList<(ArcPath Path, Box2 Bounds)>> _strokes;

    /// <summary>Measures a mark.</summary>
    /// <param name="mark">The mark.</param>
    /// <param name="part">Index of its part among those on the same pages.</param>
    public PartMark(Mark mark, int part = 0)
    {
        (Mark, Part) = (mark, part);
        Bounds = mark switch
        {
            PathMark path => path.Path.Bounds(),
            TextMark text => StrokeLettering.Bounds(text),
            _ => throw new ArgumentException($"a mark of kind {mark.GetType().Name} cannot be tiled", nameof(mark)),
        };
        // Few letters are ever cut.
        _strokes = new(() => mark is TextMark text ? [.. StrokeLettering.Strokes(text).Select(s => (s, s.Bounds()))] : [(((PathMark)mark).Path, Bounds)]);
    }

    /// <summary>The mark.</summary>
    public Mark Mark { get; }

    /// <summary>Index of its part among those on the same pages.</summary>
    public int Part { get; }

    /// <summary>Its strokes, each with the box around it: a path is its own stroke, lettering those of its alphabet.</summary>
    public IReadOnlyList<(ArcPath Path, Box2 Bounds)> Strokes => _strokes.Value;

    /// <summary>The smallest box around the middles of its lines.</summary>
    public Box2 Bounds { get; }

    /// <summary>Whether any of it is inside a box.</summary>
    public bool Enters(Box2 box)
    {
        if (!Bounds.Touches(box))
            return false;
        if (Mark is PathMark { Filled: true })
            return Inside(box).Any();
        foreach (var (path, bounds) in Strokes)
        {
            if (!bounds.Touches(box))
                continue;
            foreach (var segment in path.Segments())
            {
                if (segment.Enters(box))
                    return true;
            }
        }

        return false;
    }

    /// <summary>What of it is inside a box: lines and arcs cut at its edges, lettering kept whole or cut stroke by stroke.</summary>
    public IEnumerable<Mark> Inside(Box2 box)
    {
        if (!Bounds.Touches(box))
            return [];
        if (box.Holds(Bounds))
            return [Mark];
        if (Mark is PathMark { Filled: true } area)
        {
            var inside = area.Path.AreaInside(box, FillTolerance);
            return inside.Vertices.Count > 0 ? [area with { Path = inside }] : [];
        }

        var pieces = new List<Mark>();
        foreach (var (path, bounds) in Strokes)
        {
            if (!bounds.Touches(box))
                continue;
            foreach (var piece in path.Inside(box))
                pieces.Add(Mark is PathMark line ? line with { Path = piece } : new PathMark(LetteringLayer, piece));
        }

        return pieces;
    }

    // Lettering is never dashed, so its cut strokes may need a layer of their own.
    private Layer LetteringLayer => Mark.Layer.Ink.Dash is not null
        ? Mark.Layer with { Name = Mark.Layer.Name + "-lettering", Ink = Mark.Layer.Ink with { Dash = null } }
        : Mark.Layer;
}
