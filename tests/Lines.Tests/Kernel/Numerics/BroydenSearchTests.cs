using Lines.Kernel.Numerics;
using Xunit;

namespace Lines.Tests.Kernel.Numerics;

public sealed class BroydenSearchTests
{
    private static readonly SearchMeasure s_measure = new(Aim: 1e-12, Enough: 1e-10, Longest: 0.5, Probe: 1e-4);

    [Fact]
    public void A_circle_and_a_hyperbola_meet_where_the_closed_form_says()
    {
        // x² + y² = 4 and x y = 1: (x + y)² = 6 and (x − y)² = 2.
        var end = BroydenSearch.From<double>(x => ([(x[0] * x[0]) + (x[1] * x[1]) - 4, (x[0] * x[1]) - 1], x[0] + x[1]), x => x, [1.5, 1], s_measure)!;

        Assert.True(end.Miss <= 1e-12);
        Assert.Equal((Math.Sqrt(6) + Math.Sqrt(2)) / 2, end.X[0], 1e-11);
        Assert.Equal((Math.Sqrt(6) - Math.Sqrt(2)) / 2, end.X[1], 1e-11);
        Assert.Equal(end.X.Sum(), end.Made);
    }

    [Fact]
    public void Steps_go_round_places_without_a_value()
    {
        // ln x has none at x ≤ 0, where Newton's step from 4 for ln x = 0 lands: 4 − 4 ln 4 < 0.
        var end = BroydenSearch.From<double>(
            x => x[0] > 0 ? ([Math.Log(x[0])], x[0]) : null, x => x, [4.0], s_measure with { Longest = 100 })!;

        Assert.Equal(1, end.X[0], 1e-11);
    }

    [Fact]
    public void The_end_of_the_domain_is_where_a_search_stops_and_what_it_wanted_lies_beyond()
    {
        var end = BroydenSearch.From<double>(x => ([x[0] - 3], x[0]), x => [Math.Min(2, x[0])], [1.0], s_measure)!;

        Assert.Equal(2, end.X[0]);
        Assert.True(end.Wanted[0] > 2);
        Assert.Equal(1, end.Miss, 1e-12);
    }

    [Fact]
    public void A_residual_that_never_comes_to_nothing_ends_at_its_least()
    {
        var end = BroydenSearch.From<double>(x => ([1 + (x[0] * x[0])], x[0]), x => x, [0.8], s_measure)!;

        Assert.InRange(end.Miss, 1, 1.2);
    }

    [Fact]
    public void Nothing_is_searched_from_where_there_is_no_value()
    {
        Assert.Null(BroydenSearch.From<double>(_ => null, x => x, [0.0], s_measure));
    }
}
