using CsCheck;
using Lines.Kernel.Numerics;
using Xunit;

namespace Lines.Tests.Kernel.Numerics;

public sealed class InnerProductTests
{
    [Fact]
    public void It_is_sixteen_running_sums_added_in_one_order_bit_for_bit()
    {
        Gen.Double[-1e3, 1e3].Array[0, 81].Sample(a =>
        {
            var b = a.Select((x, i) => x / (i + 3.0)).ToArray();
            var sums = new double[16];
            int whole = a.Length / 4 * 4, sixteens = a.Length / 16 * 16;
            for (var i = 0; i < whole; i++)
                sums[i < sixteens ? i % 16 : i % 4] += a[i] * b[i];
            var lanes = Enumerable.Range(0, 4).Select(k => (sums[k] + sums[k + 4]) + (sums[k + 8] + sums[k + 12])).ToArray();
            var sum = (lanes[0] + lanes[1]) + (lanes[2] + lanes[3]);
            for (var i = whole; i < a.Length; i++)
                sum += a[i] * b[i];
            return BitConverter.DoubleToInt64Bits(InnerProduct.Of(a, b)) == BitConverter.DoubleToInt64Bits(sum);
        });
    }

    [Fact]
    public void The_norm_of_three_four_twelve_is_thirteen()
    {
        Assert.Equal(13, InnerProduct.Norm([3, 4, 12]));
        Assert.Equal(0, InnerProduct.Norm([]));
    }

    [Fact]
    public void Vectors_of_unequal_length_are_refused()
    {
        Assert.Throws<ArgumentException>(() => InnerProduct.Of([1, 2], [1]));
    }
}
