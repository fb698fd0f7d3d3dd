using Lines.Kernel.Geometry;
using Lines.Kernel.Polygons;

namespace Lines.Tests.Support;

/// <summary>The best of many shelf packings of the shapes' bounding boxes: what a nest of the true shapes is held against.</summary>
/// <remarks>
/// Coffman, Garey, Johnson, Tarjan, "Performance bounds for level-oriented two-dimensional packing algorithms", SIAM J. Computing 9, 1980 (from
/// memory): next-fit and first-fit shelves by falling height, and with them best-fit shelves; here shelves along the sheet and across it, boxes
/// as drawn, all upright, all level, or each whichever way suits its shelf, in the usual order and in many drawn at random.
/// </remarks>
internal static class ShelfPacking
{
    /// <summary>Whole sheets and the used fraction of the last.</summary>
    public static double Best(IReadOnlyList<IReadOnlyList<Point2>> shapes, SheetStock stock, int randomOrders)
    {
        var boxes = shapes.Select(s => Box2.Around(s)).Select(b => (W: b.Width + stock.Spacing, H: b.Height + stock.Spacing)).ToArray();
        var (length, width) = (stock.Room.Width + stock.Spacing, stock.Room.Height + stock.Spacing);
        var random = new Random(7);
        var best = double.PositiveInfinity;
        foreach (var turn in Turns(stock))
        {
            var turned = boxes.Select(turn).ToArray();
            foreach (var isAcross in new[] { false, true })
            {
                // A shelf is a strip of the sheet; along it boxes have an extent, across it a height.
                var items = turned.Select(b => isAcross ? (Along: b.H, Across: b.W) : (Along: b.W, Across: b.H)).ToArray();
                var (run, stack) = isAcross ? (width, length) : (length, width);
                if (items.Any(i => i.Along > run + 1e-9 || i.Across > stack + 1e-9))
                    continue;
                foreach (var order in Orders(items, random, randomOrders))
                {
                    for (var fit = 0; fit < 3; fit++)
                        best = Math.Min(best, Taken(order, run, stack, fit, isAcross, stock));
                }
            }
        }

        return best;
    }

    private static IEnumerable<Func<(double W, double H), (double W, double H)>> Turns(SheetStock stock)
    {
        yield return b => b;
        if (stock.Grained)
            yield break;
        yield return b => (b.H, b.W);
        yield return b => (Math.Max(b.W, b.H), Math.Min(b.W, b.H));
        yield return b => (Math.Min(b.W, b.H), Math.Max(b.W, b.H));
    }

    private static IEnumerable<(double Along, double Across)[]> Orders((double Along, double Across)[] items, Random random, int count)
    {
        yield return [.. items.OrderByDescending(i => i.Across)];
        yield return [.. items.OrderByDescending(i => i.Along)];
        yield return [.. items.OrderByDescending(i => i.Along * i.Across)];
        for (var k = 0; k < count; k++)
        {
            var shuffled = items.ToArray();
            random.Shuffle(shuffled);
            yield return shuffled;
        }
    }

    // The shelves as they are opened, then put on sheets one after the other; the used fraction of the last is told along its length.
    private static double Taken((double Along, double Across)[] order, double run, double stack, int fit, bool isAcross, SheetStock stock)
    {
        var shelves = new List<(double Used, double Height)>();
        foreach (var (along, across) in order)
        {
            var open = Enumerable.Range(0, shelves.Count).Where(k => shelves[k].Used + along <= run + 1e-9 && across <= shelves[k].Height + 1e-9);
            if (fit == 0)
                open = open.Where(k => k == shelves.Count - 1);
            var chosen = fit == 2 ? open.OrderBy(k => run - shelves[k].Used).Cast<int?>().FirstOrDefault() : open.Cast<int?>().FirstOrDefault();
            if (chosen is { } c)
                shelves[c] = (shelves[c].Used + along, shelves[c].Height);
            else
                shelves.Add((along, across));
        }

        // Shelves of falling height, each on the first sheet with room.
        var sheets = new List<(double Stacked, double Longest)>();
        foreach (var shelf in shelves.OrderByDescending(s => s.Height))
        {
            var k = sheets.FindIndex(s => s.Stacked + shelf.Height <= stack + 1e-9);
            if (k < 0)
                sheets.Add((shelf.Height, shelf.Used));
            else
                sheets[k] = (sheets[k].Stacked + shelf.Height, Math.Max(sheets[k].Longest, shelf.Used));
        }

        // Any of the sheets may be the last.
        var last = sheets.Min(s => (isAcross ? s.Stacked : s.Longest) - stock.Spacing + (2 * stock.Margin));
        return sheets.Count - 1 + (last / stock.Length);
    }
}
