using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Tests.Drawing;

/// <summary>Sheets that use every kind of mark.</summary>
internal static class SampleSheets
{
    public static readonly Layer Outline = new("outline", new Ink(0.5), 1);
    public static readonly Layer Thin = new("thin-1", new Ink(0.13, null, 0.4), 8);
    public static readonly Layer Dashed = new("hidden", new Ink(0.25, [6, 2, 1]), 3);
    public static readonly Layer Lettering = new("text", new Ink(0.25), 5);

    /// <summary>Closed and open paths, lines, arcs over half a circle, fills, dashes and turned lettering, on a landscape A4.</summary>
    public static Sheet Everything { get; } = new("Rail & <bench> \"é\"", 297, 210,
    [
        new PathMark(Outline, ArcPath.Through([new(5, 5), new(292, 5), new(292, 205), new(5, 205)], closed: true)),
        new PathMark(Outline, new ArcPath([new(new(130, 16), 0), new(new(150, 16), 0.5), new(new(150, 30), -0.3), new(new(130, 30), 1.4)], true)),
        new PathMark(Outline, new ArcPath([new(new(20, 20), 0.25), new(new(60, 40), -0.125), new(new(100, 20), 0)], false)),
        new PathMark(Thin, ArcPath.Line(new(10, 100), new(290, 101.5))),
        new PathMark(Dashed, ArcPath.Circle(new(200, 60), 30)),
        new PathMark(Dashed, ArcPath.Line(new(20, 80), new(120, 80))),
        new PathMark(Outline, ArcPath.Circle(new(200, 60), 2), Filled: true),
        new PathMark(Outline, ArcPath.Through([new(230, 20), new(250, 20), new(240, 37.5)], closed: true), Filled: true),
        new TextMark(Lettering, "Hg 12.5 mm: 2-3-5+ & 17' 6 1/2\"", new(20, 150), 7),
        new TextMark(Lettering, "turned", new(200, 60), 5, Anchor.Middle, Math.PI / 6),
        new TextMark(Lettering, "right", new(280, 190), 3.5, Anchor.Right),
        new TextMark(Lettering, "\u2603 is not in the alphabet", new(20, 180), 5),
    ]);
}
