using Lines.Kernel.Geometry;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Form;

/// <summary>A crowned deck laid on the sheer: the second patch of a closed hull.</summary>
/// <remarks>
/// <para><b>Frame.</b> Hull frame, starboard half. u is that of the skin, from bow to stern; v runs from the sheer (0) to the centerplane (1), so
/// that the outward normal is V × U as the skin's.</para>
/// <para><b>Method.</b> Athwartships a parabola that is level at the centerplane: y = y_s (1 − v), z = z_s + crown · y_s / b · (1 − (1 − v)²),
/// where (x_s, y_s, z_s) is the sheer and b its greatest half-breadth. These are linear in the sheer, so the patch is an exact spline in
/// the skin's own basis and shares its edge with it. Its last column leans with a raked transom, so that its end lies in that plane: over the
/// last span, and beyond the sheer's end by tan(rake) times the crown there.</para>
/// <para><b>Accuracy.</b> Exact: the parabola is the deck's own form, not an approximation to one.</para>
/// </remarks>
internal static class DeckSurface
{
    /// <summary>Places at which the greatest breadth of a sheer is bracketed.</summary>
    private const int Places = 33;

    /// <summary>The deck over a skin.</summary>
    /// <param name="side">The starboard skin, whose edge v = 1 is the sheer.</param>
    /// <param name="crown">Height of the deck at the centerplane above the sheer where that is broadest [m], 0 or more.</param>
    /// <param name="rake">Angle of the transom from plumb [rad], positive where its top is aft; 0 for a pointed stern.</param>
    public static BSplineSurface Over(BSplineSurface side, double crown, double rake)
    {
        var top = side.V.Count - 1;
        var slope = crown / GreatestHalfBreadth(side);
        var lean = Math.Tan(rake);
        var poles = new Point3[side.U.Count, 3];
        for (var i = 0; i < side.U.Count; i++)
        {
            var sheer = side.PoleAt(i, top);
            var rise = slope * sheer.Y;
            var aft = i == side.U.Count - 1 ? lean * rise : 0;

            // In Bézier's form 1 − v has the coefficients 1, 1/2, 0 and 1 − (1 − v)² the coefficients 0, 1, 1.
            poles[i, 0] = sheer;
            poles[i, 1] = new Point3(sheer.X + aft, sheer.Y / 2, sheer.Z + rise);
            poles[i, 2] = new Point3(sheer.X + aft, 0, sheer.Z + rise);
        }

        return new BSplineSurface(side.U, SplineBasis.Clamped(2, [0, 1]), poles);
    }

    /// <summary>Greatest half-breadth of the sheer [m].</summary>
    private static double GreatestHalfBreadth(BSplineSurface side)
    {
        double start = side.U.Start, width = side.U.End - start;
        return Peak.Over(u => side.PointAt(u, side.V.End).Y, [.. Enumerable.Range(0, Places).Select(k => start + (width * k / (Places - 1)))]).Value;
    }
}
