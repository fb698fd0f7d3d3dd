using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Hull.Form;

/// <summary>The inside of the planking: the skin moved in by one thickness, square to itself in space.</summary>
/// <remarks>
/// <para><b>Frame.</b> Hull frame; u and v are those of the outside, so a pair of parameters names a plank's outside and inside together.</para>
/// <para><b>Method.</b> O = S - t n with n the unit normal V × U; its derivatives follow from those of the normal, n_u = (N_u - (n·N_u) n) / |N|.</para>
/// <para><b>Accuracy.</b> Rounding only.</para>
/// </remarks>
public sealed class InsetSkin
{
    private readonly Func<double, double, SurfaceJet> _outside;

    /// <summary>Makes the inside of a skin.</summary>
    /// <param name="outside">The outside with its derivatives at (u, v); V × U points out of the boat.</param>
    /// <param name="thickness">Thickness of the planking [m], not negative.</param>
    /// <exception cref="ArgumentOutOfRangeException">The thickness is negative or not a number.</exception>
    public InsetSkin(Func<double, double, SurfaceJet> outside, double thickness)
    {
        ArgumentNullException.ThrowIfNull(outside);
        if (!(thickness >= 0 && double.IsFinite(thickness)))
            throw new ArgumentOutOfRangeException(nameof(thickness), thickness, "the planking needs a thickness of 0 or more");
        _outside = outside;
        Thickness = thickness;
    }

    /// <summary>The inside of a hull's planking.</summary>
    public static InsetSkin Of(HullSurface hull, double thickness)
    {
        ArgumentNullException.ThrowIfNull(hull);
        return new InsetSkin(hull.Side.JetAt, thickness);
    }

    /// <summary>Thickness of the planking [m].</summary>
    public double Thickness { get; }

    /// <summary>The inside at a pair of parameters.</summary>
    /// <returns>The point; where the skin has no normal its coordinates are not numbers.</returns>
    public InsetPoint At(double u, double v)
    {
        var s = _outside(u, v);
        Vector3 normal = s.V.Cross(s.U);
        var scale = 1 / normal.Length;
        Vector3 n = scale * normal;
        Vector3 nu = scale * (s.UV.Cross(s.U) + s.V.Cross(s.UU)), nv = scale * (s.VV.Cross(s.U) + s.V.Cross(s.UV));
        nu -= n.Dot(nu) * n;
        nv -= n.Dot(nv) * n;
        return new InsetPoint(u, v, s.Point - (Thickness * n), n, s.U - (Thickness * nu), s.V - (Thickness * nv), s);
    }
}

/// <summary>A point of the inside of the planking.</summary>
/// <param name="U">Parameter along the boat.</param>
/// <param name="V">Parameter up the side.</param>
/// <param name="Point">The point [m].</param>
/// <param name="Normal">Unit normal out of the boat, that of the outside too.</param>
/// <param name="DU">Derivative by u.</param>
/// <param name="DV">Derivative by v.</param>
/// <param name="Outside">The outside at the same parameters.</param>
public readonly record struct InsetPoint(double U, double V, Point3 Point, Vector3 Normal, Vector3 DU, Vector3 DV, SurfaceJet Outside)
{
    /// <summary>Whether the inside runs the same way as the outside here: the skin turns less tightly than the planking is thick.</summary>
    public bool IsSound => DV.Cross(DU).Dot(Normal) > 0;
}
