using Lines.Kernel.Geometry;

namespace Lines.Kernel.Meshes;

/// <summary>A triangle of a mesh: its corners as places in the list of vertices, counter-clockwise seen from outside.</summary>
/// <param name="A">First corner.</param>
/// <param name="B">Second corner.</param>
/// <param name="C">Third corner.</param>
public readonly record struct Triangle(int A, int B, int C);

/// <summary>Triangles of a mesh that belong together.</summary>
/// <param name="Name">Name of the part.</param>
/// <param name="Triangles">Its triangles.</param>
public sealed record MeshPart(string Name, IReadOnlyList<Triangle> Triangles);

/// <summary>Triangles that share their vertices.</summary>
/// <remarks>No two vertices are the same place and no triangle has a corner twice: <see cref="MeshAssembly"/> makes it so.</remarks>
public sealed class TriangleMesh
{
    internal TriangleMesh(IReadOnlyList<Point3> vertices, IReadOnlyList<MeshPart> parts)
    {
        Vertices = vertices;
        Parts = parts;
    }

    /// <summary>The vertices, in the order in which the triangles first name them.</summary>
    public IReadOnlyList<Point3> Vertices { get; }

    /// <summary>The parts.</summary>
    public IReadOnlyList<MeshPart> Parts { get; }

    /// <summary>The triangles of all parts.</summary>
    public IEnumerable<Triangle> Triangles => Parts.SelectMany(p => p.Triangles);

    /// <summary>Number of triangles.</summary>
    public int Count => Parts.Sum(p => p.Triangles.Count);

    /// <summary>Twice the area of a triangle, along its outward normal.</summary>
    public Vector3 NormalOf(Triangle t)
    {
        var a = Vertices[t.A];
        return (Vertices[t.B] - a).Cross(Vertices[t.C] - a);
    }
}

/// <summary>A mesh as it grows.</summary>
public sealed class MeshAssembly
{
    private readonly Dictionary<Point3, int> _places = [];
    private readonly List<Point3> _vertices = [];
    private readonly List<(string Name, List<Triangle> Triangles)> _parts = [];

    /// <summary>Begins a part; what is added next belongs to it.</summary>
    public void Begin(string part) => _parts.Add((part, []));

    /// <summary>Adds a triangle to the part; one whose corners are not three places is nothing and left out.</summary>
    public void Add(Point3 a, Point3 b, Point3 c)
    {
        if (a != b && b != c && c != a)
            _parts[^1].Triangles.Add(new Triangle(Place(a), Place(b), Place(c)));
    }

    /// <summary>The mesh so far.</summary>
    public TriangleMesh Made() => new([.. _vertices], [.. _parts.Select(p => new MeshPart(p.Name, [.. p.Triangles]))]);

    private int Place(Point3 p)
    {
        if (_places.TryGetValue(p, out var known))
            return known;
        _vertices.Add(p);
        return _places[p] = _vertices.Count - 1;
    }
}
