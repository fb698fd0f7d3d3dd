namespace Lines.Kernel.Numerics;

/// <summary>Solves a positive definite system in place.</summary>
/// <remarks>
/// <para><b>Method.</b> H = L Lᵀ row by row, then two substitutions. Written out because the systems here are small and solved hundreds of
/// times a hull, where the general library spends most of its time outside the arithmetic.</para>
/// <para><b>Accuracy.</b> Backward stable; a test holds it against the library's.</para>
/// </remarks>
public static class CholeskyFactor
{
    /// <summary>Overwrites a vector by the solution.</summary>
    /// <param name="matrix">The lower triangle, row by row, n × n; overwritten by L.</param>
    /// <param name="vector">Right-hand side, overwritten by the solution.</param>
    /// <returns>False, with both spoiled, where the matrix is not positive definite.</returns>
    public static bool TrySolve(double[] matrix, double[] vector)
    {
        var n = vector.Length;
        for (var i = 0; i < n; i++)
        {
            var row = matrix.AsSpan(i * n, n);
            for (var j = 0; j < i; j++)
                row[j] = (row[j] - InnerProduct.Of(row[..j], matrix.AsSpan(j * n, j))) / matrix[(j * n) + j];
            var pivot = row[i] - InnerProduct.Of(row[..i], row[..i]);
            if (!(pivot > 0))
                return false;
            row[i] = Math.Sqrt(pivot);
            vector[i] = (vector[i] - InnerProduct.Of(row[..i], vector.AsSpan(0, i))) / row[i];
        }

        for (var i = n - 1; i >= 0; i--)
        {
            vector[i] /= matrix[(i * n) + i];
            for (var k = 0; k < i; k++)
                vector[k] -= matrix[(i * n) + k] * vector[i];
        }

        return true;
    }
}
