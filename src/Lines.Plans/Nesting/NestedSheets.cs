using Lines.Construction.Nesting;
using Lines.Drawing.Model;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Molds;
using Lines.Plans.Paper;

namespace Lines.Plans.Nesting;

/// <summary>The sheets of a cutting plan at full size, for a router.</summary>
/// <remarks>
/// <para><b>Frame.</b> Millimeters at 1:1, the sheet's lower left corner at the origin, its length to the right. Parts are seen from their labeled face.</para>
/// <para>What is marked outside the outline of a part, the edge of an inner stem, stays in the mold's own file: a neighbor lies there.</para>
/// </remarks>
public static class NestedSheets
{
    private const double Cell = 20;
    private const double AlongStep = 5;

    /// <summary>Name of a sheet's file without its ending: sheet-01.</summary>
    public static string FileName(CutSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return Invariant($"sheet-{sheet.Number:D2}");
    }

    /// <summary>A sheet for the router: its edges on the layer "stock", its parts, and a <see cref="TestSquare"/> where waste has room for one.</summary>
    /// <param name="title">Title of the design.</param>
    /// <param name="plan">The cutting plan.</param>
    /// <param name="sheet">One of its sheets.</param>
    /// <param name="notation">How lengths are written.</param>
    public static Sheet ForRouter(string title, CuttingPlan plan, CutSheet sheet, LengthNotation notation)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(sheet);
        var edges = new Box2(0, 0, 1000 * plan.Stock.Length, 1000 * plan.Stock.Width);
        var marks = new List<Mark> { new PathMark(MoldInks.Stock, edges.Outline) };
        foreach (var part in sheet.Parts)
            marks.AddRange(MarksOf(title, part, notation));
        if (SquarePlace(sheet, edges.Grown(-1000 * plan.Stock.Margin)) is { } corner)
            marks.AddRange(MoldSheets.ScaleSquare(corner));
        return new Sheet(Invariant($"{title}: sheet {sheet.Number} of {plan.Sheets.Count}"), edges.Width, edges.Height, marks);
    }

    /// <summary>The marks of a part where it lies [mm].</summary>
    internal static IEnumerable<Mark> MarksOf(string title, CutPart part, LengthNotation notation) =>
        MoldDrawing.Of(title, part.Mold, notation).Where(m => m.Layer != MoldInks.InnerStem)
            .Select(m => MovedMarks.Turned(m, part.Place.Quarters, 1000 * part.Place.Shift));

    // The lower right free place, from the end that is waste; null where there is none.
    private static Point2? SquarePlace(CutSheet sheet, Box2 room)
    {
        int columns = (int)(room.Width / Cell), rows = (int)(room.Height / Cell), side = (int)Math.Ceiling(TestSquare.Side / Cell);
        var outlines = sheet.Parts.Select(p => MoldDrawing.Millimeters(p.Outline)).ToList();
        var near = new bool[columns + 1, rows + 1];
        foreach (var p in outlines.SelectMany(o => o.Segments()).SelectMany(s => MoldSheets.PointsAlong(s, AlongStep)))
        {
            int i = (int)((p.X - room.Left) / Cell), k = (int)((p.Y - room.Bottom) / Cell);
            for (var a = Math.Max(0, i - 1); a <= Math.Min(columns, i + 1); a++)
            {
                for (var b = Math.Max(0, k - 1); b <= Math.Min(rows, k + 1); b++)
                    near[a, b] = true;
            }
        }

        for (var i = columns - side; i >= 0; i--)
        {
            for (var k = 0; k <= rows - side; k++)
            {
                var corner = new Point2(room.Left + (i * Cell), room.Bottom + (k * Cell));
                var center = corner + new Vector2(TestSquare.Side / 2, TestSquare.Side / 2);
                if (IsClear(i, k) && !outlines.Exists(o => o.Contains(center)))
                    return corner;
            }
        }

        return null;

        bool IsClear(int i, int k)
        {
            for (var a = i; a < i + side; a++)
            {
                for (var b = k; b < k + side; b++)
                {
                    if (near[a, b])
                        return false;
                }
            }

            return true;
        }
    }
}
