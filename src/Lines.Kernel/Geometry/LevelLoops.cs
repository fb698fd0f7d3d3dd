namespace Lines.Kernel.Geometry;

/// <summary>The borders of the region of a grid in which a value is at or above a level.</summary>
/// <remarks>
/// <para><b>Frame.</b> Places in steps of the grid: (i, j) is the grid point of row i of the first index, j of the second.</para>
/// <para><b>Sign.</b> The region lies to the left: its outer borders turn left (counter-clockwise), the borders of its holes right.</para>
/// <para><b>Method.</b> Marching squares. Values run linearly along the sides of a cell; where two opposite corners are high, the
/// mean of the four says whether they join. Beyond the grid the value is below every level, so every border is a loop.</para>
/// </remarks>
public static class LevelLoops
{
    /// <summary>The loops for one level.</summary>
    /// <param name="values">The values, none of them NaN, at least two each way.</param>
    /// <param name="level">The level.</param>
    /// <returns>The loops, each without repetition of its first place; empty where no value reaches the level.</returns>
    /// <exception cref="ArgumentException">The grid has fewer than two values one way, or a value is NaN.</exception>
    public static IReadOnlyList<IReadOnlyList<Point2>> Above(double[,] values, double level)
    {
        ArgumentNullException.ThrowIfNull(values);
        int rows = values.GetLength(0), columns = values.GetLength(1);
        if (rows < 2 || columns < 2)
            throw new ArgumentException(Invariant($"a grid of {rows} x {columns} values has no cell"), nameof(values));
        if (values.Cast<double>().Any(double.IsNaN))
            throw new ArgumentException("a value of the grid is not a number", nameof(values));
        return new Walk(values, level).Loops();
    }

    private sealed class Walk(double[,] values, double level)
    {
        private readonly int _rows = values.GetLength(0);
        private readonly int _columns = values.GetLength(1);

        // From the side of a cell on which a border enters it to the side on which it leaves.
        private readonly Dictionary<Side, Side> _next = [];

        public List<IReadOnlyList<Point2>> Loops()
        {
            for (var i = -1; i < _rows; i++)
            {
                for (var j = -1; j < _columns; j++)
                    Cross(i, j);
            }

            var loops = new List<IReadOnlyList<Point2>>();
            foreach (var start in _next.Keys.ToList())
            {
                if (Loop(start) is { Count: > 2 } loop)
                    loops.Add(loop);
            }

            return loops;
        }

        // Around the cell from (i, j) to (i + 1, j + 1) a border enters where the value falls below the level and leaves where it rises.
        private void Cross(int i, int j)
        {
            ReadOnlySpan<(int I, int J)> corners = [(i, j), (i + 1, j), (i + 1, j + 1), (i, j + 1)];
            ReadOnlySpan<Side> sides = [new(i, j, true), new(i + 1, j, false), new(i, j + 1, true), new(i, j, false)];
            Span<bool> high = stackalloc bool[4];
            for (var k = 0; k < 4; k++)
                high[k] = At(corners[k].I, corners[k].J) >= level;
            var joined = high[0] == high[2] && (At(i, j) + At(i + 1, j) + At(i + 1, j + 1) + At(i, j + 1)) / 4 >= level;
            for (var k = 0; k < 4; k++)
            {
                if (!high[k] || high[(k + 1) % 4])
                    continue;
                var leave = k;
                do
                    leave = (leave + (joined ? 1 : 3)) % 4;
                while (high[leave] || !high[(leave + 1) % 4]);
                _next.Add(sides[k], sides[leave]);
            }
        }

        private List<Point2> Loop(Side start)
        {
            var loop = new List<Point2>();
            var side = start;
            while (_next.Remove(side, out var after))
            {
                var place = PlaceOn(side);
                if (loop.Count == 0 || loop[^1] != place)
                    loop.Add(place);
                side = after;
            }

            if (loop.Count > 1 && loop[^1] == loop[0])
                loop.RemoveAt(loop.Count - 1);
            return loop;
        }

        private Point2 PlaceOn(Side side)
        {
            var (i, j) = (side.I, side.J);
            var (ii, jj) = side.AlongRows ? (i + 1, j) : (i, j + 1);
            double a = At(i, j), b = At(ii, jj);
            var part = double.IsNegativeInfinity(a) ? 1 : double.IsNegativeInfinity(b) ? 0 : (level - a) / (b - a);
            return new Point2(i + (part * (ii - i)), j + (part * (jj - j)));
        }

        private double At(int i, int j) => i < 0 || j < 0 || i >= _rows || j >= _columns ? double.NegativeInfinity : values[i, j];
    }

    /// <summary>A side of a cell: from (I, J) to the next grid point of the first index, or of the second.</summary>
    private readonly record struct Side(int I, int J, bool AlongRows);
}
