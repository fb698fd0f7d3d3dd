using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Drawing.Dxf;

/// <summary>Writes paths as LINE, LWPOLYLINE and, where they are drilled, CIRCLE entities.</summary>
internal sealed class DxfEntities(DxfText dxf, string owner, double perMillimeter)
{
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
        dxf.Entity("LINE", dxf.NextHandle(), owner, layer.Name, "AcDbLine").Point(10, Scaled(_vertices[0]), 0).Point(11, Scaled(_vertices[1]), 0);

    // Two half circles.
    private void PutCircle(Layer layer)
    {
        Point2 a = Scaled(_vertices[0]), b = Scaled(_vertices[1]);
        dxf.Entity("CIRCLE", dxf.NextHandle(), owner, layer.Name, "AcDbCircle").Point(10, a + (0.5 * (b - a)), 0).Put(40, a.DistanceTo(b) / 2);
    }

    private void PutPolyline(Layer layer, bool closed)
    {
        dxf.Entity("LWPOLYLINE", dxf.NextHandle(), owner, layer.Name, "AcDbPolyline").Put(90, _vertices.Count).Put(70, closed ? 1 : 0);
        for (var i = 0; i < _vertices.Count; i++)
        {
            dxf.Point(10, Scaled(_vertices[i]));
            // The last vertex of an open polyline has no leg to bend.
            if (_vertices[i].Bulge != 0 && (closed || i < _vertices.Count - 1))
                dxf.Put(42, _vertices[i].Bulge);
        }
    }

    private Point2 Scaled(ArcVertex v) => new(v.Point.X * perMillimeter, v.Point.Y * perMillimeter);
}
