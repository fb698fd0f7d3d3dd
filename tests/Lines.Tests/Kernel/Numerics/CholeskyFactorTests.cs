using Lines.Kernel.Numerics;
using MathNet.Numerics.LinearAlgebra.Double;
using Xunit;

namespace Lines.Tests.Kernel.Numerics;

public class CholeskyFactorTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(80)]
    public void The_solution_is_that_of_the_reference_library(int n)
    {
        var random = new Random(n);
        var root = DenseMatrix.Create(n, n, (_, _) => random.NextDouble() - 0.5);
        var matrix = (root * root.Transpose()) + DenseMatrix.CreateIdentity(n);
        var right = DenseVector.Create(n, _ => random.NextDouble());
        var expected = matrix.Cholesky().Solve(right);

        var actual = right.ToArray();
        Assert.True(CholeskyFactor.TrySolve(matrix.ToRowMajorArray(), actual));

        for (var k = 0; k < n; k++)
            Assert.Equal(expected[k], actual[k], 1e-12);
    }

    [Fact]
    public void A_matrix_with_a_direction_that_falls_is_refused() =>
        Assert.False(CholeskyFactor.TrySolve([1, 2, 0, 1], [1, 1]));
}
