using System.Numerics;

namespace Lines.Kernel.Polygons;

/// <summary>The taken cells of one sheet, a row of bits up each column.</summary>
internal sealed class CellSheet
{
    private readonly int _columns;
    private readonly int _rows;
    private readonly int _words;
    private readonly ulong[] _taken;
    private readonly ulong[] _barred;
    private readonly ulong[] _swept;

    /// <summary>An empty sheet.</summary>
    public CellSheet(int columns, int rows)
    {
        (_columns, _rows, _words) = (columns, rows, (rows + 63) / 64);
        _taken = new ulong[columns * _words];
        _barred = new ulong[_words];
        _swept = new ulong[_words];
    }

    /// <summary>One column more than the farthest taken.</summary>
    public int Used { get; private set; }

    /// <summary>Frees all cells.</summary>
    public void Clear()
    {
        Array.Clear(_taken);
        Used = 0;
    }

    /// <summary>The leftmost free place of a mask, the lowest among equals.</summary>
    /// <param name="mask">The mask.</param>
    /// <param name="before">Columns from here on are of no interest.</param>
    /// <returns>Column and row of its lower left cell; null where there is none.</returns>
    public (int Column, int Row)? PlaceFor(ColumnMask mask, int before)
    {
        if (mask.Height > _rows)
            return null;
        var last = Math.Min(_columns - mask.Width, before - 1);
        for (var column = 0; column <= last; column++)
        {
            if (LowestAt(mask, column) is { } row)
                return (column, row);
        }

        return null;
    }

    /// <summary>Takes the cells of a mask.</summary>
    public void Take(ColumnMask mask, int column, int row)
    {
        foreach (var run in mask.Runs)
        {
            var start = (column + run.Column) * _words;
            for (var bit = row + run.From; bit <= row + run.To; bit++)
                _taken[start + (bit >> 6)] |= 1UL << (bit & 63);
        }

        Used = Math.Max(Used, column + mask.Width);
    }

    // A row is barred where a run of the mask set on it meets a taken cell.
    private int? LowestAt(ColumnMask mask, int column)
    {
        var barred = _barred.AsSpan();
        barred.Clear();
        for (var row = _rows - mask.Height + 1; row < 64 * _words; row++)
            barred[row >> 6] |= 1UL << (row & 63);
        var runs = mask.Runs;
        for (var i = 0; i < runs.Count; i++)
        {
            var run = runs[i];
            if (column + run.Column >= Used)
                continue;
            if (!Bar(_taken.AsSpan((column + run.Column) * _words, _words), run.From, run.To - run.From + 1))
                continue;
            var full = true;
            for (var w = 0; w < barred.Length; w++)
            {
                barred[w] |= _swept[w];
                full &= barred[w] == ulong.MaxValue;
            }

            if (full)
                return null;
        }

        for (var w = 0; w < barred.Length; w++)
        {
            if (barred[w] != ulong.MaxValue)
                return (64 * w) + BitOperations.TrailingZeroCount(~barred[w]);
        }

        return null;
    }

    // The rows from which a run of a length, begun some cells up, meets a taken cell: the taken cells swept down, doubling the sweep.
    private bool Bar(ReadOnlySpan<ulong> taken, int from, int length)
    {
        var swept = _swept.AsSpan();
        var any = 0UL;
        var (word, bit) = (from >> 6, from & 63);
        for (var w = 0; w < swept.Length; w++)
        {
            var low = w + word < taken.Length ? taken[w + word] >> bit : 0;
            swept[w] = bit > 0 && w + word + 1 < taken.Length ? low | (taken[w + word + 1] << (64 - bit)) : low;
            any |= swept[w];
        }

        // Nothing taken at or above the run on the lowest row: higher rows meet nothing either.
        if (any == 0)
            return false;
        var span = 1;
        for (; 2 * span <= length; span *= 2)
            Sweep(swept, span);
        if (length > span)
            Sweep(swept, length - span);
        return true;
    }

    private static void Sweep(Span<ulong> bits, int by)
    {
        var (word, bit) = (by >> 6, by & 63);
        for (var w = 0; w < bits.Length; w++)
        {
            var low = w + word < bits.Length ? bits[w + word] >> bit : 0;
            bits[w] |= bit > 0 && w + word + 1 < bits.Length ? low | (bits[w + word + 1] << (64 - bit)) : low;
        }
    }
}
