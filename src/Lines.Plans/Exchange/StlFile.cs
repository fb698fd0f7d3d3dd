using System.Buffers.Binary;
using System.Text;
using Lines.Kernel.Geometry;
using Lines.Kernel.Meshes;

namespace Lines.Plans.Exchange;

/// <summary>A mesh as a binary STL file: 80 bytes of text, the count, then 50 bytes a facet, little-endian single precision.</summary>
public static class StlFile
{
    private const int Head = 80, Facet = 50;

    /// <summary>Writes the mesh.</summary>
    /// <param name="mesh">The mesh, in the unit the file is to have.</param>
    /// <param name="remark">Text at the head of the file, ASCII; cut to what 80 bytes hold. It must not begin with "solid", by which text
    /// files of the format are known.</param>
    public static byte[] Write(TriangleMesh mesh, string remark)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentNullException.ThrowIfNull(remark);
        if (remark.StartsWith("solid", StringComparison.OrdinalIgnoreCase))
            throw new ArgumentException($"\"{remark}\" begins as a text file does", nameof(remark));
        var bytes = new byte[Head + sizeof(uint) + (Facet * mesh.Count)];
        Encoding.ASCII.GetBytes(remark.AsSpan(0, Math.Min(remark.Length, Head)), bytes);
        BinaryPrimitives.WriteUInt32LittleEndian(bytes.AsSpan(Head), (uint)mesh.Count);
        var rest = bytes.AsSpan(Head + sizeof(uint));
        foreach (var t in mesh.Triangles)
        {
            var normal = mesh.NormalOf(t);
            Put(rest, 0, normal.Length > 0 ? normal.Unit() : default);
            Put(rest, 1, mesh.Vertices[t.A] - default(Point3));
            Put(rest, 2, mesh.Vertices[t.B] - default(Point3));
            Put(rest, 3, mesh.Vertices[t.C] - default(Point3));
            rest = rest[Facet..];
        }

        return bytes;
    }

    private static void Put(Span<byte> facet, int index, Vector3 v)
    {
        var at = facet[(3 * sizeof(float) * index)..];
        BinaryPrimitives.WriteSingleLittleEndian(at, (float)v.X);
        BinaryPrimitives.WriteSingleLittleEndian(at[sizeof(float)..], (float)v.Y);
        BinaryPrimitives.WriteSingleLittleEndian(at[(2 * sizeof(float))..], (float)v.Z);
    }
}
