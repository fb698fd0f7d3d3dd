using Lines.Construction.Materials;
using Lines.Kernel.Numerics;

namespace Lines.Construction.Planking;

/// <summary>How far strips may be bent and twisted cold, and where they are bent further.</summary>
/// <remarks>
/// <para><b>Method.</b> Bent flat the outer fibers strain by half the thickness over the radius, bent on edge by half the width; half the strain at which
/// clear wood breaks is allowed. Twisted, a thin strip is sheared by G t θ' along its middle; half the shear strength is allowed. The facet of a flat strip
/// stands over a round of radius R by w² / (8 R); a tenth of the thickness may be planed off (common practice, no source).</para>
/// </remarks>
/// <param name="width">Width of a strip [m].</param>
/// <param name="thickness">Its thickness [m].</param>
/// <param name="wood">Its wood.</param>
/// <param name="stem">A strip whose middle is nearer to the centerplane ends on stem or keel and is fitted there piece by piece [m].</param>
internal sealed class StripLimits(double width, double thickness, Wood wood, double stem)
{
    /// <summary>Of what breaks the wood.</summary>
    private const double Allowed = 0.5;

    /// <summary>Part of the thickness that may be planed off.</summary>
    private const double Planed = 0.1;

    /// <summary>Modulus of rigidity over modulus of elasticity, western redcedar: Wood Handbook (from memory).</summary>
    private const double Rigidity = 0.087;

    /// <summary>Shear strength parallel to the grain over modulus of rupture: 990 over 7500 psi, western redcedar, Wood Handbook (from memory).</summary>
    private const double Shear = 0.132;

    /// <summary>Places down the girth between which the roundest is looked for: a turn of a tenth of the girth has ten of them.</summary>
    private const int RoundPlaces = 100;

    /// <summary>Greatest value of a kind that strips take: curvature [1/m], twist [rad/m] or facet [m].</summary>
    public double Of(StripBendKind kind) => kind switch
    {
        StripBendKind.Facet => Planed * thickness,
        StripBendKind.Twist => Allowed * Shear * wood.BreakingStrain / (Rigidity * thickness),
        StripBendKind.Flat => Allowed * wood.BreakingStrain * 2 / thickness,
        _ => Allowed * wood.BreakingStrain * 2 / width,
    };

    /// <summary>What a strip does at a section.</summary>
    public StripSection Section(StationStrips station)
    {
        var count = (int)Math.Ceiling((station.Girth / width) - 1e-6);
        var round = Math.Max(0, Peak.Over(Roundness, [.. Enumerable.Range(0, RoundPlaces + 1).Select(k => k * station.Girth / RoundPlaces)]).Value);
        return new StripSection(station.Station.X, station.Girth, count, round > 1e-6 ? 1 / round : double.PositiveInfinity, Facet(round));

        double Roundness(double girth)
        {
            var s = station.At(girth);
            return s.Point.Y >= stem ? new StripPlace(s, s.V.Cross(s.U).Unit().Cross(SkinStation.Along(s)).Unit(), default).Curvatures().Across : 0;
        }
    }

    /// <summary>Every place of a strip where it is bent too far, with the number of the section.</summary>
    public IEnumerable<(int Section, StripBend Bend)> Beyond(StripWalk walk, int strip)
    {
        for (var i = 0; i < walk.Centers.Count; i++)
        {
            if (walk.At(i) is not { } place || place.Skin.Point.Y < stem)
                continue;
            var (flat, across, twist, edge) = place.Curvatures();
            foreach (var (kind, value) in ((StripBendKind, double)[])[(StripBendKind.Facet, Facet(across)), (StripBendKind.Twist, Math.Abs(twist)), (StripBendKind.Flat, Math.Abs(flat)), (StripBendKind.Edge, Math.Abs(edge))])
            {
                if (value > Of(kind))
                    yield return (i, new StripBend(kind, value, Of(kind), strip, place.Skin.Point.X, place.Skin.Point.Z, place.Skin.Point.X, place.Skin.Point.X, Remedy(kind, value)));
            }
        }
    }

    private double Facet(double across) => across > 0 ? across * width * width / 8 : 0;

    // The width, or for twist and flat bends the thickness, that would do.
    private double Remedy(StripBendKind kind, double value) => kind switch
    {
        StripBendKind.Facet => width * Math.Sqrt(Of(kind) / value),
        StripBendKind.Edge => width * Of(kind) / value,
        _ => thickness * Of(kind) / value,
    };
}

/// <summary>How a strip is bent.</summary>
public enum StripBendKind
{
    /// <summary>The section is so round across it that more than a tenth of the thickness is planed off.</summary>
    Facet,

    /// <summary>It is twisted.</summary>
    Twist,

    /// <summary>It is bent flat along the hull.</summary>
    Flat,

    /// <summary>It is bent on edge.</summary>
    Edge,
}

/// <summary>Where strips are bent further than they take without steam, kerfs or narrower strips.</summary>
/// <param name="Kind">How.</param>
/// <param name="Value">The greatest there is: facet [m], twist [rad/m], curvature [1/m].</param>
/// <param name="Limit">What strips take, the same unit.</param>
/// <param name="Strip">The strip of the greatest, from the sheer.</param>
/// <param name="X">Where it is [m].</param>
/// <param name="Height">Its height above the base line [m].</param>
/// <param name="Fore">Foremost place beyond the limit [m].</param>
/// <param name="Aft">Aftmost place [m].</param>
/// <param name="Remedy">Width of strips (facet, edge) or thickness (twist, flat) that would do [m].</param>
public sealed record StripBend(StripBendKind Kind, double Value, double Limit, int Strip, double X, double Height, double Fore, double Aft, double Remedy)
{
    /// <summary>Both together: the worse of the two over the stretch of both.</summary>
    public StripBend With(StripBend other)
    {
        ArgumentNullException.ThrowIfNull(other);
        var worse = other.Value > Value ? other : this;
        return worse with { Fore = Math.Min(Fore, other.Fore), Aft = Math.Max(Aft, other.Aft) };
    }
}
