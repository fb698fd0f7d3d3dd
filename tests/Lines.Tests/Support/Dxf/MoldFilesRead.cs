using System.Collections.Concurrent;
using Lines.Drawing.Dxf;
using Lines.Kernel.Units;
using Lines.Plans.Molds;

namespace Lines.Tests.Support.Dxf;

/// <summary>The mold files of the templates, as a router takes them, as an outside reader gives them: each read once for all tests that look at it.</summary>
internal static class MoldFilesRead
{
    private static readonly ConcurrentDictionary<(string, string), Lazy<IReadOnlyList<DxfReading>>> s_read = new();

    /// <summary>One reading for every mold and bulkhead of a template, in their order.</summary>
    public static IReadOnlyList<DxfReading> Of(string reader, string template) => s_read.GetOrAdd((reader, template), _ => new(() =>
    {
        var shaped = ShapedTemplates.Of(template);
        return OutsideDxf.Read(reader, [.. shaped.Molds.Parts.Select(m => DxfFile.Write(MoldSheets.ForRouter(shaped.Design.Title, m, LengthNotation.Millimeters)))]);
    })).Value;
}
