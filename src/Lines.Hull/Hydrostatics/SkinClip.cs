using Lines.Kernel.Geometry;
using Lines.Kernel.Numerics;
using Lines.Kernel.Splines;

namespace Lines.Hull.Hydrostatics;

/// <summary>Integrates over the part of one half skin below a plane, and along the line where the plane meets it.</summary>
/// <remarks>
/// <para><b>Method.</b> Pieces wholly below the plane add what was integrated once. In a piece that the plane crosses the distance from the
/// plane is a bicubic polynomial: where its Bezier points show that it is monotone along one parameter, the waterline is a graph over
/// the other, and both integrals run over that by Gauss-Legendre nodes; else the piece is quartered. A graph is halved until the
/// last Legendre coefficients of the waterline through the nodes have died away.</para>
/// <para><b>Accuracy.</b> Six nodes integrate degree 11, so the error of a part falls as the square of the last coefficient seen; the
/// relative error of the integrals stays below <c>resolution</c>² times a few. Parts narrower than a millionth of a millionth of a piece are left out.</para>
/// </remarks>
internal ref struct SkinClip
{
    /// <summary>Numbers added up: flux of y, and of y times x, y / 2 and z; then A, ∫a, ∫b, ∫a², ∫ab, ∫b² of the half waterplane.</summary>
    public const int Sums = 10;

    /// <summary>Gauss-Legendre nodes: exact for the moments of a bicubic piece, whose degree is 11 each way.</summary>
    private const int Nodes = 6;

    /// <summary>Quarterings after which a box is let go: 2⁻⁴⁰ of a piece.</summary>
    private const int Deepest = 40;

    /// <summary>Least slope along one parameter against the greatest along either at which a waterline counts as a graph without further quartering.</summary>
    private const double Steep = 0.05;

    /// <summary>Quarterings after which a graph is taken however steep.</summary>
    private const int Patience = 5;

    private static readonly GaussLegendre s_rule = GaussLegendre.Rule(Nodes);
    private static readonly double[] s_last = LegendreRow(Nodes - 1);
    private static readonly double[] s_lastButOne = LegendreRow(Nodes - 2);

    private readonly Vector3 _up;
    private readonly Vector3 _aft;
    private readonly Vector3 _across;
    private readonly double _level;
    private readonly double _resolution;
    private readonly Span<double> _sums;
    private ReadOnlySpan<double> _uFirst;
    private ReadOnlySpan<double> _vFirst;

    /// <summary>Prepares for one plane.</summary>
    /// <param name="water">The plane, in the frame of the skin.</param>
    /// <param name="resolution">Size of the last Legendre coefficients of a waterline, in parameters of a piece, at which it is resolved.</param>
    /// <param name="sums">Added to.</param>
    public SkinClip(WaterPlane water, double resolution, Span<double> sums)
    {
        (_up, _aft, _across, _level) = (water.Up, water.Aft, water.Across, water.Level);
        _resolution = resolution;
        _sums = sums;
    }

    /// <summary>Fluxes of a rectangle of one piece by the tensor rule: exact for a bicubic.</summary>
    public static void Whole(ReadOnlySpan<double> piece, double s0, double s1, double t0, double t1, double orientation, Span<double> sums)
    {
        double halfS = (s1 - s0) / 2, halfT = (t1 - t0) / 2;
        Span<double> line = stackalloc double[20];
        for (var i = 0; i < Nodes; i++)
        {
            Collapse(piece, ((s0 + s1) / 2) + (halfS * s_rule.Abscissas[i]), line);
            for (var j = 0; j < Nodes; j++)
                Flux(line, ((t0 + t1) / 2) + (halfT * s_rule.Abscissas[j]), orientation * halfS * halfT * s_rule.Weights[i] * s_rule.Weights[j], sums);
        }
    }

    /// <summary>Adds the part of a piece below the plane, and its share of the waterline.</summary>
    /// <param name="net">The skin.</param>
    /// <param name="row">Piece along u.</param>
    /// <param name="column">Piece along v.</param>
    /// <param name="heights">Distances of the sixteen Bezier points from the plane, along u first [m].</param>
    public void Piece(BezierNet net, int row, int column, scoped ReadOnlySpan<double> heights)
    {
        _uFirst = net.Piece(row, column, uFirst: true);
        _vFirst = net.Piece(row, column, uFirst: false);
        Box(heights, 0, 1, 0, 1, 0);
    }

    private void Box(scoped ReadOnlySpan<double> b, double u0, double u1, double v0, double v1, int depth)
    {
        double least = b[0], greatest = b[0];
        foreach (var value in b[1..])
            (least, greatest) = (Math.Min(least, value), Math.Max(greatest, value));
        if (least >= 0 || depth > Deepest)
            return;
        if (greatest < 0)
        {
            Whole(_uFirst, u0, u1, v0, v1, 1, _sums);
            return;
        }

        double steepest = 0, alongV = Slope(b, 1, 4, ref steepest), alongU = Slope(b, 4, 1, ref steepest), best = Math.Max(Math.Abs(alongU), Math.Abs(alongV));
        if (best > Steep * steepest || (best > 0 && depth >= Patience))
        {
            Span<double> lines = stackalloc double[16];
            if (Math.Abs(alongV) >= Math.Abs(alongU))
            {
                Transpose(b, lines);
                if (Graph(lines, new Cell(u0, u1, v0, v1), alongV > 0, uFirst: true))
                    return;
            }
            else
            {
                b.CopyTo(lines);
                if (Graph(lines, new Cell(v0, v1, u0, u1), alongU > 0, uFirst: false))
                    return;
            }
        }

        Quarter(b, u0, u1, v0, v1, depth);
    }

    private void Quarter(scoped ReadOnlySpan<double> b, double u0, double u1, double v0, double v1, int depth)
    {
        Span<double> quarters = stackalloc double[64];
        BezierBox.Quarter(b, quarters);
        double um = (u0 + u1) / 2, vm = (v0 + v1) / 2;
        Box(quarters[..16], u0, um, v0, vm, depth + 1);
        Box(quarters.Slice(16, 16), u0, um, vm, v1, depth + 1);
        Box(quarters.Slice(32, 16), um, u1, v0, vm, depth + 1);
        Box(quarters[48..], um, u1, vm, v1, depth + 1);
    }

    // Least slope along one index, with its sign; 0 where the slope has no one sign.
    private static double Slope(scoped ReadOnlySpan<double> b, int step, int line, ref double steepest)
    {
        double low = double.PositiveInfinity, high = double.NegativeInfinity;
        for (var i = 0; i < 4; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                var d = b[(i * line) + ((j + 1) * step)] - b[(i * line) + (j * step)];
                (low, high) = (Math.Min(low, d), Math.Max(high, d));
            }
        }

        steepest = Math.Max(steepest, Math.Max(high, -low));
        return low > 0 ? low : high < 0 ? high : 0;
    }

    private static void Transpose(ReadOnlySpan<double> b, Span<double> lines)
    {
        for (var i = 0; i < 4; i++)
        {
            for (var j = 0; j < 4; j++)
                lines[(4 * j) + i] = b[(4 * i) + j];
        }
    }

    // The waterline as t over s. Lines holds the points by rising t; the first four are the edge t0, the last four t1.
    private bool Graph(scoped ReadOnlySpan<double> lines, Cell c, bool rising, bool uFirst)
    {
        ReadOnlySpan<double> low = lines[..4], high = lines[12..];
        if (BernsteinCubic.Variations(low) > 1 || BernsteinCubic.Variations(high) > 1)
            return false;
        Span<double> ends = [0, Once(low), Once(high), 1];
        if (ends[1] > ends[2])
            (ends[1], ends[2]) = (ends[2], ends[1]);
        for (var i = 1; i < 4; i++)
        {
            if (!(ends[i] > ends[i - 1]))
                continue;
            var middle = (ends[i - 1] + ends[i]) / 2;
            double from = c.S0 + ((c.S1 - c.S0) * ends[i - 1]), to = c.S0 + ((c.S1 - c.S0) * ends[i]);
            bool lowBelow = BernsteinCubic.At(low, middle) < 0, highBelow = BernsteinCubic.At(high, middle) < 0;
            if (lowBelow && highBelow)
                Whole(uFirst ? _uFirst : _vFirst, from, to, c.T0, c.T1, uFirst ? 1 : -1, _sums);
            else if (lowBelow != highBelow)
                Strip(from, to, c.T0, c.T1, rising, uFirst);
        }

        return true;
    }

    private static double Once(ReadOnlySpan<double> edge) => edge[0] < 0 != edge[3] < 0 ? BernsteinCubic.Crossing(edge) : 0;

    private void Strip(double s0, double s1, double t0, double t1, bool rising, bool uFirst)
    {
        var piece = uFirst ? _uFirst : _vFirst;
        Span<double> places = stackalloc double[Nodes];
        double half = (s1 - s0) / 2, middle = (s0 + s1) / 2, last = 0, lastButOne = 0, t = (t0 + t1) / 2;
        for (var i = 0; i < Nodes; i++)
        {
            t = Waterline(piece, middle + (half * s_rule.Abscissas[i]), t0, t1, t);
            places[i] = t;
            last += s_last[i] * t;
            lastButOne += s_lastButOne[i] * t;
        }

        if (Math.Max(Math.Abs(last), Math.Abs(lastButOne)) > _resolution && half > 1e-12)
        {
            Strip(s0, middle, t0, t1, rising, uFirst);
            Strip(middle, s1, t0, t1, rising, uFirst);
            return;
        }

        var orientation = uFirst ? 1.0 : -1.0;
        Span<double> line = stackalloc double[20];
        for (var i = 0; i < Nodes; i++)
        {
            Collapse(piece, middle + (half * s_rule.Abscissas[i]), line);
            double from = rising ? t0 : places[i], to = rising ? places[i] : t1, halfT = (to - from) / 2, weight = half * s_rule.Weights[i];
            for (var j = 0; j < Nodes; j++)
                Flux(line, ((from + to) / 2) + (halfT * s_rule.Abscissas[j]), orientation * weight * halfT * s_rule.Weights[j], _sums);
            Along(piece, line, middle + (half * s_rule.Abscissas[i]), places[i], rising ? -orientation * weight : orientation * weight);
        }
    }

    // Parameter t of the waterline at s.
    private readonly double Waterline(scoped ReadOnlySpan<double> piece, double s, double t0, double t1, double start)
    {
        Span<double> q = stackalloc double[4];
        for (var l = 0; l < 4; l++)
        {
            double x = Horner(piece[l..], s), y = Horner(piece[(16 + l)..], s), z = Horner(piece[(32 + l)..], s);
            q[l] = (_up.X * x) + (_up.Y * y) + (_up.Z * z);
        }

        return BernsteinCubic.Zero(q[0] - _level, q[1], q[2], q[3], t0, t1, start);
    }

    private static double Horner(ReadOnlySpan<double> c, double s) => c[0] + (s * (c[4] + (s * (c[8] + (s * c[12])))));

    private static double HornerSlope(ReadOnlySpan<double> c, double s) => c[4] + (s * ((2 * c[8]) + (3 * s * c[12])));

    // The piece at one s: cubics in t of x, y, z, dx/ds, dz/ds.
    private static void Collapse(ReadOnlySpan<double> piece, double s, Span<double> line)
    {
        for (var l = 0; l < 4; l++)
        {
            line[l] = Horner(piece[l..], s);
            line[4 + l] = Horner(piece[(16 + l)..], s);
            line[8 + l] = Horner(piece[(32 + l)..], s);
            line[12 + l] = HornerSlope(piece[l..], s);
            line[16 + l] = HornerSlope(piece[(32 + l)..], s);
        }
    }

    private static double Cubic(ReadOnlySpan<double> c, double t) => c[0] + (t * (c[1] + (t * (c[2] + (t * c[3])))));

    private static double CubicSlope(ReadOnlySpan<double> c, double t) => c[1] + (t * ((2 * c[2]) + (3 * t * c[3])));

    // y-component of V × U times the field (0, y, 0) and its moments.
    private static void Flux(ReadOnlySpan<double> line, double t, double weight, Span<double> sums)
    {
        double x = Cubic(line, t), y = Cubic(line[4..], t), z = Cubic(line[8..], t);
        double xs = Cubic(line[12..], t), zs = Cubic(line[16..], t), xt = CubicSlope(line, t), zt = CubicSlope(line[8..], t);
        var flux = weight * y * ((zt * xs) - (xt * zs));
        sums[0] += flux;
        sums[1] += x * flux;
        sums[2] += y / 2 * flux;
        sums[3] += z * flux;
    }

    // A stretch of the waterline, counterclockwise seen from above: -∮ b da and its moments.
    private readonly void Along(scoped ReadOnlySpan<double> piece, scoped ReadOnlySpan<double> line, double s, double t, double weight)
    {
        Span<double> slopeY = [HornerSlope(piece[16..], s), HornerSlope(piece[17..], s), HornerSlope(piece[18..], s), HornerSlope(piece[19..], s)];
        var p = new Vector3(Cubic(line, t), Cubic(line[4..], t), Cubic(line[8..], t));
        var alongS = new Vector3(Cubic(line[12..], t), Cubic(slopeY, t), Cubic(line[16..], t));
        var alongT = new Vector3(CubicSlope(line, t), CubicSlope(line[4..], t), CubicSlope(line[8..], t));
        var da = _aft.Dot(alongS) - (_up.Dot(alongS) / _up.Dot(alongT) * _aft.Dot(alongT));
        WaterplaneRim.Add(_aft.Dot(p), _across.Dot(p), weight * da, _sums[4..]);
    }

    // Row of the projection on the Legendre polynomial of one degree, from values at the nodes.
    private static double[] LegendreRow(int degree) =>
        [.. s_rule.Abscissas.Zip(s_rule.Weights, (x, w) => ((2 * degree) + 1) / 2.0 * w * Legendre(degree, x))];

    private static double Legendre(int degree, double x)
    {
        double before = 1, now = x;
        for (var k = 1; k < degree; k++)
            (before, now) = (now, ((((2 * k) + 1) * x * now) - (k * before)) / (k + 1));
        return now;
    }
}
