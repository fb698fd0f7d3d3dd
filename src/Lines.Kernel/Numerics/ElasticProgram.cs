using System.Numerics.Tensors;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Lines.Kernel.Numerics;

/// <summary>Least-squares problem with exact equations and elastic inequalities.</summary>
/// <remarks>
/// <para>Minimizes ½ xᵀHx - fᵀx + ½ Σ wᵢ max(0, gᵢᵀx - hᵢ)² subject to Cx = d. A violated inequality costs; it does not forbid.</para>
/// <para><b>Method.</b> Equations are eliminated once with complete pivoting, so that repeated ones do no harm and contradicting
/// ones are reported; the rest is Newton's method on a convex, piecewise quadratic function with an exact line search, which
/// ends after finitely many steps.</para>
/// </remarks>
public sealed class ElasticProgram : IDisposable
{
    private readonly LentNumbers _lent = new();
    private readonly List<(SparseRow Row, double Value)> _equations = [];
    private readonly double[] _hessian;
    private readonly double[] _linear;
    private double _constant;
    private Elimination? _elimination;
    private double[]? _reducedHessian;
    private double[]? _reducedLinear;

    // Kept from solve to solve: what a row came to in the free unknowns, and which row it was.
    private double[] _rows = [];
    private double[] _constants = [];
    private SparseRow?[] _reduced = [];
    private Elimination? _reducedBy;

    // Room for matrices and vectors, taken once.
    private double[] _held = [];
    private double[] _matrix = [];
    private double[] _factor = [];
    private double[] _weights = [];
    private double[] _slopes = [];

    /// <summary>Makes an empty problem.</summary>
    /// <param name="unknowns">Number of unknowns, at least 1.</param>
    public ElasticProgram(int unknowns)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(unknowns, 1);
        Unknowns = unknowns;
        _hessian = _lent.Zeros(unknowns * unknowns);
        _linear = new double[unknowns];
    }

    /// <summary>Number of unknowns.</summary>
    public int Unknowns { get; }

    /// <summary>Largest contradiction among the equations: what is left of a row after elimination; 0 when they agree.</summary>
    public double Contradiction => Eliminated().Contradiction;

    /// <summary>Adds ½ weight (row·x - target)² to what is minimized.</summary>
    public void AddSquare(SparseRow row, double target, double weight)
    {
        ArgumentNullException.ThrowIfNull(row);
        Changed();
        _constant += 0.5 * weight * target * target;
        for (var a = 0; a < row.Count; a++)
        {
            var wa = weight * row.Values[a];
            _linear[row.Indices[a]] += wa * target;
            for (var b = 0; b < row.Count; b++)
                _hessian[(row.Indices[a] * Unknowns) + row.Indices[b]] += wa * row.Values[b];
        }
    }

    /// <summary>Adds a symmetric coefficient to H: the caller adds (i, j) and (j, i).</summary>
    public void AddCurvature(int i, int j, double value)
    {
        Changed();
        _hessian[(i * Unknowns) + j] += value;
    }

    /// <summary>Adds an exact equation row·x = value.</summary>
    public void AddEquation(SparseRow row, double value)
    {
        ArgumentNullException.ThrowIfNull(row);
        _elimination = null;
        Changed();
        _equations.Add((row, value));
    }

    /// <summary>Solves for the minimum.</summary>
    /// <param name="inequalities">Elastic rows g·x ≤ h; the same rows first, solve after solve, are the quicker.</param>
    /// <param name="start">Where to start from; null starts from the equations' own particular solution.</param>
    /// <param name="hold">How strongly the answer is held to the start, as a multiple of the energy of the way between them.</param>
    /// <returns>The minimizer, the Newton steps taken and the largest violation of the inequalities.</returns>
    public ElasticResult Solve(IReadOnlyList<ElasticRow> inequalities, double[]? start = null, double hold = 0)
    {
        ArgumentNullException.ThrowIfNull(inequalities);
        var e = Eliminated();
        var n = e.Free;
        _reducedHessian ??= e.ReduceMatrix(_hessian, _lent);
        _reducedLinear ??= e.ReduceGradient(_hessian, _linear);
        var f = (double[])_reducedLinear.Clone();
        var m = inequalities.Count;
        Keep(m, n);
        var g = _rows;
        var slack = new double[m]; // g·t - h at the current t
        _lent.Lengthen(ref _weights, m);
        _lent.Lengthen(ref _slopes, m);
        Span<double> weights = _weights.AsSpan(0, m), slopes = _slopes.AsSpan(0, m);
        var t = start is null ? new double[n] : e.Reduce(start);
        for (var r = 0; r < m; r++)
        {
            var row = g.AsSpan(r * n, n);
            var inequality = inequalities[r];
            if (!ReferenceEquals(_reduced[r], inequality.Row))
                (_constants[r], _reduced[r]) = (e.ReduceRow(inequality.Row, row), inequality.Row);
            weights[r] = inequality.Weight;
            slack[r] = _constants[r] - inequality.Bound + InnerProduct.Of(row, t);
        }

        var hessian = _reducedHessian;
        if (hold > 0)
        {
            _lent.Lengthen(ref _held, n * n);
            hessian = _held;
            TensorPrimitives.Multiply<double>(_reducedHessian.AsSpan(0, n * n), 1 + hold, hessian);
            for (var i = 0; i < n; i++)
                f[i] += hold * InnerProduct.Of(_reducedHessian.AsSpan(i * n, n), t);
        }

        var steps = 0;
        var gradient = new double[n];
        _lent.Lengthen(ref _matrix, n * n);
        _lent.Lengthen(ref _factor, n * n);
        var (matrix, factor) = (_matrix, _factor);
        hessian.AsSpan(0, n * n).CopyTo(matrix);
        var isIn = new bool[m];
        for (; ; steps++)
        {
            FillGradient(hessian, weights, g, slack, t, f, gradient);
            var scale = Math.Max(1e-300, InnerProduct.Norm(f) + InequalityScale(weights, g, slack, n));
            if (InnerProduct.Norm(gradient) <= 1e-11 * scale || steps == 200)
                break;
            Update(matrix, weights, g, slack, n, isIn);
            var direction = Descent(matrix, gradient, factor);
            var length = LineSearch(hessian, weights, g, slack, gradient, direction, n, slopes);
            for (var k = 0; k < n; k++)
                t[k] += length * direction[k];
            for (var r = 0; r < m; r++)
                slack[r] += length * slopes[r];
        }

        var worst = 0.0;
        for (var r = 0; r < m; r++)
            worst = Math.Max(worst, slack[r]);
        return new ElasticResult(e.Expand(t), steps, worst, slack);
    }

    /// <summary>The vector that meets the equations and is least away from another, by the energy of the way between them.</summary>
    public double[] Onto(double[] x)
    {
        ArgumentNullException.ThrowIfNull(x);
        var e = Eliminated();
        _reducedHessian ??= e.ReduceMatrix(_hessian, _lent);
        var pull = new double[Unknowns];
        for (var i = 0; i < Unknowns; i++)
            pull[i] = InnerProduct.Of(_hessian.AsSpan(i * Unknowns, Unknowns), x);
        _lent.Lengthen(ref _factor, e.Free * e.Free);
        return e.Expand(Descent(_reducedHessian, Array.ConvertAll(e.ReduceGradient(_hessian, pull), g => -g), _factor));
    }

    /// <summary>Gives back the room that the problem took; it can be solved no more.</summary>
    public void Dispose() => _lent.Dispose();

    /// <summary>The smooth part of what is minimized, ½ xᵀHx - fᵀx and what makes its squares whole: never negative.</summary>
    public double EnergyOf(double[] x)
    {
        ArgumentNullException.ThrowIfNull(x);
        var sum = _constant - InnerProduct.Of(_linear, x);
        for (var i = 0; i < Unknowns; i++)
            sum += 0.5 * x[i] * InnerProduct.Of(_hessian.AsSpan(i * Unknowns, Unknowns), x);
        return sum;
    }

    private static double InequalityScale(ReadOnlySpan<double> weights, double[] g, double[] slack, int n)
    {
        var sum = 0.0;
        for (var r = 0; r < weights.Length; r++)
        {
            if (slack[r] > 0)
                sum += weights[r] * slack[r] * InnerProduct.Norm(g.AsSpan(r * n, n));
        }

        return sum;
    }

    private static void FillGradient(
        double[] hessian, ReadOnlySpan<double> weights, double[] g, double[] slack, double[] t, double[] f, double[] gradient)
    {
        var n = t.Length;
        for (var i = 0; i < n; i++)
            gradient[i] = InnerProduct.Of(hessian.AsSpan(i * n, n), t) - f[i];
        for (var r = 0; r < weights.Length; r++)
        {
            if (slack[r] > 0)
                TensorPrimitives.MultiplyAdd<double>(g.AsSpan(r * n, n), weights[r] * slack[r], gradient, gradient);
        }
    }

    /// <summary>Brings the upper triangle of H + Σ w g gᵀ over the violated rows up to date: rows newly violated come in, others leave.</summary>
    private static void Update(double[] matrix, ReadOnlySpan<double> weights, double[] g, double[] slack, int n, bool[] isIn)
    {
        for (var r = 0; r < weights.Length; r++)
        {
            if (slack[r] > 0 == isIn[r])
                continue;
            isIn[r] = !isIn[r];
            var weight = isIn[r] ? weights[r] : -weights[r];
            var row = g.AsSpan(r * n, n);
            for (var i = 0; i < n; i++)
            {
                var k = weight * row[i];
                if (k != 0)
                {
                    var target = matrix.AsSpan((i * n) + i, n - i);
                    TensorPrimitives.MultiplyAdd<double>(row[i..], k, target, target);
                }
            }
        }
    }

    /// <summary>Newton's direction.</summary>
    private static double[] Descent(double[] matrix, double[] gradient, double[] factor)
    {
        var n = gradient.Length;
        var largest = 0.0;
        for (var i = 0; i < n; i++)
            largest = Math.Max(largest, matrix[(i * n) + i]);

        // Where the energy leaves a direction free, rounding must not make it negative.
        for (var ridge = 1e-15 * largest; ; ridge *= 100)
        {
            matrix.AsSpan(0, n * n).CopyTo(factor);
            for (var i = 0; i < n; i++)
                factor[(i * n) + i] += ridge;
            var direction = Array.ConvertAll(gradient, g => -g);
            if (CholeskyFactor.TrySolve(factor, direction))
                return direction;
            if (!(ridge < largest))
                throw new ArithmeticException("what is minimized has no minimum");
        }
    }

    /// <summary>Exact minimum along a direction: the root of a slope that only grows.</summary>
    private static double LineSearch(
        double[] hessian, ReadOnlySpan<double> weights, double[] g, double[] slack, double[] gradient, double[] direction, int n, Span<double> slopes)
    {
        var curvature = 0.0;
        for (var i = 0; i < n; i++)
            curvature += direction[i] * InnerProduct.Of(hessian.AsSpan(i * n, n), direction);
        var smooth = InnerProduct.Of(gradient, direction);
        for (var r = 0; r < weights.Length; r++)
        {
            slopes[r] = InnerProduct.Of(g.AsSpan(r * n, n), direction);
            if (slack[r] > 0)
                smooth -= weights[r] * slack[r] * slopes[r];
        }

        double low = 0, high = 1;
        var s = 1.0;
        for (var k = 0; k < 60; k++)
        {
            var (pull, stiffness) = Pull(weights, slack, slopes, s);
            double value = smooth + (s * curvature) + pull, slope = curvature + stiffness;

            if (value > 0)
                high = Math.Min(high, s);
            else
                low = s;
            if (value <= 0 && s >= high)
                return s;
            var next = slope > 0 ? s - (value / slope) : (low + high) / 2;
            next = next <= low || next >= high ? (next >= 1 && high >= 1 ? 1 : (low + high) / 2) : next;
            if (Math.Abs(next - s) <= 1e-13)
                return next;
            s = next;
        }

        return s;
    }

    /// <summary>What the rows violated some way along a direction add to the slope there, and to its growth.</summary>
    private static (double Slope, double Growth) Pull(ReadOnlySpan<double> weights, ReadOnlySpan<double> slack, ReadOnlySpan<double> slopes, double way)
    {
        ReadOnlySpan<Vector256<double>> w = MemoryMarshal.Cast<double, Vector256<double>>(weights), at = MemoryMarshal.Cast<double, Vector256<double>>(slack), along = MemoryMarshal.Cast<double, Vector256<double>>(slopes);
        Vector256<double> ways = Vector256.Create(way), slope = default, growth = default;
        for (var k = 0; k < w.Length; k++)
        {
            var violation = at[k] + (ways * along[k]);
            var weighted = Vector256.ConditionalSelect(Vector256.GreaterThan(violation, Vector256<double>.Zero), w[k] * along[k], Vector256<double>.Zero);
            slope += weighted * violation;
            growth += weighted * along[k];
        }

        double sum = (slope[0] + slope[1]) + (slope[2] + slope[3]), rate = (growth[0] + growth[1]) + (growth[2] + growth[3]);
        for (var r = w.Length * Vector256<double>.Count; r < weights.Length; r++)
        {
            if (slack[r] + (way * slopes[r]) is var violation and > 0)
            {
                sum += weights[r] * slopes[r] * violation;
                rate += weights[r] * slopes[r] * slopes[r];
            }
        }

        return (sum, rate);
    }

    private void Changed() => (_reducedHessian, _reducedLinear) = (null, null);

    private Elimination Eliminated() => _elimination ??= new Elimination(_equations, Unknowns, _lent);

    /// <summary>Makes room for so many rows; what they came to is forgotten where the equations have changed.</summary>
    private void Keep(int rows, int free)
    {
        if (_reducedBy != _elimination)
            Array.Clear(_reduced);
        _reducedBy = _elimination;
        if (_reduced.Length >= rows)
            return;
        var room = rows * 5 / 4;
        _lent.Lengthen(ref _rows, room * free);
        Array.Resize(ref _constants, room);
        Array.Resize(ref _reduced, room);
    }
}

/// <summary>A row of coefficients given by their places and values.</summary>
/// <param name="Indices">Places.</param>
/// <param name="Values">Values at those places.</param>
public sealed record SparseRow(int[] Indices, double[] Values)
{
    /// <summary>Number of coefficients given.</summary>
    public int Count => Indices.Length;

    /// <summary>Product with a vector.</summary>
    public double Dot(double[] x)
    {
        ArgumentNullException.ThrowIfNull(x);
        var sum = 0.0;
        for (var k = 0; k < Count; k++)
            sum += Values[k] * x[Indices[k]];
        return sum;
    }

    /// <summary>The row of all of a vector's coefficients.</summary>
    public static SparseRow Full(double[] values)
    {
        ArgumentNullException.ThrowIfNull(values);
        return new SparseRow([.. Enumerable.Range(0, values.Length)], values);
    }

    /// <summary>The row over unknowns a fixed number further on.</summary>
    public SparseRow Shifted(int by)
    {
        var indices = new int[Count];
        TensorPrimitives.Add(Indices, by, indices);
        return this with { Indices = indices };
    }

    /// <summary>The row times a factor.</summary>
    public SparseRow Times(double factor)
    {
        var values = new double[Count];
        TensorPrimitives.Multiply(Values, factor, values);
        return this with { Values = values };
    }

    /// <summary>The sum of two rows.</summary>
    public SparseRow Plus(SparseRow other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new SparseRow([.. Indices, .. other.Indices], [.. Values, .. other.Values]);
    }

    /// <summary>Adds a multiple of the row to a vector.</summary>
    public void AddTo(double[] vector, double factor)
    {
        ArgumentNullException.ThrowIfNull(vector);
        for (var k = 0; k < Count; k++)
            vector[Indices[k]] += factor * Values[k];
    }
}

/// <summary>An elastic inequality row·x ≤ bound.</summary>
/// <param name="Row">Coefficients.</param>
/// <param name="Bound">Upper bound.</param>
/// <param name="Weight">Cost of half the squared violation.</param>
public readonly record struct ElasticRow(SparseRow Row, double Bound, double Weight);

/// <summary>What an <see cref="ElasticProgram"/> found.</summary>
/// <param name="X">The minimizer.</param>
/// <param name="Steps">Newton steps taken; 200 means the limit was met.</param>
/// <param name="Violation">Largest violation of the inequalities, in the unit of their bounds; 0 when all hold.</param>
/// <param name="Slack">row·x - bound of every inequality.</param>
public sealed record ElasticResult(double[] X, int Steps, double Violation, double[] Slack);
