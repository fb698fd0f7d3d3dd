namespace Lines.Tests.Support;

/// <summary>A batten by brute force: a row of beads whose squared second differences are made least, held at ducks.</summary>
internal static class BattenOracle
{
    private const int PerSpan = 40;

    /// <summary>Gap between a line with a knuckle of one radian and its batten, in duck spacings; the greater of two layouts of the ducks.</summary>
    /// <param name="at">Place of the knuckle.</param>
    /// <param name="length">Length of the line.</param>
    /// <param name="spans">Spans between ducks.</param>
    public static double KnuckleGap(double at, double length, int spans)
    {
        var n = spans * PerSpan;
        var line = Enumerable.Range(0, n + 1).Select(k => -Math.Max(0, (k / (double)PerSpan) - (at / length * spans))).ToArray();
        return Math.Max(Gap(line, 0), Gap(line, PerSpan / 2));
    }

    private static double Gap(double[] line, int shift)
    {
        var held = Enumerable.Range(0, line.Length)
            .Select(k => k <= 1 || k >= line.Length - 2 || (k - shift) % PerSpan == 0).ToArray(); // both ends clamped
        var batten = (double[])line.Clone();

        // Normal equations of least sum of squared second differences in the free beads, banded, by plain elimination.
        int[] free = [.. Enumerable.Range(0, line.Length).Where(k => !held[k])];
        var index = new int[line.Length];
        Array.Fill(index, -1);
        for (var k = 0; k < free.Length; k++)
            index[free[k]] = k;
        var m = new double[free.Length, free.Length];
        var right = new double[free.Length];
        double[] weights = [1, -2, 1];
        for (var k = 1; k < line.Length - 1; k++)
        {
            for (var a = -1; a <= 1; a++)
            {
                if (index[k + a] is not (>= 0 and var row))
                    continue;
                for (var b = -1; b <= 1; b++)
                {
                    var weight = weights[a + 1] * weights[b + 1];
                    if (index[k + b] is >= 0 and var column)
                        m[row, column] += weight;
                    else
                        right[row] -= weight * line[k + b];
                }
            }
        }

        for (var p = 0; p < free.Length; p++)
        {
            for (var r = p + 1; r < Math.Min(free.Length, p + 4); r++)
            {
                var factor = m[r, p] / m[p, p];
                for (var c = p; c < Math.Min(free.Length, p + 4); c++)
                    m[r, c] -= factor * m[p, c];
                right[r] -= factor * right[p];
            }
        }

        for (var p = free.Length - 1; p >= 0; p--)
        {
            for (var c = p + 1; c < Math.Min(free.Length, p + 4); c++)
                right[p] -= m[p, c] * batten[free[c]];
            batten[free[p]] = right[p] / m[p, p];
        }

        return line.Zip(batten, (a, b) => Math.Abs(a - b)).Max();
    }
}
