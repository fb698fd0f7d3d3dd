using Lines.Kernel.Geometry;

namespace Lines.Construction.Molds;

/// <summary>How far the far face of a square-edged mold stands outside the inside of the planking.</summary>
/// <remarks>
/// <para><b>Frame.</b> Both sections in planes square to x, each from above the sheer to the centerline.</para>
/// <para><b>Method.</b> The far face has the mold's own outline, one stock away. There it is compared with the section of the inset skin in that
/// plane, both sides of the boat: the greatest distance from that section of any place of the outline that lies outside it.</para>
/// <para><b>Accuracy.</b> <see cref="Tolerance"/> at every place compared; between places, a 64th of the edge apart, second order.</para>
/// </remarks>
internal static class FarFace
{
    /// <summary>Greatest distance of the lines and arcs compared with from the exact section [m].</summary>
    public const double Tolerance = 1e-6;

    private const int Places = 64;

    /// <summary>The greatest such distance.</summary>
    /// <param name="mold">The section the mold is cut to.</param>
    /// <param name="from">Parameter of it to compare from [m].</param>
    /// <param name="to">Parameter of it to compare to [m].</param>
    /// <param name="far">The section in the plane of the far face.</param>
    /// <returns>Distance square to the far section, in its plane [m]; 0 where the mold lies inside it all along.</returns>
    public static double Proud(InsetSection mold, double from, double to, InsetSection far)
    {
        var side = MoldShaping.Fitted(far, 0, far.Length, Across, Tolerance);
        var inside = ArcPaths.Joined([side, ArcPaths.Mirrored(side)], closed: true, MoldShaping.Coincident);
        var proud = Enumerable.Range(0, Places + 1)
            .Select(i => Across(mold.At(from + ((to - from) * i / Places))).Point)
            .Max(p => inside.Contains(p) ? 0 : side.DistanceTo(p));
        return proud > Tolerance ? proud : 0;
    }

    private static DirectedPoint Across(SectionPoint p) => new(new Point2(p.Point.Y, p.Point.Z), new Vector2(p.Down.Y, p.Down.Z));
}
