using Lines.Design.Diagnostics;
using Lines.Design.Text;
using Lines.Drawing.Dxf;
using Lines.Kernel.Geometry;
using Lines.Plans.Paper;

namespace Lines.Plans.Molds;

/// <summary>Looks through a DXF file for a router for what shops lose time to.</summary>
/// <remarks>
/// <para>Open outlines and such as cross themselves, lines drawn twice, a unit or scale that is wrong or not told, layers that are missing, outlines and holes run the wrong way, and
/// entities that controllers do not follow. The layers are those of <see cref="MoldInks"/>, the scale that of <see cref="TestSquare"/>.</para>
/// <para><b>Accuracy.</b> Ends and lines within 0.01 mm are one; a test square is true within 0.1 mm.</para>
/// </remarks>
public static class RouterFileCheck
{
    private const double Same = 0.01;
    private const double SquareTolerance = 0.1;

    /// <summary>Millimeters in an inch.</summary>
    internal const double MillimetersPerInch = 25.4;

    /// <summary>What is wrong with a file.</summary>
    /// <param name="file">Its name as the user knows it.</param>
    /// <param name="text">Its text.</param>
    /// <returns>The faults in the order of their places; none where it is sound.</returns>
    public static IReadOnlyList<Diagnostic> Faults(string file, string text)
    {
        try
        {
            var drawing = DxfDrawing.Read(text);
            return [.. new Found(drawing).All().Select(f => Told(file, f.Line, f.Key, f.Problem, f.Remedy)).OrderBy(d => d.Place)];
        }
        catch (DxfFormatException fault)
        {
            return [Told(file, fault.Line, "file", fault.Message, "write it again")];
        }
    }

    private static Diagnostic Told(string file, int line, string key, string problem, string remedy) => new(file, new Place(line, 1), key, problem, remedy, "");

    private sealed class Found(DxfDrawing drawing)
    {
        private readonly double _mm = drawing.Unit == DxfUnit.Inch ? MillimetersPerInch : 1;

        public IEnumerable<(int Line, string Key, string Problem, string Remedy)> All() => [.. Unit(), .. Scale(), .. Layers(), .. Others(), .. Loops(), .. Twice()];

        private IEnumerable<(int, string, string, string)> Unit()
        {
            if (drawing.Unit == DxfUnit.None)
                yield return (1, "unit", "the file does not state whether its lengths are mm or inches", "have it written again with its unit, or tell the controller and measure the test square");
        }

        private IEnumerable<(int, string, string, string)> Scale()
        {
            var squares = Of(MoldInks.Mark.Name).Where(p => IsSquare(p.Path)).ToList();
            foreach (var square in squares)
            {
                var side = square.Path.Bounds().Width * _mm;
                if (Math.Abs(side - TestSquare.Side) <= SquareTolerance)
                    continue;
                var times = side / TestSquare.Side;
                var units = Math.Abs(times - MillimetersPerInch) < 0.05 || Math.Abs((1 / times) - MillimetersPerInch) < 0.05 ? ": mm and inches are mixed up" : "";
                yield return (square.Line, square.Layer, Invariant($"the test square is {side:0.##} mm wide in place of {TestSquare.Side:0} mm{units}"), "write the file again in the unit wanted; do not scale it");
            }

            if (squares.Count == 0 && !Of(MoldInks.Stock.Name).Any())
                yield return (1, MoldInks.Mark.Name, "there is no test square, so the scale cannot be told", "write the file again");
        }

        private IEnumerable<(int, string, string, string)> Layers()
        {
            foreach (var name in new[] { MoldInks.Cut.Name, MoldInks.Mark.Name }.Where(n => !Of(n).Any()))
                yield return (1, name, "nothing is drawn on this layer", "write the file again; every part has outlines to cut and lines to mark");
            foreach (var path in drawing.Paths.Where(p => !drawing.Layers.Contains(p.Layer, StringComparer.OrdinalIgnoreCase)).DistinctBy(p => p.Layer, StringComparer.OrdinalIgnoreCase))
                yield return (path.Line, path.Layer, "the layer is used and not defined", "write the file again, or define it");
        }

        private IEnumerable<(int, string, string, string)> Others() =>
            drawing.Others.GroupBy(o => o.Type, StringComparer.Ordinal).Select(g => (
                g.First().Line, g.Key, Invariant($"{g.Count()} of them, which many controllers do not follow"), "turn them into polylines of lines and arcs"));

        private IEnumerable<(int, string, string, string)> Loops()
        {
            foreach (var path in Of(MoldInks.Cut.Name).Concat(Of(MoldInks.Holes.Name)))
            {
                if (path.Path.Vertices.Count < 2)
                {
                    yield return (path.Line, path.Layer, "a path has no length", "delete it");
                    continue;
                }

                if (!path.Path.Closed)
                {
                    Point2 a = path.Path.Vertices[0].Point, b = path.Path.Vertices[^1].Point;
                    var gap = _mm * a.DistanceTo(b);
                    yield return (path.Line, path.Layer, gap <= Same
                        ? Invariant($"the outline at {Shown(a)} ends where it begins but is not closed")
                        : Invariant($"an outline is open: its ends, {Shown(a)} and {Shown(b)}, are {gap:0.##} mm apart"), "close it");
                    continue;
                }

                if (PathCrossing.Of(path.Path, Same / _mm) is { } crossing)
                {
                    yield return (path.Line, path.Layer, Invariant($"an outline crosses itself at {Shown(crossing)}, so that inside and outside change there"), "redraw it from there on, or write the file again");
                    continue;
                }

                var isHole = path.Layer.Equals(MoldInks.Holes.Name, StringComparison.OrdinalIgnoreCase);
                if (path.Path.SignedArea() > 0 == isHole && path.Type is not "CIRCLE")
                    yield return (path.Line, path.Layer, Invariant($"the {(isHole ? "hole" : "outline")} at {Shown(path.Path.Vertices[0].Point)} runs {(isHole ? "counter-clockwise" : "clockwise")}"), "reverse it: outlines run counter-clockwise, holes clockwise");
            }
        }

        // Lettering crosses itself as letters do; all else is drawn once.
        private IEnumerable<(int, string, string, string)> Twice()
        {
            var paths = drawing.Paths.Where(p => p.Path.Vertices.Count > 1 && !p.Layer.Equals(MoldInks.Text.Name, StringComparison.OrdinalIgnoreCase))
                .Select(p => (Path: p, Box: p.Path.Bounds())).OrderBy(p => p.Box.Left).ToList();
            for (var i = 0; i < paths.Count; i++)
            {
                for (var k = i + 1; k < paths.Count && (paths[k].Box.Left - paths[i].Box.Left) * _mm <= Same; k++)
                {
                    if (!AreOne(paths[i].Path.Path, paths[i].Box, paths[k].Path.Path, paths[k].Box))
                        continue;
                    var (first, second) = paths[i].Path.Line < paths[k].Path.Line ? (paths[i].Path, paths[k].Path) : (paths[k].Path, paths[i].Path);
                    yield return (second.Line, second.Layer, Invariant($"the path at {Shown(second.Path.Vertices[0].Point)} is drawn twice, first on line {first.Line} of the file"), "delete one: it would be cut twice");
                }
            }
        }

        private bool AreOne(ArcPath a, Box2 boxOfA, ArcPath b, Box2 boxOfB) =>
            _mm * Math.Abs(boxOfA.Right - boxOfB.Right) <= Same && _mm * Math.Abs(boxOfA.Bottom - boxOfB.Bottom) <= Same && _mm * Math.Abs(boxOfA.Top - boxOfB.Top) <= Same
            && _mm * Math.Abs(a.Length() - b.Length()) <= Same * Math.Max(a.Vertices.Count, b.Vertices.Count)
            && a.Vertices.All(v => _mm * b.DistanceTo(v.Point) <= Same) && b.Vertices.All(v => _mm * a.DistanceTo(v.Point) <= Same);

        private IEnumerable<DxfPath> Of(string layer) => drawing.Paths.Where(p => p.Layer.Equals(layer, StringComparison.OrdinalIgnoreCase));

        private static bool IsSquare(ArcPath path)
        {
            if (path is not { Closed: true, Vertices.Count: 4 } || path.Vertices.Any(v => v.Bulge != 0))
                return false;
            var box = path.Bounds();
            return Math.Abs(box.Width - box.Height) <= 0.01 * box.Width && Math.Abs(path.SignedArea()) >= 0.99 * box.Width * box.Height;
        }

        private static string Shown(Point2 p) => Invariant($"({p.X:0.##}, {p.Y:0.##})");
    }
}
