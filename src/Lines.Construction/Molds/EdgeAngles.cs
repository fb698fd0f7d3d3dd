namespace Lines.Construction.Molds;

/// <summary>The planking's angle over the edge of a station mold, and what shrinking the flat section would get wrong there.</summary>
/// <remarks>
/// <para><b>Sign.</b> A bevel is the planking's angle to the edge of square-cut stock, sin β = |nₓ|, n the skin's unit normal; molds cut to their labeled face
/// need none planed.</para>
/// <para><b>Method.</b> Planking is measured square to the skin, so in the mold's plane it takes t / √(1 − nₓ²); the flat outline shrunk by t alone
/// stands proud by the difference.</para>
/// <para><b>Accuracy.</b> Bevels to rounding. The difference is exact for a flat skin and second order in t over the radius elsewhere:
/// within 0.05 mm on the templates.</para>
/// </remarks>
/// <param name="Sheer">At the sheer [rad].</param>
/// <param name="Bilge">Where the section runs at 45 degrees, or nearest to it [rad].</param>
/// <param name="Keel">At the lower end of the edge [rad].</param>
/// <param name="FlatError">Greatest distance by which an outline shrunk flat would stand proud [m].</param>
/// <param name="FlatErrorHeight">Height above the base line of the place of that [m].</param>
public sealed record EdgeAngles(double Sheer, double Bilge, double Keel, double FlatError, double FlatErrorHeight)
{
    private const int Places = 128;

    /// <summary>The angles along a section.</summary>
    /// <param name="section">The section.</param>
    /// <param name="to">Parameter of the edge's lower end.</param>
    /// <param name="thickness">Planking [m].</param>
    internal static EdgeAngles Of(CrossSection section, double to, double thickness)
    {
        var points = Enumerable.Range(0, Places + 1).Select(k => section.SpaceAt(section.SheerMark + ((to - section.SheerMark) * k / Places))).ToList();
        var bilge = points.MinBy(p => Math.Abs(Math.Abs(p.Normal.Y) - Math.Abs(p.Normal.Z)));
        var worst = points.MaxBy(p => Math.Abs(p.Normal.X));
        return new EdgeAngles(Bevel(points[0]), Bevel(bilge), Bevel(points[^1]), thickness * ((1 / Math.Cos(Bevel(worst))) - 1), worst.Point.Z);
    }

    private static double Bevel(SectionPoint p) => Math.Asin(Math.Min(1, Math.Abs(p.Normal.X)));
}
