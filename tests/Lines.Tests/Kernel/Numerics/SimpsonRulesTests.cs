using Lines.Kernel.Numerics;
using Xunit;

namespace Lines.Tests.Kernel.Numerics;

public class SimpsonRulesTests
{
    private static double Cubic(double x) => 2 - (3 * x) + (0.5 * x * x) + (0.25 * x * x * x);

    private static double CubicArea(double from, double to)
    {
        return At(to) - At(from);
        static double At(double x) => (2 * x) - (1.5 * x * x) + (x * x * x / 6) + (x * x * x * x / 16);
    }

    [Fact]
    public void First_and_second_rule_are_exact_for_a_cubic()
    {
        Assert.Equal(CubicArea(1, 5), SimpsonRules.First([.. Enumerable.Range(0, 9).Select(i => Cubic(1 + (0.5 * i)))], 0.5), 1e-12);
        Assert.Equal(CubicArea(1, 4), SimpsonRules.Second([.. Enumerable.Range(0, 7).Select(i => Cubic(1 + (0.5 * i)))], 0.5), 1e-12);
    }

    [Fact]
    public void Third_rule_and_unequal_spacing_are_exact_for_a_parabola()
    {
        static double F(double x) => 1 + x - (2 * x * x);
        static double Area(double x) => x + (x * x / 2) - (2 * x * x * x / 3);
        Assert.Equal(Area(3) - Area(2), SimpsonRules.Third(F(2), F(3), F(4), 1), 1e-12);
        double[] places = [0, 0.3, 1, 1.1, 2.5, 4];
        Assert.Equal(Area(4), SimpsonRules.Unequal(places, [.. places.Select(F)]), 1e-12);
        Assert.Equal(3.5, SimpsonRules.Unequal([1, 2], [3, 4]), 1e-15);
    }

    [Fact]
    public void A_wrong_number_of_ordinates_is_refused_with_the_number()
    {
        Assert.Contains("not 4", Assert.Throws<ArgumentException>(() => SimpsonRules.First([1, 2, 3, 4], 1)).Message, StringComparison.Ordinal);
        Assert.Contains("not 5", Assert.Throws<ArgumentException>(() => SimpsonRules.Second([1, 2, 3, 4, 5], 1)).Message, StringComparison.Ordinal);
        Assert.Contains("does not follow 2", Assert.Throws<ArgumentException>(() => SimpsonRules.Unequal([1, 2, 2], [0, 0, 0])).Message, StringComparison.Ordinal);
    }
}
