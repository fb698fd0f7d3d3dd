using CsCheck;
using Lines.Kernel.Geometry;
using Lines.Kernel.Polygons;
using NetTopologySuite.Geometries;
using Xunit;

namespace Lines.Tests.Kernel.Polygons;

/// <summary>Nests of simple shapes, measured by NetTopologySuite, a geometry library of others.</summary>
public class SheetNestingTests
{
    private static readonly SheetStock Stock = new(100, 60, 2, 1, Grained: false);

    [Fact]
    public void Two_cups_lie_in_each_other_where_their_boxes_would_not_fit()
    {
        // Cups 30 by 30 with walls of 8: an arm of each goes into the other's opening of 14. Side by side they take 2 + 30 + 1 + 30 + 2.
        var cup = Polygon((0, 0), (30, 0), (30, 30), (22, 30), (22, 8), (8, 8), (8, 30), (0, 30));
        var nest = SheetNesting.Of([cup, cup], new SheetStock(100, 44, 2, 1, Grained: true));
        AssertApart([cup, cup], nest, new SheetStock(100, 44, 2, 1, Grained: true));
        Assert.Equal(1, nest.Sheets);
        Assert.InRange(nest.LastLength, 4 + 30 + 9, 4 + 30 + 9 + 1);
    }

    [Fact]
    public void Triangles_are_turned_end_for_end_into_pairs()
    {
        var triangle = Polygon((0, 0), (40, 0), (20, 50));
        var stock = new SheetStock(100, 54, 2, 1, Grained: true);
        var nest = SheetNesting.Of([triangle, triangle, triangle], stock);
        AssertApart([triangle, triangle, triangle], nest, stock);
        // Three boxes of 40 do not go on a length of 100; three triangles head to tail take 40 + 20 + 20 and twice the spacing along the slope.
        var along = 1 / Math.Sin(Math.Atan2(50, 20));
        Assert.Equal(1, nest.Sheets);
        Assert.InRange(nest.LastLength, 4 + 80 + (2 * along) - 1e-9, 4 + 80 + (2 * along) + 1.5);
    }

    [Fact]
    public void Every_shape_drawn_at_random_lies_once_on_a_sheet_clear_of_all_others() =>
        Gen.Select(Gen.Double[5, 40], Gen.Double[5, 40], Gen.Double[0.1, 0.9]).Array[1, 12].Sample(
            sizes =>
            {
                // Some with a notch, so that a shape may lie within the box of another.
                IReadOnlyList<Point2>[] shapes = [.. sizes.Select(s => Polygon((0, 0), (s.Item1, 0), (s.Item1, s.Item2), (s.Item1 * s.Item3, s.Item2), (s.Item1 * s.Item3, s.Item2 * s.Item3), (0, s.Item2)))];
                foreach (var grained in (bool[])[false, true])
                {
                    var stock = Stock with { Grained = grained };
                    var nest = SheetNesting.Of(shapes, stock, 5);
                    AssertApart(shapes, nest, stock);
                    Assert.All(nest.Places, p => Assert.Contains(p.Quarters, stock.Turns));
                    Assert.Equal(nest.Places, SheetNesting.Of(shapes, stock, 5).Places);
                }
            },
            iter: 40);

    [Fact]
    public void A_shape_exactly_as_large_as_the_room_goes_in_and_one_larger_is_named()
    {
        var exact = Polygon((0, 0), (96, 0), (96, 56), (0, 56));
        var upright = Polygon((0, 0), (56, 0), (56, 96), (0, 96));
        var large = Polygon((0, 0), (96.01, 0), (96.01, 10), (0, 10));
        var nest = SheetNesting.Of([large, exact, upright], Stock);
        Assert.Equal([0], nest.TooLarge);
        Assert.Equal(2, nest.Sheets);
        Assert.Equal(100, nest.LastLength, 1e-6);
        AssertApart([large, exact, upright], nest, Stock);
        Assert.Equal([0, 2], SheetNesting.Of([large, exact, upright], Stock with { Grained = true }).TooLarge);
        Assert.Equal((0, 0.0), (SheetNesting.Of([], Stock).Sheets, SheetNesting.Of([], Stock).LastLength));
    }

    [Fact]
    public void Sheets_without_room_and_shapes_without_area_are_refused()
    {
        var square = Polygon((0, 0), (5, 0), (5, 5), (0, 5));
        Assert.Throws<ArgumentException>(() => SheetNesting.Of([square], Stock with { Margin = 30 }));
        Assert.Throws<ArgumentException>(() => SheetNesting.Of([square], Stock with { Spacing = -1 }));
        Assert.Throws<ArgumentException>(() => SheetNesting.Of([Polygon((0, 0), (5, 0))], Stock));
        Assert.Throws<ArgumentOutOfRangeException>(() => SheetNesting.Of([square], Stock, -1));
    }

    /// <summary>That every shape but those too large lies once, inside the margins and clear of the others by the spacing.</summary>
    internal static void AssertApart(IReadOnlyList<IReadOnlyList<Point2>> shapes, SheetNest nest, SheetStock stock)
    {
        const double rounding = 1e-9;
        Assert.Equal(Enumerable.Range(0, shapes.Count).Except(nest.TooLarge), nest.Places.Select(p => p.Shape).Order());
        foreach (var sheet in nest.Places.GroupBy(p => p.Sheet))
        {
            var lying = sheet.Select(p => new Polygon(new LinearRing([.. shapes[p.Shape].Append(shapes[p.Shape][0]).Select(p.Of).Select(c => new Coordinate(c.X, c.Y))]))).ToList();
            for (var i = 0; i < lying.Count; i++)
            {
                var box = lying[i].EnvelopeInternal;
                Assert.True(
                    box.MinX >= stock.Margin - rounding && box.MinY >= stock.Margin - rounding
                    && box.MaxX <= stock.Length - stock.Margin + rounding && box.MaxY <= stock.Width - stock.Margin + rounding);
                for (var k = 0; k < i; k++)
                    Assert.True(lying[i].Distance(lying[k]) >= stock.Spacing - rounding);
            }
        }
    }

    private static IReadOnlyList<Point2> Polygon(params (double X, double Y)[] corners) => [.. corners.Select(c => new Point2(c.X, c.Y))];
}
