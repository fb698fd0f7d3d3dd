using Lines.Kernel.Geometry;

namespace Lines.Kernel.Polygons;

/// <summary>The cells of a grid that a polygon and all within a distance of it touch, as runs up each column.</summary>
/// <remarks>
/// <para><b>Method.</b> Every side grown by the distance is a strip with round ends, whose highest and lowest place over a column of cells are
/// taken exactly; between the sides a column is filled where the line up its middle is inside.</para>
/// <para><b>Accuracy.</b> No cell that the grown polygon touches is missing; a touched cell is marked whole.</para>
/// </remarks>
internal sealed class ColumnMask
{
    private ColumnMask(IReadOnlyList<Run>[] columns, int height, Point2 corner)
    {
        (Width, Height, Corner) = (columns.Length, height, corner);
        // Long runs first: they tell soonest that there is no room.
        Runs = [.. columns.SelectMany(c => c).OrderByDescending(r => r.To - r.From).ThenBy(r => r.Column)];
    }

    /// <summary>Cells across.</summary>
    public int Width { get; }

    /// <summary>Cells up.</summary>
    public int Height { get; }

    /// <summary>Where the lower left corner of the cells is on the polygon's own plane.</summary>
    public Point2 Corner { get; }

    /// <summary>The runs, longest first.</summary>
    public IReadOnlyList<Run> Runs { get; }

    /// <summary>Marks the cells of a polygon.</summary>
    /// <param name="polygon">Its corners.</param>
    /// <param name="grown">How far it is grown.</param>
    /// <param name="cellWidth">Width of a cell.</param>
    /// <param name="cellHeight">Height of a cell.</param>
    public static ColumnMask Of(IReadOnlyList<Point2> polygon, double grown, double cellWidth, double cellHeight)
    {
        var box = Box2.Around(polygon).Grown(grown);
        int width = Cells(box.Width / cellWidth), height = Cells(box.Height / cellHeight);
        var marked = new bool[width, height];
        for (var i = 0; i < polygon.Count; i++)
            MarkSide(polygon[i], polygon[(i + 1) % polygon.Count]);
        for (var column = 0; column < width; column++)
            FillInside(column);
        return new ColumnMask([.. Enumerable.Range(0, width).Select(RunsOf)], height, new Point2(box.Left, box.Bottom));

        void MarkSide(Point2 a, Point2 b)
        {
            if (a.X > b.X)
                (a, b) = (b, a);
            int first = Column(a.X - grown), last = Column(b.X + grown);
            for (var column = first; column <= last; column++)
            {
                double left = box.Left + (column * cellWidth), right = left + cellWidth;
                var strip = new GrownSide(a, b, grown);
                for (var row = Row(strip.Lowest(left, right)); row <= Row(strip.Highest(left, right)); row++)
                    marked[column, row] = true;
            }
        }

        void FillInside(int column)
        {
            var x = box.Left + ((column + 0.5) * cellWidth);
            var crossings = new List<double>();
            for (var i = 0; i < polygon.Count; i++)
            {
                Point2 a = polygon[i], b = polygon[(i + 1) % polygon.Count];
                if ((a.X > x) != (b.X > x))
                    crossings.Add(a.Y + ((x - a.X) / (b.X - a.X) * (b.Y - a.Y)));
            }

            crossings.Sort();
            for (var k = 0; k + 1 < crossings.Count; k += 2)
            {
                for (var row = Row(crossings[k]); row <= Row(crossings[k + 1]); row++)
                    marked[column, row] = true;
            }
        }

        int Column(double x) => Math.Clamp((int)Math.Floor((x - box.Left) / cellWidth), 0, width - 1);
        int Row(double y) => Math.Clamp((int)Math.Floor((y - box.Bottom) / cellHeight), 0, height - 1);

        List<Run> RunsOf(int column)
        {
            var runs = new List<Run>();
            for (var row = 0; row < height; row++)
            {
                if (!marked[column, row])
                    continue;
                var from = row;
                while (row + 1 < height && marked[column, row + 1])
                    row++;
                runs.Add(new Run(column, from, row));
            }

            return runs;
        }
    }

    // A shape as wide as the room to a millionth of a cell goes in.
    private static int Cells(double extent) => Math.Max(1, (int)Math.Ceiling(extent - 1e-6));

    /// <summary>Marked cells one above the other.</summary>
    /// <param name="Column">Their column.</param>
    /// <param name="From">The lowest.</param>
    /// <param name="To">The highest.</param>
    public readonly record struct Run(int Column, int From, int To);

    /// <summary>A side from left to right with all within a distance of it.</summary>
    private readonly struct GrownSide(Point2 a, Point2 b, double by)
    {
        private readonly Vector2 _up = a == b ? new Vector2(0, by) : by * Up((b - a).Unit());

        // The upper border is an arch: its highest place over a column is the one nearest to the top of the whole.
        public double Highest(double left, double right) => Border(Math.Clamp(a.Y >= b.Y ? a.X : b.X, left, right), 1);

        public double Lowest(double left, double right) => Border(Math.Clamp(a.Y <= b.Y ? a.X : b.X, left, right), -1);

        private static Vector2 Up(Vector2 along) => along.TurnedLeft.Y >= 0 ? along.TurnedLeft : -along.TurnedLeft;

        private double Border(double x, int side)
        {
            var off = side * _up;
            Point2 from = a + off, to = b + off;
            if (x <= from.X)
                return Round(a, x, side);
            if (x >= to.X)
                return Round(b, x, side);
            return from.Y + ((x - from.X) / (to.X - from.X) * (to.Y - from.Y));
        }

        private double Round(Point2 center, double x, int side) =>
            center.Y + (side * Math.Sqrt(Math.Max(0, (by * by) - ((x - center.X) * (x - center.X)))));
    }
}
