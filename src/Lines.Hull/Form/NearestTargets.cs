using Lines.Hull.Fairness;
using Lines.Kernel.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Lines.Hull.Form;

/// <summary>Meets targets, or finds for those that exclude each other or a dial the nearest value of each that would do alone.</summary>
/// <param name="d">The dials; those left out do not count.</param>
/// <param name="targets">What is asked.</param>
/// <param name="told">How values of dials are told.</param>
/// <param name="toldTarget">How values of targets are told: only what builds as told is told.</param>
internal sealed class NearestTargets(HullDials d, HullTargets targets, ToldValue told, ToldTarget toldTarget)
{
    /// <summary>The way to what was asked is bisected until what is left of it is this part of the whole, and no more than <see cref="NearestStep"/>.</summary>
    private const double NearEnough = 0.05;

    /// <summary>The relative step to which the nearest value of a target is found.</summary>
    private const double NearestStep = 0.01;

    /// <summary>The relative step to which a dial alone is brought toward its last hull.</summary>
    private const double DialStep = 0.001;

    /// <summary>A relative change of a target nobody measures.</summary>
    private const double Nothing = 1e-4;

    /// <summary>Dials told beside a target.</summary>
    private const int Told = 3;

    /// <summary>Parts of its own size by which a told value stands back from the nearest, tried in turn: a search must end in a hull there.</summary>
    private static readonly double[] s_furtherBack = [0.0005, 0.003, 0.01, 0.03, 0.1];

    private readonly TargetSearch _search = new(d, targets);

    /// <summary>The hull with every target met, or why there is none.</summary>
    /// <remarks><b>Method.</b> Where the search from the usual start fails, each target in turn is brought toward what was asked from a value it has
    /// on a hull that meets the others, as far as it goes. Should it go all the way, that is the hull.</remarks>
    public HullSolution Solve()
    {
        if (_search.Cold(out var fault) is not { } end)
            return NoStart(fault!);
        if (end.Miss <= TargetSearch.Met)
            return new HullSolution(end.Made, []);
        var reaches = new Reach?[targets.Asked.Count];
        Parallel.For(0, reaches.Length, k => reaches[k] = ReachOf(k, end));
        if (reaches.Select(r => r?.Whole).FirstOrDefault(w => w is not null) is { } whole)
            return new HullSolution(whole, []);
        var hints = new TargetHint?[reaches.Length];
        Parallel.For(0, reaches.Length, k => hints[k] = reaches[k] is { } reach ? Hint(k, reach) : null);
        var alone = hints.Any(h => h is not null);
        var stop = reaches.Select(r => r?.Stop).FirstOrDefault(s => s is not null) ?? _search.Stop(end);
        return new HullSolution(null, [])
        {
            Unmet = new TargetConflict(
                stop.Fault?.Reason ?? "",
                alone ? [.. hints.OfType<TargetHint>()] : Together(),
                [.. Given(stop.Fault).Take(Told)])
            {
                Beyond = stop.Beyond,
                Together = !alone && targets.Asked.Count > 1,
            },
        };
    }

    /// <summary>The dials given do not go together whatever the others are, as far as was tried: told as for a hull without targets.</summary>
    private HullSolution NoStart(FormFault fault)
    {
        List<Dial> given = [.. Given(fault)];
        return given.Count > 0
            ? new HullSolution(null, [new NearestDials(TargetStart.Of(d, targets).First(), told).Explain(fault with { Dials = given })])
            : new HullSolution(null, []) { Unmet = new TargetConflict(fault.Reason, [.. targets.Asked.Select(t => new TargetHint(t.Target, null))], []) };
    }

    private IEnumerable<Dial> Given(FormFault? fault) => fault?.Dials.Distinct().Where(dial => dial != Dial.Hollow && !targets.LeftOut.Contains(dial)) ?? [];

    /// <summary>How far a target goes, the others met; null where not even those are met.</summary>
    private Reach? ReachOf(int k, SearchEnd<HullSurface> end)
    {
        if (targets.Asked.Count == 1)
            return Alone(_search.Furthest(end, DialStep));
        if (OthersMet(k, end) is not { } from)
            return null;
        double asked = targets.Asked[k].Value, good = ValueOn(from.Made, k), bad = asked;
        var begun = Math.Abs(Math.Log(asked / good));
        var x = _search.Logarithms(from.Made.Dials);
        (FormFault?, (Dial, double)?)? stop = null;
        Matrix<double>? slopes = null;
        for (var value = asked; ; value = Math.Sqrt(good * bad))
        {
            var search = new TargetSearch(d, targets.With(k, value));
            var there = search.Roughly(x, slopes)!;
            if (there.Miss <= TargetSearch.Near)
            {
                if (value == asked)
                    return search.From(there.X) is { } whole && whole.Miss <= TargetSearch.Met ? new Reach(good, whole.Made, null) : new Reach(ValueOn(there.Made, k), null, search.Stop(there));
                (good, x, slopes) = (value, there.X, there.Slopes);
            }
            else
            {
                (bad, stop) = (value, search.Stop(there));
            }

            if (Math.Abs(Math.Log(bad / good)) <= Math.Max(Nothing, Math.Min(NearestStep, NearEnough * begun)))
                return new Reach(good, null, stop);
        }

        Reach Alone(SearchEnd<HullSurface> furthest) => new(ValueOn(furthest.Made, k), null, _search.Stop(furthest));
    }

    /// <summary>A hull that meets all targets but one, a dial held where the search ended.</summary>
    private SearchEnd<HullSurface>? OthersMet(int k, SearchEnd<HullSurface> end)
    {
        var pair = HullTargets.Paired([.. targets.Asked.Select(t => t.Target)], targets.LeftOut)[k];
        foreach (var held in targets.LeftOut.OrderBy(dial => dial != pair))
        {
            foreach (var hull in (HullDials[])[end.Made.Dials, .. TargetStart.Of(d, targets).Take(1)])
            {
                var search = new TargetSearch(hull, targets.Without(k, held));
                if (search.Roughly(search.Logarithms(hull)) is { } met && met.Miss <= TargetSearch.Near)
                    return met;
            }
        }

        return null;
    }

    /// <summary>The nearest value as it is told, if it builds; further back where rounding alone does not.</summary>
    private TargetHint? Hint(int k, Reach reach)
    {
        var (target, asked) = targets.Asked[k];
        var upward = reach.Value > asked;
        foreach (var back in s_furtherBack)
        {
            var value = toldTarget(target, reach.Value * (upward ? 1 + back : 1 - back), upward);
            if (value > 0 && new TargetSearch(d, targets.With(k, value)).Cold(out _) is { } end && end.Miss <= TargetSearch.Met)
                return new TargetHint(target, value) { Fair = FairnessReport.Of(end.Made).Fair };
        }

        return null;
    }

    /// <summary>Values of all targets at once that go together, as far as they can be brought from those of a tame hull toward what was asked.</summary>
    private IReadOnlyList<TargetHint> Together()
    {
        var tame = TargetStart.Of(d, targets).Select(start => HullAttempt.AtOnce(start).Surface).First(hull => hull is not null)!;
        double[] from = [.. Enumerable.Range(0, targets.Asked.Count).Select(k => ValueOn(tame, k))];
        var x = _search.Logarithms(tame.Dials);
        double good = 0, bad = 1;
        while (bad - good > NearEnough)
        {
            var middle = (good + bad) / 2;
            if (new TargetSearch(d, At(middle, told: false)).Roughly(x) is { } there && there.Miss <= TargetSearch.Near)
                (good, x) = (middle, there.X);
            else
                bad = middle;
        }

        foreach (var share in (double[])[good, good - NearEnough, good / 2, 0])
        {
            var asked = At(Math.Max(0, share), told: true);
            if (new TargetSearch(d, asked).Cold(out _) is { } met && met.Miss <= TargetSearch.Met)
                return [.. asked.Asked.Select(t => new TargetHint(t.Target, t.Value) { Fair = FairnessReport.Of(met.Made).Fair })];
        }

        return [.. targets.Asked.Select(t => new TargetHint(t.Target, null))];

        HullTargets At(double share, bool told) => Enumerable.Range(0, from.Length).Aggregate(targets, (all, k) =>
        {
            var (target, asked) = targets.Asked[k];
            var value = from[k] * Math.Pow(asked / from[k], share);
            return all.With(k, told ? toldTarget(target, value, from[k] > asked) : value);
        });
    }

    private double ValueOn(HullSurface hull, int k) =>
        targets.Asked[k].Value * Math.Exp(targets.Misses(hull)[k]);

    /// <summary>How far a target goes.</summary>
    /// <param name="Value">Its nearest value, SI.</param>
    /// <param name="Whole">The hull, where it goes all the way.</param>
    /// <param name="Stop">What stops it where it does not.</param>
    private sealed record Reach(double Value, HullSurface? Whole, (FormFault? Fault, (Dial Dial, double Limit)? Beyond)? Stop);
}
