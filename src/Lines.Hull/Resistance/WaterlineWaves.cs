using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Lines.Kernel.Numerics;

namespace Lines.Hull.Resistance;

/// <summary>What the waterlines of a hull do to waves of any turn along it: ∫ (dy/dx) e^(i turn x) dx of each.</summary>
/// <remarks>
/// <para><b>Method.</b> dy/dx is a quadratic on every stretch of a waterline: by parts, its integral is a sum over the ends of the stretches of e^(i turn x)
/// times what dy/dx and its derivatives jump by there, over powers of the turn. From one even turn to the next each e^(i turn x) is turned by the
/// same angle, a product. The first turns, which the powers would spoil, are integrated stretch by stretch. Between even turns polynomials through eight are
/// read. Turns are added as they are asked for, by one at a time.</para>
/// <para>A wave dies away with depth no slower than it turns along the hull: waterlines at which nothing is left of any wave of a turn are not in its row.</para>
/// <para><b>Accuracy.</b> About the middle of the hull nothing turns faster than half its length; at 0.35 rad a step, eight points read a sine within
/// 3e-7 of its height.</para>
/// </remarks>
internal sealed class WaterlineWaves
{
    /// <summary>Angle by which the farthest end turns from one even turn to the next [rad].</summary>
    private const double StepAngle = 0.35;

    /// <summary>Turns that are integrated stretch by stretch.</summary>
    private const int First = 8;

    /// <summary>Points that a polynomial is read through, and how many of them lie before the place.</summary>
    private const int Read = 8;

    private const int Before = 3;

    // One over the product of the distances of a row to all others.
    private static readonly double[] s_overNodes = [.. Enumerable.Range(0, Read).Select(j => 1 / Enumerable.Range(0, Read).Where(k => k != j).Aggregate(1.0, (product, k) => product * (j - k)))];

    private readonly Waterline[] _lines;
    private readonly double _dead;
    private readonly double _origin;
    private readonly double _step;
    private readonly double[] _cosine;
    private readonly double[] _sine;
    private readonly double[] _stepCosine;
    private readonly double[] _stepSine;
    private readonly double[] _bend;
    private readonly double[] _turnOfBend;
    private readonly (int From, int To)[] _ranges;

    // Waterlines that rows still to come need, the highest ones.
    private int _needed;

    // A turn's row: the real parts of all waterlines, then the imaginary ones. The first three are those of the turns below zero.
    private readonly List<double[]> _rows = [];
    private readonly Lock _growing = new();

    /// <summary>Takes the waterlines.</summary>
    /// <param name="lines">The waterlines from the surface down, the first of them with points.</param>
    /// <param name="dead">Turn times depth from which a waterline need not be in a row [1].</param>
    public WaterlineWaves(Waterline[] lines, double dead)
    {
        (_lines, _dead, _needed) = (lines, dead, lines.Length);
        Padded = (lines.Length + 3) / 4 * 4;
        double[] ends = [.. lines.Where(l => l.X.Length > 0).SelectMany(l => (double[])[l.X[0], l.X[^1]])];
        _origin = (ends.Min() + ends.Max()) / 2;
        _step = StepAngle / ((ends.Max() - ends.Min()) / 2);
        _ranges = new (int, int)[lines.Length];
        var room = 0;
        for (var l = 0; l < lines.Length; l++)
        {
            _ranges[l] = (room, room + ((lines[l].X.Length + 3) / 4 * 4));
            room = _ranges[l].To;
        }

        (_cosine, _sine, _stepCosine, _stepSine, _bend, _turnOfBend) = (new double[room], new double[room], new double[room], new double[room], new double[room], new double[room]);
        for (var l = 0; l < lines.Length; l++)
            Jumps(lines[l], _ranges[l].From);
    }

    /// <summary>Room for a number of each waterline, a multiple of four.</summary>
    public int Padded { get; }

    /// <summary>Σ share × ∫ (dy/dx) e^(i turn x) dx over all waterlines.</summary>
    /// <param name="turn">Wave number along the hull [1/m], not negative.</param>
    /// <param name="shares">A factor of each waterline, zeros beyond them.</param>
    public Complex Sum(double turn, ReadOnlySpan<double> shares)
    {
        var place = turn / _step;
        var before = (int)Math.Floor(place);
        Span<double> parts = stackalloc double[Read];
        Lagrange(place - before, parts);
        double real = 0, imaginary = 0;
        lock (_growing)
        {
            while (_rows.Count < before + Read)
                AddRow();
            for (var j = 0; j < Read; j++)
            {
                var row = _rows[before + j];
                real += parts[j] * InnerProduct.Of(row.AsSpan(0, Padded), shares);
                imaginary += parts[j] * InnerProduct.Of(row.AsSpan(Padded, Padded), shares);
            }
        }

        return new Complex(real, imaginary) * Complex.FromPolarCoordinates(1, turn * _origin);
    }

    private void AddRow()
    {
        if (_rows.Count == 0)
        {
            double[][] first = [.. Enumerable.Range(0, First).Select(n => RowByStretches(n * _step))];
            _rows.AddRange(first.Skip(1).Take(Before).Reverse().Select(Turned));
            _rows.AddRange(first);
            Begin((First - 1) * _step);
        }

        // A row is read for turns up to half the eight before it; the first waterline beyond still ends a layer.
        var turn = (_rows.Count - Before) * _step;
        while (_needed > 2 && _lines[_needed - 2].Depth * (turn - (Read / 2 * _step)) > _dead)
            _needed--;
        Turn();
        _rows.Add(RowByJumps(turn));
    }

    /// <summary>The row of the opposite turn.</summary>
    private double[] Turned(double[] row)
    {
        double[] turned = [.. row];
        for (var l = Padded; l < turned.Length; l++)
            turned[l] = -turned[l];
        return turned;
    }

    private double[] RowByStretches(double turn)
    {
        var row = new double[2 * Padded];
        for (var l = 0; l < _lines.Length; l++)
        {
            var value = _lines[l].Along(turn, _origin);
            (row[l], row[Padded + l]) = (value.Real, value.Imaginary);
        }

        return row;
    }

    /// <summary>-i S₀/κ + S₁/κ² + i S₂/κ³, the sums S over the jumps of dy/dx, its slope and that one's slope.</summary>
    private double[] RowByJumps(double turn)
    {
        ReadOnlySpan<Vector256<double>> cosine = MemoryMarshal.Cast<double, Vector256<double>>(_cosine.AsSpan()), sine = MemoryMarshal.Cast<double, Vector256<double>>(_sine.AsSpan());
        ReadOnlySpan<Vector256<double>> bend = MemoryMarshal.Cast<double, Vector256<double>>(_bend.AsSpan()), turnOfBend = MemoryMarshal.Cast<double, Vector256<double>>(_turnOfBend.AsSpan());
        var row = new double[2 * Padded];
        for (var l = 0; l < _needed; l++)
        {
            var (line, (from, to)) = (_lines[l], _ranges[l]);
            if (from == to)
                continue;
            Vector256<double> c1 = default, s1 = default, c2 = default, s2 = default;
            for (var k = from / 4; k < to / 4; k++)
            {
                c1 += bend[k] * cosine[k];
                s1 += bend[k] * sine[k];
                c2 += turnOfBend[k] * cosine[k];
                s2 += turnOfBend[k] * sine[k];
            }

            var last = from + line.X.Length - 1;
            double c0 = (line.Slope[^1] * _cosine[last]) - (line.Slope[0] * _cosine[from]), s0 = (line.Slope[^1] * _sine[last]) - (line.Slope[0] * _sine[from]);
            row[l] = (s0 / turn) + (Vector256.Sum(c1) / (turn * turn)) - (Vector256.Sum(s2) / (turn * turn * turn));
            row[Padded + l] = (-c0 / turn) + (Vector256.Sum(s1) / (turn * turn)) + (Vector256.Sum(c2) / (turn * turn * turn));
        }

        return row;
    }

    /// <summary>By how much the slope of dy/dx, and that one's slope, fall at the points of a waterline, beyond whose ends they are nothing.</summary>
    private void Jumps(Waterline line, int from)
    {
        for (var k = 1; k < line.X.Length; k++)
        {
            var h = line.X[k] - line.X[k - 1];
            var (_, c1, c2) = line.SlopeOver(k);
            _bend[from + k - 1] -= c1 / h;
            _bend[from + k] += (c1 + (2 * c2)) / h;
            _turnOfBend[from + k - 1] -= 2 * c2 / (h * h);
            _turnOfBend[from + k] += 2 * c2 / (h * h);
        }

        for (var k = 0; k < line.X.Length; k++)
            (_stepSine[from + k], _stepCosine[from + k]) = Math.SinCos(_step * (line.X[k] - _origin));
    }

    private void Begin(double turn)
    {
        for (var l = 0; l < _lines.Length; l++)
        {
            for (var k = 0; k < _lines[l].X.Length; k++)
                (_sine[_ranges[l].From + k], _cosine[_ranges[l].From + k]) = Math.SinCos(turn * (_lines[l].X[k] - _origin));
        }
    }

    /// <summary>Turns every e^(i turn x) on by a step.</summary>
    private void Turn()
    {
        Span<Vector256<double>> cosine = MemoryMarshal.Cast<double, Vector256<double>>(_cosine.AsSpan()), sine = MemoryMarshal.Cast<double, Vector256<double>>(_sine.AsSpan());
        ReadOnlySpan<Vector256<double>> stepCosine = MemoryMarshal.Cast<double, Vector256<double>>(_stepCosine.AsSpan()), stepSine = MemoryMarshal.Cast<double, Vector256<double>>(_stepSine.AsSpan());
        var last = _ranges[_needed - 1].To / Vector256<double>.Count;
        for (var k = 0; k < last; k++)
        {
            var (c, s) = (cosine[k], sine[k]);
            cosine[k] = (c * stepCosine[k]) - (s * stepSine[k]);
            sine[k] = (c * stepSine[k]) + (s * stepCosine[k]);
        }
    }

    /// <summary>Shares of the eight rows at a part of the step after the fourth: Lagrange's, of products from either side.</summary>
    private static void Lagrange(double part, Span<double> shares)
    {
        var product = 1.0;
        for (var j = 0; j < Read; j++)
        {
            shares[j] = product * s_overNodes[j];
            product *= part + Before - j;
        }

        product = 1;
        for (var j = Read - 1; j >= 0; j--)
        {
            shares[j] *= product;
            product *= part + Before - j;
        }
    }
}
