using Lines.Kernel.Numerics;

namespace Lines.Kernel.Splines;

/// <summary>A bicubic function over a rectangle by its sixteen Bernstein ordinates, the second variable running quickest.</summary>
public static class BezierBox
{
    /// <summary>Ordinates of the four quarters, 64 in all: the second variable's halves within the first's.</summary>
    /// <param name="b">The sixteen ordinates.</param>
    /// <param name="quarters">Receives four times sixteen ordinates.</param>
    public static void Quarter(ReadOnlySpan<double> b, Span<double> quarters)
    {
        // Halved along the second variable in every row, then along the first in every column; 7 x 7 points hold the four quarters.
        Span<double> wide = stackalloc double[28];
        Span<double> all = stackalloc double[49];
        Span<double> column = stackalloc double[4];
        Span<double> first = stackalloc double[4];
        Span<double> second = stackalloc double[4];
        for (var i = 0; i < 4; i++)
        {
            BernsteinCubic.Halve(b.Slice(4 * i, 4), first, second);
            first.CopyTo(wide[(7 * i)..]);
            second.CopyTo(wide[((7 * i) + 3)..]);
        }

        for (var j = 0; j < 7; j++)
        {
            for (var i = 0; i < 4; i++)
                column[i] = wide[(7 * i) + j];
            BernsteinCubic.Halve(column, first, second);
            for (var i = 0; i < 4; i++)
                (all[(7 * i) + j], all[(7 * (i + 3)) + j]) = (first[i], second[i]);
        }

        for (var k = 0; k < 4; k++)
        {
            for (var i = 0; i < 4; i++)
                all.Slice((7 * ((3 * (k / 2)) + i)) + (3 * (k % 2)), 4).CopyTo(quarters[((16 * k) + (4 * i))..]);
        }
    }

    /// <summary>The four quarters, each in an array of its own.</summary>
    public static IReadOnlyList<double[]> Quarters(ReadOnlySpan<double> b)
    {
        var all = new double[64];
        Quarter(b, all);
        return [all[..16], all[16..32], all[32..48], all[48..]];
    }
}
