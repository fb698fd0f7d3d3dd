using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Lines.Kernel.Numerics;

/// <summary>Solves a positive definite system in place.</summary>
/// <remarks>
/// <para><b>Method.</b> H = Rᵀ R, two rows of R at a time taken from the rows below them, then two substitutions. Written out because the systems here are
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
        for (var i = 0; i < n; i += 2)
        {
            var first = matrix.AsSpan((i * n) + i, n - i);
            if (!Divide(first))
                return false;
            if (i + 1 == n)
                break;
            var second = matrix.AsSpan(((i + 1) * n) + i + 1, n - i - 1);
            Take(first[1], first[1..], second);
            if (!Divide(second))
                return false;
            for (var k = 2; k < first.Length; k++)
                Take(first[k], first[k..], second[k - 1], second[(k - 1)..], matrix.AsSpan(((i + k) * n) + i + k, n - i - k));
        }

        for (var i = 0; i < n; i++)
        {
            vector[i] /= matrix[(i * n) + i];
            Take(vector[i], matrix.AsSpan((i * n) + i + 1, n - i - 1), vector.AsSpan(i + 1));
        }

        for (var i = n - 1; i >= 0; i--)
            vector[i] = (vector[i] - InnerProduct.Of(matrix.AsSpan((i * n) + i + 1, n - i - 1), vector.AsSpan(i + 1))) / matrix[(i * n) + i];
        return true;
    }

    /// <summary>Divides a row by the root of its first member, where that is positive.</summary>
    private static bool Divide(Span<double> row)
    {
        if (!(row[0] > 0))
            return false;
        var pivot = Math.Sqrt(row[0]);
        for (var j = 0; j < row.Length; j++)
            row[j] /= pivot;
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

    /// <summary>Takes a multiple of one row and then of a second from a third as long, in one walk along it.</summary>
    private static void Take(double factor, ReadOnlySpan<double> row, double secondFactor, ReadOnlySpan<double> second, Span<double> from)
    {
        ReadOnlySpan<Vector256<double>> whole = MemoryMarshal.Cast<double, Vector256<double>>(row), wholeSecond = MemoryMarshal.Cast<double, Vector256<double>>(second);
        var target = MemoryMarshal.Cast<double, Vector256<double>>(from);
        Vector256<double> factors = Vector256.Create(factor), secondFactors = Vector256.Create(secondFactor);
        for (var k = 0; k < target.Length; k++)
            target[k] = target[k] - (factors * whole[k]) - (secondFactors * wholeSecond[k]);
        for (var k = target.Length * Vector256<double>.Count; k < from.Length; k++)
            from[k] = from[k] - (factor * row[k]) - (secondFactor * second[k]);
    }
}
