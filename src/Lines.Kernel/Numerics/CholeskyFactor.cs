using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Lines.Kernel.Numerics;

/// <summary>Solves a positive definite system in place.</summary>
/// <remarks>
/// <para><b>Method.</b> H = Rᵀ R, row after row of R taken from the rows below it, then two substitutions. Written out because the systems here are
/// small and solved hundreds of times a hull, where the general library spends most of its time outside the arithmetic; whole rows are
/// taken from rows, for sums of products along short ones wait for each other.</para>
/// <para><b>Accuracy.</b> Backward stable; a test holds it against the library's.</para>
/// </remarks>
public static class CholeskyFactor
{
    /// <summary>Overwrites a vector by the solution.</summary>
    /// <param name="matrix">The upper triangle, row by row, n × n; overwritten by R.</param>
    /// <param name="vector">Right-hand side, overwritten by the solution.</param>
    /// <returns>False, with both spoiled, where the matrix is not positive definite.</returns>
    public static bool TrySolve(double[] matrix, double[] vector)
    {
        var n = vector.Length;
        for (var i = 0; i < n; i++)
        {
            var row = matrix.AsSpan((i * n) + i, n - i);
            if (!(row[0] > 0))
                return false;
            var pivot = Math.Sqrt(row[0]);
            for (var j = 0; j < row.Length; j++)
                row[j] /= pivot;
            for (var k = 1; k < row.Length; k++)
                Take(row[k], row[k..], matrix.AsSpan(((i + k) * n) + i + k, n - i - k));
            vector[i] /= pivot;
            Take(vector[i], row[1..], vector.AsSpan(i + 1));
        }

        for (var i = n - 1; i >= 0; i--)
            vector[i] = (vector[i] - InnerProduct.Of(matrix.AsSpan((i * n) + i + 1, n - i - 1), vector.AsSpan(i + 1))) / matrix[(i * n) + i];
        return true;
    }

    /// <summary>Takes a multiple of one row from another as long.</summary>
    private static void Take(double factor, ReadOnlySpan<double> row, Span<double> from)
    {
        var whole = MemoryMarshal.Cast<double, Vector256<double>>(row);
        var target = MemoryMarshal.Cast<double, Vector256<double>>(from);
        var factors = Vector256.Create(factor);
        for (var k = 0; k < whole.Length; k++)
            target[k] -= factors * whole[k];
        for (var k = whole.Length * Vector256<double>.Count; k < row.Length; k++)
            from[k] -= factor * row[k];
    }
}
