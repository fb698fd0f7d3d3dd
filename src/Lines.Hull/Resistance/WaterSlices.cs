using System.Numerics;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Resistance;

/// <summary>The immersed skin of one hull as waterlines from the surface down to the keel, taken once and used at every speed.</summary>
/// <remarks>
/// <para><b>Method.</b> Every waterline is cut from the surface itself between its own ends, and carried between its points as a cubic with the
/// waterline's true slopes. Levels crowd toward the surface, where short waves live, and toward the keel, where waterlines end.</para>
/// <para>A transom ends the waterlines as it is cut: the wake behind it is taken as long as the waves need.</para>
/// <para>What a waterline does to a wave depends on the wave's turn along the hull alone, not on the speed: it is tabled at even turns
/// (<see cref="WaterlineWaves"/>) as far as anybody asks, and read between them.</para>
/// </remarks>
internal sealed class WaterSlices
{
    /// <summary>Part of the wave's decay, as a power of e, below which nothing is left to add.</summary>
    private const double Dead = 30;

    private readonly double[] _depths;
    private readonly WaterlineWaves? _waves;

    private WaterSlices(Waterline[] lines)
    {
        _depths = [.. lines.Select(l => l.Depth)];
        _waves = lines.Length == 0 ? null : new WaterlineWaves(lines);
    }

    /// <summary>Cuts the waterlines.</summary>
    /// <param name="side">The starboard skin.</param>
    /// <param name="height">Height of the level water plane in its frame [m]; below the sheer.</param>
    /// <param name="layers">Layers from the surface to the keel, each with a waterline in its middle.</param>
    /// <param name="points">Stretches of each waterline.</param>
    /// <exception cref="DownfloodingException">The plane is above the sheer somewhere.</exception>
    public static WaterSlices Of(BSplineSurface side, double height, int layers, int points)
    {
        ArgumentNullException.ThrowIfNull(side);
        var lowest = Enumerable.Range(0, 257).Min(k => side.PointAt(k / 256.0, 0).Z);
        var depth = height - lowest;
        if (!(depth > 0))
            return new WaterSlices([]);
        double Edge(int k) => depth * (1 - Math.Cos(Math.PI * k / layers)) / 2;
        var lines = new List<Waterline> { Waterline.Cut(side, height, 0, points) };
        for (var k = 1; k <= layers; k++)
        {
            double top = Edge(k - 1), bottom = Edge(k);
            lines.Add(Waterline.Cut(side, height, (top + bottom) / 2, points));
            lines.Add(k == layers ? new Waterline(bottom, [], [], []) : Waterline.Cut(side, height, bottom, points));
        }

        return new WaterSlices([.. lines]);
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
            var (m0, m1, m2) = OscillatingMoments.Of(c);
            shares[k - 2] += left * thick * (m0 - (3 * m1) + (2 * m2));
            shares[k - 1] = left * thick * 4 * (m1 - m2);
            shares[k] = left * thick * ((2 * m2) - m1);
            left *= Math.Exp(c);
            if (fall * _depths[k] > Dead)
                break;
        }

        return _waves.Sum(turn, shares);
    }
}
