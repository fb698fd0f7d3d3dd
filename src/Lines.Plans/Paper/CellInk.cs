namespace Lines.Plans.Paper;

/// <summary>Where lines run on the cells of a grid, told by squares of an ink map: columns and rows are looked up once for all their cells.</summary>
/// <param name="Map">The map.</param>
/// <param name="Columns">The grid's columns.</param>
/// <param name="Rows">The grid's rows.</param>
internal readonly record struct CellInk(InkMap Map, CellInk.Stretch[] Columns, CellInk.Stretch[] Rows) : GridPlace.ICellInk
{
    /// <summary>A page whose lines all run within this of its neighbors' paper carries next to nothing [mm].</summary>
    private const double Sliver = 25;

    /// <inheritdoc/>
    public bool IsOn(int row, int column, GridPlace.Sides printed) =>
        Map.Any(Columns[column].Less(printed.Before, printed.After), Rows[row].Less(printed.Below, printed.Above));

    /// <summary>Whether lines run well within a cell.</summary>
    public bool HasHeart(int row, int column) => Map.Any(Columns[column].Heart, Rows[row].Heart);

    /// <summary>The columns of a grid; its rows do not matter.</summary>
    public static Stretch[] ColumnsOf(InkMap map, GridPlace place)
    {
        var columns = new Stretch[place.Columns];
        for (var i = 0; i < columns.Length; i++)
        {
            var cell = place.CellAt(0, i);
            double left = i == 0 ? double.NegativeInfinity : cell.Left, right = i == columns.Length - 1 ? double.PositiveInfinity : cell.Right;
            columns[i] = new Stretch(
                map.Across(left, right), map.Across(cell.Left + GridPlace.Over, cell.Right - GridPlace.Over), map.Across(cell.Left + Sliver, cell.Right - Sliver));
        }

        return columns;
    }

    /// <summary>The rows of a grid; its columns do not matter.</summary>
    public static Stretch[] RowsOf(InkMap map, GridPlace place)
    {
        var rows = new Stretch[place.Rows];
        for (var i = 0; i < rows.Length; i++)
        {
            var cell = place.CellAt(i, 0);
            double low = i == rows.Length - 1 ? double.NegativeInfinity : cell.Bottom, high = i == 0 ? double.PositiveInfinity : cell.Top;
            rows[i] = new Stretch(
                map.Up(low, high), map.Up(cell.Bottom + GridPlace.Over, cell.Top - GridPlace.Over), map.Up(cell.Bottom + Sliver, cell.Top - Sliver));
        }

        return rows;
    }

    /// <summary>A column or a row in squares of the ink map.</summary>
    /// <param name="Whole">All of it, without end where the grid ends.</param>
    /// <param name="Inner">Less the strips of neighbors at both ends.</param>
    /// <param name="Heart">What is well within it.</param>
    internal readonly record struct Stretch((int From, int To) Whole, (int From, int To) Inner, (int From, int To) Heart)
    {
        /// <summary>What is left without the strips that neighbors print.</summary>
        public (int From, int To) Less(bool atStart, bool atEnd) => (atStart ? Inner.From : Whole.From, atEnd ? Inner.To : Whole.To);
    }
}
