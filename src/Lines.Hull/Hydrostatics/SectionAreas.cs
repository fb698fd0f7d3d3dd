using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Hydrostatics;

/// <summary>Immersed areas of the sections of a hull below a level water plane: the sectional area curve.</summary>
/// <remarks>
/// <para><b>Method.</b> On the surface a section is u(v), found for each v from x(u, v) = x; its half area is the integral of
/// y dz up it. It begins on the keel, on the stem or sternpost, or level across a transom, and ends at the water; on a closed hull
/// it goes on from the sheer up the deck.</para>
/// <para><b>Accuracy.</b> Relative error below the tolerance; of a section smaller than a thousandth of the rectangle of the
/// hull's half-breadth and draft, relative to that.</para>
/// </remarks>
public sealed class SectionAreas
{
    /// <summary>Stations tried before the greatest section is narrowed down.</summary>
    private const int Trials = 8;

    private readonly IReadOnlyList<BSplineSurface> _patches;
    private readonly double _height;
    private readonly double _tolerance;
    private readonly double[] _least;

    /// <summary>Takes the hull and the water plane.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="height">Height of the water plane [m].</param>
    /// <param name="tolerance">Relative error of an area, above 0.</param>
    public SectionAreas(HullSurface hull, double height, double tolerance)
    {
        ArgumentNullException.ThrowIfNull(hull);
        _patches = hull.Patches;
        _height = height;
        _tolerance = tolerance;
        Point3[] poles = [.. _patches.SelectMany(p => Enumerable.Range(0, p.U.Count).SelectMany(i => Enumerable.Range(0, p.V.Count).Select(j => p.PoleAt(i, j))))];
        Extent = (poles.Min(p => p.X), poles.Max(p => p.X));
        _least = [poles.Max(p => Math.Abs(p.Y)) * Math.Max(0, height - poles.Min(p => p.Z)) / 1000];
    }

    /// <summary>Places no point of the hull is beyond [m].</summary>
    internal (double Fore, double Aft) Extent { get; }

    /// <summary>The immersed area of the section at x, both sides.</summary>
    /// <param name="x">Place of the section [m]; off the hull the area is 0.</param>
    public SectionArea At(double x) => new(x, 2 * _patches.Sum(p => new PatchSection(p, x, _height).HalfArea(_least, _tolerance)));

    /// <summary>The areas at a row of stations.</summary>
    /// <param name="stations">Places [m].</param>
    public IReadOnlyList<SectionArea> Curve(IEnumerable<double> stations) => [.. stations.Select(At)];

    /// <summary>The section of greatest immersed area between two places [m].</summary>
    public SectionArea Greatest(double fore, double aft)
    {
        var peak = Peak.Over(x => At(x).Area, [.. Enumerable.Range(0, Trials + 1).Select(i => fore + ((aft - fore) * i / Trials))]);
        return new SectionArea(peak.At, peak.Value);
    }
}
