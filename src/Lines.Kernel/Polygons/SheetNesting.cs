using Lines.Kernel.Geometry;

namespace Lines.Kernel.Polygons;

/// <summary>Lays shapes on sheets, true shape into true shape.</summary>
/// <remarks>
/// <para><b>Method.</b> Shapes are laid one after the other, each on the first sheet that has room for it, turned and placed so that it reaches
/// least far along the sheet. Whether there is room is told on a grid of cells, shapes grown by half the spacing (<see cref="ColumnMask"/>).
/// The order begins with the largest and is changed by exchanging two shapes or moving one; a change is kept where it takes no more of
/// the sheets. Where any turn is allowed, half the changes are tried with shapes turned end for end alone: what reaches least far at once is not
/// always best in the end. The changes are drawn from a fixed row of random numbers, so the same shapes always lie the same way. The best orders
/// are then laid out again on a finer grid.</para>
/// <para><b>Accuracy.</b> No shape is nearer to another than the spacing, or to an edge than the margin, but for rounding.</para>
/// </remarks>
public sealed class SheetNesting
{
    /// <summary>Changes tried where nothing else is asked.</summary>
    public const int UsualEffort = 40;

    // Cells across the width of a sheet while orders are tried, and for the last layouts: 5 and 2 mm on a sheet of 1.22 m.
    private const int CoarseRows = 250;
    private const int FineRows = 600;
    private const int Finalists = 3;

    private readonly SheetStock _stock;
    private readonly IReadOnlyList<IReadOnlyList<Point2>> _shapes;

    private SheetNesting(IReadOnlyList<IReadOnlyList<Point2>> shapes, SheetStock stock) => (_shapes, _stock) = (shapes, stock);

    /// <summary>Lays shapes on sheets.</summary>
    /// <param name="shapes">The corners of each shape, none of which it exceeds.</param>
    /// <param name="stock">The sheets.</param>
    /// <param name="effort">How many changes of the order are tried, 0 or more.</param>
    /// <exception cref="ArgumentException">A shape has fewer than three corners, or the sheets have no room.</exception>
    public static SheetNest Of(IReadOnlyList<IReadOnlyList<Point2>> shapes, SheetStock stock, int effort = UsualEffort)
    {
        ArgumentNullException.ThrowIfNull(shapes);
        ArgumentNullException.ThrowIfNull(stock);
        ArgumentOutOfRangeException.ThrowIfNegative(effort);
        if (shapes.Any(s => s.Count < 3))
            throw new ArgumentException("a shape has three corners or more", nameof(shapes));
        if (!(stock.Room.Width > 0 && stock.Room.Height > 0 && stock.Spacing >= 0))
            throw new ArgumentException("the margins leave no room on a sheet", nameof(stock));
        return new SheetNesting(shapes, stock).Best(effort);
    }

    private SheetNest Best(int effort)
    {
        var fits = _shapes.Select(s => Fits(s, _stock.Turns)).ToArray();
        int[] tooLarge = [.. Enumerable.Range(0, _shapes.Count).Where(i => !fits[i])];
        int[] order = [.. Enumerable.Range(0, _shapes.Count).Where(i => fits[i]).OrderByDescending(i => Area(_shapes[i])).ThenBy(i => i)];
        if (order.Length == 0)
            return new SheetNest([], 0, 0, tooLarge);
        var sets = TurnSets(order);
        var best = sets.SelectMany(turns => Layouts(order, turns, effort / sets.Count)).MinBy(l => l.Taken)!;
        return new SheetNest(
            [.. best.Places.OrderBy(p => p.Sheet).ThenBy(p => p.Shift.X).ThenBy(p => p.Shift.Y)], best.Sheets, best.LastLength, tooLarge);
    }

    // All turns allowed, and end for end alone where every shape goes on a sheet that way.
    private List<IReadOnlyList<int>> TurnSets(int[] shapes)
    {
        int[] endForEnd = [0, 2];
        return _stock.Grained || !shapes.All(i => Fits(_shapes[i], endForEnd)) ? [_stock.Turns] : [_stock.Turns, endForEnd];
    }

    private IEnumerable<SheetLayout.Result> Layouts(int[] order, IReadOnlyList<int> turns, int effort)
    {
        var tried = Orders(new SheetLayout(_shapes, _stock, turns, CoarseRows), order, effort);
        var fine = new SheetLayout(_shapes, _stock, turns, FineRows);
        return tried.Select(fine.Of);
    }

    // The orders that take least, best first.
    private static IEnumerable<int[]> Orders(SheetLayout layout, int[] first, int effort)
    {
        var kept = new List<(double Taken, int[] Order)> { (layout.Of(first).Taken, first) };
        var (taken, order) = kept[0];
        var random = new RandomRow(first.Length);
        for (var i = 0; i < effort && first.Length > 1; i++)
        {
            var changed = Changed(order, random);
            var result = layout.Of(changed).Taken;
            if (!(result <= taken))
                continue;
            (taken, order) = (result, changed);
            kept.Add((taken, order));
        }

        return kept.AsEnumerable().Reverse().Take(Finalists).Append(kept[0]).Select(k => k.Order);
    }

    private static int[] Changed(int[] order, RandomRow random)
    {
        var changed = new List<int>(order);
        int i = random.Below(order.Length), k = random.Below(order.Length);
        if (random.Below(2) == 0)
        {
            (changed[i], changed[k]) = (changed[k], changed[i]);
        }
        else
        {
            changed.RemoveAt(i);
            changed.Insert(k, order[i]);
        }

        return [.. changed];
    }

    private bool Fits(IReadOnlyList<Point2> shape, IReadOnlyList<int> turns)
    {
        var (box, room) = (Box2.Around(shape), _stock.Room);
        return turns.Any(t => t % 2 == 0
            ? box.Width <= room.Width && box.Height <= room.Height
            : box.Height <= room.Width && box.Width <= room.Height);
    }

    private static double Area(IReadOnlyList<Point2> shape) => Math.Abs(ArcPath.Through(shape, closed: true).SignedArea());

    // Park and Miller's minimal standard generator, "Random number generators: good ones are hard to find", CACM 31, 1988 (from memory).
    private sealed class RandomRow(int seed)
    {
        private long _state = 1 + seed;

        public int Below(int limit)
        {
            _state = _state * 16807 % 2147483647;
            return (int)(_state % limit);
        }
    }
}
