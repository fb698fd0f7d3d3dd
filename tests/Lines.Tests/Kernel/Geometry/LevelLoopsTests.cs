using Lines.Kernel.Geometry;
using Xunit;

namespace Lines.Tests.Kernel.Geometry;

public class LevelLoopsTests
{
    [Fact]
    public void A_cone_gives_circles_of_the_right_area_that_turn_left()
    {
        var cone = Grid(81, 81, (x, y) => 40 - Math.Sqrt(((x - 40) * (x - 40)) + ((y - 40) * (y - 40))));
        foreach (var radius in new[] { 5.0, 17.3, 39.2 })
        {
            // Chords of a grid of step 1 cut at most 1/8 / radius off a circle, all round: below 2π r / (8 r).
            var loop = Assert.Single(LevelLoops.Above(cone, 40 - radius));
            Assert.Equal(Math.PI * radius * radius, Area(loop), Math.PI / 4);
        }
    }

    [Fact]
    public void A_ring_has_a_hole_that_turns_right()
    {
        var ring = Grid(61, 61, (x, y) => -Math.Abs(Math.Sqrt(((x - 30) * (x - 30)) + ((y - 30) * (y - 30))) - 18));
        var areas = LevelLoops.Above(ring, -4).Select(Area).Order().ToList();
        Assert.Equal(2, areas.Count);
        Assert.Equal(-Math.PI * 14 * 14, areas[0], 1.0);
        Assert.Equal(Math.PI * 22 * 22, areas[1], 1.0);
    }

    [Fact]
    public void A_region_that_reaches_the_edge_runs_along_it_and_its_area_is_exact_for_linear_values()
    {
        var slope = Grid(5, 9, (x, y) => x + (0.25 * y));
        Assert.Equal(32, Area(Assert.Single(LevelLoops.Above(slope, -1))), 1e-12);
        // Above 2: right of x = 2 - y/4 from y = 0 (x = 2) to y = 8 (x = 0), in a grid 4 wide.
        Assert.Equal(24, Area(Assert.Single(LevelLoops.Above(slope, 2))), 1e-12);
        Assert.Empty(LevelLoops.Above(slope, 7));
    }

    [Theory]
    [InlineData(1.0, 1)]
    [InlineData(-1.0, 2)]
    public void Two_high_corners_opposite_each_other_join_where_their_middle_is_high(double low, int loops)
    {
        // Highs of 2 at two opposite corners of the middle cell; the mean of its corners is (4 + 2 low) / 4, against a level of 1.2.
        double[,] values = { { 0, 0, 0, 0 }, { 0, 2, low, 0 }, { 0, low, 2, 0 }, { 0, 0, 0, 0 } };
        Assert.Equal(loops, LevelLoops.Above(values, 1.2).Count);
    }

    [Fact]
    public void Areas_above_and_below_a_level_make_up_the_whole_of_any_grid()
    {
        var random = new Random(7);
        var noise = Grid(23, 17, (_, _) => random.NextDouble());
        var opposite = Grid(23, 17, (x, y) => -noise[(int)x, (int)y]);
        foreach (var level in new[] { 0.2, 0.5, 0.8 })
        {
            double above = LevelLoops.Above(noise, level).Sum(Area), below = LevelLoops.Above(opposite, -level).Sum(Area);
            Assert.Equal(22 * 16, above + below, 1e-9);
        }
    }

    [Fact]
    public void A_grid_without_cells_or_with_a_hole_in_its_values_is_refused()
    {
        Assert.Throws<ArgumentException>(() => LevelLoops.Above(new double[1, 5], 0));
        Assert.Throws<ArgumentException>(() => LevelLoops.Above(new[,] { { 0, 1 }, { double.NaN, 2 } }, 0));
    }

    private static double[,] Grid(int rows, int columns, Func<double, double, double> f)
    {
        var values = new double[rows, columns];
        for (var i = 0; i < rows; i++)
        {
            for (var j = 0; j < columns; j++)
                values[i, j] = f(i, j);
        }

        return values;
    }

    private static double Area(IReadOnlyList<Point2> loop) => ArcPath.Through(loop, closed: true).SignedArea();
}
