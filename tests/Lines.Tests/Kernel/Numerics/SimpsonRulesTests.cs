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

    [Theory]
    [InlineData(11, 0.99)]
    [InlineData(21, 0.9975)]
    public void On_the_parabolic_hull_the_first_rule_is_exact_and_the_trapezoid_is_not(int stations, double trapezoid)
    {
        // Section areas of Wigley's hull are (2/3) B T (1 - ξ²); its volume is 4/9 L B T. Closed form: the trapezoid's ratio is 1 - 1/n² for n intervals.
        var h = 1.0 / (stations - 1);
        double[] areas = [.. Enumerable.Range(0, stations).Select(i => 2 / 3.0 * (1 - Math.Pow((2 * i * h) - 1, 2)))];
        Assert.Equal(4 / 9.0, SimpsonRules.First(areas, h), 1e-15);
        Assert.Equal(trapezoid, (areas.Sum() - ((areas[0] + areas[^1]) / 2)) * h / (4 / 9.0), 1e-12);
    }

    [Fact]
    public void A_wrong_number_of_ordinates_is_refused_with_the_number()
    {
        Assert.Contains("not 4", Assert.Throws<ArgumentException>(() => SimpsonRules.First([1, 2, 3, 4], 1)).Message, StringComparison.Ordinal);
        Assert.Contains("not 5", Assert.Throws<ArgumentException>(() => SimpsonRules.Second([1, 2, 3, 4, 5], 1)).Message, StringComparison.Ordinal);
        Assert.Contains("does not follow 2", Assert.Throws<ArgumentException>(() => SimpsonRules.Unequal([1, 2, 2], [0, 0, 0])).Message, StringComparison.Ordinal);
    }
}
