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

    private static readonly KeptReader s_ezdxf = new("ezdxf", "read_dxf.py");

    private static readonly KeptReader s_parser = new("dxf-parser", "read_dxf.js");

    // The readings, or what the reader said when it gave up.
    private sealed record Answer(DxfReading[]? Readings, string? Failure);

    /// <summary>What a reader makes of files, in their order.</summary>
    public static IReadOnlyList<DxfReading> Read(string reader, params IReadOnlyList<string> files)
    {
        var written = files.Select(_ => new ScratchFile(".dxf")).ToList();
        try
        {
            foreach (var (file, text) in written.Zip(files))
                File.WriteAllText(file.Path, text);
            var line = (reader is "ezdxf" ? s_ezdxf : s_parser).AnswerTo([.. written.Select(f => f.Path)]);
            var answer = JsonSerializer.Deserialize<Answer>(line, s_json);
            Assert.Null(answer?.Failure);
            return answer?.Readings ?? throw new InvalidOperationException(line);
        }
        finally
        {
            written.ForEach(f => f.Dispose());
        }
    }
}
