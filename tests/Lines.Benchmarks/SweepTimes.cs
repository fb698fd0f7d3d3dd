using System.Diagnostics;
using System.Globalization;
using Lines.Cli.Input;
using Lines.Design.Studies;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Units;

namespace Lines.Benchmarks;

/// <summary>How long a sweep of a thousand variants takes, each with hydrostatics, fairness and drag at five speeds, and what it gains by cores beside a loop that only counts.</summary>
/// <remarks>The rows are made by the loop that the command itself runs. Loops on one core and on all take turns, so that what else the machine does falls on both.</remarks>
internal static class SweepTimes
{
    private const string Design = "templates/gauge-runner.toml";

    /// <summary>Variants of one turn, and how often each loop has its turn.</summary>
    private const int Block = 48, Turns = 9;

    /// <summary>Prints the tables.</summary>
    public static void Print()
    {
        var sweep = new Sweep(
            Design,
            File.ReadAllText(Design),
            [Variation.Parse("hull.bow.entry_fullness=0.56:0.70:40"), Variation.Parse("hull.beam=680 mm:760 mm:25")],
            [.. new double[] { 3, 4, 5, 6, 7 }.Select(k => k * Standards.Knot)],
            Water.Sea);
        var cores = Environment.ProcessorCount;

        // What is compiled while it runs is not the sweep's.
        _ = sweep.Each(Enumerable.Range(1, Block), cores, (_, _) => { });
        var (processor, watch, bytes) = (Environment.CpuUsage.TotalTime, Stopwatch.StartNew(), GC.GetTotalAllocatedBytes());
        var (collections, pause) = (GC.CollectionCount(0), GC.GetTotalPauseDuration());
        _ = sweep.Each(Enumerable.Range(1, sweep.Count), cores, (_, _) => { });
        var used = Environment.CpuUsage.TotalTime - processor;
        Console.WriteLine(Invariant($"| {sweep.Count} variants, five speeds, {cores} cores | |\n|---|---:|"));
        Row("clock [s]", watch.Elapsed.TotalSeconds);
        Row("processor [s]", used.TotalSeconds);
        Row("processor over cores [s]", used.TotalSeconds / cores);
        Row("allocated for each variant [MB]", (GC.GetTotalAllocatedBytes() - bytes) / 1e6 / sweep.Count);
        Row("collections", GC.CollectionCount(0) - collections);
        Row("stopped for them [s]", (GC.GetTotalPauseDuration() - pause).TotalSeconds);

        // About as long as one variant: a thousand million steps take a second or so.
        var each = (long)(1e9 * used.TotalSeconds / sweep.Count);
        var (counting, variants, kept) = Gains(
            c => Parallel.For(0, Block, new ParallelOptions { MaxDegreeOfParallelism = c }, _ => Count(each)),
            c => sweep.Each(Enumerable.Range(1, Block), c, (_, _) => { }),
            cores);
        Console.WriteLine(Invariant($"\n| loop of {Block}, medians of {Turns} turns | gain on {cores} cores | processor, all cores over one |\n|---|---:|---:|"));
        Console.WriteLine(Invariant($"| counting | {counting.Clock:F2} | {counting.Processor:F3} |\n| variants | {variants.Clock:F2} | {variants.Processor:F3} |\n| part kept, turn by turn | {kept:F2} | |"));
    }

    private static void Row(string what, double value) => Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {what} | {value:F2} |"));

    /// <summary>How many times faster all cores are than one, by the clock, and what processor time they take for it; and the part of an empty loop's gain that is kept.</summary>
    private static (Ratio Empty, Ratio Full, double Kept) Gains(Action<int> empty, Action<int> full, int cores)
    {
        List<(Ratio Empty, Ratio Full)> turns = [.. Enumerable.Range(0, Turns).Select(turn => turn % 2 == 0 ? (Of(empty), Of(full)) : Swapped(Of(full), Of(empty)))];
        return (Middle([.. turns.Select(t => t.Empty)]), Middle([.. turns.Select(t => t.Full)]), Median(turns.Select(t => t.Full.Clock / t.Empty.Clock)));

        Ratio Of(Action<int> loop)
        {
            var (alone, together) = (Timed(loop, 1), Timed(loop, cores));
            return new Ratio(alone.Clock / together.Clock, together.Processor / alone.Processor);
        }
    }

    private static Ratio Middle(IReadOnlyList<Ratio> ratios) => new(Median(ratios.Select(r => r.Clock)), Median(ratios.Select(r => r.Processor)));

    private static double Median(IEnumerable<double> values) => values.Order().ElementAt(Turns / 2);

    private static (Ratio Empty, Ratio Full) Swapped(Ratio full, Ratio empty) => (empty, full);

    private static Ratio Timed(Action<int> loop, int cores)
    {
        var (processor, watch) = (Environment.CpuUsage.TotalTime, Stopwatch.StartNew());
        loop(cores);
        return new Ratio(watch.Elapsed.TotalSeconds, (Environment.CpuUsage.TotalTime - processor).TotalSeconds);
    }

    private static void Count(long steps)
    {
        var sum = 0.0;
        for (var k = 0L; k < steps; k++)
            sum += k;
        if (sum < 0)
            Console.WriteLine(sum);
    }

    /// <summary>Times by the clock and of the processors [s], or ratios of them.</summary>
    private readonly record struct Ratio(double Clock, double Processor);
}
