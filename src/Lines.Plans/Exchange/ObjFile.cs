using System.Globalization;
using System.Text;
using Lines.Kernel.Meshes;

namespace Lines.Plans.Exchange;

/// <summary>A mesh as an OBJ file: vertices, then the facets of every part as a group of its name.</summary>
public static class ObjFile
{
    /// <summary>Writes the mesh.</summary>
    /// <param name="mesh">The mesh, in the unit the file is to have, with coordinates that single precision holds.</param>
    /// <param name="remark">Text at the head of the file, one line.</param>
    /// <returns>The text of the file, lines ended by a line feed.</returns>
    public static string Write(TriangleMesh mesh, string remark)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentNullException.ThrowIfNull(remark);
        var text = new StringBuilder("# ").Append(remark).Append("\no hull\n");
        foreach (var p in mesh.Vertices)
            text.Append("v ").Append(Shortest(p.X)).Append(' ').Append(Shortest(p.Y)).Append(' ').Append(Shortest(p.Z)).Append('\n');
        foreach (var part in mesh.Parts)
        {
            text.Append("g ").Append(part.Name).Append('\n');
            foreach (var t in part.Triangles)
                text.Append(CultureInfo.InvariantCulture, $"f {t.A + 1} {t.B + 1} {t.C + 1}\n");
        }

        return text.ToString();
    }

    /// <summary>The shortest text that reads back as the same single.</summary>
    private static string Shortest(double value) => ((float)value).ToString("R", CultureInfo.InvariantCulture);
}
