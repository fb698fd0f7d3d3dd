namespace Lines.Hull.Resistance;

/// <summary>By how much the viscous resistance of a slender hull exceeds that of a plank.</summary>
/// <remarks>
/// <para><b>Method.</b> 1 + k = 2.76 (L/∇^⅓)^-0.4, fitted to round-bilge hulls; not below 1.</para>
/// <para><b>Range.</b> L/∇^⅓ from 6 to 9.5 was measured (form factors 1.35 to 1.13, fitted within 3 %); beyond it the fit is carried on.</para>
/// <para><b>Source.</b> Molland, Turnock and Hudson, <i>Ship Resistance and Propulsion</i>, 2011, chapter 4 (from a secondary copy).</para>
/// </remarks>
public static class SlenderForm
{
    /// <summary>The slendernesses that were measured.</summary>
    public const double LeastMeasured = 6, GreatestMeasured = 9.5;

    /// <summary>The form factor 1 + k.</summary>
    /// <param name="slenderness">Waterline length over the cube root of the displaced volume, above 0.</param>
    public static double Factor(double slenderness)
    {
        if (!(slenderness > 0))
            throw new ArgumentOutOfRangeException(nameof(slenderness), slenderness, "must be above 0");
        return Math.Max(1, 2.76 * Math.Pow(slenderness, -0.4));
    }
}
