using System.Diagnostics;
using System.Globalization;
using Lines.Cli.Input;
using Lines.Design.Studies;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Units;

namespace Lines.Benchmarks;

/// <summary>How long a sweep of a thousand variants takes, each with hydrostatics, fairness and drag at five speeds, by the loop that the command itself runs.</summary>
internal static class SweepTimes
{
    private const string Design = "templates/gauge-runner.toml";

    /// <summary>Variants made before the clock starts: what is compiled while it runs is not the sweep's.</summary>
    private const int Warm = 48;

    /// <summary>The sweep.</summary>
    public static Sweep Thousand() => new(
        Design,
        File.ReadAllText(Design),
        [Variation.Parse("hull.bow.entry_fullness=0.56:0.70:40"), Variation.Parse("hull.beam=680 mm:760 mm:25")],
        [.. new double[] { 3, 4, 5, 6, 7 }.Select(k => k * Standards.Knot)],
        Water.Sea,
        load: null);

    /// <summary>Prints the table.</summary>
    public static void Print()
    {
        var (sweep, cores) = (Thousand(), Environment.ProcessorCount);
        _ = sweep.Each(Enumerable.Range(1, Warm), cores, (_, _) => { });
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
    }

    private static void Row(string what, double value) => Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {what} | {value:F2} |"));
}
