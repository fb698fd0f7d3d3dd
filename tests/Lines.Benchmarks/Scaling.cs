using System.Diagnostics;
using System.Globalization;
using Lines.Design;
using Lines.Hull.Form;
using Lines.Hull.Sections;
using Lines.Tests.Support;

namespace Lines.Benchmarks;

/// <summary>What sweeps gain by cores beside a loop that does nothing but count, and how cutting stations grows with their number.</summary>
/// <remarks>Loops on one core and on all take turns, so that what else the machine does falls on both.</remarks>
internal static class Scaling
{
    /// <summary>Hulls of one turn, how often each loop has its turn, and how often stations are cut.</summary>
    private const int Block = 48, Turns = 9, Repeats = 5;

    /// <summary>Steps of counting that take about as long as one hull.</summary>
    private const long Steps = 40_000_000;

    private const string Design = "templates/gauge-runner.toml";

    /// <summary>Prints both tables.</summary>
    public static void Print()
    {
        var craft = new RandomCraft(new Random(3), 0.5);
        var dials = Enumerable.Range(0, Block).Select(_ => craft.Next()).ToArray();
        var (sweep, cores) = (SweepTimes.Thousand(), Environment.ProcessorCount);
        (string Name, Action<int> Loop)[] loops =
        [
            ("counting", c => Parallel.For(0, Block, new ParallelOptions { MaxDegreeOfParallelism = c }, _ => Count())),
            ("random craft shaped", c => Parallel.For(0, Block, new ParallelOptions { MaxDegreeOfParallelism = c }, i => _ = HullAttempt.Make(dials[i]))),
            ("variants of a sweep", c => sweep.Each(Enumerable.Range(1, Block), c, (_, _) => { })),
        ];
        foreach (var (_, loop) in loops)
            loop(cores);
        var turns = Enumerable.Range(0, Turns).Select(turn => Enumerable.Range(0, loops.Length).Select(k => (k + turn) % loops.Length).Select(k => (k, Gain: Gain(loops[k].Loop, cores))).OrderBy(g => g.k).Select(g => g.Gain).ToArray()).ToList();
        Console.WriteLine(Invariant($"| loop of {Block}, medians of {Turns} turns | gain on {cores} cores | processor, all cores over one | part kept, turn by turn |\n|---|---:|---:|---:|"));
        for (var k = 0; k < loops.Length; k++)
        {
            var at = k;
            Console.WriteLine(Invariant($"| {loops[k].Name} | {Median(turns.Select(t => t[at].Clock)):F2} | {Median(turns.Select(t => t[at].Processor)):F3} | {Median(turns.Select(t => t[at].Clock / t[0].Clock)):F2} |"));
        }

        var hull = HullShape.Solve(DesignFile.Read(File.ReadAllBytes(Design), Design).Design!.Vessel.MainHull).Surface!;
        Console.WriteLine("\n| stations | all [ms] | each [µs] |\n|---:|---:|---:|");
        foreach (var count in (int[])[25, 50, 100, 200, 400, 800])
        {
            var time = 1000 * Median(Enumerable.Range(0, Repeats).Select(turn => Timed(cutting =>
            {
                for (var k = 0; k < count; k++)
                    _ = Cut.Station(hull, hull.Dials.Length * (k + 0.5) / count);
            }, 1).Clock));
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {count} | {time:F2} | {1000 * time / count:F1} |"));
        }
    }

    /// <summary>How many times faster all cores are than one, by the clock, and what processor time they take for it.</summary>
    private static (double Clock, double Processor) Gain(Action<int> loop, int cores)
    {
        var (alone, together) = (Timed(loop, 1), Timed(loop, cores));
        return (alone.Clock / together.Clock, together.Processor / alone.Processor);
    }

    private static (double Clock, double Processor) Timed(Action<int> loop, int cores)
    {
        var (processor, watch) = (Environment.CpuUsage.TotalTime, Stopwatch.StartNew());
        loop(cores);
        return (watch.Elapsed.TotalSeconds, (Environment.CpuUsage.TotalTime - processor).TotalSeconds);
    }

    private static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToList();
        return sorted[sorted.Count / 2];
    }

    private static void Count()
    {
        var sum = 0.0;
        for (var k = 0L; k < Steps; k++)
            sum += k;
        if (sum < 0)
            Console.WriteLine(sum);
    }
}
