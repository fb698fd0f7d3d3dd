using Lines.Kernel.Geometry;
using MathNet.Numerics.LinearAlgebra;

namespace Lines.Hull.Fairness;

/// <summary>An entry of a table of offsets that its neighbors do not bear out.</summary>
/// <param name="Index">Index of the point.</param>
/// <param name="Error">By how much the given offset is too great [m]; negative where it is too small.</param>
/// <param name="Expected">The offset that the rest of the line asks for [m].</param>
public readonly record struct DoubtfulOffset(int Index, double Error, double Expected);

/// <summary>Finds doubtful entries of a line known only by points: a column or a row of a table of offsets.</summary>
/// <remarks>
/// <para><b>Method.</b> Every point is foretold from its neighbors without itself: by the polynomial through three of them on either
/// side and by that through two, both over the chord length, met where they have the point's abscissa. The difference of the two says
/// how well a point can be foretold there, twice and four times that for the second and the first point from an end. A point is doubtful where it stands further from the first than that and than what rounding
/// of the table can do at most, the weights of the neighbors counted. Of several the one is taken without which the rest is foretold
/// best; it is put right and the search begins anew, so that no neighbor is blamed.</para>
/// <para>Where the table is rounded to a quarter of a millimeter or more, six neighbors tell too little: there every point is foretold by a polynomial of
/// the fourth degree smoothed through ten, and is doubtful where it stands further from that than half a step and 4.2 times what rounding, or the
/// unrest of the ten, leaves of doubt in it; where that unrest is more than rounding makes, as near round ends, and next to an end,
/// only where the few neighbors say so too. The one furthest beyond is taken first.</para>
/// <para><b>Accuracy.</b> An error of 1/16 in in one entry is found, its size within 25 %, on lines of 21 stations and their ends over
/// lengths of 2 to 12 m rounded to a tenth of a millimeter or finer, but next to the ends of lines that are round there. Rounded to 1/32 in nine of ten are
/// found, their size within what rounding leaves; rounded to a millimeter more than half. The first and the last point cannot be judged.</para>
/// </remarks>
public static class DoubtfulOffsets
{
    private const double LeastError = 0.00025; // [m]
    private const int MostShare = 4; // at most a quarter of the points

    // From this step on [m] points are foretold by smoothing, over so many on either side, by a polynomial of this degree.
    private const double Coarse = 0.00025;
    private const int Aside = 5, Degree = 4;

    // Standard deviation of ordinates from their smoothed polynomial, over the step, that rounding alone hardly makes: twice its own.
    private const double Restless = 0.58;

    // How many standard deviations of what is foretold a point may be off.
    private const double Deviations = 4.2;

    /// <summary>The doubtful points of one line.</summary>
    /// <param name="points">Points of the line in order: abscissa such as the station's x, strictly increasing, and offset [m]; at least 5.</param>
    /// <param name="rounding">Step to which the offsets are rounded [m], not negative; 0 where they are exact.</param>
    /// <returns>The doubtful points in order along the line; empty where there are none or fewer than 5 points.</returns>
    /// <exception cref="ArgumentException">The abscissas do not increase, or a number is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rounding is negative or not a number.</exception>
    public static IReadOnlyList<DoubtfulOffset> In(IReadOnlyList<Point2> points, double rounding)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (!(rounding >= 0 && double.IsFinite(rounding)))
            throw new ArgumentOutOfRangeException(nameof(rounding), rounding, "a step of rounding is finite and not negative");
        for (var k = 0; k < points.Count; k++)
        {
            if (!double.IsFinite(points[k].X) || !double.IsFinite(points[k].Y) || (k > 0 && points[k].X <= points[k - 1].X))
                throw new ArgumentException(Invariant($"point {k} does not lie beyond the one before it, or is not a number"), nameof(points));
        }

        Point2[] line = [.. points];
        var wrong = new SortedSet<int>();
        var isCoarse = rounding >= Coarse;
        while (wrong.Count < points.Count / MostShare && (isCoarse ? WorstSmoothed(line, rounding) : Worst(line, rounding)) is { } k)
        {
            wrong.Add(k);
            line[k] = PutRight(k);
        }

        // Each put right once more, now that the others are.
        foreach (var k in wrong)
            line[k] = PutRight(k);
        return [.. wrong.Where(k => Math.Abs(points[k].Y - line[k].Y) > LeastError).Select(k => new DoubtfulOffset(k, points[k].Y - line[k].Y, line[k].Y))];

        Point2 PutRight(int k) => isCoarse ? line[k] with { Y = Smoothed(line, k, rounding).Y } : Mended(line, k);
    }

    // The point that stands furthest beyond what rounding can do; null where none does.
    private static int? WorstSmoothed(Point2[] line, double rounding)
    {
        if (line.Length < Degree + 4)
            return null;
        var (worst, furthest) = Enumerable.Range(1, line.Length - 2).Select(k => (k, Beyond(k))).OrderByDescending(p => p.Item2).First();
        return furthest > 1 ? worst : null;

        // How far a point stands off, over how far it may; 0 where smoothing cannot judge it and its few neighbors do not blame it.
        double Beyond(int k)
        {
            var (y, doubt, unrest) = Smoothed(line, k, rounding);
            var isJudged = unrest < Restless * rounding && k > 1 && k < line.Length - 2;
            return isJudged || Excess(line, k, rounding) > 0 ? Math.Abs(line[k].Y - y) / doubt : 0;
        }
    }

    // Ordinate of a smoothed polynomial through neighbors at the abscissa of a point, how far the point may be from it, and how far its neighbors are.
    private static (double Y, double Doubt, double Unrest) Smoothed(Point2[] line, int k, double rounding)
    {
        var first = Math.Clamp(k - Aside, 0, Math.Max(0, line.Length - 1 - (2 * Aside)));
        Point2[] near = [.. Enumerable.Range(first, Math.Min(line.Length, (2 * Aside) + 1)).Where(j => j != k).Select(j => line[j])];
        var span = near[^1].X - near[0].X;
        var powers = Matrix<double>.Build.Dense(near.Length, Degree + 1, (i, p) => Math.Pow((near[i].X - line[k].X) / span, p));
        var weights = powers.QR().Solve(Matrix<double>.Build.DenseIdentity(near.Length));
        var ordinates = Vector<double>.Build.DenseOfEnumerable(near.Select(p => p.Y));
        var fit = weights * ordinates;
        var unrest = (ordinates - (powers * fit)).L2Norm() / Math.Sqrt(near.Length - Degree - 1);
        return (fit[0], (rounding / 2) + (Deviations * weights.Row(0).L2Norm() * Math.Max(rounding / Math.Sqrt(12), unrest)), unrest);
    }

    // The doubtful point whose putting right leaves least doubt; null where there is none.
    private static int? Worst(Point2[] line, double rounding)
    {
        int? worst = null;
        var least = double.MaxValue;
        for (var k = 1; k < line.Length - 1; k++)
        {
            if (Excess(line, k, rounding) <= 0)
                continue;
            var kept = line[k];
            line[k] = Mended(line, k);
            var left = 0.0;
            for (var j = 1; j < line.Length - 1; j++)
                left += Foretold(line, j, 3) is { } f ? Math.Pow(line[j].Y - f.Y, 2) : 0;
            line[k] = kept;
            if (left < least)
                (worst, least) = (k, left);
        }

        return worst;
    }

    // By how much a point stands further from its foretelling than may be [m].
    private static double Excess(Point2[] line, int k, double rounding)
    {
        if (Foretold(line, k, 3) is not { } far || Foretold(line, k, 2) is not { } near)
            return 0;
        var error = Math.Abs(line[k].Y - far.Y);
        var doubt = Math.Min(k, line.Length - 1 - k) switch { 1 => 4, 2 => 2, _ => 1 };
        return error - Math.Max(LeastError, (doubt * Math.Abs(far.Y - near.Y)) + (rounding / 2 * (1 + far.Weights)));
    }

    private static Point2 Mended(Point2[] line, int k) => Foretold(line, k, 3) is { } f ? line[k] with { Y = f.Y } : line[k];

    // Ordinate of the polynomial through some neighbors on either side at the abscissa of a point, and the sum of their weights.
    private static (double Y, double Weights)? Foretold(Point2[] line, int k, int aside)
    {
        int first = Math.Max(0, Math.Min(k - aside, line.Length - 1 - (2 * aside))), last = Math.Min(line.Length - 1, Math.Max(k + aside, 2 * aside));
        Span<double> s = stackalloc double[7];
        Span<int> at = stackalloc int[7];
        var count = 0;
        var length = 0.0;
        for (var j = first; j <= last; j++)
        {
            if (j == k)
                continue;
            if (count > 0)
                length += line[j].DistanceTo(line[at[count - 1]]);
            (s[count], at[count]) = (length, j);
            count++;
        }

        if (count < 4)
            return null;
        // The chord length at which the polynomial has the abscissa: the secant from where the straight chord has it.
        var before = k - first - 1;
        double a = s[before], b = s[before + 1], t = a + ((b - a) * (line[k].X - line[at[before]].X) / (line[at[before + 1]].X - line[at[before]].X));
        var x = line[k].X;
        double low = a, high = b;
        for (var halving = 0; halving < 100 && high - low > 1e-12; halving++)
        {
            t = (low + high) / 2;
            if (Polynomial(line, s, at, count, t).X < x)
                low = t;
            else
                high = t;
        }

        var p = Polynomial(line, s, at, count, t);
        return Math.Abs(p.X - x) > 1e-6 ? null : (p.Y, p.Weights);
    }

    private static (double X, double Y, double Weights) Polynomial(Point2[] line, ReadOnlySpan<double> s, ReadOnlySpan<int> at, int count, double t)
    {
        double x = 0, y = 0, weights = 0;
        for (var i = 0; i < count; i++)
        {
            var weight = 1.0;
            for (var j = 0; j < count; j++)
            {
                if (j != i)
                    weight *= (t - s[j]) / (s[i] - s[j]);
            }

            x += weight * line[at[i]].X;
            y += weight * line[at[i]].Y;
            weights += Math.Abs(weight);
        }

        return (x, y, weights);
    }
}
