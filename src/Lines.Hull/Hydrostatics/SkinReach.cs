using Lines.Kernel.Splines;

namespace Lines.Hull.Hydrostatics;

/// <summary>The least of a bicubic function over a patch, given by its Bezier points.</summary>
internal static class SkinReach
{
    /// <summary>The least value.</summary>
    /// <remarks><b>Method.</b> A piece whose Bezier points all lie above the least corner found so far holds no lower value; others are quartered.
    /// <b>Accuracy.</b> The value is reached on the patch, and none is lower by more than the tolerance.</remarks>
    /// <param name="values">The function's Bezier points, laid out as the net's.</param>
    /// <param name="net">The patch.</param>
    /// <param name="tolerance">Greatest error, above 0.</param>
    public static double Least(double[] values, BezierNet net, double tolerance)
    {
        var best = double.PositiveInfinity;
        for (var i = 0; i <= net.Rows; i++)
        {
            for (var j = 0; j <= net.Columns; j++)
                best = Math.Min(best, values[(3 * i * net.Stride) + (3 * j)]);
        }

        var open = new Stack<double[]>();
        for (var i = 0; i < net.Rows; i++)
        {
            for (var j = 0; j < net.Columns; j++)
            {
                var piece = new double[16];
                for (var k = 0; k < 4; k++)
                    Array.Copy(values, (((3 * i) + k) * net.Stride) + (3 * j), piece, 4 * k, 4);
                open.Push(piece);
            }
        }

        while (open.TryPop(out var piece))
        {
            best = Math.Min(best, Math.Min(Math.Min(piece[0], piece[3]), Math.Min(piece[12], piece[15])));
            if (piece.Min() >= best - tolerance)
                continue;
            foreach (var quarter in BezierBox.Quarters(piece))
                open.Push(quarter);
        }

        return best;
    }
}
