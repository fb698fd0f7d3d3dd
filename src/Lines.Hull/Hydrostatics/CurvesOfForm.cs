using Lines.Hull.Form;
using Lines.Hull.Sections;

namespace Lines.Hull.Hydrostatics;

/// <summary>What a hull displaces at a row of drafts, upright and level, and the areas of its sections at each.</summary>
/// <param name="Drafts">The drafts, lowest first.</param>
/// <param name="Design">Which of them is the design draft; the first is 0.</param>
public sealed record CurvesOfForm(IReadOnlyList<AtDraft> Drafts, int Design)
{
    /// <summary>Parts into which the design draft, and the least freeboard above it, are divided.</summary>
    public const int Parts = 5;

    /// <summary>The curves of a hull.</summary>
    /// <remarks>
    /// <para><b>Method.</b> Level water planes at the fifths of the design draft and at the fifths of the way from there to the least
    /// height of the sheer; where the design waterline lies as high as that, the fifths of the draft alone.</para>
    /// <para><b>Accuracy.</b> That of <see cref="UprightHydrostatics"/> and <see cref="SectionAreas"/> at the tolerance.</para>
    /// </remarks>
    /// <param name="hull">The hull.</param>
    /// <param name="stations">Where sections are taken, bow first.</param>
    /// <param name="design">What the hull displaces at its design draft.</param>
    /// <param name="tolerance">Relative error of every integral, above 0.</param>
    public static CurvesOfForm Of(HullSurface hull, IReadOnlyList<StationMark> stations, Buoyancy design, double tolerance)
    {
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(stations);
        ArgumentNullException.ThrowIfNull(design);
        double draft = hull.Draft, freeboard = hull.LeastSheer - draft;
        IEnumerable<double> below = Enumerable.Range(1, Parts - 1).Select(k => draft * k / Parts);
        IEnumerable<double> above = freeboard > 0 ? Enumerable.Range(1, Parts).Select(k => k == Parts ? hull.LeastSheer : draft + (freeboard * k / Parts)) : [];
        return new CurvesOfForm([.. below.Append(draft).Concat(above).Select(At)], Parts - 1);

        AtDraft At(double height)
        {
            var areas = new SectionAreas(hull, height, tolerance);
            var afloat = height == draft ? design : UprightHydrostatics.Below(hull, height, tolerance);
            return new AtDraft(afloat, [.. stations.Select(s => new StationArea(s, areas.At(s.X).Area))], TransomOf(afloat, areas));
        }

        ImmersedTransom? TransomOf(Buoyancy afloat, SectionAreas areas)
        {
            if (!(afloat.TransomArea > 0))
                return null;
            double foot = hull.Side.PointAt(1, 0).X, top = afloat.Waterplane!.Aft;
            return new ImmersedTransom(areas.At(Math.Min(foot, top)), Math.Max(foot, top));
        }
    }
}

/// <summary>One draft of the curves of form.</summary>
/// <param name="Afloat">What the hull displaces there.</param>
/// <param name="Sections">The immersed areas of the sections, bow first.</param>
/// <param name="Transom">Where an immersed transom cuts the sections off; null where none is immersed.</param>
public sealed record AtDraft(Buoyancy Afloat, IReadOnlyList<StationArea> Sections, ImmersedTransom? Transom);

/// <summary>The end of the sectional areas at an immersed transom: from its foremost immersed point they fall to 0 at its aftmost.</summary>
/// <param name="Begins">The section at the foremost immersed point of the transom.</param>
/// <param name="Ends">x of its aftmost immersed point [m].</param>
public sealed record ImmersedTransom(SectionArea Begins, double Ends);

/// <summary>The immersed area of the section at a station.</summary>
/// <param name="Station">The station.</param>
/// <param name="Area">Area below the water plane, both sides [m²].</param>
public readonly record struct StationArea(StationMark Station, double Area);
