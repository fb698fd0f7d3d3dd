using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Hull.Fairness;

/// <summary>The two principal curvatures of a skin at one point, and the direction of the greater.</summary>
/// <remarks>
/// <para><b>Sign.</b> Positive where the skin bulges out of the boat, toward its outward normal V × U; negative where it is hollow
/// that way. Both negative is a dent, one negative a saddle.</para>
/// <para><b>Method.</b> First and second fundamental form, the second taken to the inward normal, brought to two directions square
/// to each other; then the principal values of that symmetric 2 × 2 form [doCarmo].</para>
/// <para><b>Accuracy.</b> Rounding only, relative to the larger of the two in size.</para>
/// </remarks>
/// <param name="Greater">The algebraically greater curvature [1/m]; not a number where the skin has no tangent plane.</param>
/// <param name="Lesser">The algebraically lesser curvature [1/m], square to the other.</param>
/// <param name="Along">Unit tangent along which the skin has the greater curvature; any tangent where both are equal.</param>
public readonly record struct PrincipalCurvatures(double Greater, double Lesser, Vector3 Along)
{
    /// <summary>Product of the two [1/m²]: above 0 where the skin is like an egg, below where it is like a saddle, 0 where it unrolls flat.</summary>
    public double Gaussian => Greater * Lesser;

    /// <summary>Mean of the two [1/m].</summary>
    public double Mean => (Greater + Lesser) / 2;

    /// <summary>The principal curvatures at a point of a surface.</summary>
    /// <param name="skin">The point with its first and second derivatives.</param>
    public static PrincipalCurvatures Of(SurfaceJet skin)
    {
        Vector3 u = skin.U, v = skin.V;
        var outward = v.Cross(u);
        var size = outward.Length;
        var inward = (-1 / size) * outward;
        double l = skin.UU.Dot(inward), m = skin.UV.Dot(inward), n = skin.VV.Dot(inward);

        // u = p e, v = q e + r f with e, f of length one and square to each other.
        double p = u.Length, q = u.Dot(v) / p, r = size / p, shear = q / p;
        double ee = l / (p * p), ef = (m - (shear * l)) / (p * r), ff = (n - (2 * shear * m) + (shear * shear * l)) / (r * r);
        double mean = (ee + ff) / 2, half = (ee - ff) / 2, spread = Math.Sqrt((half * half) + (ef * ef));
        var (sin, cos) = Math.SinCos(Math.Atan2(ef, half) / 2);
        Vector3 e = (1 / p) * u, f = (1 / r) * (v - (q * e));
        return new PrincipalCurvatures(mean + spread, mean - spread, (cos * e) + (sin * f));
    }

    /// <summary>Curvature of the section by a plane square to the skin.</summary>
    /// <remarks><b>Method.</b> Euler: κ = κ₁ cos² θ + κ₂ sin² θ.</remarks>
    /// <param name="angle">Angle θ of that plane from <see cref="Along"/> [rad].</param>
    /// <returns>Curvature [1/m], of the same sign rule.</returns>
    public double NormalSectionAt(double angle)
    {
        var (sin, cos) = Math.SinCos(angle);
        return (Greater * cos * cos) + (Lesser * sin * sin);
    }
}
