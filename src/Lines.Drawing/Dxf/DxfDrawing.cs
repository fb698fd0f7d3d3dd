using Lines.Kernel.Geometry;

namespace Lines.Drawing.Dxf;

/// <summary>What a DXF file draws, as far as a router follows it.</summary>
/// <param name="Version">The format's version as the file states it: AC1009, AC1015 ...; empty where it states none.</param>
/// <param name="Unit">The unit it states.</param>
/// <param name="Layers">The layers it defines.</param>
/// <param name="Paths">Its lines, polylines, arcs and circles, in the unit of the file.</param>
/// <param name="Others">Entities that are none of these: their type, and the line of the file where they begin.</param>
public sealed record DxfDrawing(
    string Version, DxfUnit Unit, IReadOnlyList<string> Layers, IReadOnlyList<DxfPath> Paths, IReadOnlyList<(string Type, int Line)> Others)
{
    /// <summary>Reads a file.</summary>
    /// <param name="text">Its text.</param>
    /// <exception cref="DxfFormatException">It is no DXF file; carries the line.</exception>
    public static DxfDrawing Read(string text) => DxfReader.Read(text);
}

/// <summary>A path that a DXF file draws.</summary>
/// <param name="Layer">Its layer.</param>
/// <param name="Type">The entity's type: LINE, LWPOLYLINE, POLYLINE, ARC, CIRCLE.</param>
/// <param name="Path">The path, in the unit of the file.</param>
/// <param name="Line">Line of the file where the entity begins, from 1.</param>
public sealed record DxfPath(string Layer, string Type, ArcPath Path, int Line);

/// <summary>A text is no DXF file.</summary>
/// <param name="line">Line of the text, from 1.</param>
/// <param name="message">What is wrong there, one clause.</param>
public sealed class DxfFormatException(int line, string message) : FormatException(message)
{
    /// <summary>Line of the text, from 1.</summary>
    public int Line { get; } = line;
}
