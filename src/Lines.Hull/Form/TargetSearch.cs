using Lines.Kernel.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Lines.Hull.Form;

/// <summary>Finds the dials left out so that the finished hull has what is asked.</summary>
/// <remarks>
/// <para><b>Method.</b> <see cref="BroydenSearch"/> on the logarithms of dials and measures, for what a hull has is nearly a product of powers of its
/// dials: first to <see cref="Near"/>, then on. Every hull is shaped cold, so the one found is a function of the file alone; all of them on even
/// spans, for a change of spans is a step.</para>
/// <para><b>Accuracy.</b> Every target to <see cref="Met"/>, relative, measured on the surface; most to 1e-7.</para>
/// </remarks>
/// <param name="d">The dials; those left out do not count.</param>
/// <param name="targets">What is asked.</param>
internal sealed class TargetSearch(HullDials d, HullTargets targets)
{
    /// <summary>A target is met when it is off by no more than this [1]; the skins of neighboring dials differ by up to 3e-6 in volume where a pass more is made.</summary>
    public const double Met = 8e-6;

    /// <summary>A search that ends no nearer than this [1] is not pursued.</summary>
    public const double Near = 0.002;

    /// <summary>Further than any dial's range goes, as the logarithm of a ratio.</summary>
    private const double Farther = 10;

    /// <summary>Times the way between two sides of a target is halved before the search goes on from there.</summary>
    private const int Halvings = 6;

    /// <summary>Parts of its range at which the one dial left out is tried where a search ends short of its target: an angle need not rise with its fullness.</summary>
    private const int Places = 16;

    private static readonly SearchMeasure s_rough = new(Aim: Near / 4, Enough: Near, Longest: 0.3, Probe: 0.003);

    private static readonly SearchMeasure s_fine = new(Aim: 1e-7, Enough: Met, Longest: 0.1, Probe: 0.001);

    /// <summary>Searches from the first start that is a hull.</summary>
    /// <param name="fault">Why the likeliest start is none; null where one is.</param>
    /// <returns>Where it ended; null where no start is a hull.</returns>
    public SearchEnd<HullSurface>? Cold(out FormFault? fault)
    {
        fault = null;
        foreach (var start in TargetStart.Of(d, targets))
        {
            if (From(Logarithms(start)) is { } end)
            {
                fault = null;
                return end;
            }

            fault ??= HullAttempt.AtOnce(start).Fault;
        }

        return null;
    }

    /// <summary>Searches from a point; null where it is no hull.</summary>
    /// <param name="x">The point.</param>
    public SearchEnd<HullSurface>? From(double[] x)
    {
        var end = Roughly(x);
        if (end is not null && end.Miss > Near && Between(x, end) is { } nearer)
            end = nearer;
        if (end is null || end.Miss > Near)
            return end;
        var fine = BroydenSearch.From(ValueAt, Within, end.X, s_fine, end.Slopes);
        return fine is null ? end : fine with { Tried = end.Tried + fine.Tried };
    }

    /// <summary>Searches from a point for a hull that is only near the targets, to <see cref="Near"/>; null where it is no hull.</summary>
    /// <param name="x">The point.</param>
    /// <param name="slopes">Derivatives near it, as an earlier search left them; null takes them.</param>
    public SearchEnd<HullSurface>? Roughly(double[] x, Matrix<double>? slopes = null) => BroydenSearch.From(ValueAt, Within, x, s_rough, slopes);

    /// <summary>The hull nearest to the one target, on the way of the one dial left out from where a search ended to the end of its range.</summary>
    /// <param name="end">Where the search ended, the target not met.</param>
    /// <param name="step">Relative step of the dial to which the last hull is found [1].</param>
    /// <returns>That hull, and wanted beyond it the next that is none, or is no nearer.</returns>
    public SearchEnd<HullSurface> Furthest(SearchEnd<HullSurface> end, double step)
    {
        var way = Math.Sign(end.Wanted[0] - end.X[0]);
        if (way == 0)
            return end;
        var bad = Within([end.X[0] + (way * Farther)])[0];
        var nearest = end;
        for (var x = bad; ; x = (nearest.X[0] + bad) / 2)
        {
            if (ValueAt([x]) is var (miss, made) && miss[0] * nearest.Residual[0] > 0 && Math.Abs(miss[0]) < nearest.Miss)
                nearest = nearest with { X = [x], Residual = miss, Made = made };
            else
                bad = x;
            if (Math.Abs(bad - nearest.X[0]) <= step)
                return nearest with { Wanted = [nearest.X[0] == bad ? bad + (way * step) : bad] };
        }
    }

    /// <summary>Where one target is passed between the start and the end of a search, or elsewhere in the range of the one dial left out, goes on from
    /// a place near it.</summary>
    private SearchEnd<HullSurface>? Between(double[] start, SearchEnd<HullSurface> end)
    {
        if (start.Length > 1)
            return null;
        // What the search found at its end is known.
        List<(double X, double Miss)> seen = [.. Seen([start[0]]), (end.X[0], end.Residual[0])];
        if (!Passes().Any())
        {
            double least = Within([-Farther])[0], greatest = Within([Farther])[0];
            seen.AddRange(Seen(Enumerable.Range(0, Places + 1).Select(k => least + ((greatest - least) * k / Places))));
        }

        return Passes().OrderBy(p => Math.Abs(p.From.X - end.X[0])).Select(p => Roughly([Halved(p.From, p.To.X)])).FirstOrDefault(found => found?.Miss <= Near);

        IEnumerable<(double X, double Miss)> Seen(IEnumerable<double> places) =>
            places.Select(x => (x, ValueAt([x]))).Where(p => p.Item2 is not null).Select(p => (p.x, p.Item2!.Value.Residual[0]));

        IEnumerable<((double X, double Miss) From, (double X, double Miss) To)> Passes()
        {
            List<(double X, double Miss)> along = [.. seen.OrderBy(s => s.X)];
            return along.Zip(along.Skip(1)).Where(p => p.First.Miss * p.Second.Miss < 0);
        }

        double Halved((double X, double Miss) from, double to)
        {
            var before = from.X;
            for (var k = 0; k < Halvings; k++)
            {
                var middle = (before + to) / 2;
                if (ValueAt([middle]) is var (miss, _) && miss[0] * from.Miss > 0)
                    before = middle;
                else
                    to = middle;
            }

            return before;
        }
    }

    /// <summary>The dials at a point.</summary>
    public HullDials At(double[] x)
    {
        var hull = d;
        for (var k = 0; k < x.Length; k++)
            hull = DialAccess.With(hull, targets.LeftOut[k], Math.Exp(x[k]));
        return hull;
    }

    /// <summary>The point of dials.</summary>
    public double[] Logarithms(HullDials hull) => [.. targets.LeftOut.Select(dial => Math.Log(DialAccess.ValueOf(hull, dial)!.Value))];

    /// <summary>What stopped a search: the fault of the hull it wanted, or the dial that came to an end of what the others leave it.</summary>
    public (FormFault? Fault, (Dial Dial, double Limit)? Beyond) Stop(SearchEnd<HullSurface> end)
    {
        var y = Within(end.Wanted);
        if (HullAttempt.AtOnce(At(y)).Fault is { } fault)
            return (fault, null);
        var moved = Enumerable.Range(0, y.Length).Where(k => y[k] != end.Wanted[k]).Select(k => (int?)k).FirstOrDefault();
        return (null, moved is { } k ? (targets.LeftOut[k], Math.Exp(y[k])) : null);
    }

    private (double[] Residual, HullSurface Made)? ValueAt(double[] x) =>
        HullAttempt.AtOnce(At(x)).Surface is { } hull ? (targets.Misses(hull), hull) : null;

    private double[] Within(double[] x)
    {
        var within = (double[])x.Clone();
        var hull = At(x);
        for (var k = 0; k < x.Length; k++)
        {
            var (least, greatest) = DialAccess.BoundsOf(hull, targets.LeftOut[k]);
            within[k] = Math.Max(Math.Log(least), Math.Min(Math.Log(greatest), x[k]));
            if (within[k] != x[k])
                hull = DialAccess.With(hull, targets.LeftOut[k], Math.Exp(within[k]));
        }

        return within;
    }
}
