using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Drawing.Dxf;

/// <summary>Writes paths as LINE, LWPOLYLINE (POLYLINE in release 12) and, where they are drilled, CIRCLE entities.</summary>
/// <param name="dxf">What is written to.</param>
/// <param name="owner">Handle of the space that owns them; null in release 12, which has none.</param>
/// <param name="settings">The unit, and what becomes of arcs.</param>
internal sealed class DxfEntities(DxfText dxf, string? owner, DxfSettings settings)
{
    private readonly double _perMillimeter = settings.Unit.PerMillimeter();
    private readonly List<ArcVertex> _vertices = [];

    /// <summary>Writes a path.</summary>
    /// <exception cref="ArgumentException">The path has fewer than two vertices apart, or a vertex is not finite.</exception>
    public void Put(ArcPath path, Layer layer)
    {
        PathGuard.Require(path);
        TakeApart(path);
        if (_vertices.Count < 2)
            throw new ArgumentException(Invariant($"a path on layer \"{layer.Name}\" has no length: all its vertices lie at one point"), nameof(path));
        if (_vertices.Count == 2 && !path.Closed && _vertices[0].Bulge == 0)
            PutLine(layer);
        else if (layer.IsDrilled && path.Closed && _vertices.Count == 2 && _vertices.TrueForAll(v => Math.Abs(v.Bulge) == 1))
            PutCircle(layer);
        else
            PutPolyline(layer, path.Closed);
    }

    private DxfText Begin(string type, Layer layer, string marker) =>
        owner is null ? dxf.Put(0, type).Put(8, layer.Name) : dxf.Entity(type, dxf.NextHandle(), owner, layer.Name, marker);

    /// <summary>Keeps the vertices that lie apart: a router stops or spins on a leg without length.</summary>
    private void TakeApart(ArcPath path)
    {
        _vertices.Clear();
        foreach (var v in path.Vertices)
        {
            if (_vertices.Count > 0 && _vertices[^1].Point == v.Point)
                _vertices[^1] = v;
            else
                _vertices.Add(v);
        }

        if (path.Closed && _vertices.Count > 1 && _vertices[^1].Point == _vertices[0].Point)
            _vertices.RemoveAt(_vertices.Count - 1);
    }

    private void PutLine(Layer layer) =>
        Begin("LINE", layer, "AcDbLine").Point(10, Scaled(_vertices[0]), 0).Point(11, Scaled(_vertices[1]), 0);

    // Two half circles.
    private void PutCircle(Layer layer)
    {
        Point2 a = Scaled(_vertices[0]), b = Scaled(_vertices[1]);
        Begin("CIRCLE", layer, "AcDbCircle").Point(10, a + (0.5 * (b - a)), 0).Put(40, a.DistanceTo(b) / 2);
    }

    private void PutPolyline(Layer layer, bool closed)
    {
        var vertices = settings.Chords is { } tolerance ? Chords(closed, tolerance) : _vertices;
        if (owner is null)
            dxf.Put(0, "POLYLINE").Put(8, layer.Name).Put(66, 1).Point(10, new Point2(0, 0), 0).Put(70, closed ? 1 : 0);
        else
            Begin("LWPOLYLINE", layer, "AcDbPolyline").Put(90, vertices.Count).Put(70, closed ? 1 : 0);
        for (var i = 0; i < vertices.Count; i++)
        {
            if (owner is null)
                dxf.Put(0, "VERTEX").Put(8, layer.Name).Point(10, Scaled(vertices[i]), 0);
            else
                dxf.Point(10, Scaled(vertices[i]));
            // The last vertex of an open polyline has no leg to bend.
            if (vertices[i].Bulge != 0 && (closed || i < vertices.Count - 1))
                dxf.Put(42, vertices[i].Bulge);
        }

        if (owner is null)
            dxf.Put(0, "SEQEND").Put(8, layer.Name);
    }

    private List<ArcVertex> Chords(bool closed, double tolerance)
    {
        var points = new ArcPath(_vertices, closed).Flattened(tolerance);
        return [.. points.Take(closed ? points.Count - 1 : points.Count).Select(p => new ArcVertex(p, 0))];
    }

    private Point2 Scaled(ArcVertex v) => new(v.Point.X * _perMillimeter, v.Point.Y * _perMillimeter);
}
