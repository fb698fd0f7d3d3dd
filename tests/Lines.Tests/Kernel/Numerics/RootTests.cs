using Lines.Kernel.Numerics;
using Xunit;

namespace Lines.Tests.Kernel.Numerics;

public class RootTests
{
    [Fact]
    public void The_first_place_a_condition_holds_is_the_first_number_it_holds_for()
    {
        var root = Root.FirstWhere(t => t * t >= 2, 0, 2);

        Assert.True(root * root >= 2);
        Assert.False(Math.BitDecrement(root) * Math.BitDecrement(root) >= 2);
    }

    [Fact]
    public void The_way_may_lead_either_way() => Assert.Equal(-1, Root.FirstWhere(t => t <= -1, 5, -4));

    [Fact]
    public void A_condition_that_holds_nowhere_between_gives_the_end_where_it_does() =>
        Assert.Equal(1, Root.FirstWhere(_ => false, 0, 1));
}
