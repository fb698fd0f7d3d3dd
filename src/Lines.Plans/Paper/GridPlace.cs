using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>One way to lay a grid of cells over a part.</summary>
/// <remarks>
/// <para><b>Frame.</b> The part's own millimeters. Row 0 is at the top, column 0 at the left.</para>
/// <para><b>Method.</b> Every page prints half a strip more than its cell all round. So the part may stand over the outer cells by half a
/// strip, and a cell whose lines all run in the strips that needed neighbors print is not needed itself.</para>
/// </remarks>
/// <param name="First">The cell at the upper left.</param>
/// <param name="Rows">Number of rows.</param>
/// <param name="Columns">Number of columns.</param>
internal readonly record struct GridPlace(Box2 First, int Rows, int Columns)
{
    /// <summary>How far a page prints beyond its cell [mm].</summary>
    public const double Over = PageLayout.Strip / 2;

    /// <summary>The smallest grid over a part whose first cell has a given upper left corner.</summary>
    /// <param name="bounds">The part.</param>
    /// <param name="left">Left side of the first cell, at most half a strip right of the part's.</param>
    /// <param name="top">Top of the first cell, at most half a strip below the part's.</param>
    /// <param name="cell">A cell of the size wanted.</param>
    public static GridPlace Around(Box2 bounds, double left, double top, Box2 cell) => new(
        new Box2(left, top - cell.Height, left + cell.Width, top),
        Cells(top - bounds.Bottom - Over, cell.Height), Cells(bounds.Right - left - Over, cell.Width));

    /// <summary>A cell.</summary>
    public Box2 CellAt(int row, int column) => First.Moved(new Vector2(column * First.Width, -row * First.Height));

    /// <summary>Tells which cells are needed.</summary>
    /// <typeparam name="TInk">What tells where lines run: a struct, since a search asks it a million times.</typeparam>
    /// <param name="ink">Where lines of the part run.</param>
    /// <param name="limit">Most cells of interest.</param>
    /// <param name="needed">Takes one flag for each cell, row after row.</param>
    /// <returns>How many are needed; something above <paramref name="limit"/>, and no flags, where there are more.</returns>
    public int Needed<TInk>(TInk ink, int limit, Span<bool> needed)
        where TInk : struct, ICellInk
    {
        var cells = Rows * Columns;
        Span<bool> sure = cells <= 256 ? stackalloc bool[cells] : new bool[cells];
        sure.Clear();
        var count = 0;
        for (var row = 0; row < Rows; row++)
        {
            for (var column = 0; column < Columns; column++)
            {
                if (!ink.IsOn(row, column, new Sides(row > 0, row < Rows - 1, column > 0, column < Columns - 1)))
                    continue;
                sure[(row * Columns) + column] = true;
                if (++count > limit)
                    return count;
            }
        }

        sure.CopyTo(needed);
        for (var row = 0; row < Rows; row++)
        {
            for (var column = 0; column < Columns; column++)
            {
                var i = (row * Columns) + column;
                if (sure[i])
                    continue;
                var printed = new Sides(
                    row > 0 && sure[i - Columns], row < Rows - 1 && sure[i + Columns], column > 0 && sure[i - 1], column < Columns - 1 && sure[i + 1]);
                needed[i] = ink.IsOn(row, column, printed);
                if (needed[i] && ++count > limit)
                    return count;
            }
        }

        return count;
    }

    /// <summary>A cell, without end where the grid ends, less the strips that neighbors print.</summary>
    public Box2 Ground(int row, int column, Sides printed)
    {
        var cell = CellAt(row, column);
        return new Box2(
            printed.Before ? cell.Left + Over : column == 0 ? double.NegativeInfinity : cell.Left,
            printed.Below ? cell.Bottom + Over : row == Rows - 1 ? double.NegativeInfinity : cell.Bottom,
            printed.After ? cell.Right - Over : column == Columns - 1 ? double.PositiveInfinity : cell.Right,
            printed.Above ? cell.Top - Over : row == 0 ? double.PositiveInfinity : cell.Top);
    }

    // A part that ends on a seam to a thousandth of the paper tolerance needs no further page for it.
    private static int Cells(double extent, double cell) => Math.Max(1, (int)Math.Ceiling((extent - 2e-5) / cell));

    /// <summary>The four sides of a cell.</summary>
    public readonly record struct Sides(bool Above, bool Below, bool Before, bool After);

    /// <summary>Where lines of a part run.</summary>
    public interface ICellInk
    {
        /// <summary>Whether a line runs on a cell's ground.</summary>
        /// <param name="row">Its row.</param>
        /// <param name="column">Its column.</param>
        /// <param name="printed">The sides on which a neighbor's strip is left out.</param>
        bool IsOn(int row, int column, Sides printed);
    }
}
