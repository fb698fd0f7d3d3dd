using System.Text.Json;
using Lines.Kernel.Geometry;
using Xunit;

namespace Lines.Tests.Support.Dxf;

/// <summary>A DXF file as an outside reader gives it.</summary>
internal sealed record DxfReading(string Version, int Units, string[] Errors, DxfReadLayer[] Layers, DxfReadEntity[] Entities);

/// <summary>A layer as read.</summary>
internal sealed record DxfReadLayer(string Name, int Color, string Linetype, int Lineweight);

/// <summary>A line or polyline as read, every vertex x, y and bulge; or a circle, its one vertex x, y and radius.</summary>
internal sealed record DxfReadEntity(string Type, string Layer, bool Closed, double[][] Vertices)
{
    /// <summary>That it is a path, moved, vertex by vertex and bulge by bulge.</summary>
    public void AssertIs(ArcPath path, Vector2 moved, double unit = 1)
    {
        Assert.Equal(path.Closed, Closed);
        Assert.Equal(path.Vertices.Count, Vertices.Length);
        foreach (var (vertex, read) in path.Vertices.Zip(Vertices))
        {
            Assert.InRange(Math.Abs(vertex.Point.X + moved.X - (read[0] * unit)), 0, 1e-6);
            Assert.InRange(Math.Abs(vertex.Point.Y + moved.Y - (read[1] * unit)), 0, 1e-6);
            Assert.InRange(Math.Abs(vertex.Bulge - read[2]), 0, 1e-6);
        }
    }
}

/// <summary>Hands DXF files to ezdxf or dxf-parser.</summary>
internal static class OutsideDxf
{
    private static readonly JsonSerializerOptions s_json = new() { PropertyNameCaseInsensitive = true };

    /// <summary>What a reader makes of files, in their order, in one run of it.</summary>
    public static IReadOnlyList<DxfReading> Read(string reader, params IReadOnlyList<string> files)
    {
        var written = files.Select(_ => new ScratchFile(".dxf")).ToList();
        try
        {
            foreach (var (file, text) in written.Zip(files))
                File.WriteAllText(file.Path, text);
            var script = OutsideReader.Script(reader is "ezdxf" ? "read_dxf.py" : "read_dxf.js");
            var run = OutsideReader.Run(reader, [script, .. written.Select(f => f.Path)]);
            Assert.True(run.ExitCode == 0, run.Errors);
            return JsonSerializer.Deserialize<DxfReading[]>(run.Output, s_json) ?? throw new InvalidOperationException(run.Output);
        }
        finally
        {
            written.ForEach(f => f.Dispose());
        }
    }
}
