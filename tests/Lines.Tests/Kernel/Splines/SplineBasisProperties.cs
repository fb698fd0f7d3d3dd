using CsCheck;
using Lines.Kernel.Splines;
using Xunit;

namespace Lines.Tests.Kernel.Splines;

public class SplineBasisProperties
{
    private static readonly Gen<SplineBasis> Bases =
        Gen.Select(Gen.Int[1, 5], Gen.Double[0.05, 1].Array[1, 8]).Select((degree, gaps) =>
        {
            var breaks = new double[gaps.Length + 1];
            for (var k = 0; k < gaps.Length; k++)
                breaks[k + 1] = breaks[k] + gaps[k];
            return SplineBasis.Clamped(degree, breaks);
        });

    [Fact]
    public void The_functions_sum_to_one_and_their_derivatives_to_zero() =>
        Gen.Select(Bases, Gen.Double[0, 1]).Sample((basis, f) =>
        {
            var rows = Math.Min(3, basis.Degree);
            var n = new double[(rows + 1) * (basis.Degree + 1)];
            basis.Evaluate(basis.End * f, rows, n);
            for (var k = 0; k <= rows; k++)
            {
                var row = n.AsSpan(k * (basis.Degree + 1), basis.Degree + 1).ToArray();
                Assert.InRange(Math.Abs(row.Sum() - (k == 0 ? 1 : 0)), 0, 1e-13 * (1 + row.Max(Math.Abs)));
                Assert.True(k > 0 || row.All(w => w >= 0));
            }
        });

    [Fact]
    public void Each_derivative_is_the_limit_of_differences_of_the_one_before() =>
        Gen.Select(Bases, Gen.Double[0, 1]).Sample((basis, f) =>
        {
            var w = basis.Degree + 1;
            var rows = Math.Min(3, basis.Degree);
            double[] At(double u)
            {
                var n = new double[(rows + 1) * w];
                basis.Evaluate(u, rows, n);
                return n;
            }

            // Within one span the functions are polynomials: central differences err by h² times a third derivative.
            var u = basis.End * f;
            const double h = 1e-5;
            if (basis.SpanAt(u - h) != basis.SpanAt(u + h))
                return;
            double[] low = At(u - h), mid = At(u), high = At(u + h);
            for (var k = 0; k < rows * w; k++)
            {
                var scale = mid.Max(Math.Abs) * Math.Pow(20, 2) * basis.Degree;
                Assert.InRange(Math.Abs(((high[k] - low[k]) / (2 * h)) - mid[k + w]), 0, 1e-9 * (1 + scale));
            }
        });
}
