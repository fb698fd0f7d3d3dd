using Lines.Kernel.Numerics;
using Xunit;

namespace Lines.Tests.Kernel.Numerics;

public class GaussKronrodTests
{
    [Fact]
    public void Fifteen_nodes_are_exact_to_degree_22_and_seven_to_13()
    {
        for (var degree = 0; degree <= 24; degree++)
        {
            var power = degree;
            double[] sum = [0], apart = [0];
            GaussKronrod.Over((t, values) => values[0] = Math.Pow(t, power), -1, 1, sum, apart);
            var exact = degree % 2 == 0 ? 2.0 / (degree + 1) : 0;
            if (degree <= 23)
                Assert.Equal(exact, sum[0], 1e-15);
            else
                Assert.NotEqual(exact, sum[0], 1e-10);
            if (degree <= 13)
                Assert.Equal(0, apart[0], 1e-15);
            else if (degree % 2 == 0)
                Assert.True(apart[0] > 1e-5);
        }
    }

    [Fact]
    public void Functions_of_an_interval_are_integrated_together()
    {
        double[] sums = [0, 0], apart = [0, 0];
        GaussKronrod.Over((t, values) => (values[0], values[1]) = (Math.Exp(t), Math.Cos(t)), 1, 2, sums, apart);
        Assert.Equal(Math.Exp(2) - Math.Exp(1), sums[0], 1e-14);
        Assert.Equal(Math.Sin(2) - Math.Sin(1), sums[1], 1e-14);
    }
}
