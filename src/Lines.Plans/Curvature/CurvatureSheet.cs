using Lines.Drawing.Model;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.LinesPlan;
using Lines.Plans.Paper;

namespace Lines.Plans.Curvature;

/// <summary>The plate that shows how the whole skin is curved: both principal curvatures, from the side and from below.</summary>
/// <remarks>
/// <para><b>Frame.</b> The sheet, millimeters, y up; starboard side, the bow to the right as on the lines plan.</para>
/// <para><b>Sign.</b> Grays carry size alone; where the skin is hollow that way it is hatched. Both read without color.</para>
/// </remarks>
public static class CurvatureSheet
{
    /// <summary>What to look for, for who sees such a plate for the first time.</summary>
    public const string WhatToLookFor =
        "Look for bands that run in long even sweeps. A band that pinches, doubles back or leaves an island is where the skin is a little fuller "
        + "or flatter than beside it; the batten test above measures it, and where no line near it stands off its batten by more than is allowed it is "
        + "of no concern. Hatching is where the skin is hollow one way and bulges the other, a saddle: that is twist, where flare or deadrise changes "
        + "along the boat, as it does toward fine ends, under a sheer that springs and over a keel that rises. It is no hollow line: a saddle is "
        + "hollow aslant, while every waterline, buttock, diagonal and section through it can be convex. Where the verdict names a hollow line, the "
        + "hatching shows how far round it the hollow reaches.";

    private const double Width = 280;
    private const double Margin = 8;
    private const double Head = 20;
    private const double ViewHead = 7;
    private const double Numbers = 6;
    private const double LegendHeight = 19;
    private const double Step = 17;

    /// <summary>Draws the plate.</summary>
    /// <param name="lines">The lines, cut once from the hull.</param>
    /// <param name="title">Title of the design.</param>
    /// <param name="notation">How radii are written.</param>
    public static Sheet Of(HullLines lines, string title, LengthNotation notation)
    {
        ArgumentNullException.ThrowIfNull(lines);
        ArgumentNullException.ThrowIfNull(title);
        var extents = PlanExtents.Of(lines);
        var room = Width - (2 * Margin);
        var scale = PlanLayout.Scales.First(s => extents.Length * 1000 / s <= room);
        var k = 1000.0 / scale;
        double rise = (extents.Top - extents.Bottom) * k, breadth = extents.HalfBeam * k;
        var height = (2 * Margin) + Head + (2 * ((2 * (ViewHead + Numbers)) + rise + breadth + LegendHeight));
        var bow = (Width + (extents.Length * k)) / 2;
        var marks = new PageMarks();
        var y = height - Margin;
        marks.Text(PlanInks.Titles, $"{title}: curvature of the skin", new Point2(Margin, y - 5), 4.5, Width - (2 * Margin));
        marks.Text(
            PlanInks.Lettering, Invariant($"Starboard side to the outside of planking, bow to the right, 1:{scale} where this sheet is {Width:0} mm wide. The darker, the more curved; unhatched the skin bulges or is straight."),
            new Point2(Margin, y - 11), 2, Width - (2 * Margin));
        y -= Head;
        SkinWindow fromSide = new(lines.Hull, below: false), fromBelow = new(lines.Hull, below: true);
        foreach (var curvature in new[] { CurvatureScale.Greater, CurvatureScale.Lesser })
        {
            y -= ViewHead + rise;
            View(fromSide, $"{curvature.Name}: from the side", y + rise, y - (extents.Bottom * k), p => p.Z);
            y -= Numbers + ViewHead + breadth;
            View(fromBelow, $"{curvature.Name}: from below", y + breadth, y, p => p.Y);
            y -= Numbers + LegendHeight;
            Legend(marks, curvature, y + 10, notation);

            void View(SkinWindow window, string name, double top, double zero, Func<Point3, double> up)
            {
                Point2 OnPaper(Point3 p) => new(bow - (p.X * k), zero + (up(p) * k));
                marks.Text(PlanInks.Titles, name, new Point2(Margin, top + 2), 2.6);
                new CurvatureView(marks, lines, window, k, OnPaper).Draw(curvature);
                foreach (var s in lines.Grid.Stations.Where(s => !s.Number.Contains('/', StringComparison.Ordinal)))
                    marks.Text(PlanInks.Lettering, s.Number, new Point2(bow - (s.X * k), y - 4), 2, anchor: Anchor.Center);
            }
        }

        return new Sheet($"{title}, curvature of the skin", Width, height, marks.All);
    }

    // A row of grays, the steps in 1/m above their borders and as radii below, then a hatched one.
    private static void Legend(PageMarks marks, CurvatureScale scale, double y, LengthNotation notation)
    {
        const double Low = 0, High = 5;
        var left = Margin + 22;
        marks.Text(PlanInks.Lettering, "size, 1/m", new Point2(left - 2, y + High + 1.2), 2, anchor: Anchor.Right);
        marks.Text(PlanInks.Lettering, notation == LengthNotation.Millimeters ? "radius, mm" : "radius", new Point2(left - 2, y - 3.2), 2, anchor: Anchor.Right);
        for (var k = 0; k <= scale.Steps.Count; k++)
        {
            var box = new Box2(left + (k * Step), y + Low, left + ((k + 1) * Step), y + High);
            marks.Box(CurvatureInks.Bands[k], box, filled: true);
            marks.Box(PlanInks.Fine, box);
            if (k == scale.Steps.Count)
                continue;
            marks.Text(PlanInks.Lettering, Invariant($"{scale.Steps[k]:0.####}"), new Point2(box.Right, y + High + 1.2), 2, anchor: Anchor.Center);
            marks.Text(PlanInks.Lettering, new Length(1 / scale.Steps[k]).ToFigure(notation), new Point2(box.Right, y - 3.2), 2, anchor: Anchor.Center);
        }

        var hollow = new Box2(left + ((scale.Steps.Count + 1.5) * Step), y + Low, left + ((scale.Steps.Count + 2.5) * Step), y + High);
        CurvatureView.Hatch(marks, [hollow.Corners]);
        var words = Invariant($"hollow that way, by more than {1000 * CurvatureScale.LeastBow:0.0} mm in {1000 * CurvatureScale.BowChord:0} mm");
        marks.Text(PlanInks.Lettering, words, new Point2(hollow.Right + 2, (hollow.Bottom + hollow.Top) / 2), 2, Width - Margin - hollow.Right - 2, Anchor.MiddleLeft);
    }
}
