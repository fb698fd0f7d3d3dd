using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Lines.Hull.Fairness;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Sections;
using Lines.Tests.Support;

namespace Lines.Benchmarks;

/// <summary>How many craft drawn at random over the whole range become hulls, how many of those are fair, and why the others do not.</summary>
/// <remarks><b>Method.</b> The craft of <see cref="RandomCraft"/>, the very ones for every machine. A hull counts as built only when its
/// entry, run and midship fullness read back from its surface within 1e-4; of the refused the first few are explained, and each value told
/// is built.</remarks>
internal static class RandomHulls
{
    /// <summary>Prints the tables.</summary>
    /// <param name="count">Craft drawn.</param>
    /// <param name="seed">Where chance begins.</param>
    /// <param name="spread">Part of every range, about its middle, that is drawn from.</param>
    /// <param name="explained">How many of the refused are explained.</param>
    public static void Print(int count, int seed, double spread, int explained)
    {
        var craft = new RandomCraft(new Random(seed), spread);
        var dials = Enumerable.Range(0, count).Select(_ => craft.Next()).ToArray();
        var outcomes = new Outcome[count];
        Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, i => outcomes[i] = Outcome.Of(dials[i]));
        List<Outcome> built = [.. outcomes.Where(o => o.Refused is null)], convex = [.. built.Where(o => !o.Hollow)];
        Console.WriteLine("| drawn | built | convex asked, built | of these fair | worst read back | median [ms] | longest [ms] |");
        Console.WriteLine("|---:|---:|---:|---:|---:|---:|---:|");
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {count} | {built.Count} ({100.0 * built.Count / count:F1} %) | {convex.Count} | {convex.Count(o => o.Unfair is null)} ({100.0 * convex.Count(o => o.Unfair is null) / Math.Max(1, convex.Count):F1} %) | {built.Max(o => o.ReadBack):E1} | {outcomes.Select(o => o.Milliseconds).Order().ElementAt(count / 2):F0} | {outcomes.Max(o => o.Milliseconds):F0} |"));
        Console.WriteLine("\n| times | refused because |\n|---:|---|");
        Tally(outcomes.Select(o => o.Refused));
        Console.WriteLine("\n| times | not fair because of |\n|---:|---|");
        Tally(convex.Select(o => o.Unfair));
        Explain([.. dials.Where((_, i) => outcomes[i].Refused is not null).Take(explained)]);
    }

    private static void Tally(IEnumerable<string?> reasons)
    {
        foreach (var group in reasons.OfType<string>().GroupBy(r => Regex.Replace(r, "[0-9]+([./][0-9]+)*", "#", RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture)).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal))
            Console.WriteLine(Invariant($"| {group.Count()} | {group.Key} |"));
    }

    private static void Explain(HullDials[] refused)
    {
        int alone = 0, together = 0, none = 0, notBuilt = 0, fair = 0, values = 0;
        var times = new List<double>();
        foreach (var d in refused)
        {
            var watch = Stopwatch.StartNew();
            var conflict = HullShape.Solve(d).Conflicts.Single();
            times.Add(watch.Elapsed.TotalSeconds);
            List<DialHint> told = [.. conflict.Dials.Where(h => h.Nearest is not null)];
            (alone, together, none) = (alone + (told.Count > 0 && !conflict.Together ? 1 : 0), together + (told.Count > 0 && conflict.Together ? 1 : 0), none + (told.Count == 0 ? 1 : 0));
            IEnumerable<HullDials> remedies = conflict.Together && told.Count > 0
                ? [told.Aggregate(d, (hull, h) => DialAccess.With(hull, h.Dial, h.Nearest!.Value))]
                : told.Select(h => DialAccess.With(d, h.Dial, h.Nearest!.Value));
            foreach (var surface in remedies.Select(r => HullAttempt.Make(r).Surface))
            {
                values++;
                if (surface is null)
                    notBuilt++;
                else if (FairnessReport.Of(HullLines.Of(surface)).Fair)
                    fair++;
            }
        }

        if (times.Count == 0)
            return;
        times.Sort();
        Console.WriteLine("\n| refused, explained | a dial that helps alone | dials together | no value found | remedies told | that build | that are fair | median [s] | longest [s] |\n|---:|---:|---:|---:|---:|---:|---:|---:|---:|");
        Console.WriteLine(Invariant($"| {refused.Length} | {alone} | {together} | {none} | {values} | {values - notBuilt} | {fair} | {times[times.Count / 2]:F1} | {times[^1]:F1} |"));
    }

    /// <summary>What came of one craft.</summary>
    private sealed record Outcome(string? Refused, string? Unfair, bool Hollow, double ReadBack, double Milliseconds)
    {
        public static Outcome Of(HullDials d)
        {
            var watch = Stopwatch.StartNew();
            var attempt = HullAttempt.Make(d);
            var time = watch.Elapsed.TotalMilliseconds;
            if (attempt.Surface is not { } hull)
                return new Outcome(attempt.Fault!.Reason, null, d.Hollow, 0, time);
            var form = FormCoefficients.Of(hull);
            var off = Math.Max(Math.Abs(form.Midship - d.Midship.Fullness), Math.Max(Math.Abs(form.Entry - d.Bow.EntryFullness), Math.Abs(form.Run - d.Stern.RunFullness)));
            if (!(off <= 1e-4))
                return new Outcome("a fullness did not read back", null, d.Hollow, 0, time);
            var report = FairnessReport.Of(HullLines.Of(hull));
            var fault = report.Faults is [var worst, ..] ? worst : null;
            return new Outcome(null, fault is null ? null : fault.Subject + (fault.IsHollow ? ": a hollow" : ": off its batten"), d.Hollow, off, time);
        }
    }
}
