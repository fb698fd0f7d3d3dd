using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;

namespace Lines.Tests.Drawing;

/// <summary>The paths a sheet's marks are drawn as, lettering as its strokes.</summary>
internal static class SheetPaths
{
    public static IReadOnlyList<(Mark Mark, ArcPath Path)> Of(Sheet sheet) =>
        [.. sheet.Marks.SelectMany(m => (m switch
        {
            PathMark p => [p.Path],
            TextMark t => StrokeLettering.Strokes(t),
            _ => throw new ArgumentException("no such mark", nameof(sheet)),
        }).Select(path => (m, path)))];
}
