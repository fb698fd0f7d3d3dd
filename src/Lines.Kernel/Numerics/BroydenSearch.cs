using MathNet.Numerics.LinearAlgebra;

namespace Lines.Kernel.Numerics;

/// <summary>Where a search ended.</summary>
/// <typeparam name="T">What is made of a point on the way to its residual.</typeparam>
/// <param name="X">The best point.</param>
/// <param name="Residual">Its residual.</param>
/// <param name="Made">What was made of it.</param>
/// <param name="Wanted">The nearest point tried in vain after it, before it was brought into the domain; the point itself where nothing was.</param>
/// <param name="Tried">How many points were tried.</param>
public sealed record SearchEnd<T>(double[] X, double[] Residual, T Made, double[] Wanted, int Tried)
{
    /// <summary>The derivatives as they were known last; null where none were needed.</summary>
    public Matrix<double>? Slopes { get; init; }

    /// <summary>Greatest component of the residual, without sign.</summary>
    public double Miss => Residual.Max(Math.Abs);
}

/// <summary>How exact a search is, and how far it steps.</summary>
/// <param name="Aim">The search goes on until no component of the residual is greater, above 0.</param>
/// <param name="Enough">No greater than this, it ends where a whole step does not help: the function may be no smoother.</param>
/// <param name="Longest">Greatest change of a component in one step.</param>
/// <param name="Probe">Change of a component by which derivatives are taken.</param>
public readonly record struct SearchMeasure(double Aim, double Enough, double Longest, double Probe);

/// <summary>A zero of as many functions of as many variables, some values of which may not exist.</summary>
/// <remarks>
/// <para><b>Method.</b> Broyden's: Newton's step with a matrix of derivatives taken by differences at the start, then corrected by what every step shows
/// (C. G. Broyden, "A class of methods for solving nonlinear simultaneous equations", Math. Comp. 19, 1965; from memory). A step that ends
/// where there is no value, or no smaller residual, is halved; when that does not help the derivatives are taken anew, and when that does not
/// either the search ends.</para>
/// <para><b>Accuracy.</b> The residual is returned; whether it is small enough is for the caller to say.</para>
/// </remarks>
public static class BroydenSearch
{
    /// <summary>Times a step is halved.</summary>
    private const int Halvings = 5;

    /// <summary>A step must lessen the residual by this part of what it would if all were linear.</summary>
    private const double LeastGain = 0.2;

    /// <summary>Steps taken before the search is called off, far more than it takes.</summary>
    private const int MostSteps = 60;

    /// <summary>Searches from a point.</summary>
    /// <param name="valueAt">The residual at a point and what was made of it; null where there is none. Must allow calls at once.</param>
    /// <param name="within">The point of the domain nearest to one.</param>
    /// <param name="start">Where to begin; must be in the domain.</param>
    /// <param name="measure">How exact, and how far.</param>
    /// <param name="known">Derivatives near the start, as an earlier search left them; null takes them.</param>
    /// <returns>Where it ended; null where there is no value at the start.</returns>
    public static SearchEnd<T>? From<T>(Func<double[], (double[] Residual, T Made)?> valueAt, Func<double[], double[]> within, double[] start, SearchMeasure measure, Matrix<double>? known = null)
    {
        ArgumentNullException.ThrowIfNull(valueAt);
        ArgumentNullException.ThrowIfNull(within);
        ArgumentNullException.ThrowIfNull(start);
        if (valueAt(start) is not var (residual, made))
            return null;
        var (x, wanted, tried) = (start, start, 1);
        var slopes = known?.Clone();
        for (var step = 0; step < MostSteps && residual.Max(Math.Abs) > measure.Aim; step++)
        {
            var fresh = slopes is null;
            if (fresh)
            {
                slopes = Slopes(valueAt, within, x, residual, measure.Probe);
                tried += x.Length;
            }

            if (Step(slopes!, residual, measure.Longest) is not var (move, share))
                break;
            var found = false;
            for (var part = 1.0; !found && part >= Math.Pow(0.5, Halvings); part /= 2)
            {
                var to = Moved(x, move, part);
                var y = within(to);
                if (Distance(x, y) == 0)
                {
                    wanted = to;
                    break;
                }

                tried++;
                if (valueAt(y) is var (there, thing) && Norm(there) < (1 - (LeastGain * part * share)) * Norm(residual))
                {
                    Correct(slopes!, x, y, residual, there);
                    (x, residual, made, found) = (y, there, thing, true);
                    wanted = x;
                }
                else
                {
                    wanted = to;
                    if (residual.Max(Math.Abs) <= measure.Enough)
                        return End();
                }
            }

            if (found)
                continue;
            if (fresh)
                break;
            slopes = null;
        }

        return End();

        SearchEnd<T> End() => new(x, residual, made, wanted, tried) { Slopes = slopes };
    }

    // Derivatives by differences, forward or, where there is nothing, backward; nothing either way counts as no change.
    private static Matrix<double> Slopes<T>(Func<double[], (double[] Residual, T Made)?> valueAt, Func<double[], double[]> within, double[] x, double[] residual, double probe)
    {
        var slopes = Matrix<double>.Build.Dense(x.Length, x.Length);
        var columns = new double[x.Length][];
        Parallel.For(0, x.Length, k => columns[k] = Column(k));
        for (var k = 0; k < x.Length; k++)
            slopes.SetColumn(k, columns[k]);
        return slopes;

        double[] Column(int k)
        {
            foreach (var change in (double[])[probe, -probe])
            {
                var y = (double[])x.Clone();
                y[k] += change;
                y = within(y);
                if (Math.Abs(y[k] - x[k]) > probe / 2 && valueAt(y) is var (there, _))
                    return [.. there.Zip(residual, (after, before) => (after - before) / (y[k] - x[k]))];
            }

            return new double[x.Length];
        }
    }

    /// <summary>Newton's step, no longer than allowed, and the part of the whole that this is; null where there is none.</summary>
    private static (double[] Move, double Share)? Step(Matrix<double> slopes, double[] residual, double longest)
    {
        var step = slopes.LU().Solve(Vector<double>.Build.DenseOfEnumerable(residual.Select(r => -r)));
        var length = step.AbsoluteMaximum();
        var share = Math.Min(1, longest / length);
        return double.IsFinite(length) && length > 0 ? ((step * share).ToArray(), share) : null;
    }

    private static void Correct(Matrix<double> slopes, double[] x, double[] y, double[] before, double[] after)
    {
        var move = Vector<double>.Build.DenseOfEnumerable(y.Zip(x, (a, b) => a - b));
        var change = Vector<double>.Build.DenseOfEnumerable(after.Zip(before, (a, b) => a - b));
        ((change - (slopes * move)) / move.DotProduct(move)).OuterProduct(move).Add(slopes, slopes);
    }

    private static double[] Moved(double[] x, double[] move, double part) => [.. x.Zip(move, (a, m) => a + (part * m))];

    private static double Distance(double[] x, double[] y) => x.Zip(y, (a, b) => Math.Abs(a - b)).Max();

    private static double Norm(double[] residual) => Math.Sqrt(residual.Sum(r => r * r));
}
