using System.Numerics.Tensors;

namespace Lines.Kernel.Numerics;

/// <summary>General solution x = x₀ + Z t of a set of linear equations.</summary>
/// <remarks>
/// <para><b>Method.</b> Gauss-Jordan with complete pivoting over each row scaled to largest coefficient 1. A row whose largest
/// remaining coefficient is under 1e-9 repeats others and is dropped; what is left of its right-hand side is the contradiction.</para>
/// </remarks>
internal sealed class Elimination
{
    private const double Negligible = 1e-9;
    private readonly int _unknowns;
    private readonly int[] _basic;
    private readonly int[] _free;
    private readonly double[] _nullspace; // row per unknown, Free columns
    private readonly SparseRow[] _rows; // the same rows without their zeros
    private readonly double[] _particular;

    public Elimination(List<(SparseRow Row, double Value)> equations, int unknowns, LentNumbers lent)
    {
        _unknowns = unknowns;
        var rows = equations.ConvertAll(e => Scaled(e.Row, e.Value, unknowns));
        var pivotRow = new List<double[]>();
        var basic = new List<int>();
        var left = new List<double[]>(rows);
        var columns = left.ConvertAll(row => Largest(row, unknowns));
        while (left.Count > 0)
        {
            var best = 0;
            for (var r = 1; r < left.Count; r++)
            {
                if (Math.Abs(left[r][columns[r]]) > Math.Abs(left[best][columns[best]]))
                    best = r;
            }

            var (pivot, column) = (left[best], columns[best]);
            if (Math.Abs(pivot[column]) < Negligible)
                break;
            left.RemoveAt(best);
            columns.RemoveAt(best);
            TensorPrimitives.Divide<double>(pivot, pivot[column], pivot);
            for (var r = 0; r < left.Count; r++)
            {
                if (Subtract(left[r], pivot, column))
                    columns[r] = Largest(left[r], unknowns);
            }

            foreach (var row in pivotRow)
                Subtract(row, pivot, column);
            pivotRow.Add(pivot);
            basic.Add(column);
        }

        foreach (var row in left)
            Contradiction = Math.Max(Contradiction, Math.Abs(row[unknowns]));
        _basic = [.. basic];
        var taken = new bool[unknowns];
        foreach (var b in basic)
            taken[b] = true;
        _free = [.. Enumerable.Range(0, unknowns).Where(k => !taken[k])];
        _particular = new double[unknowns];
        _nullspace = lent.Zeros(unknowns * Free);
        for (var k = 0; k < Free; k++)
            _nullspace[(_free[k] * Free) + k] = 1;
        for (var r = 0; r < _basic.Length; r++)
        {
            _particular[_basic[r]] = pivotRow[r][unknowns];
            for (var k = 0; k < Free; k++)
                _nullspace[(_basic[r] * Free) + k] = -pivotRow[r][_free[k]];
        }

        _rows = [.. Enumerable.Range(0, unknowns).Select(SparseRowOf)];
    }

    public int Free => _free.Length;

    public double Contradiction { get; }

    /// <summary>The free unknowns of a vector: the t whose expansion it is, where it meets the equations.</summary>
    public double[] Reduce(double[] x) => Array.ConvertAll(_free, k => x[k]);

    public double[] Expand(double[] t)
    {
        var x = (double[])_particular.Clone();
        for (var i = 0; i < _unknowns; i++)
            x[i] += InnerProduct.Of(_nullspace.AsSpan(i * Free, Free), t);
        return x;
    }

    /// <summary>Writes Zᵀ·row and returns row·x₀.</summary>
    public double ReduceRow(SparseRow row, Span<double> reduced)
    {
        reduced.Clear();
        var constant = 0.0;
        for (var k = 0; k < row.Count; k++)
        {
            var i = row.Indices[k];
            constant += row.Values[k] * _particular[i];
            var free = _rows[i];
            for (var f = 0; f < free.Count; f++)
                reduced[free.Indices[f]] += row.Values[k] * free.Values[f];
        }

        return constant;
    }

    /// <summary>Zᵀ H Z.</summary>
    public double[] ReduceMatrix(double[] h, LentNumbers lent)
    {
        var n = _unknowns;
        var hz = lent.Zeros(n * Free);
        for (var i = 0; i < n; i++)
        {
            var target = hz.AsSpan(i * Free, Free);
            for (var j = 0; j < n; j++)
            {
                var v = h[(i * n) + j];
                if (v != 0)
                    TensorPrimitives.MultiplyAdd(_nullspace.AsSpan(j * Free, Free), v, target, target);
            }
        }

        var reduced = lent.Zeros(Free * Free);
        for (var i = 0; i < n; i++)
        {
            var source = hz.AsSpan(i * Free, Free);
            for (var a = 0; a < Free; a++)
            {
                var v = _nullspace[(i * Free) + a];
                if (v != 0)
                {
                    var target = reduced.AsSpan(a * Free, Free);
                    TensorPrimitives.MultiplyAdd(source, v, target, target);
                }
            }
        }

        return reduced;
    }

    /// <summary>Zᵀ (f - H x₀).</summary>
    public double[] ReduceGradient(double[] h, double[] f)
    {
        var n = _unknowns;
        var reduced = new double[Free];
        for (var i = 0; i < n; i++)
        {
            var v = f[i] - InnerProduct.Of(h.AsSpan(i * n, n), _particular);
            TensorPrimitives.MultiplyAdd(_nullspace.AsSpan(i * Free, Free), v, reduced, reduced);
        }

        return reduced;
    }

    private SparseRow SparseRowOf(int unknown)
    {
        var row = _nullspace.AsSpan(unknown * Free, Free);
        var filled = Free - row.Count(0.0);
        var (indices, values) = (new int[filled], new double[filled]);
        for (int k = 0, at = 0; at < filled; k++)
        {
            if (row[k] != 0)
                (indices[at], values[at++]) = (k, row[k]);
        }

        return new SparseRow(indices, values);
    }

    private static double[] Scaled(SparseRow row, double value, int unknowns)
    {
        var scaled = new double[unknowns + 1];
        row.AddTo(scaled, 1);
        var largest = TensorPrimitives.MaxMagnitude<double>(scaled);
        scaled[unknowns] = value;
        if (Math.Abs(largest) > 0)
            TensorPrimitives.Divide<double>(scaled, Math.Abs(largest), scaled);
        return scaled;
    }

    private static int Largest(double[] row, int unknowns) => TensorPrimitives.IndexOfMaxMagnitude<double>(row.AsSpan(0, unknowns));

    /// <summary>Takes as much of a pivot row that its column is left empty.</summary>
    /// <returns>Whether it was not empty before.</returns>
    private static bool Subtract(double[] row, double[] pivot, int column)
    {
        var k = row[column];
        if (k == 0)
            return false;
        TensorPrimitives.MultiplyAdd<double>(pivot, -k, row, row);
        row[column] = 0;
        return true;
    }
}
