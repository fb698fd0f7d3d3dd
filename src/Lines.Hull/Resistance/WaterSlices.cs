using System.Numerics;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Resistance;

/// <summary>The immersed skin of one hull as waterlines from the surface down to the keel, taken once and used at every speed.</summary>
/// <remarks>
/// <para><b>Method.</b> Every waterline is cut from the surface itself between its own ends, and carried between its points as a cubic with the
/// waterline's true slopes. Levels crowd toward the surface, where short waves live, and toward the keel, where waterlines end. The feet of stem and stern
/// are levels of their own, and levels crowd there too: below a foot waterlines end on the keel, and what they do to a wave turns a corner.</para>
/// <para>A transom ends the waterlines as it is cut: the wake behind it is taken as long as the waves need.</para>
/// <para>What a waterline does to a wave depends on the wave's turn along the hull alone, not on the speed: it is tabled at even turns
/// (<see cref="WaterlineWaves"/>) as far as anybody asks, and read between them.</para>
/// </remarks>
internal sealed class WaterSlices
{
    /// <summary>Power of e by which a wave has died away when nothing is left to add: 1e-7 of it.</summary>
    private const double Dead = 16;

    /// <summary>Layers from the surface to the keel, each with a waterline in its middle, and stretches of a waterline.</summary>
    private const int Layers = 24, Points = 48;

    /// <summary>The same where a transom cuts the waterlines off: those just below its foot end steeply.</summary>
    private const int CutOffLayers = 40, CutOffPoints = 96;

    /// <summary>A waterline that ends narrower than this ends in a point [m].</summary>
    private const double PointedEnd = 1e-6;

    /// <summary>Part of the depth by which feet differ if each is to have a level.</summary>
    private const double Thinnest = 1e-3;

    private readonly double[] _depths;
    private readonly WaterlineWaves? _waves;

    private WaterSlices(Waterline[] lines)
    {
        _depths = [.. lines.Select(l => l.Depth)];
        _waves = lines.Length == 0 ? null : new WaterlineWaves(lines, Dead);
    }

    /// <summary>Cuts the waterlines.</summary>
    /// <param name="side">The starboard skin.</param>
    /// <param name="height">Height of the level water plane in its frame [m]; below the sheer.</param>
    /// <exception cref="DownfloodingException">The plane is above the sheer somewhere.</exception>
    public static WaterSlices Of(BSplineSurface side, double height)
    {
        ArgumentNullException.ThrowIfNull(side);
        var lowest = Enumerable.Range(0, 257).Min(k => side.PointAt(k / 256.0, 0).Z);
        var depth = height - lowest;
        if (!(depth > 0))
            return new WaterSlices([]);
        var surface = Waterline.Cut(side, height, 0, Points);
        var isCutOff = surface.X.Length > 0 && Math.Max(surface.Y[0], surface.Y[^1]) > PointedEnd;
        var (layers, points) = isCutOff ? (CutOffLayers, CutOffPoints) : (Layers, Points);
        var edges = Edges(depth, [height - side.PointAt(0, 0).Z, height - side.PointAt(1, 0).Z], layers);
        var lines = new List<Waterline> { isCutOff ? Waterline.Cut(side, height, 0, points) : surface };
        for (var k = 1; k < edges.Count; k++)
        {
            lines.Add(Waterline.Cut(side, height, (edges[k - 1] + edges[k]) / 2, points));
            lines.Add(k == edges.Count - 1 ? new Waterline(depth, [], [], []) : Waterline.Cut(side, height, edges[k], points));
        }

        return new WaterSlices([.. lines]);
    }

    /// <summary>Depths of the edges of the layers, by a cosine between the surface, the feet and the keel.</summary>
    private static List<double> Edges(double depth, double[] feet, int layers)
    {
        List<double> ends = [0];
        foreach (var end in feet.Order().Append(depth))
        {
            if (end == depth || (end > ends[^1] + (Thinnest * depth) && end < depth * (1 - Thinnest)))
                ends.Add(end);
        }

        var sum = ends.Zip(ends.Skip(1), (top, bottom) => Math.Sqrt(bottom - top)).Sum();
        List<double> edges = [0];
        for (var k = 1; k < ends.Count; k++)
        {
            double top = ends[k - 1], thick = ends[k] - top;
            var count = Math.Max(1, (int)Math.Round(layers * Math.Sqrt(thick) / sum));
            edges.AddRange(Enumerable.Range(1, count).Select(j => top + (thick * (1 - Math.Cos(Math.PI * j / count)) / 2)));
        }

        return edges;
    }

    /// <summary>∬ (∂y/∂x) e^(fall z) e^(i turn x) dx dz over the immersed half skin, z ≤ 0 from the water plane, x in the hull frame.</summary>
    /// <param name="turn">Wave number along the hull [1/m].</param>
    /// <param name="fall">Decay with depth [1/m].</param>
    public Complex Amplitude(double turn, double fall)
    {
        if (_waves is null)
            return 0;
        Span<double> shares = stackalloc double[_waves.Padded];
        shares.Clear();
        var left = 1.0;
        for (var k = 2; k < _depths.Length; k += 2)
        {
            double thick = _depths[k] - _depths[k - 2], c = -fall * thick;
            var (m0, m1, m2, end) = OscillatingMoments.Of(c);
            shares[k - 2] += left * thick * (m0 - (3 * m1) + (2 * m2));
            shares[k - 1] = left * thick * 4 * (m1 - m2);
            shares[k] = left * thick * ((2 * m2) - m1);
            left *= end;
            if (fall * _depths[k] > Dead)
                break;
        }

        return _waves.Sum(turn, shares);
    }
}
